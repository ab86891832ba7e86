#pragma once
// When something happens on a bench that moves, in words. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"
#include "core/snapshot/throws.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// "S1 is pressed", "S2 goes to b": what changes from one position of the switches to another.
std::string changeInWords(const std::vector<Throw>& all, const Bench& bench, const Digits& from, const Digits& to);
/// "20 µs after S1 is pressed", "the moment after power-up"; without a time, "again and again after power-up". No change is power-up.
std::string whenInWords(const std::string& change, std::optional<double> second);

/// What a bench that moves comes to, where it doesn't come to rest: "It repeats every 0.7 s; figures are means."; else empty.
std::string lastingWords(const Snapshot& snapshot);

}  // namespace tiepoint
