#include "core/behaviour/position_solver.h"

#include "core/base/stopping.h"
#include "core/bench/bench_inputs.h"

namespace tiepoint {
namespace {

/// More circuits than this are not kept: a bench of ten changeover switches has a thousand, each met once.
constexpr std::size_t kMostDesks = 64;

}  // namespace

PositionSolver::PositionSolver(std::shared_ptr<const Layout> layout)
    : layout_(std::move(layout)),
      throws_(throwsOf(*layout_->bench)) {}

PositionSolver::PositionSolver(std::shared_ptr<const Layout> layout, std::vector<Throw> throws)
    : layout_(std::move(layout)),
      throws_(std::move(throws)) {}

std::shared_ptr<const Snapshot> PositionSolver::solve(const Digits& digits, const State& state) {
    stopIfAsked();
    Inputs inputs;
    Digits states;
    for (std::size_t t = 0; t < throws_.size(); ++t) {
        if (!throws_[t].isCap())
            states.push_back(digits[t]);
        else if (digits[t] != 0)
            inputs.held.insert(layout_->bench->parts[throws_[t].part].id);
    }
    if (desks_.size() >= kMostDesks && !desks_.contains(states)) desks_.clear();
    auto& desk = desks_[states];
    if (!desk) desk = std::make_unique<Desk>(layoutFor(digits));
    inputs = inputsOn(*layout_->bench, std::move(inputs));
    auto snapshot = desk->solver.solve(inputs, state);
    snapshot->inputs = std::make_shared<const Inputs>(std::move(inputs));
    return snapshot;
}

std::shared_ptr<const Layout> PositionSolver::layoutFor(const Digits& digits) const {
    auto bench = std::make_shared<Bench>(*layout_->bench);
    for (std::size_t t = 0; t < throws_.size(); ++t) {
        if (throws_[t].isCap()) continue;
        Part& part = bench->parts[throws_[t].part];
        part.state[throws_[t].state] = throws_[t].stateAt(digits[t], part.stateValue(throws_[t].state));
    }
    auto layout = std::make_shared<Layout>(*layout_);
    layout->bench = std::move(bench);
    return layout;
}

}  // namespace tiepoint
