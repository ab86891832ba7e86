// Every law of the list, and a test's own of the kinds that the list hasn't, against the contract: derivatives by finite differences.

#include "core/circuit/element.h"
#include "support/check_law.h"

#include <gtest/gtest.h>

#include <map>

namespace tiepoint {
namespace {

/// Figures of an element at random in its usual range; required ones by name.
const std::map<std::string_view, std::pair<double, double>> kUsual = {
    {"saturationCurrent", {1e-18, 1e-12}},
    {"ideality", {1, 2}},
    {"seriesResistance", {1e-2, 10}},
    {"voltage", {1, 12}},
    {"current", {0.02, 0.3}},
    {"temperature", {2000, 2900}},
    {"gain", {20, 500}},
    {"reverseGain", {0.5, 10}},
    {"transitTime", {1e-10, 1e-8}},
    {"reverseTransitTime", {1e-9, 1e-7}},
    {"emitterCapacitance", {1e-12, 1e-10}},
    {"collectorCapacitance", {1e-12, 1e-10}},
    {"transconductance", {1e-4, 10}},
    {"highVoltage", {3, 12}},
    {"lowVoltage", {1e-3, 0.2}},
    {"outputResistance", {10, 1e3}},
    {"hysteresis", {1e-3, 0.1}},
    {"delay", {1e-9, 1e-6}},
    {"capacitance", {1e-12, 1e-3}},
    {"startVoltage", {1e-3, 10}},
    {"inductance", {1e-6, 1}},
    {"startCurrent", {1e-3, 1}},
    {"breakVoltage", {300, 400}},
    {"breakdownVoltage", {1.8, 6}},
    {"testCurrent", {1e-3, 5e-2}},
    {"dynamicResistance", {10, 60}},
    {"resistanceAt10Lux", {2e3, 90e3}},
    {"gamma", {0.5, 1}},
    {"darkResistance", {1e5, 1e7}},
    {"resistanceAt25", {100, 1e6}},
    {"beta", {2500, 5000}},
    {"light", {100, 100e3}},
    {"thresholdVoltage", {0.5, 3}},
    {"channelLength", {1e-3, 0.1}},
    {"resistance", {1, 1000}},
    {"highResistance", {0.1, 10}},
    {"lowResistance", {1, 100}},
    {"openResistance", {1, 100}},
    {"resetVoltage", {0.3, 1}},
    {"torqueConstant", {1e-4, 0.1}},
    {"inertia", {1e-9, 1e-4}},
    {"friction", {1e-6, 1e-2}},
    {"startSpeed", {1, 1000}},
    {"coilResistance", {10, 1000}},
    {"pullIn", {0.01, 0.1}},
    {"dropOut", {1e-3, 0.1}},
    {"contactResistance", {0.01, 1}},
    {"audible", {1e-4, 1e-2}},
    {"amplitude", {0.1, 10}},
    {"frequency", {0.1, 1e5}},
    {"shape", {0.5, 2.9}},
    {"loadResistance", {1e4, 1e7}},
    {"highShare", {0.6, 0.8}},
    {"lowShare", {0.1, 0.4}},
    {"hold", {0.01, 1}},
};

template <class Law>
Law drawLaw(std::mt19937& random) {
    std::vector<double> figures;
    for (const ElementParameter& parameter : Law::kElement.parameters) {
        if (parameter.name == "polarity") {
            figures.push_back(random() % 2 == 0 ? 1 : -1);
            continue;
        }
        const auto [least, most] = kUsual.at(parameter.name);
        figures.push_back(least * std::pow(most / least, std::uniform_real_distribution<double>(0, 1)(random)));
    }
    return Law(figures);
}

template <class Law>
void checkLaw(std::mt19937& random) {
    SCOPED_TRACE(Law::kElement.name);
    EXPECT_EQ(Law::kElement.terminals.size(), static_cast<std::size_t>(Law::kTerminals));
    for (int round = 0; round < 200; ++round) {
        const Law law = drawLaw<Law>(random);
        typename Law::Volts touch{};
        // Between well reversed and some milliamperes.
        for (double& volt : touch) volt = std::uniform_real_distribution<double>(-3, 0.55)(random);
        for (unsigned bits = 0; bits < 1U << Law::kBits; ++bits) {
            test::checkTangent(law, touch, bits);
            test::checkEvents(law, touch, bits);
        }
        test::checkCharges(law, touch);
        if constexpr (StoresFlux<Law>) test::checkFluxes(law, std::array<double, Law::kFluxes>{0.1});
        if (testing::Test::HasFailure()) return;
    }
}

TEST(Laws, HoldTheirContract) {
    std::mt19937 random(1954);
    [&]<class... Each>(LawList<Each...>) { (checkLaw<Each>(random), ...); }(Laws{});
}

TEST(Laws, OnesWhoseMatrixIsThatOfConductancesSaySo) {
    std::mt19937 random(7);
    [&]<class... Each>(LawList<Each...>) {
        const auto check = [&]<class Law>(const Law& law) {
            for (int round = 0; Law::kRising && round < 200; ++round) {
                typename Law::Volts touch{};
                for (double& volt : touch) volt = std::uniform_real_distribution<double>(-5, 5)(random);
                const auto tangent = law.tangentAt(touch, 0, kJunctionLeakSiemens);
                for (int path = 0; path < Law::kPaths; ++path) {
                    for (int port = 0; port < Law::kPorts; ++port) {
                        const bool own = Law::kPortEnds[port].from == Law::kPathEnds[path].from &&
                                         Law::kPortEnds[port].to == Law::kPathEnds[path].to;
                        const double siemens = tangent.siemens[path][port];
                        EXPECT_TRUE(own ? siemens >= 0 : siemens == 0) << Law::kElement.name;
                    }
                }
            }
        };
        (check(drawLaw<Each>(random)), ...);
    }(Laws{});
}

/// Two coils on one core that saturates: what a law that stores flux looks like.
struct CoupledCoils : LawShape<4, 0, 0> {
    static constexpr int kFluxes = 2;
    static constexpr std::array<TerminalPair, 2> kFluxEnds{{{0, 1}, {2, 3}}};
    double bend = 1;  ///< what is left of the slope, to make a wrong one
    LawFluxes<2> fluxesAt(const std::array<double, 2>& ampere) const {
        const double turns[] = {100, 20}, core = turns[0] * ampere[0] + turns[1] * ampere[1];
        LawFluxes<2> f;
        for (int k = 0; k < 2; ++k) {
            f.weber[k] = turns[k] * 1e-6 * std::tanh(core / 50);
            for (int by = 0; by < 2; ++by)
                f.henry[k][by] = bend * turns[k] * turns[by] * 1e-6 / 50 / std::pow(std::cosh(core / 50), 2);
        }
        return f;
    }
};

TEST(Laws, StoresOfFluxAreHeldToTheirSlopes) {
    static_assert(StoresFlux<CoupledCoils> && StoresCharge<TransistorLaw> && HasBits<ComparatorLaw>);
    static_assert(!StoresCharge<JunctionLaw> && !HasBits<TransistorLaw>);
    for (const double ampere : {-2.0, -0.1, 0.0, 0.3, 1.0}) test::checkFluxes(CoupledCoils{}, {ampere, 0.2});
}

TEST(Elements, TheTableFollowsFromTheListOfLaws) {
    for (const char* name : {"resistance", "supply", "contact", "junction", "filament", "transistor",
                             "controlled-source", "comparator", "capacitance", "inductance", "spark", "field-effect",
                             "breakdown", "photo-resistance", "thermal-resistance", "photocurrent"})
        ASSERT_NE(findElement(name), nullptr) << name;
    EXPECT_EQ(findElement("junction"), &kJunctionElement);
    Circuit circuit;
    const ElementKind& transistor = *findElement("transistor");
    std::vector<int> nodes;
    for (std::size_t t = 0; t < transistor.terminals.size(); ++t) nodes.push_back(circuit.addNode());
    const int element = transistor.add(circuit, nodes, std::vector<double>{100, 1, 1e-14, 1, 0, 0, 0, 0, 1});
    EXPECT_EQ(circuit.nodesOf(element).size(), 3u);
    EXPECT_EQ(circuit.branches<TransistorLaw>().size(), 1u);
}

}  // namespace
}  // namespace tiepoint
