#pragma once
// The law of a capacitance with a resistance in series: Q = C (v - R i), i = dQ/dt. At rest it passes nothing.
// Units: volt, coulomb, farad, ohm. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class CapacitanceLaw : public LawShape<2, 1, 0> {
public:
    static constexpr ElementParameter kParameters[] = {{"capacitance"}, {"seriesResistance", 0}, {"startVoltage", 0}};
    static constexpr ElementDescription kElement{"capacitance", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kChargeEnds{{{0, 1}}};
    static constexpr std::array<TerminalPair, 0> kPathEnds{}, kTies{};
    static constexpr int kCharges = 1;

    explicit CapacitanceLaw(std::span<const double> figures)
        : farad_(figures[0]),
          ohm_(figures[1]),
          startVolt_(figures[2]) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const { return {{}, {}, touch}; }
    double chargeOhm(int /*charge*/) const { return ohm_; }
    Volts beginVolts() const { return {startVolt_}; }
    LawCharges<1, 1> chargesAt(const Volts& across) const { return {{farad_ * across[0]}, {{{farad_}}}}; }

private:
    double farad_, ohm_, startVolt_;
};

}  // namespace tiepoint
