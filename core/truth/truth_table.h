#pragma once
// The truth table of a bench: every combination of its switches solved, of a bench that moves what lasts after power-up, which lights are lit, and the shortest expression for each.
// Pure functions; safe from any thread. A table is a plain value; parts are indices into the bench that it was made of.

#include "core/base/result.h"
#include "core/behaviour/behaviour.h"
#include "core/truth/shortest_expression.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// More switches make more rows than anyone reads.
inline constexpr int kMostTableSwitches = 10;

/// One column: a switch, or one of several that a part holds.
struct TruthSwitch {
    Throw thrown;
    std::string name;                    ///< "S1"; "S1.left" where the part has several
    std::vector<std::string> positions;  ///< in words, by digit: "released", "pressed"
};

using LampState = LightSeen;

struct TruthRow {
    Digits digits;  ///< by switch
    Status status = Status::None;
    bool limiting = false;         ///< a supply is at its current limit
    double periodSecond = 0;       ///< of a bench that repeats
    std::vector<LampState> lamps;  ///< by lamp; all dark where nothing is solved
};

struct TruthTable {
    std::vector<TruthSwitch> switches;
    std::vector<int> lamps;      ///< parts that emit light
    std::vector<TruthRow> rows;  ///< the first switch changes slowest
    /// By lamp: when it is lit; a switch counts as set in its second position, rows without a solution as free. Nothing where
    /// a switch has more than two positions, no row has a solution, or the bench still changes in some row.
    std::vector<std::optional<Shortest>> logic;
    /// Switches that change no current of any other part, whatever the others do; of a bench that moves none, for a switch that leaves
    /// what lasts as it is may do much on the way.
    std::vector<int> idle;

    std::vector<std::string> switchNames() const;
};

/// The table; an error where there are more than kMostTableSwitches.
Result<TruthTable> makeTruthTable(std::shared_ptr<const Layout> layout);
Result<TruthTable> makeTruthTable(std::shared_ptr<const Bench> bench);

}  // namespace tiepoint
