#pragma once
// Holds any law to its contract (core/circuit/law.h) by finite differences: derivatives of currents, charges and fluxes, the tangent's
// own point, the limiting's fixed point, and that no derivative stands where the law says it couples nothing.

#include "core/circuit/law.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace tiepoint::test {

/// A central difference of a function, from steps that shrink until it settles; the best of them.
template <class Function>
double slopeOf(Function function, double at, double expected) {
    double best = INFINITY;
    for (double step = 1e-2; step > 1e-8; step /= 3) {
        const double slope = (function(at + step) - function(at - step)) / (2 * step);
        if (std::abs(slope - expected) < std::abs(best - expected)) best = slope;
    }
    return best;
}

/// What currents a law gives between its terminals: found on the curve by walking the touch until it holds these volts.
template <class Law>
typename Law::Amperes amperesBetween(const Law& law, const typename Law::Volts& across, unsigned bits) {
    typename Law::Volts touch = law.startVolts();
    typename Law::Tangent tangent;
    for (int step = 0; step < 200; ++step) {
        tangent = law.tangentAt(touch, bits, kJunctionLeakSiemens);
        const auto target = law.touched(touch, tangent, across);
        for (int port = 0; port < Law::kPorts; ++port) touch[port] = law.limited(port, touch[port], target[port]);
    }
    tangent = law.tangentAt(touch, bits, kJunctionLeakSiemens);
    typename Law::Amperes amperes = tangent.ampere;
    for (int path = 0; path < Law::kPaths; ++path) {
        for (int port = 0; port < Law::kPorts; ++port)
            amperes[path] += tangent.siemens[path][port] * (across[port] - tangent.lineVolt[port]);
    }
    return amperes;
}

/// At one point: every derivative against differences of the law's own values.
template <class Law>
void checkTangent(const Law& law, const typename Law::Volts& touch, unsigned bits) {
    const auto tangent = law.tangentAt(touch, bits, kJunctionLeakSiemens);
    const auto across = tangent.lineVolt;
    const auto itself = law.touched(touch, tangent, across);
    for (int port = 0; port < Law::kPorts; ++port) {
        EXPECT_NEAR(itself[port], touch[port], 1e-12) << "at its own voltages a tangent touches where it touches";
        EXPECT_EQ(law.limited(port, touch[port], touch[port]), touch[port]) << "a search that stands still is left so";
    }
    for (int path = 0; path < Law::kPaths; ++path) {
        for (int port = 0; port < Law::kPorts; ++port) {
            const double expected = tangent.siemens[path][port];
            const double slope = slopeOf(
                [&](double volt) {
                    auto moved = across;
                    moved[port] = volt;
                    return amperesBetween(law, moved, bits)[path];
                },
                across[port], expected);
            const double scale = std::abs(expected) + 1e-9 * std::abs(tangent.ampere[path]) + 1e-12;
            EXPECT_NEAR(slope, expected, 1e-4 * scale) << Law::kElement.name << " path " << path << " port " << port;
        }
    }
}

template <class Law>
void checkCharges(const Law& law, const typename Law::Volts& across) {
    if constexpr (StoresCharge<Law>) {
        const auto charges = law.chargesAt(across);
        for (int k = 0; k < Law::kCharges; ++k) {
            for (int port = 0; port < Law::kPorts; ++port) {
                const double expected = charges.farad[k][port];
                const double slope = slopeOf(
                    [&](double volt) {
                        auto moved = across;
                        moved[port] = volt;
                        return law.chargesAt(moved).coulomb[k];
                    },
                    across[port], expected);
                EXPECT_NEAR(slope, expected, 1e-4 * std::abs(expected) + 1e-18) << "charge " << k << " port " << port;
            }
        }
    }
}

template <class Law>
void checkFluxes(const Law& law, const std::array<double, Law::kFluxes>& amperes) {
    const auto fluxes = law.fluxesAt(amperes);
    for (int k = 0; k < Law::kFluxes; ++k) {
        for (int by = 0; by < Law::kFluxes; ++by) {
            const double expected = fluxes.henry[k][by];
            const double slope = slopeOf(
                [&](double ampere) {
                    auto moved = amperes;
                    moved[by] = ampere;
                    return law.fluxesAt(moved).weber[k];
                },
                amperes[by], expected);
            EXPECT_NEAR(slope, expected, 1e-4 * std::abs(expected) + 1e-15) << "flux " << k << " by " << by;
        }
    }
}

/// An event is continuous: small steps of its ports move it little; and flipping the bit where it stands lays it down.
template <class Law>
void checkEvents(const Law& law, const typename Law::Volts& across, unsigned bits) {
    if constexpr (HasBits<Law>) {
        for (int bit = 0; bit < Law::kBits; ++bit) {
            EXPECT_GE(law.delaySecond(bit), 0);
            const double here = law.eventAt(bit, across, {}, bits);
            for (int port = 0; port < Law::kPorts; ++port) {
                auto moved = across;
                moved[port] += 1e-9;
                EXPECT_NEAR(law.eventAt(bit, moved, {}, bits), here, 1e-6);
            }
            if (here > 0) {
                EXPECT_LE(law.eventAt(bit, across, {}, bits ^ (1U << bit)), 0) << "it would flip back at once";
            }
        }
    }
}

}  // namespace tiepoint::test
