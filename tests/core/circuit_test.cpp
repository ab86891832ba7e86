// The solver below the board level: circuits built in code, where voltages may exceed what a bench has.

#include "core/circuit/element.h"
#include "core/solve/circuit_solver.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>
#include <vector>

namespace tiepoint {
namespace {

/// A circuit with everything present and node 0 as the reference.
class Rig {
public:
    explicit Rig(int nodes) {
        for (int i = 0; i < nodes; ++i) circuit.addNode();
    }
    const CircuitSolution& solve() {
        solver = CircuitSolver(circuit);
        present.assign(circuit.elementCount(), 1);
        return solver.solve(present, 0);
    }
    const CircuitSolution& again() { return solver.solve(present, 0); }

    Circuit circuit;
    CircuitSolver solver;
    std::vector<char> present;
};

TEST(Circuit, DividesVoltageByResistance) {
    Rig rig(3);
    const int supply = rig.circuit.addSupply(1, 0, 9);
    const int upper = rig.circuit.addConductor(1, 2, 1000);
    rig.circuit.addConductor(2, 0, 2000);
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.nodeVolt[2], 6, 1e-14);
    EXPECT_NEAR(s.elementAmpere[upper], 3e-3, 1e-17);
    EXPECT_NEAR(s.elementAmpere[supply], -3e-3, 1e-17);
    EXPECT_LT(s.kirchhoffWorst, 1e-15);
    EXPECT_LT(std::abs(s.powerBalance), 1e-14);
}

TEST(Circuit, CountsIterations) {
    Rig rig(3);
    rig.circuit.addSupply(1, 0, 5, 0.01, 0.5);
    rig.circuit.addConductor(1, 2, 330);
    rig.circuit.add(JunctionLaw(1e-18, 2, 5), {2, 0});
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_LE(s.iterations, 7);
    EXPECT_EQ(rig.again().iterations, 1);
}

TEST(Circuit, SupplyHoldsVoltageUpToItsLimitAndCurrentBeyond) {
    struct Row {
        double loadOhm, volt, ampere;
        bool limiting;
    };
    constexpr double kEmf = 5, kOhm = 0.1, kLimit = 0.5;
    const Row rows[] = {
        {99.9, 5 - 0.005, 0.05, false}, {9.9 + 1e-6, 5 - 0.05, 0.5, false}, {9, 4.5, 0.5, true}, {1, 0.5, 0.5, true},
        {0.001, 0.0005, 0.5, true},
    };
    for (const Row& row : rows) {
        Rig rig(2);
        const int supply = rig.circuit.addSupply(1, 0, kEmf, kOhm, kLimit);
        rig.circuit.addConductor(1, 0, row.loadOhm);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved()) << row.loadOhm;
        EXPECT_NEAR(s.nodeVolt[1], row.volt, 1e-6) << row.loadOhm;
        EXPECT_NEAR(s.elementAmpere[supply], -row.ampere, 1e-6) << row.loadOhm;
        EXPECT_EQ(s.limiting[0] != 0, row.limiting) << row.loadOhm;
    }
}

TEST(Circuit, SupplySinksItsLimitAtMost) {
    // 12 V over 1 ohm against 5 V that takes at most 2 A: 5 V can't be held, 2 A flow, 10 V stand.
    Rig rig(3);
    rig.circuit.addSupply(1, 0, 12);
    rig.circuit.addConductor(1, 2, 1);
    const int sink = rig.circuit.addSupply(2, 0, 5, 0.01, 2);
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[sink], 2, 1e-12);
    EXPECT_NEAR(s.nodeVolt[2], 10, 1e-12);
}

TEST(Circuit, LimitsInSeriesAndInParallelSettle) {
    {
        Rig rig(3);  // in series into a short: the smaller limit rules
        rig.circuit.addSupply(1, 0, 5, 0.01, 0.5);
        const int smaller = rig.circuit.addSupply(2, 1, 5, 0.01, 0.3);
        rig.circuit.addConductor(2, 0, 0.05);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved());
        EXPECT_NEAR(s.elementAmpere[smaller], -0.3, 1e-12);
        EXPECT_EQ(s.limiting[0], 0);
    }
    {
        Rig rig(2);  // in parallel into a short: both limits add
        rig.circuit.addSupply(1, 0, 5, 0.01, 0.5);
        rig.circuit.addSupply(1, 0, 6, 0.01, 0.3);
        const int load = rig.circuit.addConductor(1, 0, 0.05);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved());
        EXPECT_NEAR(s.elementAmpere[load], 0.8, 1e-12);
    }
}

