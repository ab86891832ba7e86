#pragma once
// Where a jumper may be missing: pairs of strips that no metal joins and that a hand may have meant to be one. Around a symptom such pairs
// are an end near it and either metal that supplies reach or the nearest metal along the board. An end at which only one thing hangs is an
// open end, and the likeliest to miss something. Pure.

#include "core/slips/scope.h"

#include <array>
#include <functional>
#include <vector>

namespace tiepoint {

struct MissingLink {
    std::vector<std::array<JumperEnd, 2>>
        ways;  ///< free places between which the jumper would go, the most natural first
    int away = 0;
    int openEnds = 0;  ///< of its two ends
};

/// The links between nets that `wanted` takes, each pair once. In whole scope every end is near; their number grows with that of the things.
std::vector<MissingLink> missingLinks(const Ground& ground, const Scope& scope,
                                      const std::function<bool(int net, int other)>& wanted);

}  // namespace tiepoint
