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

#include <algorithm>
#include <cmath>

namespace tiepoint {

inline constexpr double kJunctionLeakSiemens = 1e-12;

class JunctionLaw {
public:
    explicit JunctionLaw(double saturationAmpere = 1e-14, double ideality = 1, double seriesOhm = 0)
        : saturationAmpere_(saturationAmpere), emissionVolt_(ideality * kThermalVoltage), seriesOhm_(seriesOhm),
          criticalVolt_(emissionVolt_ * std::log(emissionVolt_ / (std::sqrt(2.0) * saturationAmpere))),
          ceilingVolt_(emissionVolt_ * std::log(kCeilingAmpere / saturationAmpere)) {}

    double emissionVolt() const { return emissionVolt_; }  ///< ideality times thermal voltage
    double seriesOhm() const { return seriesOhm_; }
    /// Where the curve bends most: the start of every search, because a lower start overshoots by decades of current.
    double criticalVolt() const { return criticalVolt_; }

    /// Current and slope of the inner junction at one voltage.
    struct Point {
        double ampere = 0;
        double siemens = 0;
    };

    Point at(double innerVolt, double leakSiemens) const {
        // Past the ceiling the curve goes on straight: no supply reaches it, but a search may pass there and must not overflow.
        const double curvedVolt = std::min(innerVolt, ceilingVolt_);
        const double grown = saturationAmpere_ * std::exp(curvedVolt / emissionVolt_);
        const double slope = grown / emissionVolt_;
        const double yield = 1 / (1 + grown / (kYieldVolt * leakSiemens));
        const double leak = leakSiemens * yield;
        const double leakSlope = leak * (1 - yield * curvedVolt * slope / (kYieldVolt * leakSiemens));
        const double siemens = slope + leakSlope;
        return {grown - saturationAmpere_ + leak * curvedVolt + siemens * (innerVolt - curvedVolt), siemens};
    }

    /// The inner voltage at which a search goes on, when the tangent at `fromVolt` would lead to `toVolt`.
    ///
    /// From below, no step passes the critical voltage. Upwards from there, and downwards while the tangent still carries a forward current, the *current* on the
    /// tangent is kept and its voltage read off the curve: circuits hold the current of a conducting junction, not its voltage.
    /// A junction that turns off falls by e^8 in current at once: steps of nVt would take ten iterations from 2 V to 1.5 V.
    double limitedStep(double fromVolt, double toVolt) const {
        if (toVolt >= fromVolt) {
            if (fromVolt < criticalVolt_) return std::min(toVolt, criticalVolt_);
            const double next = fromVolt + emissionVolt_ * std::log1p((toVolt - fromVolt) / emissionVolt_);
            return next < ceilingVolt_ ? next : toVolt;
        }
        if (fromVolt < 0) return toVolt;
        const double step = (toVolt - fromVolt) / emissionVolt_;
        if (step > -1) return fromVolt + emissionVolt_ * std::max(std::log1p(step), -kTurnOffStep);
        return std::min(toVolt, std::max(fromVolt - kTurnOffStep * emissionVolt_, 0.0));
    }

private:
    static constexpr double kCeilingAmpere = 1e4;
    static constexpr double kYieldVolt = 10;
    static constexpr double kTurnOffStep = 8;

    double saturationAmpere_, emissionVolt_, seriesOhm_, criticalVolt_, ceilingVolt_;
};

}  // namespace tiepoint
