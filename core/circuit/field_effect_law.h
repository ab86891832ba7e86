#pragma once
// The law of a field-effect transistor with an insulated gate (MOSFET): the square law, written so that drain and source may change places.
//
//     i = K/2 (F(Vgs - Vth) - F(Vgd - Vth)) (1 + lambda |Vds|),        from drain to source
//     F(x) = (s ln(1 + exp(x / s)))^2,  s = 2 n Vt
//
// Far above the threshold F(x) is x^2: with the channel pinched off at the drain that is K/2 (Vgs - Vth)^2, and K ((Vgs - Vth) Vds -
// Vds^2 / 2) before. Below the threshold the current falls by a decade for every n * 59 mV. With polarity -1 all voltages and currents
// count the other way (a P-channel). The gate passes nothing here; its leak, its charges and the body's diode are elements of their own.
// Source of the interpolation: C. Enz, F. Krummenacher and E. Vittoz, Analog Integrated Circuits and Signal Processing 8 (1995) 83-114,
// from memory.
// Units: volt, ampere, siemens. Thread rule: plain values and pure functions.

#include "core/base/constants.h"
#include "core/circuit/law.h"

#include <cmath>

namespace tiepoint {

class FieldEffectLaw : public LawShape<3, 2, 1> {
public:
    static constexpr std::string_view kTerminalNames[] = {"drain", "gate", "source"};
    static constexpr ElementParameter kParameters[] = {
        {"thresholdVoltage"}, {"transconductance"}, {"channelLength", 0}, {"ideality", 1.3}, {"polarity", 1}};
    static constexpr ElementDescription kElement{"field-effect", kTerminalNames, kParameters};
    enum Terminal { kDrain, kGate, kSource };
    enum Port { kGateSource, kGateDrain };
    static constexpr std::array<TerminalPair, 2> kPortEnds{{{kGate, kSource}, {kGate, kDrain}}};
    static constexpr std::array<TerminalPair, 1> kPathEnds{{{kDrain, kSource}}};
    static constexpr std::array<TerminalPair, 1> kTies = kPathEnds;
    static constexpr bool kRising = false;

    explicit FieldEffectLaw(std::span<const double> figures)
        : sign_(figures[4] < 0 ? -1 : 1),
          thresholdVolt_(figures[0]),
          amperePerVolt2_(figures[1]),
          perVolt_(figures[2]),
          bendVolt_(2 * figures[3] * kThermalVoltage) {}

    /// On, with the drain well above the source.
    Volts startVolts() const { return {sign_ * (thresholdVolt_ + 1), 0}; }
    bool canBeOff() const { return true; }
    Volts offVolts() const { return {0, 0}; }

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        const double gateSource = sign_ * touch[kGateSource], gateDrain = sign_ * touch[kGateDrain];
        const Bent source = bent(gateSource - thresholdVolt_), drain = bent(gateDrain - thresholdVolt_);
        const double drainSource = gateSource - gateDrain;
        const double apart = source.square - drain.square, half = amperePerVolt2_ / 2;
        const double length = 1 + perVolt_ * std::abs(drainSource);
        const double lengthens = std::copysign(perVolt_, drainSource) * apart;
        return {{sign_ * half * apart * length},
                {{{half * (source.slope * length + lengthens), half * (-drain.slope * length - lengthens)}}},
                touch};
    }
    double perUnitVolt(int /*port*/) const { return 1 / bendVolt_; }

private:
    /// F and its slope.
    struct Bent {
        double square, slope;
    };
    Bent bent(double overVolt) const {
        const double x = overVolt / bendVolt_;
        const double grown = std::exp(-std::abs(x));
        const double above = bendVolt_ * (std::max(x, 0.0) + std::log1p(grown));
        const double share = (x >= 0 ? 1 : grown) / (1 + grown);
        return {above * above, 2 * above * share};
    }

    double sign_, thresholdVolt_, amperePerVolt2_, perVolt_, bendVolt_;
};

}  // namespace tiepoint
