// Circuits with more than one state of rest, none that would be reached, and sound ones beside them; and supplies at their limits where laws
// feed back, against every combination of roles solved by Eigen.

#include "core/solve/circuit_solver.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

TransistorLaw smallSignal(double gain = 150) {
    return TransistorLaw(std::vector<double>{gain, 2, 1e-14, 1, 0, 0, 0, 0});
}

struct RestRig {
    Circuit circuit;
    CircuitSolver solver;
    int ground = circuit.addNode(), plus = circuit.addNode();
    explicit RestRig(double volt = 5) { circuit.addSupply(plus, ground, volt, 0.01, 0.5); }
    int node() { return circuit.addNode(); }
    void resist(int a, int b, double ohm) { circuit.addConductor(a, b, ohm); }
    int transistor(int collector, int base, int emitter, double gain = 150) {
        return circuit.add(smallSignal(gain), {collector, base, emitter});
    }
    const CircuitSolution& solve() {
        solver = CircuitSolver(circuit);
        return solver.solve(std::vector<char>(circuit.elementCount(), 1), ground);
    }
};

/// Two transistors whose collectors feed each other's base.
std::array<int, 2> addPair(RestRig& rig, double firstOhm, double secondOhm, double baseOhm) {
    const int c1 = rig.node(), c2 = rig.node(), b1 = rig.node(), b2 = rig.node();
    rig.resist(rig.plus, c1, firstOhm);
    rig.resist(rig.plus, c2, secondOhm);
    rig.resist(c1, b2, baseOhm);
    rig.resist(c2, b1, baseOhm);
    return {rig.transistor(c1, b1, rig.ground), rig.transistor(c2, b2, rig.ground)};
}

TEST(Rest, ABistablePairHasMoreThanOneStateAndIsNamed) {
    for (const double second : {1e3, 1.02e3, 1.5e3, 3e3}) {
        RestRig rig;
        const auto pair = addPair(rig, 1e3, second, 10e3);
        const CircuitSolution& s = rig.solve();
        EXPECT_EQ(s.trouble, Trouble::ManyRests) << second;
        EXPECT_EQ(s.troubleElements, std::vector<int>(pair.begin(), pair.end())) << second;
    }
}

TEST(Rest, TwoPairsOnOneSupplyDontHideEachOther) {
    // Two growing modes: the sign of the determinant is that of a sound circuit.
    RestRig rig;
    addPair(rig, 1e3, 1e3, 10e3);
    addPair(rig, 1e3, 1e3, 10e3);
    const CircuitSolution& s = rig.solve();
    EXPECT_EQ(s.trouble, Trouble::ManyRests);
    EXPECT_GE(s.troubleElements.size(), 2u);
}

TEST(Rest, APairTooWeakToHoldItselfRests) {
    // The same with so little gain round the loop that it holds nothing.
    RestRig rig;
    const int c1 = rig.node(), c2 = rig.node(), b1 = rig.node(), b2 = rig.node();
    rig.resist(rig.plus, c1, 1e3);
    rig.resist(rig.plus, c2, 1e3);
    rig.resist(c1, b2, 10e6);
    rig.resist(c2, b1, 10e6);
    const int q = rig.transistor(c1, b1, rig.ground, 20);
    rig.transistor(c2, b2, rig.ground, 20);
    const CircuitSolution& s = rig.solve();
    ASSERT_TRUE(s.solved());
    EXPECT_NEAR(s.elementAmpere[q], 20 * (5 - 0.5) / 10e6, 2e-6);
}

