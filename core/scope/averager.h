#pragma once
// What a meter's electronics make of a quantity that varies: its mean and root mean square over the last fifth of a second of the bench,
// by exact integrals of the pieces of the run, and whether it goes up and down in that time. A fifth of a second holds whole periods of 50
// and 60 Hz; how long handheld meters average is common practice, not a standard. Plain value; no allocation.

#include "core/scope/piece.h"
#include "core/scope/traces.h"

#include <array>
#include <cstdint>

namespace tiepoint {

class Averager {
public:
    static constexpr double kWindowSecond = 0.2;

    void take(const Piece3& piece);
    /// Fills the figures; leaves whose they are.
    void publish(MeterAverage& out) const;
    void begin() { *this = Averager(); }

private:
    static constexpr int kBuckets = 20;
    struct Bucket {
        std::int64_t number = -1;
        double second = 0, once = 0, squared = 0, least = 0, greatest = 0;
    };
    void turnAt(double value, double second);

    std::array<Bucket, kBuckets + 1> buckets_;
    double nowSecond_ = 0;
    // The way it goes, and where it went furthest; turns that are too small don't count.
    int way_ = 0;
    double furthest_ = 0, swing_ = 0;
    std::array<double, 2> turned_{-1e300, -1e300};  ///< when, the older first
    bool begun_ = false;
};

}  // namespace tiepoint
