#pragma once
// The planner: from a circuit without places to a bench that a hand can build. Rails for the supplies, no two things in one place, few and short
// jumpers, chips and buttons astride the gap where that joins fewer strips, current from left to right, and room for fingers.
//
// The same wish gives the same bench on every machine: the search counts steps, not time; the time limit only cuts short what would take longer.
// Pure; stoppable (core/base/stopping.h).

#include "core/bench/bench.h"
#include "core/course/kit.h"
#include "core/netlist/netlist.h"

#include <string>
#include <vector>

namespace tiepoint {

struct PlanWish {
    const BoardKind* board = nullptr;  ///< never null
    Rails rails = Rails::Through;
    Labels labels = Labels::ATop;
    std::vector<Part> kept;  ///< parts that stay where they are, on a board "A" of that kind; by id
    const Kit* kit =
        nullptr;              ///< what the class has; null: everything. Its board counts only in wishFor() (kit_wish.h)
    double mostSeconds = 10;  ///< of the thread's own work, however busy the machine is
    unsigned seed = 1;
};

/// A part that found no place, and why.
struct Unplaced {
    std::string part;
    std::string why;
};

struct Plan {
    Bench bench;  ///< valid; holds every part but those that found no place
    std::vector<Unplaced> unplaced;
    int jumpersOver = 0;  ///< how many more jumpers it takes than the kit has
    double cost = 0;      ///< what the search made small: see anneal.cpp
    /// Everything is on the board. Jumpers may lack all the same.
    bool isWhole() const { return unplaced.empty(); }
};

Plan planBench(const Netlist& circuit, const PlanWish& wish);

/// What jumpers of a bench come to: how many, and their lengths together as they are cut, mm.
struct JumperBill {
    int count = 0;
    double lengthMm = 0;
};
JumperBill jumperBill(const Bench& bench);

}  // namespace tiepoint
