#pragma once
// Spread: between which limits the readings of a bench lie when it is built from real parts, each within its tolerance (tolerance.h).
//
// Least and greatest come from a search over the corners, where every part is at one end of its tolerance: from the corner that the
// readings' changes with one part at a time point at, part after part is turned to its other end as long as that helps. Where a reading
// rises or falls with each part throughout, that is exact. Beside it so many benches are drawn at random, each figure evenly within its
// tolerance; they give mean and standard deviation, and widen the limits should one of them lie outside.
// Draws are the same each time. Pure; safe from any thread; stoppable (core/base/stopping.h).

#include "core/snapshot/snapshot.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

inline constexpr int kSpreadDraws = 10'000;
inline constexpr int kHistogramBars = 20;

struct SpreadReading {
    std::string name;           ///< "D1", of pinned readings what they measure: "A.c14", "A.c14~A.c20", "R1"
    std::string_view quantity;  ///< "current", "voltage" or "power"
    std::string_view unit;      ///< "A", "V", "W"
    int light = -1;             ///< the part, of a light's current; -1 of a pinned reading
    double nominal = 0;         ///< SI; NaN where floating
    double least = 0, greatest = 0;
    double mean = 0, deviation = 0;  ///< of the draws
    std::string most;                ///< id of the part whose tolerance moves it most; empty where none does
    double mostShare = 0;            ///< how much of least to greatest that part alone covers, 0..1
    std::vector<int>
        histogram;  ///< draws in kHistogramBars equal steps from least to greatest; empty where nothing varies
};

struct Spread {
    std::vector<SpreadReading> readings;  ///< the lights in the order of the bench, then what is pinned
    int draws = 0;
    int unsolved = 0;  ///< draws without a solution; they count nowhere
    std::string why;   ///< why there are no readings, in one plain sentence; else empty
};

/// Of the bench as it stands, with the hands that the snapshot has.
Spread spreadOf(const std::shared_ptr<const Snapshot>& nominal, int draws = kSpreadDraws);
/// Of the volts at holes, in their order: nominal, least and greatest from the corners alone, without draws.
Spread spreadAt(const std::shared_ptr<const Snapshot>& nominal, const std::vector<Hole>& holes);

}  // namespace tiepoint
