#pragma once
// The law of a logic probe: what its tip draws, and bits that say whether the tip is high or low and whether it changed of late.
//
// High and low are thresholds above `low`, each a fixed voltage plus a share of what stands between `high` and `low`. A change, however
// short, is held for a tenth of a second, then rests as long, so that the eye sees a train of pulses blink.
// Units: volt, ampere, ohm, second. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class LevelLaw : public LawShape<3, 2, 2> {
public:
    static constexpr std::string_view kTerminalNames[] = {"tip", "high", "low"};
    static constexpr ElementParameter kParameters[] = {{"loadResistance"}, {"highVoltage"}, {"highShare"},
                                                       {"lowVoltage"},     {"lowShare"},    {"hold", 0.1}};
    static constexpr ElementDescription kElement{"level", kTerminalNames, kParameters};
    enum Port { kTip, kBelowHigh };
    enum Bit { kHigh, kLow, kChanged, kWasHigh, kRests };
    /// Twice its load from the tip to either side, so that a tip in nothing stands in the middle.
    static constexpr std::array<TerminalPair, 2> kPortEnds{{{0, 2}, {0, 1}}}, kPathEnds = kPortEnds, kTies = kPortEnds;
    static constexpr int kBits = 5;

    explicit LevelLaw(std::span<const double> figures)
        : siemens_(1 / (2 * figures[0])),
          high_{figures[1], figures[2]},
          low_{figures[3], figures[4]},
          holdSecond_(figures[5]) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        return {{siemens_ * touch[kTip], siemens_ * touch[kBelowHigh]}, {{{siemens_, 0}, {0, siemens_}}}, touch};
    }
    double eventAt(int bit, const Volts& across, const Amperes& /*amperes*/, unsigned bits) const {
        const double supplyVolt = across[kTip] - across[kBelowHigh];
        const bool changes = isHigh(bits) != on(bits, kWasHigh);
        switch (bit) {
            case kHigh: {
                const double above = across[kTip] - high_.at(supplyVolt);
                return (on(bits, kHigh) ? -above : above) - kHalfHysteresis;
            }
            case kLow: {
                const double below = low_.at(supplyVolt) - across[kTip];
                return (on(bits, kLow) ? -below : below) - kHalfHysteresis;
            }
            case kChanged:
                if (on(bits, kChanged)) return said(on(bits, kRests));
                return said(changes && !on(bits, kRests));
            case kWasHigh:
                return said(changes && (on(bits, kChanged) || on(bits, kRests)));
            default:
                return said(on(bits, kChanged) != on(bits, kRests));
        }
    }
    double delaySecond(int bit) const { return bit == kRests ? holdSecond_ : 0; }
    /// 1 high, 2 low, 4 changed of late, added up.
    double toldAt(const Volts& /*across*/, unsigned bits) const { return bits & 7U; }

private:
    struct Threshold {
        double volt, share;
        double at(double supplyVolt) const { return volt + share * supplyVolt; }
    };
    static bool on(unsigned bits, int bit) { return (bits >> bit & 1U) != 0; }
    static double said(bool now) { return now ? 1 : -1; }
    /// Between the thresholds it stays what it was.
    static bool isHigh(unsigned bits) { return on(bits, kHigh) || (!on(bits, kLow) && on(bits, kWasHigh)); }

    static constexpr double kHalfHysteresis = 5e-3;
    double siemens_;
    Threshold high_, low_;
    double holdSecond_;
};

}  // namespace tiepoint