TEST(Circuit, ShortedSupplyDrivesItsLimit) {
    for (double ohm : {0.0, 0.01}) {
        Rig rig(1);
        const int supply = rig.circuit.addSupply(0, 0, 5, ohm, 0.5);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved());
        EXPECT_DOUBLE_EQ(s.elementAmpere[supply], -0.5);
        EXPECT_TRUE(s.limiting[0]);
    }
}

TEST(Circuit, IdealSourcesInALoopHaveNoSolution) {
    for (double second : {3.0, 5.0}) {
        Rig rig(2);
        rig.circuit.addSupply(1, 0, 5, 0, 0.5);
        rig.circuit.addConductor(1, 0, 100);
        rig.circuit.addSupply(1, 0, second, 0, 0.5);
        const CircuitSolution& s = rig.solve();
        EXPECT_EQ(s.trouble, Trouble::IdealLoop);
        EXPECT_EQ(s.troubleElements, (std::vector<int>{0, 2}));
    }
    {
        Rig rig(1);  // no limit, no resistance, shorted by metal
        rig.circuit.addSupply(0, 0, 5);
        EXPECT_EQ(rig.solve().trouble, Trouble::Unbalanced);
    }
}

TEST(Circuit, ALoopOfIdealSourcesIsNamedWithoutItsNeighbours) {
    // Two loops of sources joined by a third that stands in neither: only the first is the place.
    Rig rig(4);
    rig.circuit.addSupply(1, 0, 5);
    rig.circuit.addSupply(1, 0, 3);
    rig.circuit.addSupply(2, 1, 1);
    rig.circuit.addSupply(3, 2, 5);
    rig.circuit.addSupply(3, 2, 4);
    const CircuitSolution& s = rig.solve();
    EXPECT_EQ(s.trouble, Trouble::IdealLoop);
    EXPECT_EQ(s.troubleElements, (std::vector<int>{0, 1}));
}

TEST(Circuit, IdealSourceWithBothEndsUnknown) {
    // 3 - 5 V - 2, hung between two resistors from 10 V: I = (10 - 5) / 300.
    Rig rig(4);
    rig.circuit.addSupply(1, 0, 10, 0.0);
    rig.circuit.addConductor(1, 2, 100);
    const int middle = rig.circuit.addSupply(2, 3, 5, 0.0);
    rig.circuit.addConductor(3, 0, 200);
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[middle], 5.0 / 300, 1e-16);
    EXPECT_NEAR(s.nodeVolt[2] - s.nodeVolt[3], 5, 1e-14);
}

TEST(Circuit, FloatingPartsCarryCurrentAndSayThatTheyFloat) {
    Rig rig(4);
    rig.circuit.addSupply(1, 0, 5);
    rig.circuit.addConductor(1, 0, 100);
    rig.circuit.addSupply(3, 2, 3, 0.5);
    const int load = rig.circuit.addConductor(3, 2, 29.5);
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[load], 0.1, 1e-15);
    EXPECT_EQ(s.floating, (std::vector<char>{0, 0, 1, 1}));
    EXPECT_LT(s.kirchhoffWorst, 1e-14);
}

TEST(Circuit, AntiSeriesJunctionsBlockAtEveryDrive) {
    for (double volt : {0.0, 1e-3, 5.0, 30.0}) {
        Rig rig(4);
        rig.circuit.addSupply(1, 0, volt, 0.01);
        const int first = rig.circuit.add(JunctionLaw(1e-18, 2, 5), {1, 2});
        rig.circuit.addConductor(2, 3, 0.05);
        rig.circuit.add(JunctionLaw(1e-18, 2, 5), {0, 3});
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved()) << volt;
        EXPECT_LE(std::abs(s.elementAmpere[first]), 40e-12) << volt;
        EXPECT_GE(s.nodeVolt[2], -1e-12) << volt;
        EXPECT_LE(s.nodeVolt[2], volt + 1e-12) << volt;
        const double before = s.nodeVolt[2];
        const CircuitSolution& warm = rig.again();
        EXPECT_NEAR(warm.nodeVolt[2], before, 1e-9) << volt;
        EXPECT_LE(warm.iterations, 2) << volt;
    }
}

TEST(Circuit, HundredVoltsAcrossAJunction) {
    // Closed form of a diode with a series resistor, T. C. Banwell and A. Jayakumar, Electronics Letters 36(4), 291 (2000); its
    // value for Is = 1e-14 A, n = 1, T = 300 K, 100 V, 1 kohm computed by us with 30 digits.
    Rig rig(3);
    rig.circuit.addSupply(1, 0, 100);
    const int resistor = rig.circuit.addConductor(1, 2, 1000);
    const double idealityAt300K = 300 / kBenchKelvin;
    rig.circuit.add(JunctionLaw(1e-14, idealityAt300K), {2, 0});
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[resistor], 0.0992263571984796, 1e-12);
    EXPECT_NEAR(s.nodeVolt[2], 0.773642801520363, 1e-12);
    EXPECT_LE(s.iterations, 9);
}

