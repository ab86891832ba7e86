#include "core/truth/truth_table.h"

#include "core/base/stopping.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/position_solver.h"
#include "core/snapshot/readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tiepoint {
namespace {

constexpr std::size_t kMostRows = std::size_t{1} << kMostTableSwitches;
/// Currents that differ by less are the same.
constexpr double kSameAmpere = 1e-6;

std::string nameOf(const std::vector<Throw>& throws, const Throw& each, const Bench& bench) {
    const Part& part = bench.parts[each.part];
    const bool lone = std::ranges::count(throws, each.part, &Throw::part) == 1;
    return lone || each.isCap() ? part.id : fmt::format("{}.{}", part.id, part.kind->state[each.state].name);
}

class TableMaker {
public:
    explicit TableMaker(std::shared_ptr<const Layout> layout) : layout_(std::move(layout)), solver_(layout_) {}

    Result<TruthTable> make() {
        std::size_t rows = 1;
        for (const Throw& each : solver_.throws())
            rows = std::min(rows * static_cast<std::size_t>(each.values), 2 * kMostRows);
        if (rows > kMostRows) {
            return Error{ErrorKind::Range, fmt::format("the bench has {} switches; a truth table has at most {}",
                                                       solver_.throws().size(), kMostTableSwitches)};
        }
        table_.rows.resize(rows);
        nameColumns();
        solveRows();
        findIdle();
        findLogic();
        return std::move(table_);
    }

private:
    void nameColumns() {
        const Bench& bench = *layout_->bench;
        for (const Throw& each : solver_.throws()) {
            TruthSwitch column{each, nameOf(solver_.throws(), each, bench), {}};
            for (int digit = 0; digit < each.values; ++digit)
                column.positions.push_back(positionInWords(each, bench, digit));
            table_.switches.push_back(std::move(column));
        }
        for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
            if (bench.parts[part].kind->emitsLight) table_.lamps.push_back(part);
        }
        std::size_t stride = table_.rows.size();
        for (const TruthSwitch& column : table_.switches) {
            stride /= static_cast<std::size_t>(column.thrown.values);
            strides_.push_back(stride);
        }
        for (std::size_t row = 0; row < table_.rows.size(); ++row) {
            for (std::size_t s = 0; s < strides_.size(); ++s) {
                const auto values = static_cast<std::size_t>(table_.switches[s].thrown.values);
                table_.rows[row].digits.push_back(static_cast<int>(row / strides_[s] % values));
            }
        }
    }

    /// Rows that differ only in caps one after the other: they share a prepared circuit.
    std::vector<std::size_t> orderOfSolving() const {
        std::vector<std::size_t> order(table_.rows.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::ranges::stable_sort(order, {}, [&](std::size_t row) {
            Digits states = table_.rows[row].digits;
            for (std::size_t s = 0; s < states.size(); ++s) {
                if (table_.switches[s].thrown.isCap()) states[s] = 0;
            }
            return states;
        });
        return order;
    }

    void solveRows() {
        currents_.resize(table_.rows.size());
        for (const std::size_t index : orderOfSolving()) {
            TruthRow& row = table_.rows[index];
            const auto snapshot = solver_.solve(row.digits);
            row.status = snapshot->status();
            for (const ElementState element : snapshot->solution.elements()) {
                row.limiting = row.limiting || element.limiting;
                currents_[index].push_back(element.currentAmpere);
            }
            for (const int lamp : table_.lamps) {
                LampState state;
                if (row.status == Status::Solved) {
                    state = {currentThrough(*snapshot, lamp).inAmpere, snapshot->brightness(lamp),
                             isLit(*snapshot, lamp)};
                }
                row.lamps.push_back(state);
            }
            if (partOfElement_.empty()) {
                for (const ElementState element : snapshot->solution.elements()) partOfElement_.push_back(element.part);
            }
        }
    }

    bool sameElsewhere(std::size_t a, std::size_t b, int part) const {
        if (table_.rows[a].status != table_.rows[b].status) return false;
        for (std::size_t e = 0; e < partOfElement_.size(); ++e) {
            if (partOfElement_[e] != part && std::abs(currents_[a][e] - currents_[b][e]) > kSameAmpere) return false;
        }
        return true;
    }

    void findIdle() {
        const bool known =
            std::ranges::any_of(table_.rows, [](const TruthRow& row) { return row.status == Status::Solved; });
        for (std::size_t s = 0; known && s < strides_.size(); ++s) {
            bool changes = false;
            for (std::size_t row = 0; row < table_.rows.size() && !changes; ++row) {
                stopIfAsked();
                const auto digit = static_cast<std::size_t>(table_.rows[row].digits[s]);
                changes = !sameElsewhere(row, row - digit * strides_[s], table_.switches[s].thrown.part);
            }
            if (!changes) table_.idle.push_back(static_cast<int>(s));
        }
    }

    void findLogic() {
        const bool binary =
            std::ranges::all_of(table_.switches, [](const TruthSwitch& each) { return each.thrown.values == 2; });
        const bool solved =
            std::ranges::any_of(table_.rows, [](const TruthRow& row) { return row.status == Status::Solved; });
        for (std::size_t lamp = 0; lamp < table_.lamps.size(); ++lamp) {
            table_.logic.emplace_back();
            if (!binary || !solved) continue;
            TruthFunction function(static_cast<int>(table_.switches.size()), Truth::Free);
            for (std::size_t row = 0; row < function.rows.size(); ++row) {
                if (table_.rows[row].status == Status::None) continue;
                function.rows[row] = table_.rows[row].lamps[lamp].lit ? Truth::Yes : Truth::No;
            }
            table_.logic.back() = shortestExpression(function);
        }
    }

    std::shared_ptr<const Layout> layout_;
    PositionSolver solver_;
    TruthTable table_;
    std::vector<std::size_t> strides_;           ///< by switch: rows from one digit to the next
    std::vector<std::vector<double>> currents_;  ///< by row, then by element
    std::vector<int> partOfElement_;
};

}  // namespace

std::vector<std::string> TruthTable::switchNames() const {
    std::vector<std::string> names;
    for (const TruthSwitch& column : switches) names.push_back(column.name);
    return names;
}

Result<TruthTable> makeTruthTable(std::shared_ptr<const Layout> layout) { return TableMaker(std::move(layout)).make(); }

Result<TruthTable> makeTruthTable(std::shared_ptr<const Bench> bench) {
    return makeTruthTable(buildLayout(std::move(bench)));
}

}  // namespace tiepoint
