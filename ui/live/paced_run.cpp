#include "ui/live/paced_run.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace tiepoint::ui {

PacedRun::PacedRun(std::unique_ptr<Runner> runner, double wallSecond)
    : runner_(std::move(runner)),
      clock_(wallSecond),
      wallSecond_(wallSecond) {}

void PacedRun::take(const TimedInputs& next) {
    const double wall = std::max(wallSecond_, next.wallSecond);
    bringTo(wall);
    runner_->setInputs(next.inputs);
    clock_.setRate(next.paused ? 0 : next.inputs.timeScale, wall);
}

void PacedRun::setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) {
    runner_->setLayout(revision, std::move(layout));
}

void PacedRun::bringTo(double wallSecond) {
    wallSecond_ = std::max(wallSecond_, wallSecond);
    // Rest costs nothing, however long it lasted: what counts begins with the next change.
    const double most = std::max(benchSecond_, runner_->nextChangeSecond()) + kMostSecond * clock_.rate();
    double target = std::max(benchSecond_, clock_.at(wallSecond_));
    if (target > most) {
        target = most;
        clock_.set(target, wallSecond_);
    }
    runner_->advanceTo(target);
    benchSecond_ = target;
}

double PacedRun::nextTickSecond() const {
    if (clock_.rate() == 0) return std::numeric_limits<double>::infinity();
    return std::max(wallSecond_ + kTickSecond, clock_.wallAt(runner_->nextChangeSecond()));
}

}  // namespace tiepoint::ui