TEST(Rest, SoundAmplifiersRest) {
    const struct {
        const char* name;
        void (*build)(RestRig&);
    } circuits[] = {
        {"emitter follower",
         [](RestRig& r) {
             const int b = r.node(), e = r.node();
             r.resist(r.plus, b, 10e3), r.resist(b, r.ground, 10e3), r.resist(e, r.ground, 1e3);
             r.transistor(r.plus, b, e);
         }},
        {"common emitter",
         [](RestRig& r) {
             const int b = r.node(), e = r.node(), c = r.node();
             r.resist(r.plus, b, 47e3), r.resist(b, r.ground, 10e3), r.resist(e, r.ground, 330),
                 r.resist(r.plus, c, 1e3);
             r.transistor(c, b, e);
         }},
        {"feedback from the collector",
         [](RestRig& r) {
             const int b = r.node(), c = r.node();
             r.resist(r.plus, c, 2.2e3), r.resist(c, b, 220e3);
             r.transistor(c, b, r.ground);
         }},
        {"current mirror",
         [](RestRig& r) {
             const int b = r.node(), c = r.node();
             r.resist(r.plus, b, 4.7e3), r.resist(r.plus, c, 1e3);
             r.transistor(b, b, r.ground), r.transistor(c, b, r.ground);
         }},
        {"long-tailed pair",
         [](RestRig& r) {
             const int b = r.node(), c = r.node(), d = r.node(), e = r.node();
             r.resist(r.plus, b, 10e3), r.resist(b, r.ground, 10e3), r.resist(r.plus, c, 2.2e3);
             r.resist(r.plus, d, 2.2e3), r.resist(e, r.ground, 2.2e3);
             r.transistor(c, b, e), r.transistor(d, b, e);
         }},
        {"two in a row, the second fed back to the first's emitter",
         [](RestRig& r) {
             const int b = r.node(), c = r.node(), e = r.node(), d = r.node();
             r.resist(r.plus, b, 100e3), r.resist(b, r.ground, 22e3), r.resist(r.plus, c, 22e3);
             r.resist(e, r.ground, 1e3), r.resist(r.plus, d, 2.2e3), r.resist(d, e, 22e3);
             const int f = r.node();
             r.resist(f, r.ground, 2.2e3);
             r.transistor(c, b, e), r.transistor(d, c, f);
         }},
        {"three as one (Darlington)",
         [](RestRig& r) {
             const int b = r.node(), e = r.node(), f = r.node(), g = r.node();
             r.resist(r.plus, b, 1e6), r.resist(g, r.ground, 470);
             r.transistor(r.plus, b, e), r.transistor(r.plus, e, f), r.transistor(r.plus, f, g);
         }},
        {"a switch, hard on",
         [](RestRig& r) {
             const int b = r.node(), c = r.node();
             r.resist(r.plus, b, 1e3), r.resist(r.plus, c, 330);
             r.transistor(c, b, r.ground);
         }},
        {"a switch, off",
         [](RestRig& r) {
             const int b = r.node(), c = r.node();
             r.resist(r.ground, b, 1e3), r.resist(r.plus, c, 330);
             r.transistor(c, b, r.ground);
         }},
    };
    for (const auto& each : circuits) {
        SCOPED_TRACE(each.name);
        RestRig rig;
        each.build(rig);
        const CircuitSolution& s = rig.solve();
        ASSERT_TRUE(s.solved()) << static_cast<int>(s.trouble);
        EXPECT_LT(s.kirchhoffWorst, 1e-9);
        EXPECT_LT(std::abs(s.powerBalance), 1e-9);
        EXPECT_LE(s.iterations, 40);
        // What was solved before doesn't matter.
        const std::vector<double> first = s.elementAmpere;
        std::fill(rig.solver.touchVolts().begin(), rig.solver.touchVolts().end(), -1.0);
        const CircuitSolution& again = rig.solver.solve(std::vector<char>(rig.circuit.elementCount(), 1), rig.ground);
        ASSERT_TRUE(again.solved());
        EXPECT_EQ(again.elementAmpere, first);
    }
}

