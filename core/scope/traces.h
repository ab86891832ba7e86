#pragma once
// What instruments and pinned readings have followed of a bench that moves, at one instant. Made by a Recorder; immutable once made and
// shared between threads. Seconds of the bench's clock, volts, amperes, watts.

#include <array>
#include <limits>
#include <string>
#include <vector>

namespace tiepoint {

inline constexpr double kUnknownMeasure = std::numeric_limits<double>::quiet_NaN();

/// How an oscilloscope's knobs stand.
struct ScopeSettings {
    enum class Sweep {
        Free,
        Waits,
        Once
    };  ///< goes on without a trigger; waits for one; waits for one and then stands
    double secondsPerSquare = 1e-3;
    std::array<double, 2> voltsPerSquare{1, 1};
    bool zeroInMiddle = false;  ///< of a channel's half, for what goes below zero too
    double levelVolt = 1;
    bool rising = true;
    int source = 0;  ///< the channel that triggers
    Sweep sweep = Sweep::Free;
    std::array<bool, 2> plugged{false, false};
    friend bool operator==(const ScopeSettings&, const ScopeSettings&) = default;

    static constexpr int kSquares = 10;          ///< along the time
    static constexpr int kSquaresOfHalf = 4;     ///< of each channel, up
    static constexpr double kBeforeSquares = 1;  ///< shown of what came before the trigger
    double screenSecond() const { return kSquares * secondsPerSquare; }
};

/// What is read off one channel, over the sweep that is shown: over its whole periods, where there are any.
struct ScopeMeasures {
    double mean = kUnknownMeasure, effective = kUnknownMeasure;  ///< the latter: root mean square
    double least = kUnknownMeasure, greatest = kUnknownMeasure;
    double hertz = kUnknownMeasure, duty = kUnknownMeasure;  ///< of what passes its own middle at least twice
};

/// The screen of an oscilloscope: least and greatest of both channels in columns of time.
struct ScopeTrace {
    std::string part;  ///< id
    ScopeSettings settings;
    double leftSecond = kUnknownMeasure;     ///< the time at the left edge; unknown: nothing was swept yet
    double triggerSecond = kUnknownMeasure;  ///< unknown where it swept without
    double columnSecond = 0;
    double firstSecond = 0;  ///< the beginning of the first column, up to one before the left edge
    double nowSecond = 0;    ///< how far it is swept
    bool sweeping = false;   ///< what is shown is still under way
    bool waits = false;      ///< for a trigger
    bool stands = false;     ///< it swept once, and stands until it is armed again
    struct Channel {
        std::vector<float> least, greatest;  ///< by column; NaN where nothing was swept
        ScopeMeasures measures;
    };
    std::array<Channel, 2> channels;

    bool hasTrace() const { return leftSecond == leftSecond; }
    double rightSecond() const { return leftSecond + settings.screenSecond(); }
};

/// What a meter's electronics average over the last fifth of a second.
struct MeterAverage {
    int part = -1, spec = -1;  ///< indices of the part and of the element that reads
    bool alternates = false;   ///< it goes up and down at least once in that time: an average is what can be read
    double mean = 0, effective = 0;
};

/// The trace of a pinned reading over the last seconds, as they are seen.
struct PinnedTrace {
    std::string pinned;                  ///< id
    std::vector<float> least, greatest;  ///< by column, the oldest first; NaN where nothing is known yet
    bool varies = false;                 ///< more than its last digit
};

struct Traces {
    std::vector<ScopeTrace> scopes;  ///< in the order of the parts
    std::vector<MeterAverage> meters;
    std::vector<PinnedTrace> pinned;

    const ScopeTrace* scopeOf(std::string_view part) const {
        for (const ScopeTrace& scope : scopes)
            if (scope.part == part) return &scope;
        return nullptr;
    }
    const PinnedTrace* pinnedOf(std::string_view id) const {
        for (const PinnedTrace& each : pinned)
            if (each.pinned == id) return &each;
        return nullptr;
    }
};

}  // namespace tiepoint
