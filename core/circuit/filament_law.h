#pragma once
// The law of a filament at rest: a tungsten wire that its own current heats until it radiates as much as it takes.
//
//     R = Rr (T / Tr)^1.2            resistance rises with temperature
//     V I = Pr (T^4 - T0^4) / (Tr^4 - T0^4)
//
// r marks the rated point, T0 the bench. With t = T / T0 both give V^2 = P R, a rising function of t, so that every voltage has one
// temperature and one current. Far above T0 the current follows V^(2.8/5.2) = V^0.538, as lamp makers' rules have it (0.55).
// Units: volt, ampere, kelvin, siemens. Sources: the exponent of the resistance, I. Langmuir and H. A. Jones, General Electric Review 30
// (1927), fitted by common practice; radiation alone, no conduction by leads or gas: a simplification that holds while the wire glows.
// Thread rule: plain values and pure functions.

#include "core/base/constants.h"
#include "core/circuit/law.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

class FilamentLaw : public LawShape<2, 1, 1> {
public:
    // The element: the filament of a lamp.
    static constexpr ElementParameter kParameters[] = {{"voltage"}, {"current"}, {"temperature"}};
    static constexpr ElementDescription kElement{"filament", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};

    explicit FilamentLaw(std::span<const double> figures) : FilamentLaw(figures[0], figures[1], figures[2]) {}
    FilamentLaw(double ratedVolt, double ratedAmpere, double ratedKelvin)
        : ratedRatio_(ratedKelvin / kBenchKelvin),
          voltScale_(ratedVolt / std::sqrt(rise(ratedRatio_))),
          coldOhm_(ratedVolt / ratedAmpere / std::pow(ratedRatio_, kResistanceExponent)) {}

    double coldOhm() const { return coldOhm_; }
    /// Temperature of the wire at a voltage, kelvin.
    double kelvinAt(double volt) const { return kBenchKelvin * ratioAt(volt); }

    /// Current and slope at one voltage. The law has no leak to yield to.
    struct Point {
        double ampere = 0;
        double siemens = 0;
    };
    Point at(double volt, double /*leakSiemens*/) const {
        const double ratio = ratioAt(volt);
        const double siemens = 1 / (coldOhm_ * std::pow(ratio, kResistanceExponent));
        // d ln I / d ln V = (p - n) / (p + n) with p = d ln P / d ln T; at the bench's temperature p is without limit and the slope 1.
        const double fourth = ratio * ratio * ratio * ratio;
        const double p = 4 * fourth, n = kResistanceExponent * (fourth - 1);
        return {siemens * volt, siemens * (p - n) / (p + n)};
    }

    // What a search needs of a law (see law.h).
    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double leakSiemens) const {
        const Point point = at(touch[0], leakSiemens);
        return {{point.ampere}, {{{point.siemens}}}, touch};
    }
    Volts touched(const Volts& touch, const Tangent& tangent, const Volts& across) const {
        return {touch[0] + (across[0] - tangent.lineVolt[0])};
    }
    double limited(int /*port*/, double fromVolt, double toVolt) const { return limitedStep(fromVolt, toVolt); }
    /// The unit in which steps along the curve are judged: about where it begins to bend.
    double perUnitVolt(int /*port*/) const { return 1 / voltScale_; }
    /// Downhill a tangent at a bright filament leads far past the answer, even to the other sign; from below, each step falls short of
    /// it and none passes it.
    double limitedStep(double fromVolt, double toVolt) const {
        constexpr double kShrink = 4;
        const bool bent = std::abs(fromVolt) > voltScale_;
        const bool past = fromVolt * toVolt < 0 || std::abs(toVolt) < std::abs(fromVolt) / kShrink;
        return bent && past ? fromVolt / kShrink : toVolt;
    }

private:
    static constexpr double kResistanceExponent = 1.2;

    /// (V / voltScale)^2 as a function of T / T0.
    static double rise(double ratio) {
        return std::pow(ratio, 4 + kResistanceExponent) - std::pow(ratio, kResistanceExponent);
    }

    double ratioAt(double volt) const {
        constexpr int kMostSteps = 30;
        constexpr double kSettled = 1e-15;
        const double wanted = volt / voltScale_ * (volt / voltScale_);
        // Newton from below on a convex function: one step passes the answer, the others come down to it.
        double ratio = std::pow(1 + wanted, 1 / (4 + kResistanceExponent));
        for (int i = 0; i < kMostSteps; ++i) {
            const double small = std::pow(ratio, kResistanceExponent), large = small * ratio * ratio * ratio * ratio;
            const double step =
                (large - small - wanted) * ratio / ((4 + kResistanceExponent) * large - kResistanceExponent * small);
            ratio -= step;
            if (std::abs(step) <= kSettled * ratio) break;
        }
        return std::max(ratio, 1.0);
    }

    double ratedRatio_, voltScale_, coldOhm_;
};

}  // namespace tiepoint
