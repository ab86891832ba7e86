#pragma once
// Before and after: which readings an edit or a press changed, and which it left alone although a class would expect a change.
// Pure function of two snapshots, whose benches may differ: parts are matched by id and kind, nets by the leads that stand in them.
// Safe from any thread.

#include "core/snapshot/snapshot.h"

#include <string>
#include <vector>

namespace tiepoint {

enum class ReadingKind {
    Current,  ///< through a part, A
    Voltage,  ///< of a net above the reference, V
};

struct Change {
    ReadingKind kind = ReadingKind::Current;
    std::string part;  ///< whose current it is, or in whose net `lead` stands
    int lead = -1;     ///< voltages: one lead of that part, the first in the order of the bench
    double before = 0, after = 0;
    Figure beforeShown, afterShown;  ///< each as its own snapshot shows it
    bool changed = true;             ///< false: the same as before, although something that shares its supply changed
};

/// Changes within this are none: half a percent, or what the last of three digits may hide.
inline constexpr double kSameShare = 0.005;
inline constexpr double kSameVolt = 0.005;

/// First currents in the order of `after`'s parts, then voltages in the order of its leads. Supplies switched off carry nothing.
/// Empty where either snapshot has no solution, or nothing changed.
std::vector<Change> compareSnapshots(const Snapshot& before, const Snapshot& after);

}  // namespace tiepoint
