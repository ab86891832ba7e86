#pragma once
// Positions of switches in words, and the one that lights a light. Pure; safe from any thread.

#include "core/nets/layout.h"
#include "core/snapshot/throws.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// "while S1 is pressed and with S2 towards b": how positions differ from the present ones; empty if they don't.
std::string positionWords(const std::vector<Throw>& all, const Bench& bench, const Digits& digits, const Digits& now);

/// In which position a light is seen, in words; nothing if in none. Tries only switches that it feels, and stops at the first that lights it.
std::optional<std::string> positionThatLights(const std::shared_ptr<const Bench>& bench, const Inputs& inputs,
                                              int light);

}  // namespace tiepoint
