#pragma once
// One oscilloscope: from pieces of a run to what stands on its screen. Least and greatest of each channel lie in a ring of narrow columns
// of time, two screens long; a trigger is located on the cubic of its channel, so that a trace stands as still as the circuit does.
// A sweep that takes long is shown while it goes on, a short one when it is whole.
// Bounded memory, set aside when it is made; taking and publishing allocate nothing. One thread at a time.

#include "core/scope/piece.h"
#include "core/scope/tally.h"
#include "core/scope/traces.h"

#include <array>
#include <cstdint>
#include <vector>

namespace tiepoint {

class Sweeper {
public:
    static constexpr int kColumns = 1000;

    explicit Sweeper(const ScopeSettings& settings);

    const ScopeSettings& settings() const { return settings_; }
    /// Forgets what it saw: time begins anew there.
    void begin(double second);
    /// The next piece of both channels, of the same time.
    void take(const std::array<Piece3, 2>& channels);
    /// After its one sweep: waits for the next trigger.
    void arm();
    /// How much of the past doesn't matter any more, seconds: nobody waits for a trigger that could come in it.
    double memorySecond() const;
    /// `secondsSeen`: of the wall's clock that a second of the bench lasts.
    void publish(ScopeTrace& out, double secondsSeen) const;

private:
    /// Columns of a screen, of which one more is touched where none begins at its edge.
    struct Screen {
        double left = kUnknownMeasure, trigger = kUnknownMeasure, firstSecond = 0, until = 0;
        std::array<std::vector<float>, 2> least, greatest;
        std::array<ScopeMeasures, 2> measures;
    };

    void fill(const std::array<Piece3, 2>& channels, double from, double until);
    void put(std::int64_t column, int channel, double value);
    double findTrigger(const Piece3& piece, double from, double until);
    void beginSweep(double second, bool triggered);
    void endSweep();
    void tally(const std::array<Piece3, 2>& channels, double from, double until);
    template <class Channel>
    double copyColumns(double left, double until, Channel channel) const;
    bool isSweeping() const { return sweepLeft_ == sweepLeft_; }
    double hysteresisVolt() const;

    ScopeSettings settings_;
    double columnSecond_;
    std::vector<std::int64_t> tag_;  ///< by place in the ring: which column lies there
    std::array<std::vector<float>, 2> least_, greatest_;

    double nowSecond_ = 0;
    double sweepLeft_ = kUnknownMeasure, trigger_ = kUnknownMeasure;
    double idleSince_ = 0;  ///< the end of the last sweep
    bool armed_ = false;    ///< the source was beyond the level since
    bool stands_ = false;
    std::array<Tally, 2> tally_;
    std::array<double, 2> middle_{};  ///< of each channel in the sweep before
    std::array<double, 2> swing_{};
    bool knowsMiddle_ = false;
    Screen whole_;
};

}  // namespace tiepoint
