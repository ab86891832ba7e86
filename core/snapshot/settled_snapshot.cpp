#include "core/snapshot/settled_snapshot.h"

#include "core/circuit/element.h"
#include "core/time/settle.h"

#include <utility>

namespace tiepoint {
namespace {

/// What is told of figures has three or four digits.
constexpr Tolerance kSettleTolerance{1e-5, 1e-6, 1e-9};

}  // namespace

SettledSolver::SettledSolver(std::shared_ptr<const Layout> layout) : layout_(std::move(layout)), maker_(layout_) {
    if (movesByItself(*layout_->bench)) {
        run_ = std::make_unique<BenchRun>(kSettleTolerance);
        run_->setLayout(layout_);
        if (!keepsAnything(run_->run().circuit())) run_.reset();
    }
    if (!run_) point_.setLayout(layout_);
}

SettledSolver::~SettledSolver() = default;

std::shared_ptr<Snapshot> SettledSolver::solve(const Inputs& inputs, const State& state) {
    if (!run_) return maker_.make(point_.solve(inputs, state));
    run_->setState(state);
    run_->setInputs(inputs);
    auto settled = std::make_shared<Settled>(
        settle(*run_, [this](const Solution& solution, double seconds) { maker_.addLight(solution, seconds); }));
    auto snapshot = maker_.make(settled->lasting);
    snapshot->settled = std::move(settled);
    return snapshot;
}

std::shared_ptr<const Snapshot> settledOf(std::shared_ptr<const Snapshot> snapshot) {
    if (snapshot->settled || !movesByItself(*snapshot->layout->bench)) return snapshot;
    auto settled = SettledSolver(snapshot->layout).solve(*snapshot->inputs);
    settled->revision = snapshot->revision;
    settled->inputSequence = snapshot->inputSequence;
    settled->inputs = snapshot->inputs;
    return settled;
}

bool isUndecided(const Snapshot& snapshot) { return snapshot.settled && snapshot.settled->ending == Ending::Undecided; }

bool isRepeating(const Snapshot& snapshot) { return snapshot.settled && snapshot.settled->ending == Ending::Repeating; }

std::vector<PassingInstant> passingInstants(const Snapshot& snapshot) {
    std::vector<PassingInstant> instants;
    if (!snapshot.settled || snapshot.settled->extremes.empty()) return instants;
    SnapshotMaker maker(snapshot.layout);
    for (const Extreme& extreme : snapshot.settled->extremes) {
        auto made = maker.make(extreme.solution);
        made->revision = snapshot.revision;
        made->inputs = snapshot.inputs;
        instants.push_back({extreme.second, extreme.returns, std::move(made)});
    }
    return instants;
}

}  // namespace tiepoint
