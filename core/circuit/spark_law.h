#pragma once
// The law of the air between two contacts: next to nothing passes until it breaks down, at about 330 V whichever way.
//
//     i = Is (exp(v / V0) - exp(-v / V0)),   1 A at 330 V
//
// Only what winds hold drives so far. Source: 327 V is the least voltage at which air breaks down, whatever the gap (F. Paschen, Annalen der
// Physik 273 (1889) 69-96; the figure from memory). V0 of 12 V only makes the corner round.
// Units: volt, ampere. Thread rule: plain values and pure functions.

#include "core/circuit/junction_law.h"

namespace tiepoint {

class SparkLaw : public LawShape<2, 1, 1> {
public:
    static constexpr ElementParameter kParameters[] = {{"breakVoltage", 330}};
    static constexpr ElementDescription kElement{"spark", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}};
    static constexpr std::array<TerminalPair, 0> kTies{};

    explicit SparkLaw(std::span<const double> figures) : SparkLaw(figures[0]) {}
    explicit SparkLaw(double breakVolt = *kParameters[0].fallback)
        : oneWay_(kBreakAmpere / std::exp(breakVolt / kRoundVolt), kRoundVolt / kThermalVoltage) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        const auto there = oneWay_.exponentialAt(touch[0]), back = oneWay_.exponentialAt(-touch[0]);
        return {{there.ampere - back.ampere}, {{{there.siemens + back.siemens}}}, touch};
    }
    double limited(int /*port*/, double fromVolt, double toVolt) const {
        if (fromVolt == toVolt) return toVolt;
        return toVolt >= 0 ? oneWay_.limitedStep(std::max(fromVolt, 0.0), toVolt)
                           : -oneWay_.limitedStep(std::max(-fromVolt, 0.0), -toVolt);
    }
    double perUnitVolt(int /*port*/) const { return oneWay_.perUnitVolt(); }

private:
    static constexpr double kBreakAmpere = 1, kRoundVolt = 12;
    JunctionLaw oneWay_;
};

}  // namespace tiepoint
