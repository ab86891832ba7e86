#pragma once
// The law of a thermistor whose resistance falls with warmth (NTC).
//
//     R(T) = R25 exp(B (1 / T - 1 / 298.15 K))
//
// R25 is its resistance at 25 degrees Celsius, B the constant of its material between the temperatures that matter (IEC 60539-1, from
// memory). It has the temperature of its surroundings: its own heating is left out.
// Units: ohm, siemens, kelvin. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"
#include "core/instant/surroundings.h"

#include <cmath>
#include <utility>

namespace tiepoint {

class ThermalResistanceLaw : public LawShape<2, 1, 1> {
public:
    static constexpr ElementParameter kParameters[] = {{"resistanceAt25"}, {"beta"}};
    static constexpr ElementDescription kElement{"thermal-resistance", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};
    static constexpr double kFreezingKelvin = 273.15, kReferenceKelvin = 298.15;

    explicit ThermalResistanceLaw(std::span<const double> figures)
        : referenceOhm_(figures[0]),
          betaKelvin_(figures[1]) {
        surround({});
    }

    double ohmAt(double celsius) const {
        return referenceOhm_ * std::exp(betaKelvin_ * (1 / (celsius + kFreezingKelvin) - 1 / kReferenceKelvin));
    }
    bool surround(const Surroundings& surroundings) {
        const double before = std::exchange(siemens_, 1 / ohmAt(surroundings.temperatureCelsius));
        return before != siemens_;
    }

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        return {{siemens_ * touch[0]}, {{{siemens_}}}, touch};
    }

private:
    double referenceOhm_, betaKelvin_, siemens_ = 0;
};

}  // namespace tiepoint
