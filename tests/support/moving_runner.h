#pragma once
// A bench that moves, for tests of what runs such benches: a resting one all of whose currents and voltages are switched between what
// the operating point says and nothing, `hertz` times a second, on for a share of each period. What it does in each step is what time
// stepping does: solve, add up the light, and make a snapshot when asked.

#include "core/base/stopping.h"
#include "core/snapshot/runner.h"
#include "core/snapshot/snapshot_maker.h"

#include <atomic>
#include <cmath>
#include <limits>
#include <mutex>
#include <optional>
#include <vector>

namespace tiepoint::test {

/// How it moves and what it was asked; shared with the test, and read and written from both threads.
struct Motion {
    double hertz = 60;
    double shareOn = 0.5;
    double stepSecond = 1.0 / 1920;
    std::atomic<bool> moving = true;
    std::atomic<bool> endless = false;  ///< the next step never ends by itself
    std::atomic<bool> inEndless = false;
    std::atomic<int> advances = 0;

    std::vector<double> times() const {
        const std::lock_guard guard(mutex);
        return reached;
    }
    void note(double second) {
        const std::lock_guard guard(mutex);
        reached.push_back(second);
    }

    mutable std::mutex mutex;
    std::vector<double> reached;  ///< times that it was brought to, while `keepsTimes`
    bool keepsTimes = true;
};

class MovingRunner final : public Runner {
public:
    explicit MovingRunner(Motion& motion) : motion_(motion) {}

    void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) override {
        revision_ = revision;
        layout_ = std::move(layout);
        point_.setLayout(layout_);
        maker_.emplace(layout_);
        solve();
    }
    void setInputs(const Inputs& inputs) override {
        inputs_ = std::make_shared<const Inputs>(inputs);
        if (layout_) solve();
    }
    void setState(const State& state) override { state_ = state; }
    void restart() override {
        second_ = 0;
        state_ = {};
        if (layout_) solve();
    }
    State state() const override { return state_; }

    void advanceTo(double timeSecond) override {
        ++motion_.advances;
        if (motion_.keepsTimes) motion_.note(timeSecond);
        while (motion_.endless) {
            motion_.inEndless = true;
            stopIfAsked();
        }
        while (layout_ && motion_.moving && second_ < timeSecond)
            step(std::min(motion_.stepSecond, timeSecond - second_));
        second_ = timeSecond;
    }
    double nextChangeSecond() const override {
        return layout_ && motion_.moving ? second_ : std::numeric_limits<double>::infinity();
    }
    std::shared_ptr<const Snapshot> snapshot() override {
        if (!layout_) return nullptr;
        if (snapshot_ && snapshot_->timeSecond == second_) return snapshot_;
        auto made = maker_->make(now_);
        made->revision = revision_;
        made->inputs = inputs_;
        made->inputSequence = inputs_->sequence;
        made->timeSecond = second_;
        snapshot_ = std::move(made);
        return snapshot_;
    }

private:
    void solve() {
        full_ = now_ = point_.solve(*inputs_);
        snapshot_.reset();
    }

    void step(double seconds) {
        stopIfAsked();
        const double period = (second_ + seconds / 2) * motion_.hertz;  // in its middle: no step ends just there
        second_ += seconds;
        const double share = period - std::floor(period) < motion_.shareOn ? 1 : 0;
        const auto scale = [share](const std::vector<double>& from, std::vector<double>& to) {
            for (std::size_t i = 0; i < from.size(); ++i) to[i] = share * from[i];
        };
        scale(full_.elementAmpere, now_.elementAmpere);
        scale(full_.elementWatt, now_.elementWatt);
        scale(full_.leadInjection, now_.leadInjection);
        scale(full_.netVoltage, now_.netVoltage);
        maker_->addLight(now_, seconds);
    }

    Motion& motion_;
    std::uint64_t revision_ = 0;
    double second_ = 0;
    std::shared_ptr<const Layout> layout_;
    std::shared_ptr<const Inputs> inputs_ = noInputs();
    State state_;
    OperatingPoint point_;
    std::optional<SnapshotMaker> maker_;
    Solution full_, now_;
    std::shared_ptr<const Snapshot> snapshot_;
};

}  // namespace tiepoint::test
