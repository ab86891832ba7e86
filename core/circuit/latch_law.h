#pragma once
// The law of a latch between two comparators, with the switches that it moves: what a timer has behind its divider.
//
// One comparator says whether `threshold` stands above `upper`, the other whether `trigger` stands below `lower`; a third input resets.
// Reset counts first, then the trigger, then the threshold; with none of them the latch stays where it fell. While it is set, `out` is
// joined to `high` and `open` hangs free; while it isn't, both are joined to `low`. The inputs draw nothing. Each comparator answers
// after a delay, the latch after the same delay again.
// Units: volt, ampere, ohm, second. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class LatchLaw : public LawShape<9, 6, 3> {
public:
    static constexpr std::string_view kTerminalNames[] = {"high",      "out",   "low",     "open", "upper",
                                                          "threshold", "lower", "trigger", "reset"};
    static constexpr ElementParameter kParameters[] = {{"highResistance"}, {"lowResistance"}, {"openResistance"},
                                                       {"resetVoltage"},   {"delay", 0},      {"hysteresis", 1e-3}};
    static constexpr ElementDescription kElement{"latch", kTerminalNames, kParameters};
    enum Port { kHighSide, kLowSide, kOpenSide, kThreshold, kTrigger, kReset };
    enum Bit { kSet, kIsOver, kIsUnder, kIsReset };
    static constexpr std::array<TerminalPair, 6> kPortEnds{{{0, 1}, {1, 2}, {3, 2}, {5, 4}, {6, 7}, {8, 2}}};
    static constexpr std::array<TerminalPair, 3> kPathEnds{{{0, 1}, {1, 2}, {3, 2}}}, kTies = kPathEnds;
    static constexpr int kBits = 4;

    explicit LatchLaw(std::span<const double> figures)
        : siemens_{1 / figures[0], 1 / figures[1], 1 / figures[2]},
          resetVolt_(figures[3]),
          delaySecond_(figures[4]),
          halfHysteresis_(figures[5] / 2) {}

    Tangent tangentAt(const Volts& touch, unsigned bits, double leakSiemens) const {
        const bool set = isOn(bits, kSet);
        Tangent tangent;
        for (int path = 0; path < kPaths; ++path) {
            const bool joined = path == kHighSide ? set : !set;
            const double siemens = joined ? siemens_[path] : leakSiemens;
            tangent.siemens[path][path] = siemens;
            tangent.ampere[path] = siemens * touch[path];
        }
        tangent.lineVolt = touch;
        return tangent;
    }
    double eventAt(int bit, const Volts& across, const Amperes& /*amperes*/, unsigned bits) const {
        switch (bit) {
            case kIsOver:
                return passed(across[kThreshold], isOn(bits, kIsOver));
            case kIsUnder:
                return passed(across[kTrigger], isOn(bits, kIsUnder));
            case kIsReset:
                return passed(resetVolt_ - across[kReset], isOn(bits, kIsReset));
            default:
                return wanted(bits) != isOn(bits, kSet) ? 1 : -1;
        }
    }
    double delaySecond(int /*bit*/) const { return delaySecond_; }
    /// 1 while it is set.
    double toldAt(const Volts& /*across*/, unsigned bits) const { return isOn(bits, kSet) ? 1 : 0; }

private:
    static bool isOn(unsigned bits, int bit) { return (bits >> bit & 1U) != 0; }
    double passed(double volt, bool on) const { return (on ? -volt : volt) - halfHysteresis_; }
    static bool wanted(unsigned bits) {
        if (isOn(bits, kIsReset)) return false;
        if (isOn(bits, kIsUnder)) return true;
        return !isOn(bits, kIsOver) && isOn(bits, kSet);
    }

    std::array<double, 3> siemens_;
    double resetVolt_, delaySecond_, halfHysteresis_;
};

}  // namespace tiepoint
