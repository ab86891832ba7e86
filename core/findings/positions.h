#pragma once
// Which positions of its switches a bench is examined in. Within a group of switches that feel each other every combination, as long as
// they are few; groups take turns, and once everything is thrown at the same time. Pure; safe from any thread.

#include "core/nets/layout.h"
#include "core/snapshot/throws.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

struct PositionPlan {
    std::vector<Digits> others;  ///< beside the present one: those the fewest throws away first
    bool complete = true;        ///< no group is too large for all of its combinations
};
PositionPlan planPositions(const Layout& layout, const std::vector<Throw>& all, const Digits& now);

/// "while S1 is pressed and with S2 towards b": how positions differ from the present ones; empty if they don't.
std::string positionWords(const std::vector<Throw>& all, const Bench& bench, const Digits& digits, const Digits& now);

/// In which position a light is seen, in words; nothing if in none. Tries only switches that it feels, and stops at the first that lights it.
std::optional<std::string> positionThatLights(const std::shared_ptr<const Bench>& bench, const Inputs& inputs,
                                              int light);

}  // namespace tiepoint
