#include "core/snapshot/lit.h"

#include "core/snapshot/readings.h"

namespace tiepoint {

bool isLit(const Snapshot& snapshot, int part) {
    return snapshot.layout->bench->parts[part].kind->emitsLight && currentThrough(snapshot, part).inAmpere >= kVisibleAmpere;
}

}  // namespace tiepoint
