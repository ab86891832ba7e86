// The transistor: its law against figures reckoned from the equations, circuits against a textbook, and against closed forms.
//
// Sources: Ebers-Moll, transport form (J. J. Ebers, J. L. Moll, Proc. IRE 42 (1954) 1761-1772); biasing: T. R. Kuphaldt, Lessons in
// Electric Circuits, Vol. III, 5th ed., ch. 4, "Biasing calculations", whose transistor has a base-emitter voltage of 0.7 V.

#include "core/circuit/transistor_law.h"
#include "core/solve/circuit_solver.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

constexpr double kSaturation = 1e-14;
constexpr double kNoLeak = 1e-30;  // S: the bare equations

TransistorLaw npn(double gain = 100, double reverseGain = 1, double saturation = kSaturation, double ideality = 1) {
    return TransistorLaw(std::vector<double>{gain, reverseGain, saturation, ideality, 0, 0, 0, 0});
}

struct TransistorRig {
    Circuit circuit;
    CircuitSolver solver;
    int node() { return circuit.addNode(); }
    const CircuitSolution& solve() {
        solver = CircuitSolver(circuit);
        return solver.solve(std::vector<char>(circuit.elementCount(), 1), 0);
    }
};

TEST(Transistor, FollowsEbersAndMoll) {
    // Figures at 300 K, reckoned from the form's equations with 30 digits; here the temperature is the bench's, so the ideality makes up.
    constexpr double kKelvin = 300;
    const TransistorLaw law = npn(100, 1, kSaturation, kKelvin / kBenchKelvin);
    const struct {
        double vbe, vbc, collector, base;
    } points[] = {{0.65, -4.35, 8.30843834787e-4, 8.30843833767e-6}, {0.70, 0.50, 5.74252619284e-3, 5.99852060103e-5}};
    for (const auto& p : points) {
        const auto [transported, emitter, collector] = law.tangentAt({p.vbe, p.vbc}, 0, kNoLeak).ampere;
        EXPECT_NEAR(transported - collector, p.collector, 2e-11 * p.collector);
        EXPECT_NEAR(emitter + collector, p.base, 2e-9 * p.base);
    }
}

TEST(Transistor, IsReciprocal) {
    // aF IES = aR ICS = Is (Ebers and Moll): what either junction alone sends through the base is the same function of its voltage.
    const TransistorLaw law = npn(200, 3);
    for (const double volt : {0.3, 0.5, 0.6, 0.7}) {
        const auto there = law.tangentAt({volt, 0}, 0, kNoLeak).ampere,
                   back = law.tangentAt({0, volt}, 0, kNoLeak).ampere;
        EXPECT_DOUBLE_EQ(there[0], -back[0]);
        EXPECT_NEAR(there[1] * 200, there[0], 1e-12 * there[0]);
        EXPECT_NEAR(back[2] * 3, -back[0], 1e-12 * there[0]);
    }
}

/// A transistor that holds 0.7 V at 1 mA, more or less, as the textbook's does at any current.
TEST(Transistor, IsBiasedAsTheTextbookReckons) {
    const struct {
        double baseVolt, baseOhm, emitterOhm, gain, emitterAmpere;
    } circuits[] = {
        {10, 910e3, 0, 100, 1.02e-3},   {10, 910e3, 0, 300, 3.07e-3},   {10, 870e3, 470, 100, 1.01e-3},
        {10, 870e3, 470, 300, 2.76e-3}, {2, 82e3, 470, 100, 1.01e-3},   {2, 82e3, 470, 300, 1.75e-3},
        {2, 39e3, 910, 300, 1.25e-3},   {1.5, 33e3, 470, 100, 1.00e-3}, {1.5, 33e3, 470, 300, 1.38e-3},
    };
    for (const auto& c : circuits) {
        TransistorRig rig;
        const int ground = rig.node(), collector = rig.node(), drive = rig.node(), base = rig.node();
        const int emitter = c.emitterOhm > 0 ? rig.node() : ground;
        rig.circuit.addSupply(collector, ground, 10, 0.01);
        rig.circuit.addSupply(drive, ground, c.baseVolt, 0.01);
        rig.circuit.addConductor(drive, base, c.baseOhm);
        if (c.emitterOhm > 0) rig.circuit.addConductor(emitter, ground, c.emitterOhm);
        const double saturation = 1e-3 / std::exp(0.7 / kThermalVoltage);
        const int q = rig.circuit.add(npn(c.gain, 1, saturation), {collector, base, emitter});
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved());
        const double out = -s.terminalAmpere[rig.circuit.firstTerminal[q] + TransistorLaw::kEmitter];
        EXPECT_NEAR(out, c.emitterAmpere, 0.035 * c.emitterAmpere) << c.baseOhm << " " << c.gain;
        // And exactly, by the equations: Ie = Ib (gain + 1), what is left of the drive stands at the junction.
        const double in = s.terminalAmpere[rig.circuit.firstTerminal[q] + TransistorLaw::kBase];
        const double leak = 10 * kJunctionLeakSiemens * (c.gain + 1);  // of the collector's junction, amplified
        EXPECT_NEAR(out, in * (c.gain + 1), 1.1 * leak);
        const double junction = kThermalVoltage * std::log(in * c.gain / saturation);
        EXPECT_NEAR(c.baseVolt - in * (c.baseOhm + 0.01) - out * c.emitterOhm, junction, 1e-5);
        EXPECT_LE(s.iterations, 12);
    }
}

