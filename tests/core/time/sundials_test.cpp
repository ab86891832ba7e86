// Circuits drawn at random against a general library for such equations (SUNDIALS IDA, order up to five, a far tighter tolerance). The
// equations given to it are written here once more, from the laws of textbooks; nothing of the program's own is in them.
// Left out, and said so when the tests are configured, where the library isn't installed.

#include <gtest/gtest.h>

#ifdef TIEPOINT_SUNDIALS

#include "core/base/constants.h"
#include "core/time/circuit_run.h"
#include "support/ida_oracle.h"

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

/// Elements between nodes; node 0 is at 0 V, node 1 at the source's voltage. Every other node has a capacitor to node 0.
struct DrawnTransient {
    struct Resistor {
        int a, b;
        double ohm;
    };
    struct Diode {
        int anode, cathode;
        double saturation, ideality;
    };
    struct Transistor {
        int collector, base, emitter;
        double gain, reverse, saturation;
    };
    struct Capacitor {
        int a, b;
        double farad;
    };
    int nodes = 0;
    double volt = 5;
    std::vector<Resistor> resistors;
    std::vector<Diode> diodes;
    std::vector<Transistor> transistors;
    std::vector<Capacitor> capacitors;

    explicit DrawnTransient(std::mt19937& random) {
        const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
        const auto decades = [&](double least, double most) {
            return least * std::pow(most / least, std::uniform_real_distribution<double>(0, 1)(random));
        };
        nodes = pick(3, 7);
        volt = decades(2, 12);
        const auto other = [&](int than) {
            int node = than;
            while (node == than) node = pick(0, nodes - 1);
            return node;
        };
        for (int node = 2; node < nodes; ++node) {
            capacitors.push_back({node, 0, decades(1e-8, 1e-6)});
            resistors.push_back({node, node % 2 == 0 ? 1 : other(node), decades(300, 3e4)});
            if (pick(0, 1) == 0) resistors.push_back({node, other(node), decades(300, 3e4)});
            if (pick(0, 2) == 0) capacitors.push_back({node, other(node), decades(1e-8, 1e-6)});
            // Never straight on the source, where nothing but itself would hold back the first inrush.
            const int beside = other(node);
            if (pick(0, 1) == 0 && beside != 1)
                diodes.push_back({node, beside, decades(1e-15, 1e-9), 1 + 0.1 * pick(0, 9)});
        }
        for (int k = pick(0, 2); k > 0; --k) {
            const int base = pick(2, nodes - 1);
            transistors.push_back({other(base), base, 0, decades(20, 300), decades(1, 8), decades(1e-15, 1e-13)});
            if (transistors.back().collector == 0) transistors.pop_back();
        }
    }

    std::vector<double> volts(const double* unknown) const {
        std::vector<double> v{0, volt};
        for (int node = 2; node < nodes; ++node) v.push_back(unknown[node - 2]);
        return v;
    }

    /// What leaves each node: currents, and charges with their rates.
    void residual(const double* y, const double* slope, double* left) const {
        const std::vector<double> v = volts(y);
        std::vector<double> rate{0, 0}, sum(static_cast<std::size_t>(nodes), 0.0);
        for (int node = 2; node < nodes; ++node) rate.push_back(slope[node - 2]);
        const auto flow = [&](int a, int b, double ampere) {
            sum[a] += ampere;
            sum[b] -= ampere;
        };
        const auto grown = [](double across, double ideality) {
            return std::exp(std::min(across / (ideality * kThermalVoltage), 600.0)) - 1;
        };
        for (const auto& r : resistors) flow(r.a, r.b, (v[r.a] - v[r.b]) / r.ohm);
        for (const auto& c : capacitors) flow(c.a, c.b, c.farad * (rate[c.a] - rate[c.b]));
        for (const auto& d : diodes)
            flow(d.anode, d.cathode, d.saturation * grown(v[d.anode] - v[d.cathode], d.ideality));
        for (const auto& q : transistors) {
            const double there = q.saturation * grown(v[q.base] - v[q.emitter], 1);
            const double back = q.saturation * grown(v[q.base] - v[q.collector], 1);
            flow(q.collector, q.emitter, there - back);
            flow(q.base, q.emitter, there / q.gain);
            flow(q.base, q.collector, back / q.reverse);
        }
        for (int node = 2; node < nodes; ++node) left[node - 2] = sum[node];
    }

    Circuit circuit() const {
        Circuit c;
        for (int node = 0; node < nodes; ++node) c.addNode();
        c.addSupply(1, 0, volt);
        for (const auto& r : resistors) c.addConductor(r.a, r.b, r.ohm);
        for (const auto& each : capacitors)
            c.add(CapacitanceLaw(std::vector<double>{each.farad, 0, 0}), {each.a, each.b});
        for (const auto& d : diodes) c.add(JunctionLaw(d.saturation, d.ideality, 0), {d.anode, d.cathode});
        for (const auto& q : transistors)
            c.add(TransistorLaw(std::vector<double>{q.gain, q.reverse, q.saturation, 1, 0, 0, 0, 0}),
                  {q.collector, q.base, q.emitter});
        return c;
    }
};

TEST(Sundials, HundredsOfRandomCircuits) {
    std::mt19937 random(6041);
    int compared = 0, unsolved = 0;
    double worst = 0;
    for (int round = 0; round < 300; ++round) {
        const DrawnTransient drawn(random);
        test::IdaOracle oracle(
            std::vector<double>(static_cast<std::size_t>(drawn.nodes - 2), 0.0),
            [&drawn](double, const double* y, const double* slope, double* left) { drawn.residual(y, slope, left); });
        CircuitRun run(drawn.circuit());
        // From nodes at 0 V: what hangs on the source is charged. Capacitors come first among the stores.
        for (std::size_t k = 0; k < drawn.capacitors.size(); ++k) {
            const auto& c = drawn.capacitors[k];
            run.state().stored[k] = c.farad * drawn.volt * ((c.a == 1) - (c.b == 1));
        }
        ASSERT_TRUE(run.start(std::vector<char>(run.circuit().elementCount(), 1), 0)) << round;
        const bool known = oracle.beside(run, 0.05, [&](double second) {
            const CircuitSolution& s = run.solution();
            for (int node = 2; node < drawn.nodes; ++node) {
                const double apart = std::abs(s.nodeVolt[node] - oracle.at(node - 2)) / drawn.volt;
                worst = std::max(worst, apart);
                EXPECT_LT(apart, 5e-4) << round << " node " << node << " at " << second;
            }
            EXPECT_LT(s.kirchhoffWorst, 1e-9);
            ++compared;
        });
        unsolved += !known;
    }
    EXPECT_GT(compared, 3000);
    EXPECT_LT(unsolved, 15) << "circuits that the library gave up on";
    RecordProperty("worstShare", std::to_string(worst));
}

}  // namespace
}  // namespace tiepoint

#endif
