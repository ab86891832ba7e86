#pragma once
// A mend before it is carried out: what the mended bench would have otherwise, drawn over the bench as it is.

#include "ui/paint/bench_seen.h"
#include "ui/paint/patch.h"

namespace tiepoint::ui {

struct MendInput {
    BenchSeen before, after;
    friend bool operator==(const MendInput&, const MendInput&) = default;
};
/// That of the picture's marks, if there is one.
MendInput mendInput(const Picture& picture);
/// The ghosts of parts and jumpers that the mended bench has in other places or with other values, a ring about each hole that something
/// would go into, a tag for each value, and a cross over what would be taken away.
void addMended(Patches& patches, const MendInput& input);
/// "470 ohm, closed": which of a part's values or states are others afterwards; empty: none.
QString newSettings(const std::vector<ValueSpec>& specs, const std::vector<Setting>& before,
                    const std::vector<Setting>& after);

}  // namespace tiepoint::ui
