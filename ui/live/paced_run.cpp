#include "ui/live/paced_run.h"

#include "core/base/work_clock.h"

#include <algorithm>
#include <cmath>
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
    if (next.restarts) {
        runner_->restart();
        benchSecond_ = gone_ = 0;
        kept_ = 1;
        clock_.set(0, wall);
    }
    runner_->setInputs(next.inputs);
    if (next.stepSecond > 0) {
        goTo(benchSecond_ + next.stepSecond);
        clock_.set(benchSecond_, wall);
    }
    clock_.setRate(next.paused ? 0 : next.inputs.timeScale, wall);
}

void PacedRun::setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) {
    runner_->setLayout(revision, std::move(layout));
}

void PacedRun::goTo(double benchSecond) {
    runner_->advanceTo(benchSecond);
    gone_ += benchSecond - benchSecond_;
    benchSecond_ = benchSecond;
}

void PacedRun::bringTo(double wallSecond) {
    constexpr double kForgets = 0.5;  // seconds of the wall's clock
    const double passed = wallSecond - wallSecond_;
    wallSecond_ = std::max(wallSecond_, wallSecond);
    // Rest costs nothing, however long it lasted: what counts begins with the next change.
    const double moving = std::max(benchSecond_, runner_->nextChangeSecond());
    double way = kMostSecond * clock_.rate();
    if (workPerSecond_ > 0) way = std::min(way, kMostWorkSecond / workPerSecond_);
    const double most = moving + way;
    double target = std::max(benchSecond_, clock_.at(wallSecond_));
    const double wanted = target - benchSecond_;
    if (target > most) {
        target = most;
        clock_.set(target, wallSecond_);
    }
    const double begin = benchSecond_;
    goTowards(target);
    if (passed > 0 && wanted > 0) {
        const double weight = 1 - std::exp(-passed / kForgets);
        kept_ += weight * (std::min(1.0, (benchSecond_ - begin) / wanted) - kept_);
    }
    if (benchSecond_ < target) clock_.set(benchSecond_, wallSecond_);
}

/// In pieces, the first ones short: of a bench that is new nobody knows how much work a second of it is, and whoever edits meanwhile waits.
void PacedRun::goTowards(double benchSecond) {
    double piece = kFirstPieceSecond;
    const auto begin = WorkClock::now();
    do {
        goTo(std::min(benchSecond, benchSecond_ + piece));
        piece *= 2;
    } while (benchSecond_ < benchSecond &&
             std::chrono::duration<double>(WorkClock::now() - begin).count() < kMostWorkSecond);
}

void PacedRun::spent(double workSecond) {
    constexpr double kWeight = 0.3;
    if (!(gone_ > 0)) return;
    const double now = workSecond / gone_;
    workPerSecond_ += (workPerSecond_ == 0 ? 1 : kWeight) * (now - workPerSecond_);
    gone_ = 0;
}

double PacedRun::nextTickSecond() const {
    if (clock_.rate() == 0) return std::numeric_limits<double>::infinity();
    return std::max(wallSecond_ + kTickSecond, clock_.wallAt(runner_->nextChangeSecond()));
}

}  // namespace tiepoint::ui
