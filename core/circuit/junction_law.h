#pragma once
// The law of an exponential junction with ideality and series resistance, and how a search may move along it.
//
//     i = Is (exp(u / nVt) - 1) + leak,        v = u + Rs i
//
// u is the voltage of the inner junction, v that between the terminals. Units: volt, ampere, ohm, siemens.
//
// Leak: 1e-12 S across every junction gives a net between two blocking junctions a voltage. It yields to the junction's own
// conduction, G u / (1 + Is exp(u/nVt) / i0) with i0 = G * 10 V, so that a conducting junction follows the exponential law to
// twelve digits, and the sum still rises with u everywhere that extra-low voltages reach.
// Thread rule: plain values and pure functions.

#include "core/base/constants.h"
#include "core/circuit/law.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

inline constexpr double kJunctionLeakSiemens = 1e-12;

class JunctionLaw : public LawShape<2, 1, 1> {
public:
    // The element: a diode or an LED, from its anode to its cathode.
    static constexpr ElementParameter kParameters[] = {{"saturationCurrent"}, {"ideality", 1}, {"seriesResistance", 0}};
    static constexpr ElementDescription kElement{"junction", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};

    explicit JunctionLaw(std::span<const double> figures) : JunctionLaw(figures[0], figures[1], figures[2]) {}
    explicit JunctionLaw(double saturationAmpere = 1e-14, double ideality = 1, double seriesOhm = 0)
        : saturationAmpere_(saturationAmpere),
          emissionVolt_(ideality * kThermalVoltage),
          perEmissionVolt_(1 / emissionVolt_),
          seriesOhm_(seriesOhm),
          criticalVolt_(emissionVolt_ * std::log(emissionVolt_ / (std::sqrt(2.0) * saturationAmpere))),
          conductingVolt_(criticalVolt_ - kConductingStep * emissionVolt_),
          ceilingVolt_(emissionVolt_ * std::log(kCeilingAmpere / saturationAmpere)) {}

    double emissionVolt() const { return emissionVolt_; }  ///< ideality times thermal voltage
    double seriesOhm() const { return seriesOhm_; }
    /// Where the curve bends most: the start of every search, because a lower start overshoots by decades of current.
    double criticalVolt() const { return criticalVolt_; }

    // What a search needs of a law (see law.h).
    Volts startVolts() const { return {criticalVolt_}; }
    /// A part whose kind or colour changed may have conducted far above what its new curve bears.
    Volts resumed(const Volts& kept) const { return {std::min(kept[0], criticalVolt_)}; }
    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double leakSiemens) const {
        const Point point = at(touch[0], leakSiemens);
        return {{point.ampere},
                {{{point.siemens / (1 + point.siemens * seriesOhm_)}}},
                {touch[0] + seriesOhm_ * point.ampere}};
    }
    /// Along the tangent the inner junction moves by its share of the terminals' voltage.
    Volts touched(const Volts& touch, const Tangent& tangent, const Volts& across) const {
        const double share = 1 - tangent.siemens[0][0] * seriesOhm_;
        return {touch[0] + share * (across[0] - tangent.lineVolt[0])};
    }
    double limited(int /*port*/, double fromVolt, double toVolt) const { return limitedStep(fromVolt, toVolt); }
    /// The unit in which steps along the curve are judged.
    double perUnitVolt(int /*port*/ = 0) const { return perEmissionVolt_; }

    /// Current and slope of the inner junction at one voltage.
    struct Point {
        double ampere = 0;
        double siemens = 0;
    };

    /// The exponential alone, as it is transported where it doesn't flow itself; a straight line past the ceiling.
    Point exponentialAt(double innerVolt) const {
        const double curvedVolt = std::min(innerVolt, ceilingVolt_);
        const double grown = saturationAmpere_ * std::exp(curvedVolt * perEmissionVolt_);
        const double slope = grown * perEmissionVolt_;
        return {grown - saturationAmpere_ + slope * (innerVolt - curvedVolt), slope};
    }

    Point at(double innerVolt, double leakSiemens) const {
        return withLeak(exponentialAt(innerVolt), 1, innerVolt, leakSiemens);
    }

    /// A share of the exponential at that voltage, with the leak that every junction has.
    Point withLeak(const Point& exponential, double share, double innerVolt, double leakSiemens) const {
        // Past the ceiling the curve goes on straight: no supply reaches it, but a search may pass there and must not overflow.
        const double curvedVolt = std::min(innerVolt, ceilingVolt_);
        const double slope = share * exponential.siemens;
        const double grown = slope * emissionVolt_;
        const double yieldAmpere = kYieldVolt * leakSiemens;
        const double yield = yieldAmpere / (yieldAmpere + grown);
        const double leak = leakSiemens * yield;
        const double siemens = slope + leak * (1 - yield * curvedVolt * slope / yieldAmpere);
        return {grown - share * saturationAmpere_ + leak * curvedVolt + siemens * (innerVolt - curvedVolt), siemens};
    }

    /// Between the terminals while so much current flows forward, without the leak, which matters only where hardly any flows.
    double forwardVoltAt(double ampere) const {
        return emissionVolt_ * std::log1p(ampere / saturationAmpere_) + seriesOhm_ * ampere;
    }

    /// The inner voltage at which a search goes on, when the tangent at `fromVolt` would lead to `toVolt`.
    ///
    /// Where the junction conducts and its tangent still carries a forward current, the *current* on the tangent is kept and its
    /// voltage read off the curve: circuits hold the current of a conducting junction, not its voltage. From below, no large step
    /// passes the critical voltage.
    /// A junction that turns off falls by e^8 in current at once: steps of nVt would take ten iterations from 2 V to 1.5 V.
    double limitedStep(double fromVolt, double toVolt) const {
        const double step = (toVolt - fromVolt) * perEmissionVolt_;
        if (fromVolt > conductingVolt_ && step > -1 && step < 1) return fromVolt + emissionVolt_ * logStep(step);
        if (step >= 0) {
            if (fromVolt < criticalVolt_) return std::min(toVolt, criticalVolt_);
            const double next = fromVolt + emissionVolt_ * std::log1p(step);
            return next < ceilingVolt_ ? next : toVolt;
        }
        if (fromVolt < 0) return toVolt;
        if (step > -1) return fromVolt + emissionVolt_ * logStep(step);
        return std::min(toVolt, std::max(fromVolt - kTurnOffStep * emissionVolt_, 0.0));
    }

private:
    /// log(1 + step), by its series where that is exact to rounding of a voltage.
    static double logStep(double step) {
        constexpr double kTiny = 1e-5;
        return std::abs(step) < kTiny ? step * (1 - step / 2) : std::max(std::log1p(step), -kTurnOffStep);
    }

    static constexpr double kCeilingAmpere = 1e4;
    static constexpr double kYieldVolt = 10;
    static constexpr double kTurnOffStep = 8;
    static constexpr double kConductingStep =
        12;  ///< below the critical voltage by so many nVt no current worth keeping flows

    double saturationAmpere_, emissionVolt_, perEmissionVolt_, seriesOhm_, criticalVolt_, conductingVolt_, ceilingVolt_;
};

}  // namespace tiepoint
