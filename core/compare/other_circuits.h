#pragma once
// Circuits that are nearly that of a bench, for the question which of several diagrams is the board's: each differs from it by one slip of a
// hand (core/slips) that joins other leads. One that is electrically the same, and one that would be drawn alike, is no other circuit.

#include "core/bench/bench.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace tiepoint {

/// Up to so many benches with one slip each, any two of them other circuits; fewer where no more slips do. Of slips that leave a lead hanging only
/// if there are no others. The same number draws the same. Stoppable.
std::vector<std::shared_ptr<const Bench>> otherCircuits(std::shared_ptr<const Bench> bench, int count,
                                                        std::uint64_t seed);

/// The bench among circuits that are nearly the same, in the order in which they are shown.
struct CircuitChoice {
    std::vector<std::shared_ptr<const Bench>> benches;
    int right = 0;
};
CircuitChoice circuitChoice(std::shared_ptr<const Bench> bench, int count, int right, std::uint64_t seed);

}  // namespace tiepoint
