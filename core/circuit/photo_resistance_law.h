#pragma once
// The law of a photoresistor: a resistance that falls as a power of the light on it.
//
//     R(E) = R10 (E / 10 lx)^-gamma, but never more than in the dark
//
// E is the illuminance, R10 what it has at 10 lx, gamma the slope between 10 and 100 lx on two logarithmic scales; makers of
// cadmium sulphide cells define both so (Hamamatsu, Token, Globe). How slowly it follows is left out.
// Units: ohm, siemens, lux. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"
#include "core/instant/surroundings.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint {

class PhotoResistanceLaw : public LawShape<2, 1, 1> {
public:
    static constexpr ElementParameter kParameters[] = {{"resistanceAt10Lux"}, {"gamma"}, {"darkResistance"}};
    static constexpr ElementDescription kElement{"photo-resistance", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};
    static constexpr double kReferenceLux = 10;

    explicit PhotoResistanceLaw(std::span<const double> figures)
        : referenceOhm_(figures[0]),
          gamma_(figures[1]),
          darkOhm_(figures[2]) {
        surround({});
    }

    double ohmAt(double lux) const {
        if (!(lux > 0)) return darkOhm_;
        return std::min(darkOhm_, referenceOhm_ * std::pow(lux / kReferenceLux, -gamma_));
    }
    bool surround(const Surroundings& surroundings) {
        const double before = std::exchange(siemens_, 1 / ohmAt(surroundings.lightLux));
        return before != siemens_;
    }

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        return {{siemens_ * touch[0]}, {{{siemens_}}}, touch};
    }

private:
    double referenceOhm_, gamma_, darkOhm_, siemens_ = 0;
};

}  // namespace tiepoint
