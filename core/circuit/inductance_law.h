#pragma once
// The law of an inductance with the resistance of its wire: flux in proportion to current, v = L di/dt + R i. At rest only the wire is
// left of it.
// Units: volt, ampere, weber, henry, ohm. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class InductanceLaw : public LawShape<2, 0, 0> {
public:
    static constexpr ElementParameter kParameters[] = {{"inductance"}, {"seriesResistance", 0}, {"startCurrent", 0}};
    static constexpr ElementDescription kElement{"inductance", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 0> kPortEnds{}, kPathEnds{};
    static constexpr std::array<TerminalPair, 1> kFluxEnds{{{0, 1}}}, kTies = kFluxEnds;
    static constexpr int kFluxes = 1;

    explicit InductanceLaw(std::span<const double> figures)
        : henry_(figures[0]),
          ohm_(figures[1]),
          startAmpere_(figures[2]) {}

    Tangent tangentAt(const Volts& /*touch*/, unsigned /*bits*/, double /*leakSiemens*/) const { return {}; }
    LawFluxes<1> fluxesAt(const std::array<double, 1>& amperes) const { return {{henry_ * amperes[0]}, {{{henry_}}}}; }
    double beginAmpere(int /*winding*/) const { return startAmpere_; }
    double windingOhm(int /*winding*/) const { return ohm_; }

private:
    double henry_, ohm_, startAmpere_;
};

}  // namespace tiepoint
