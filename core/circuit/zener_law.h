#pragma once
// The law of a zener diode: a junction that also conducts backwards beyond its breakdown voltage.
//
//     i = Is (exp(u / nVt) - 1) + leak - Iz exp(-(u + Vz) / k),        v = u + Rs i
//
// Forward it is the junction of junction_law.h. Backwards it passes its test current Iz at its breakdown voltage Vz; there its slope is
// k / Iz, the dynamic resistance that data sheets state (without Rs). k stands for how softly the breakdown begins: data sheets state
// several times the dynamic resistance at a fifth of the current, as an exponential has it.
// Units: volt, ampere, ohm, siemens. Thread rule: plain values and pure functions.

#include "core/circuit/junction_law.h"

namespace tiepoint {

class ZenerLaw : public LawShape<2, 1, 1> {
public:
    static constexpr ElementParameter kParameters[] = {{"saturationCurrent"}, {"ideality", 1}, {"seriesResistance", 0},
                                                       {"breakdownVoltage"},  {"testCurrent"}, {"dynamicResistance"}};
    static constexpr ElementDescription kElement{"breakdown", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};

    explicit ZenerLaw(std::span<const double> figures)
        : forward_(figures[0], figures[1]),
          back_(figures[4], figures[4] * figures[5] / kThermalVoltage),
          testAmpere_(figures[4]),
          // Data sheets state the voltage at the terminals.
          breakdownVolt_(figures[3] - figures[2] * figures[4]),
          seriesOhm_(figures[2]) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double leakSiemens) const {
        const auto there = forward_.at(touch[0], leakSiemens);
        const auto back = back_.exponentialAt(-touch[0] - breakdownVolt_);
        const double ampere = there.ampere - (back.ampere + testAmpere_), siemens = there.siemens + back.siemens;
        return {{ampere}, {{{siemens / (1 + siemens * seriesOhm_)}}}, {touch[0] + seriesOhm_ * ampere}};
    }
    Volts touched(const Volts& touch, const Tangent& tangent, const Volts& across) const {
        const double share = 1 - tangent.siemens[0][0] * seriesOhm_;
        return {touch[0] + share * (across[0] - tangent.lineVolt[0])};
    }
    /// Each half by the limiting of its own exponential; what ends between the two bends meets none.
    double limited(int /*port*/, double fromVolt, double toVolt) const {
        if (toVolt > -breakdownVolt_ / 2) return forward_.limitedStep(fromVolt, toVolt);
        // Turned round and back, the bend itself comes out a rounding below where a step ends there: it counts as reached.
        constexpr double kRounding = 1e-12;
        const double bend = back_.criticalVolt(), there = -fromVolt - breakdownVolt_;
        const double from = std::abs(there - bend) < kRounding * (breakdownVolt_ + bend) ? bend : there;
        return fromVolt - (back_.limitedStep(from, -toVolt - breakdownVolt_) - from);
    }
    double perUnitVolt(int /*port*/) const { return std::max(forward_.perUnitVolt(), back_.perUnitVolt()); }
    Volts resumed(const Volts& kept) const {
        return {std::clamp(kept[0], -breakdownVolt_ - back_.criticalVolt(), forward_.criticalVolt())};
    }

private:
    JunctionLaw forward_, back_;
    double testAmpere_, breakdownVolt_, seriesOhm_;
};

}  // namespace tiepoint