TEST(Circuit, JunctionRightAcrossASupplyMeetsTheLimit) {
    for (double ohm : {0.0, 0.01}) {
        for (double volt : {1.0, 5.0, 30.0}) {
            Rig rig(2);
            const int supply = rig.circuit.addSupply(1, 0, volt, ohm, 0.5);
            rig.circuit.add(JunctionLaw(1e-14, 1, 0), {1, 0});
            const CircuitSolution& s = rig.solve();
            ASSERT_TRUE(s.solved()) << ohm << " " << volt;
            EXPECT_NEAR(s.elementAmpere[supply], -0.5, 1e-12);
            EXPECT_NEAR(s.nodeVolt[1], kThermalVoltage * std::log(0.5 / 1e-14), 1e-9);
        }
    }
}

TEST(Circuit, ReverseVoltageLeaksAPicoampereAVolt) {
    Rig rig(2);
    rig.circuit.addSupply(1, 0, 5);
    const int junction = rig.circuit.add(JunctionLaw(1e-18, 2, 5), {0, 1});
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[junction], -5e-12, 1e-15);
}

TEST(Circuit, SameAnswerOverNineDecadesOfResistance) {
    // A chain of dividers whose values move by nine decades between solves: the order of pivots stays, the residual too.
    std::mt19937 random(11);
    std::uniform_real_distribution<double> exponent(-2, 7);
    for (int round = 0; round < 200; ++round) {
        constexpr int kNodes = 12;
        Rig rig(kNodes);
        rig.circuit.addSupply(1, 0, 12, 0.01);
        for (int node = 2; node < kNodes; ++node) {
            rig.circuit.addConductor(node - 1, node, std::pow(10, exponent(random)));
            rig.circuit.addConductor(node, static_cast<int>(random() % static_cast<unsigned>(node)),
                                     std::pow(10, exponent(random)));
        }
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved()) << round;
        double largest = 0;
        for (double current : s.elementAmpere) largest = std::max(largest, std::abs(current));
        EXPECT_LE(s.kirchhoffWorst, 1e-12 * std::max(largest, 1.0)) << round;
        EXPECT_LE(std::abs(s.powerBalance), 1e-12 * std::max(12 * largest, 1.0)) << round;
    }
}

TEST(Circuit, JunctionsAndResistorsAtRandomAlwaysSettle) {
    std::mt19937 random(7);
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    std::uniform_real_distribution<double> exponent(0, 6);
    int slowest = 0;
    for (int round = 0; round < 2000; ++round) {
        const int nodes = 3 + pick(10);
        Rig rig(nodes);
        rig.circuit.addSupply(1, 0, 1 + pick(30), pick(2) ? 0.01 : 0.0, 0.5);
        for (int k = 0; k < 3 * nodes; ++k) {
            const int a = pick(nodes), b = pick(nodes);
            if (pick(2))
                rig.circuit.addConductor(a, b, std::pow(10, exponent(random)));
            else
                rig.circuit.add(JunctionLaw(pick(2) ? 1e-18 : 2.5e-9, 2, pick(3) ? 5 : 0), {a, b});
        }
        if (pick(3) == 0) rig.circuit.addSupply(pick(nodes), pick(nodes), 1 + pick(12), 0.1, 0.2);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved()) << round;
        slowest = std::max(slowest, s.iterations);
        EXPECT_LE(s.kirchhoffWorst, 1e-11) << round;
        const std::vector<double> cold = s.elementAmpere;
        const CircuitSolution& warm = rig.again();
        ASSERT_TRUE(warm.solved()) << round;
        for (std::size_t e = 0; e < cold.size(); ++e) {
            EXPECT_NEAR(warm.elementAmpere[e], cold[e], 1e-12 + 1e-9 * std::abs(cold[e])) << round << " " << e;
        }
    }
    EXPECT_LE(slowest, 40);
}

TEST(Elements, TableIsComplete) {
    std::set<std::string_view> names;
    for (const ElementKind* kind : elementKinds()) {
        EXPECT_TRUE(names.insert(kind->name).second) << kind->name;
        EXPECT_GE(kind->terminals.size(), 2u) << kind->name;
        EXPECT_FALSE(kind->parameters.empty()) << kind->name;
        EXPECT_EQ(findElement(kind->name), kind);
    }
    EXPECT_EQ(findElement("flux capacitor"), nullptr);
}

}  // namespace
}  // namespace tiepoint