TEST(Transistor, SaturatesAsAClosedFormSays) {
    // D. A. Steck, Analog and Digital Electronics, ch. 4 (authorship from memory): 5 V, 330 ohm and an LED of 1.8 V, 1 kohm to the base: the
    // collector is at 0.2 V there and 9.1 mA flow. Here the saturation voltage follows from the currents (reciprocal form):
    // Vce = Vt ln((1/aR + Ic/(Ib bR)) / (1 - Ic/(Ib bF))), aR = bR / (1 + bR).
    TransistorRig rig;
    const int ground = rig.node(), plus = rig.node(), base = rig.node(), anode = rig.node(), collector = rig.node();
    rig.circuit.addSupply(plus, ground, 5, 0.01);
    rig.circuit.addConductor(plus, base, 1000);
    rig.circuit.addConductor(plus, anode, 330);
    rig.circuit.add(JunctionLaw(9.1e-3 / std::expm1(1.8 / (2 * kThermalVoltage)), 2), {anode, collector});
    const int q = rig.circuit.add(npn(100, 1), {collector, base, ground});
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    const int first = rig.circuit.firstTerminal[q];
    const double ic = s.terminalAmpere[first], ib = s.terminalAmpere[first + 1];
    const double expected = kThermalVoltage * std::log((2 + ic / ib) / (1 - ic / (100 * ib)));
    EXPECT_NEAR(s.nodeVolt[collector], expected, 1e-9);
    EXPECT_NEAR(ic, 0.0091, 0.0006);
    EXPECT_LT(s.nodeVolt[collector], 0.2);
}

TEST(Transistor, MirrorsACurrent) {
    // Two alike with their bases joined: the output takes Iref / (1 + 2 / gain) (from memory; any textbook of analogue circuits).
    TransistorRig rig;
    const int ground = rig.node(), plus = rig.node(), reference = rig.node(), out = rig.node();
    rig.circuit.addSupply(plus, ground, 12);
    const int feed = rig.circuit.addConductor(plus, reference, 10e3);
    rig.circuit.addConductor(plus, out, 1e3);
    rig.circuit.add(npn(), {reference, reference, ground});
    const int mirror = rig.circuit.add(npn(), {out, reference, ground});
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[mirror], s.elementAmpere[feed] / 1.02, 1e-6 * s.elementAmpere[feed]);
}

TEST(ControlledSource, AmplifiesAsAClosedFormSays) {
    // Gain G R, and fed back through a divider: A / (1 + A b).
    for (const double siemens : {1e-3, 1.0, 1e3}) {
        for (const bool fedBack : {false, true}) {
            TransistorRig rig;
            const int ground = rig.node(), in = rig.node(), out = rig.node(), back = rig.node();
            rig.circuit.addSupply(in, ground, 0.01);
            rig.circuit.addConductor(out, ground, 1e3);
            rig.circuit.addConductor(out, back, 90e3);
            rig.circuit.addConductor(back, ground, 10e3);
            const ControlledSourceLaw law(std::vector<double>{siemens});
            const int source = rig.circuit.add(law, {ground, out, in, fedBack ? back : ground});
            const CircuitSolution& s = rig.solve();
            ASSERT_TRUE(s.solved());
            const double ohm = 1 / (1 / 1e3 + 1 / 100e3), open = siemens * ohm;
            const double expected = 0.01 * open / (fedBack ? 1 + open * 0.1 : 1);
            EXPECT_NEAR(s.nodeVolt[out], expected, 1e-12 * std::max(1.0, expected)) << siemens;
            EXPECT_EQ(s.terminalAmpere[rig.circuit.firstTerminal[source] + 2], 0) << "the input draws nothing";
        }
    }
}

TEST(ControlledSource, DrivesWhatNoSupplyTouches) {
    // A current into a loop of its own, known only from the input: 2 mA through 1 kohm.
    TransistorRig rig;
    const int ground = rig.node(), in = rig.node(), a = rig.node(), b = rig.node();
    rig.circuit.addSupply(in, ground, 2);
    rig.circuit.addConductor(in, ground, 1e3);
    const int loop = rig.circuit.addConductor(b, a, 1e3);
    rig.circuit.add(ControlledSourceLaw(std::vector<double>{1e-3}), {a, b, in, ground});
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[loop], 2e-3, 1e-15);
    EXPECT_TRUE(s.floating[a] && s.floating[b] && !s.floating[in]);
}

struct ComparatorRig : TransistorRig {
    int ground = node(), plus = node(), out = node(), middle = node();
    ComparatorRig() {
        circuit.addSupply(plus, ground, 5);
        circuit.addConductor(plus, middle, 10e3);
        circuit.addConductor(middle, ground, 10e3);
        circuit.addConductor(out, ground, 1e6);
    }
    void compare(int high, int low, double hysteresis = 0.01) {
        circuit.add(ComparatorLaw(std::vector<double>{5, 0, 100, hysteresis, 1e-6}), {out, ground, high, low});
    }
};

TEST(Comparator, SettlesItsBit) {
    for (const bool up : {true, false}) {
        ComparatorRig rig;
        rig.compare(up ? rig.plus : rig.middle, up ? rig.middle : rig.plus);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved());
        EXPECT_NEAR(s.nodeVolt[rig.out], up ? 5 * 1e6 / (1e6 + 100) : 0, 1e-12);
    }
}

TEST(Comparator, FedBackAgainstItselfNeverRests) {
    ComparatorRig rig;
    rig.compare(rig.middle, rig.out);  // low, so it should be high; high, so it should be low
    const CircuitSolution& s = rig.solve();
    EXPECT_EQ(s.trouble, Trouble::NeverRests);
    ASSERT_EQ(s.troubleElements.size(), 1u);
    EXPECT_EQ(s.troubleElements[0], rig.circuit.branches<ComparatorLaw>()[0].element);
}

}  // namespace
}  // namespace tiepoint
