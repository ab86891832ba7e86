#pragma once
// Parts and jumpers that are dragged together, or the board that they are on, drawn over the bench where they would go.

#include "ui/paint/bench_seen.h"
#include "ui/paint/patch.h"

namespace tiepoint::ui {

constexpr double kCarriedOpacity = 0.88,
                 kRefusedOpacity = 0.5;  ///< of what is in the hand; of what can't go there

struct GroupInput {
    BenchSeen group;
    std::string board = {};  ///< that is moved too
    bool refused = false;
    friend bool operator==(const GroupInput&, const GroupInput&) = default;
};
/// That of the picture's marks, if there is one.
GroupInput groupInput(const Picture& picture);
void addCarriedGroup(Patches& patches, const GroupInput& input);

}  // namespace tiepoint::ui
