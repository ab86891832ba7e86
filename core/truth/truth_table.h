#pragma once
// The truth table of a bench: every combination of its switches solved, which lights are lit, and the shortest expression for each.
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
    std::vector<LampState> lamps;  ///< by lamp; all dark where nothing is solved
};

struct TruthTable {
    std::vector<TruthSwitch> switches;
    std::vector<int> lamps;      ///< parts that emit light
    std::vector<TruthRow> rows;  ///< the first switch changes slowest
    /// By lamp: when it is lit; a switch counts as set in its second position, rows without a solution as free. Nothing where
    /// a switch has more than two positions or no row has a solution.
    std::vector<std::optional<Shortest>> logic;
    std::vector<int> idle;  ///< switches that change no current of any other part, whatever the others do

    std::vector<std::string> switchNames() const;
};

/// The table; an error where there are more than kMostTableSwitches.
Result<TruthTable> makeTruthTable(std::shared_ptr<const Layout> layout);
Result<TruthTable> makeTruthTable(std::shared_ptr<const Bench> bench);

}  // namespace tiepoint
