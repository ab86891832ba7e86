#pragma once
// Lets a Runner run beside the wall's clock: which time the bench is brought to, and when next. It knows no thread and no timer: who calls
// it says how late it is on the wall, in seconds from any beginning, never backwards.
//
// While anything moves there is a tick each kTickSecond. A bench that needs longer for a tick than the wall's clock does runs slow: one
// tick brings it forward by no more than kMostSecond of the wall's, and its clock falls back to where it came. While nothing moves
// there is no tick at all. Inputs are replayed in order, each at its own time, so that a press shorter than a tick isn't lost.
// Belongs to one thread.

#include "core/snapshot/runner.h"
#include "ui/live/bench_clock.h"

#include <memory>

namespace tiepoint::ui {

/// Inputs from one instant on.
struct TimedInputs {
    double wallSecond = 0;
    Inputs inputs;
    bool paused = false;    ///< the bench's clock stands
    bool restarts = false;  ///< back to power-up first
    double stepSecond = 0;  ///< goes on by so much at once, whether the clock stands or not
};

class PacedRun {
public:
    static constexpr double kTickSecond = 1.0 / 60;
    static constexpr double kMostSecond = 4 * kTickSecond;
    static constexpr double kMostWorkSecond = 0.8 * kTickSecond;  ///< for one way, as far as can be foreseen

    PacedRun(std::unique_ptr<Runner> runner, double wallSecond);

    /// Brings the bench to the time of the inputs with those before, and gives it these.
    void take(const TimedInputs& next);
    /// Another bench from the present time on.
    void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout);
    /// Brings the bench to a time, or as far as it may come at once.
    void bringTo(double wallSecond);
    /// How much work it took to come where it is since it was last told, seconds of the wall's clock: a bench that needs more than there is
    /// goes on in shorter ways, so that it answers at any time.
    void spent(double workSecond);
    /// What share of its rate the bench has kept lately, up to 1.
    double keptShare() const { return kept_; }
    /// When, on the wall, the bench has to be brought on; infinity while nothing moves or the clock stands.
    double nextTickSecond() const;
    /// The present instant; null without a bench.
    std::shared_ptr<const Snapshot> snapshot() { return runner_->snapshot(); }

private:
    static constexpr double kFirstPieceSecond = 1e-3;  ///< of the bench

    void goTo(double benchSecond);
    void goTowards(double benchSecond);

    std::unique_ptr<Runner> runner_;
    BenchClock clock_;
    double wallSecond_;         ///< of the last tick
    double benchSecond_ = 0;    ///< the runner's present time
    double gone_ = 0;           ///< seconds of the bench since it was last told what it took
    double workPerSecond_ = 0;  ///< of the bench, smoothed
    double kept_ = 1;
};

}  // namespace tiepoint::ui
