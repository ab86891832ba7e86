#pragma once
// Readings: what a card or a flag says about one part or one path of a solved bench, as figures. The words are the window's.
// Pure functions of a snapshot; safe from any thread. A snapshot without a solution has no readings.

#include "core/snapshot/snapshot.h"

#include <optional>
#include <string_view>
#include <vector>

namespace tiepoint {

/// Currents under this are no current: leakage of the solver's own conductances, and not worth an arrow; A.
inline constexpr double kNoCurrentAmpere = 1e-6;

/// Current that enters a part through its leads, and current that leaves it; A, both positive. Joined leads count once, so that current
/// which only passes along them doesn't appear.
struct Through {
    double inAmpere = 0;
    double outAmpere = 0;
};
Through currentThrough(const Snapshot& snapshot, int part);

/// How a figure of a running part compares with one rating of its kind.
struct RatingShare {
    const Rating* rating = nullptr;  ///< of the part's kind
    double figure = 0;               ///< SI
    double limit = 0;                ///< SI, resolved for this part
    std::string_view unit;           ///< of both
    double share() const { return figure / limit; }
};
/// Every rating of the part's kind, in the order of the kind. Empty without a solution.
std::vector<RatingShare> ratingShares(const Snapshot& snapshot, int part);
/// The rating that says most about the part now: among the limits the one with the largest share, else the first rated figure.
std::optional<RatingShare> tightestRating(const Snapshot& snapshot, int part);

/// What a rating's quantity is shown as: never another figure than the part's own card shows.
Figure shownFigure(const Snapshot& snapshot, int part, const Rating& rating);

/// The potential across one part of a path, in the direction of the current.
struct Drop {
    int part = 0;
    double fromVolt = 0, toVolt = 0;  ///< above the reference
    Figure fromShown, toShown;
    double volt() const { return fromVolt - toVolt; }
    Figure shown() const { return fromShown - toShown; }
};
/// A path that current follows from a supply's plus round to its minus.
struct Loop {
    int supply = 0;
    double currentAmpere = 0;
    double supplyVolt = 0;  ///< between the supply's leads
    Figure supplyShown;
    std::vector<Drop> drops;
};
/// The one loop of a bench where all current runs without branching; nothing where it branches or doesn't flow.
std::optional<Loop> simpleLoop(const Snapshot& snapshot);

/// One way at a place where metal meets.
struct Branch {
    int piece = -1;     ///< the strip, jumper or bridge that the current takes, or -1
    int lead = -1;      ///< else the lead
    double ampere = 0;  ///< positive towards the branch point
    Figure shown;
};
/// A place where the current divides or meets. The branches add up to nothing.
struct BranchPoint {
    int joint = 0;
    std::vector<Branch> branches;  ///< those that carry current, the largest first
};
/// Every joint outside parts at which at least three ways carry current, those with the largest current first.
std::vector<BranchPoint> branchPoints(const Snapshot& snapshot);

/// A supply that delivers current.
struct Giver {
    int part = 0;
    double watt = 0;
    Figure current, volt;  ///< volt: between its ends; unknown where floating
};
/// What the bench's supplies give. Watts add up; currents at different voltages don't.
struct Delivery {
    std::vector<Giver> supplies;
    double powerWatt = 0;
    Figure power;
};
Delivery delivery(const Snapshot& snapshot);

/// The part worth a big number when nothing is pointed at: the most overloaded one, else the light with the largest share of
/// its rating, else the most loaded part, else a supply; -1 on a bench without parts.
int mostInteresting(const Snapshot& snapshot);

}  // namespace tiepoint
