// The filament's law and how the solver follows it.
// Outside the project: makers of miniature lamps re-rate current as the 0.55th power of the voltage (from memory; 0.541 in tables of
// gas-filled lamps, from memory), and a cold tungsten filament has a tenth to a fifteenth of its glowing resistance (common practice).

#include "core/base/constants.h"
#include "core/circuit/filament_law.h"
#include "core/snapshot/snapshot.h"
#include "core/solve/circuit_solver.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

constexpr double kRatedVolt = 6, kRatedAmpere = 0.06, kRatedKelvin = 2300;

FilamentLaw lamp() { return {kRatedVolt, kRatedAmpere, kRatedKelvin}; }

double ampereAt(const FilamentLaw& law, double volt) { return law.at(volt, 0).ampere; }

TEST(Filament, PassesThroughItsRatedPoint) {
    EXPECT_NEAR(ampereAt(lamp(), kRatedVolt), kRatedAmpere, 1e-14);
    EXPECT_NEAR(lamp().kelvinAt(kRatedVolt), kRatedKelvin, 1e-9);
    EXPECT_DOUBLE_EQ(ampereAt(lamp(), 0), 0);
    EXPECT_NEAR(lamp().kelvinAt(0), kBenchKelvin, 1e-9);
}

TEST(Filament, RadiatesWhatItTakes) {
    const auto fourths = [](double kelvin) { return std::pow(kelvin, 4) - std::pow(kBenchKelvin, 4); };
    const FilamentLaw law = lamp();
    for (const double volt : {0.01, 0.1, 0.5, 1.0, 3.0, 6.0, 9.0}) {
        const double kelvin = law.kelvinAt(volt), ampere = ampereAt(law, volt);
        EXPECT_NEAR(volt * ampere, kRatedVolt * kRatedAmpere * fourths(kelvin) / fourths(kRatedKelvin), 1e-12) << volt;
        EXPECT_NEAR(volt / ampere, kRatedVolt / kRatedAmpere * std::pow(kelvin / kRatedKelvin, 1.2), 1e-9) << volt;
    }
}

TEST(Filament, FollowsTheMakersRule) {
    for (const double share : {0.7, 0.85, 1.15}) {
        const double exponent = std::log(ampereAt(lamp(), share * kRatedVolt) / kRatedAmpere) / std::log(share);
        EXPECT_NEAR(exponent, 0.55, 0.02) << share;
    }
    const double hotToCold = kRatedVolt / kRatedAmpere / lamp().coldOhm();
    EXPECT_GT(hotToCold, 10);
    EXPECT_LT(hotToCold, 15);
}

TEST(Filament, ItsSlopeIsThatOfItsCurve) {
    const FilamentLaw law = lamp();
    for (const double volt : {-7.0, -0.3, 1e-4, 0.05, 0.4, 2.0, 12.0}) {
        const double step = 1e-6 * std::max(1.0, std::abs(volt));
        const double slope = (ampereAt(law, volt + step) - ampereAt(law, volt - step)) / (2 * step);
        EXPECT_NEAR(law.at(volt, 0).siemens, slope, 1e-7 * slope + 1e-8) << volt;
        EXPECT_DOUBLE_EQ(ampereAt(law, -volt), -ampereAt(law, volt)) << volt;
    }
}

/// Voltage of the lamp behind a resistor, by bisection of the loop's own equation.
double lampVoltBehind(double emfVolt, double ohm) {
    double low = 0, high = emfVolt;
    for (int i = 0; i < 200; ++i) {
        const double middle = (low + high) / 2;
        (middle + ohm * ampereAt(lamp(), middle) < emfVolt ? low : high) = middle;
    }
    return low;
}

