#pragma once
// What the findings are worth, as figures: many slips judged, by kind.

#include "support/slips.h"

#include <cstdint>
#include <functional>

namespace tiepoint::test {

struct SlipFigures {
    int slips = 0;
    int broken = 0, found = 0;  ///< did harm; of these told as anything at all (a remark tells of a dead switch only)
    int alarms = 0;             ///< no harm, and yet a fault or a risk
    int causeFirst = 0;         ///< of the broken ones found

    double recall() const { return broken == 0 ? 1 : double(found) / broken; }
    double precision() const { return found + alarms == 0 ? 1 : double(found) / (found + alarms); }
    double causeShare() const { return found == 0 ? 1 : double(causeFirst) / found; }
    SlipFigures& operator+=(const SlipFigures& more);
};

using NamedBenches = std::vector<std::pair<std::string, Bench>>;

/// The corpus and the demo benches that are sound, by name.
NamedBenches everySoundBench();
/// Benches that no rule was mended on.
NamedBenches everyHeldOutBench();

/// Judges at most `count` slips of each kind on the benches, drawn at random. `tell` hears of everything that went wrong, in one line.
std::map<std::string_view, SlipFigures> judgeSlips(const NamedBenches& benches, int count, std::uint32_t seed,
                                                   const std::function<void(const std::string&)>& tell = {});

}  // namespace tiepoint::test
