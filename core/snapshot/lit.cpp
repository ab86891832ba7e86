#include "core/snapshot/lit.h"

#include "core/snapshot/readings.h"

namespace tiepoint {

bool isLit(const Snapshot& snapshot, int part) {
    if (!snapshot.layout->bench->parts[part].kind->emitsLight) return false;
    const double seen = snapshot.brightness(part);
    return seen > 0 ? seen >= kVisibleBrightness : currentThrough(snapshot, part).inAmpere >= kVisibleAmpere;
}

}  // namespace tiepoint