TEST(Filament, SolvesBehindAResistorUpwardsAndDownwards) {
    for (const double ohm : {0.1, 10.0, 100.0, 1e4}) {
        for (const double emf : {0.0, 0.05, 1.0, 6.0, 30.0, 6.0, 0.2, -6.0}) {
            SCOPED_TRACE(testing::Message() << ohm << " ohm, " << emf << " V");
            Circuit circuit;
            for (int node = 0; node < 3; ++node) circuit.addNode();
            circuit.addSupply(1, 0, emf, 0.01);
            circuit.addConductor(1, 2, ohm);
            const int filament = circuit.add(lamp(), {2, 0});
            CircuitSolver solver(circuit);
            const std::vector<char> present(circuit.elementCount(), 1);
            // From a bright start too: what the lamp did before must not matter.
            for (const double start : {0.0, 25.0, -25.0}) {
                solver.touchVolts()[0] = start;
                const CircuitSolution& s = solver.solve(present, 0);
                ASSERT_TRUE(s.solved()) << start;
                const double expected = std::copysign(ampereAt(lamp(), lampVoltBehind(std::abs(emf), ohm + 0.01)), emf);
                EXPECT_NEAR(s.elementAmpere[filament], expected, 1e-12 + 1e-9 * std::abs(expected)) << start;
                EXPECT_LE(s.iterations, 20) << start;
            }
            EXPECT_LE(solver.solve(present, 0).iterations, 2);
        }
    }
}

TEST(Filament, LampsJunctionsAndResistorsAtRandomAlwaysSettle) {
    std::mt19937 random(31);
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    std::uniform_real_distribution<double> exponent(0, 5);
    for (int round = 0; round < 1000; ++round) {
        const int nodes = 3 + pick(8);
        Circuit circuit;
        for (int node = 0; node < nodes; ++node) circuit.addNode();
        circuit.addSupply(1, 0, 1 + pick(30), pick(2) ? 0.01 : 0.0, 0.5);
        for (int k = 0; k < 3 * nodes; ++k) {
            const int a = pick(nodes), b = pick(nodes);
            switch (pick(3)) {
                case 0:
                    circuit.addConductor(a, b, std::pow(10, exponent(random)));
                    break;
                case 1:
                    circuit.add(FilamentLaw(1 + pick(12), 0.02 + 0.1 * pick(3), kRatedKelvin), {a, b});
                    break;
                default:
                    circuit.add(JunctionLaw(1e-18, 2, pick(2) ? 5 : 0), {a, b});
                    break;
            }
        }
        CircuitSolver solver(circuit);
        const std::vector<char> present(circuit.elementCount(), 1);
        const CircuitSolution& s = solver.solve(present, 0);
        ASSERT_TRUE(s.solved()) << round;
        EXPECT_LE(s.kirchhoffWorst, 1e-11) << round;
        for (const auto& f : circuit.branches<FilamentLaw>()) {
            const double expected = ampereAt(f.law, s.nodeVolt[f.nodes[0]] - s.nodeVolt[f.nodes[1]]);
            EXPECT_NEAR(s.elementAmpere[f.element], expected, 1e-11 + 1e-8 * std::abs(expected)) << round;
        }
    }
}

TEST(Filament, ALampOnTheBenchGlowsEitherWayRound) {
    for (const bool turned : {false, true}) {
        const auto bench =
            test::BenchBuilder()
                .board("A", "half")
                .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 6}})
                .part("LA1", "lamp", {{turned ? "2" : "1", "A.top+9"}, {turned ? "1" : "2", "A.bottom-9"}})
                .share();
        const auto s = evaluate(bench);
        ASSERT_EQ(s->status(), Status::Solved);
        EXPECT_NEAR(s->brightness(1), 1, 1e-3);
        EXPECT_NEAR(s->partPower[1], kRatedVolt * kRatedAmpere, 1e-3);
    }
}

/// At half its voltage: 69 % of the current, a tenth of the light (0.5^3.5 = 0.088), which the eye sees as L* 36 (CIE 1976).
TEST(Filament, HalfTheVoltageIsATenthOfTheLight) {
    const auto bench = test::BenchBuilder()
                           .board("A", "half")
                           .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 3}})
                           .part("LA1", "lamp", {{"1", "A.top+9"}, {"2", "A.bottom-9"}})
                           .share();
    EXPECT_NEAR(evaluate(bench)->brightness(1), 0.36, 0.02);
}

}  // namespace
}  // namespace tiepoint