/// Two transistors on one emitter resistor, which switch over with hysteresis: between the two thresholds there are two states of rest.
TEST(Rest, ATriggerRestsOutsideOfItsHysteresis) {
    const auto at = [](double volt) {
        RestRig rig(12);
        const int in = rig.node(), c1 = rig.node(), b2 = rig.node(), c2 = rig.node(), e = rig.node();
        rig.circuit.addSupply(in, rig.ground, volt, 0.01);
        rig.resist(rig.plus, c1, 4.7e3), rig.resist(rig.plus, c2, 1e3), rig.resist(e, rig.ground, 470);
        rig.resist(c1, b2, 10e3), rig.resist(b2, rig.ground, 22e3);
        rig.transistor(c1, in, e), rig.transistor(c2, b2, e);
        const CircuitSolution& s = rig.solve();
        return std::pair(s.trouble, s.solved() ? s.nodeVolt[c2] : NAN);
    };
    EXPECT_EQ(at(0.5).first, Trouble::None);
    EXPECT_EQ(at(7).first, Trouble::None);
    EXPECT_GT(at(7).second - at(0.5).second, 2) << "low, the second conducts; high, the first";
    int many = 0;
    for (double volt = 0.5; volt < 7; volt += 0.1) many += at(volt).first == Trouble::ManyRests;
    EXPECT_GT(many, 2);
    EXPECT_LT(many, 40);
}

// --- limits ---

/// Resistors, controlled sources and supplies with limits at random. Each combination of roles is a linear circuit.
struct DrawnLimits {
    struct Supply {
        int plus, minus;
        double emf, ohm, limit;
    };
    struct Resistor {
        int a, b;
        double siemens;
    };
    struct Source {
        int out, back, plus, minus;
        double siemens;
    };
    int nodes = 0;
    std::vector<Supply> supplies;
    std::vector<Resistor> resistors;
    std::vector<Source> sources;

    explicit DrawnLimits(std::mt19937& random) {
        const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
        nodes = 3 + pick(4);
        for (int node = 1; node < nodes; ++node) resistors.push_back({node, pick(node), 1.0 / (10 + pick(1000))});
        for (int k = 0; k < nodes; ++k) resistors.push_back({pick(nodes), pick(nodes), 1.0 / (10 + pick(1000))});
        for (int k = 0, count = 2 + pick(3); k < count; ++k) {
            const int plus = 1 + pick(nodes - 1);
            supplies.push_back(
                {plus, pick(2) ? 0 : (plus + 1) % nodes, 1.0 + pick(12), 0.1 + pick(5), 0.005 * (1 + pick(8))});
        }
        for (int k = 0, count = 1 + pick(3); k < count; ++k)
            sources.push_back({pick(nodes), 0, pick(nodes), pick(nodes), (pick(2) ? 1 : -1) * 0.001 * (1 + pick(60))});
    }

    Circuit circuit() const {
        Circuit c;
        for (int node = 0; node < nodes; ++node) c.addNode();
        for (const Supply& s : supplies) c.addSupply(s.plus, s.minus, s.emf, s.ohm, s.limit);
        for (const Resistor& r : resistors) c.addConductor(r.a, r.b, 1 / r.siemens);
        for (const Source& s : sources)
            c.add(ControlledSourceLaw(std::vector<double>{s.siemens}), {s.out, s.back, s.plus, s.minus});
        return c;
    }

