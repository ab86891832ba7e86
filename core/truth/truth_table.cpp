#include "core/truth/truth_table.h"

#include "core/base/stopping.h"
#include "core/circuit/element.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

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
    explicit TableMaker(std::shared_ptr<const Layout> layout) : layout_(std::move(layout)) {}

    Result<TruthTable> make() {
        const std::vector<Throw> throws = throwsOf(*layout_->bench);
        std::size_t rows = 1;
        for (const Throw& each : throws) rows = std::min(rows * static_cast<std::size_t>(each.values), 2 * kMostRows);
        if (rows > kMostRows) {
            return Error{ErrorKind::Range, fmt::format("the bench has {} switches; a truth table has at most {}",
                                                       throws.size(), kMostTableSwitches)};
        }
        behaviour_ = behaviourInFull(layout_);
        nameColumns();
        takeRows();
        findIdle();
        findLogic();
        return std::move(table_);
    }

private:
    void nameColumns() {
        const Bench& bench = *layout_->bench;
        for (const Throw& each : behaviour_.controls) {
            TruthSwitch column{each, nameOf(behaviour_.controls, each, bench), {}};
            for (int digit = 0; digit < each.values; ++digit)
                column.positions.push_back(positionInWords(each, bench, digit));
            table_.switches.push_back(std::move(column));
        }
        std::size_t stride = behaviour_.rows.size();
        for (const TruthSwitch& column : table_.switches) {
            stride /= static_cast<std::size_t>(column.thrown.values);
            strides_.push_back(stride);
        }
    }

    void takeRows() {
        table_.lamps = behaviour_.lights;
        for (const BehaviourRow& row : behaviour_.rows)
            table_.rows.push_back({row.digits, row.status, row.limiting, row.periodSecond, row.lights});
    }

    bool sameElsewhere(std::size_t a, std::size_t b, int part) const {
        const BehaviourRow &one = behaviour_.rows[a], &other = behaviour_.rows[b];
        if (one.status != other.status) return false;
        for (std::size_t e = 0; e < behaviour_.partOfElement.size(); ++e) {
            const bool differs = std::abs(one.elementAmpere[e] - other.elementAmpere[e]) > kSameAmpere;
            if (differs && behaviour_.partOfElement[e] != part) return false;
        }
        return true;
    }

    void findIdle() {
        const bool known = !movesByItself(*layout_->bench) && std::ranges::any_of(table_.rows, [](const TruthRow& row) {
            return row.status == Status::Solved;
        });
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
            const auto isOpen = [&](const TruthRow& row) { return row.lamps[lamp].glow == Glow::Open; };
            if (std::ranges::any_of(table_.rows, isOpen)) continue;
            TruthFunction function(static_cast<int>(table_.switches.size()), Truth::Free);
            for (std::size_t row = 0; row < function.rows.size(); ++row) {
                if (table_.rows[row].status == Status::None) continue;
                function.rows[row] = table_.rows[row].lamps[lamp].lit ? Truth::Yes : Truth::No;
            }
            table_.logic.back() = shortestExpression(function);
        }
    }

    std::shared_ptr<const Layout> layout_;
    Behaviour behaviour_;
    TruthTable table_;
    std::vector<std::size_t> strides_;  ///< by switch: rows from one digit to the next
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
