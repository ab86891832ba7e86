#pragma once
// What counts when two circuits are compared. Plain values.

#include <cstdint>

namespace tiepoint {

/// Which values of parts count. Kinds always do.
enum class ValuesCounted : std::uint8_t {
    All,         ///< every value in force, whether a file says it or leaves the default
    Electrical,  ///< numbers that the model or the light is reckoned with, and all choices; no ratings and tolerances
    None,
};

struct Likeness {
    ValuesCounted values = ValuesCounted::All;
    double tolerance = 0;  ///< numbers are alike within this share of the larger; 0: the same number. Less than 1
    bool states = true;    ///< where slides, levers and knobs stand
    bool unusedParts =
        true;  ///< parts through which no current can go because fewer than two of their terminals lead on
    bool seriesOrder = true;  ///< the order of the parts of a series chain; their direction along it always counts
    std::uint64_t effort = 200'000'000;  ///< steps after which comparing gives up; some hundred million take a second
};

}  // namespace tiepoint
