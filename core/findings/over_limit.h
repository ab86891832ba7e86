#pragma once
// What over-current, over-power and over-voltage share: a part's figure beyond one of its ratings, in its worst position.

#include "core/findings/examination.h"
#include "core/snapshot/readings.h"

#include <optional>
#include <string_view>
#include <vector>

namespace tiepoint {

/// A rating that a part exceeds.
struct Excess {
    int part = 0;
    RatingShare share;
    const Position* position = nullptr;  ///< of the examination
    Figure shown() const { return shownFigure(*position->snapshot, part, *share.rating); }
};

/// For each part the largest excess of a quantity, the most exceeded first. Positions in which a supply is shorted don't count:
/// what burns there burns because of the short. Maximum ratings come before usual figures.
std::vector<Excess> excesses(const Examination& examination, std::string_view quantity);

/// The part, or the lead whose current it is: "Q1", "The base of Q1".
std::string bearerInWords(const Part& part, const Rating& rating);
/// "31.2 mA", or "far too much" where the part would be gone before a figure meant anything.
std::string excessInWords(const Excess& excess);
/// The limit as it was set, without what multiplying blurs: "44 mA".
std::string limitInWords(const Excess& excess);

/// Parts that carry the same current as this one in a position, the part itself left out: one chain.
std::vector<int> chainOf(const Snapshot& snapshot, int part);

}  // namespace tiepoint
