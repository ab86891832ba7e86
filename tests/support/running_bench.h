#pragma once
// A bench that runs through time, read by the names of its nodes and parts.

#include "core/snapshot/pinned_value.h"
#include "core/snapshot/runner.h"
#include "support/wired_bench.h"

#include <gtest/gtest.h>

#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

namespace tiepoint::test {

/// A bench that runs, read by the names of its nodes and parts.
class Running {
public:
    explicit Running(const WiredBench& wired, Inputs inputs = {}) : wired_(wired), bench_(wired.share()) {
        runner_->setInputs(inputs);
        runner_->setBench(1, bench_);
    }

    Runner& runner() { return *runner_; }
    void to(double second) {
        runner_->advanceTo(second);
        const auto snapshot = runner_->snapshot();
        ASSERT_EQ(snapshot->status(), Status::Solved) << snapshot->solution.reason << " at " << second;
        EXPECT_LT(snapshot->solution.kirchhoffWorst, 1e-9 + 1e-6 * snapshot->largestCurrentAmpere);
    }
    double volt(std::string_view node) {
        return pinnedValue(*runner_->snapshot(), {"M1", VoltsAt{wired_.holeOf(node)}, {}}).value;
    }
    double ampere(std::string_view part, std::string_view lead) {
        const int index = bench_->partIndex(part);
        const auto snapshot = runner_->snapshot();
        return snapshot->leadCurrent[static_cast<std::size_t>(
            snapshot->layout->leadIndex(index, bench_->parts[static_cast<std::size_t>(index)].kind->leadIndex(lead)))];
    }
    /// What the element of that name in a part tells.
    double told(std::string_view part, std::string_view element) {
        const auto snapshot = runner_->snapshot();
        for (const ElementState each : snapshot->solution.elements()) {
            const Part& owner = bench_->parts[static_cast<std::size_t>(each.part)];
            if (owner.id == part && owner.kind->model[static_cast<std::size_t>(each.spec)].element == element)
                return each.told;
        }
        throw std::invalid_argument(std::string(element));
    }
    /// Instants at which a condition begins to hold, found in steps of so many seconds and no better.
    std::vector<double> rises(double from, double until, double step, const std::function<bool()>& holds) {
        std::vector<double> found;
        to(from);
        bool before = holds();
        for (int k = 1; from + k * step <= until; ++k) {
            to(from + k * step);
            const bool now = holds();
            if (now && !before) found.push_back(from + k * step);
            before = now;
        }
        return found;
    }

private:
    const WiredBench& wired_;
    std::shared_ptr<const Bench> bench_;
    std::unique_ptr<Runner> runner_ = makeRunner();
};

/// A supply that gives up to five amperes, between "plus" and "minus".
inline WiredBench wiredSupply(double volt) {
    WiredBench wired;
    wired.part("PS1", "bench-supply", {{"+", "plus"}, {"-", "minus"}}, {{"voltage", volt}, {"currentLimit", 5.0}});
    return wired;
}

}  // namespace tiepoint::test
