#pragma once
// What a step of the work did, told in two or three words under a small picture: "R1 in", "R1 to plus", "green to red". Pure; safe from any
// thread.

#include "core/edit/edit.h"

#include <string>
#include <vector>

namespace tiepoint {

struct StepNote {
    std::string words;
    std::vector<std::string>
        things;  ///< ids of what the step changed; those taken away are known to the bench before it only
    friend bool operator==(const StepNote&, const StepNote&) = default;
};

/// `after` is what applying the edit to `before` gave. An edit that does too many kinds of things keeps the first words of its own name.
StepNote stepNote(const Bench& before, const Edit& edit, const Bench& after);

}  // namespace tiepoint
