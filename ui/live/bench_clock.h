#pragma once
// The bench's own clock beside that on the wall: it runs at a rate, stands while that is 0, and goes on from an earlier time where a bench
// can't keep up. Seconds of both clocks. A plain value; not shared.

#include <limits>

namespace tiepoint::ui {

class BenchClock {
public:
    /// 0 at that time of the wall's clock.
    explicit BenchClock(double wallSecond) : wallSecond_(wallSecond) {}

    double rate() const { return rate_; }
    double at(double wallSecond) const { return benchSecond_ + rate_ * (wallSecond - wallSecond_); }
    /// When it shows a time; infinity if that doesn't come while it stands.
    double wallAt(double benchSecond) const {
        if (benchSecond <= benchSecond_) return wallSecond_;
        return rate_ > 0 ? wallSecond_ + (benchSecond - benchSecond_) / rate_ : std::numeric_limits<double>::infinity();
    }
    /// Runs at another rate from then on.
    void setRate(double rate, double wallSecond) {
        set(at(wallSecond), wallSecond);
        rate_ = rate;
    }
    /// Shows that time then, and runs on from it.
    void set(double benchSecond, double wallSecond) {
        benchSecond_ = benchSecond;
        wallSecond_ = wallSecond;
    }

private:
    double benchSecond_ = 0, wallSecond_;  ///< of the same instant
    double rate_ = 1;
};

}  // namespace tiepoint::ui