    struct Answer {
        bool fits = false, grows = false;
        Eigen::VectorXd volt;
    };
    /// roles: 0 holds, -1 gives its limit, 1 takes it.
    Answer solve(const std::vector<int>& roles) const {
        Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(nodes, nodes);
        Eigen::VectorXd right = Eigen::VectorXd::Zero(nodes);
        const auto conduct = [&](int a, int b, double g) {
            matrix(a, a) += g, matrix(b, b) += g, matrix(a, b) -= g, matrix(b, a) -= g;
        };
        for (const Resistor& r : resistors)
            if (r.a != r.b) conduct(r.a, r.b, r.siemens);
        for (const Source& s : sources) {
            matrix(s.out, s.plus) += s.siemens, matrix(s.out, s.minus) -= s.siemens;
            matrix(s.back, s.plus) -= s.siemens, matrix(s.back, s.minus) += s.siemens;
        }
        for (std::size_t k = 0; k < supplies.size(); ++k) {
            const Supply& s = supplies[k];
            const double ampere = roles[k] == 0 ? s.emf / s.ohm : -roles[k] * s.limit;
            if (roles[k] == 0) conduct(s.plus, s.minus, 1 / s.ohm);
            right[s.plus] += ampere, right[s.minus] -= ampere;
        }
        const int rest = nodes - 1;
        const Eigen::MatrixXd inner = matrix.bottomRightCorner(rest, rest);
        Answer answer;
        answer.volt = Eigen::VectorXd::Zero(nodes);
        answer.volt.tail(rest) = inner.fullPivLu().solve(right.tail(rest));
        answer.grows = (inner.eigenvalues().real().array() < 1e-9).any() || inner.determinant() <= 0;
        answer.fits = true;
        for (std::size_t k = 0; k < supplies.size(); ++k) {
            const Supply& s = supplies[k];
            const double across = answer.volt[s.plus] - answer.volt[s.minus];
            const double slack = 1e-7 * std::max(1.0, std::abs(across));
            const double ampere = (across - s.emf) / s.ohm;  // into plus
            if (roles[k] == 0 && std::abs(ampere) > s.limit * (1 + 1e-7)) answer.fits = false;
            const double held = s.emf + s.ohm * roles[k] * s.limit;
            if (roles[k] < 0 && across > held + slack) answer.fits = false;
            if (roles[k] > 0 && across < held - slack) answer.fits = false;
        }
        return answer;
    }
};

TEST(Rest, LimitsAreSettledWhereLawsFeedBack) {
    std::mt19937 random(1974);
    int solved = 0, contend = 0, many = 0;
    for (int round = 0; round < 3000; ++round) {
        const DrawnLimits drawn(random);
        std::vector<DrawnLimits::Answer> fitting;
        bool anyGrows = false;
        int combinations = 1;
        for (std::size_t k = 0; k < drawn.supplies.size(); ++k) combinations *= 3;
        for (int c = 0; c < combinations; ++c) {
            std::vector<int> roles;
            for (int rest = c, k = 0; k < static_cast<int>(drawn.supplies.size()); ++k, rest /= 3)
                roles.push_back(rest % 3 - 1);
            const auto answer = drawn.solve(roles);
            if (!answer.fits) continue;
            fitting.push_back(answer);
            anyGrows = anyGrows || answer.grows;
        }
        const Circuit circuit = drawn.circuit();
        CircuitSolver solver(circuit);
        const CircuitSolution& s = solver.solve(std::vector<char>(circuit.elementCount(), 1), 0);
        if (s.solved()) {
            ++solved;
            double nearest = INFINITY;
            for (const auto& answer : fitting) {
                double apart = 0;
                for (int node = 0; node < drawn.nodes; ++node)
                    apart = std::max(apart, std::abs(answer.volt[node] - s.nodeVolt[node]));
                nearest = std::min(nearest, apart / std::max(1.0, answer.volt.cwiseAbs().maxCoeff()));
            }
            EXPECT_LT(nearest, 1e-6) << round << ": none of " << fitting.size() << " fitting answers";
        } else if (s.trouble == Trouble::ManyRests) {
            ++many;
            EXPECT_TRUE(anyGrows || fitting.size() > 1) << round;
        } else {
            ++contend;
            EXPECT_TRUE(fitting.empty()) << round << " " << static_cast<int>(s.trouble);
        }
        if (HasFailure()) return;
    }
    EXPECT_GT(solved, 1500);
    EXPECT_GT(many, 10);
}

}  // namespace
}  // namespace tiepoint
