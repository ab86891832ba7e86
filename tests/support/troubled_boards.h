#pragma once
// A bench on which there is much to reckon: seventeen full boards, more than 800 parts, and slips all over them.

#include "bench/full_boards.h"

#include <utility>

namespace tiepoint::test {

/// Lights the wrong way round, resistors of far too much, and jumpers that were forgotten. All findings of it take minutes.
inline Bench troubledBoards() {
    constexpr int kBoards = 17;
    constexpr int kEachReversed = 3, kEachFarTooMuch = 5, kEachForgotten = 7;
    constexpr double kFarTooMuchOhm = 1e6;
    Bench bench = crowdedBoards(kBoards, kFullBoard);
    int number = 0;
    for (Part& part : bench.parts) {
        ++number;
        if (part.kind->emitsLight && number % kEachReversed == 0) std::swap(part.leads[0], part.leads[1]);
        const int resistance = part.kind->isSupply ? -1 : part.kind->valueIndex("resistance");
        if (resistance >= 0 && number % kEachFarTooMuch == 0) part.values[resistance] = kFarTooMuchOhm;
    }
    number = 0;
    std::erase_if(bench.jumpers, [&](const Jumper&) { return ++number % kEachForgotten == 0; });
    return bench;
}

}  // namespace tiepoint::test
