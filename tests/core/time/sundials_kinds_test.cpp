// The laws that came with time, in circuits drawn at random, against a general library (see sundials_test.cpp): coils, field-effect transistors
// of both polarities, zener diodes, PNP transistors with what is under way through them, motors, membranes, light's currents, the air between
// contacts, and signal sources, whose sine the library gets as a function of time. The equations are written here once more.

#include <gtest/gtest.h>

#ifdef TIEPOINT_SUNDIALS

#include "core/base/constants.h"
#include "core/time/circuit_run.h"
#include "support/ida_oracle.h"

#include <cmath>
#include <numbers>
#include <random>

namespace tiepoint {
namespace {

/// Nodes 0 (0 V) and 1 (the supply), the others each with a capacitor and a resistor. The unknowns are their voltages, then the coils' currents,
/// the motors' speeds, the places of rest of membranes.
struct DrawnKinds {
    struct Pair {
        int a, b;
        double figure, other = 0;
    };
    struct Channel {
        int drain, gate, source;
        double threshold, strength, sign;
    };
    struct Bipolar {
        int collector, base, emitter;
        double gain, sign;
    };
    int nodes = 0;
    double volt = 5;
    std::vector<Pair> resistors, capacitors, coils, motors, membranes, zeners, lights, sparks, sources;
    std::vector<Channel> channels;
    std::vector<Bipolar> bipolars;

    static constexpr double kSaturation = 1e-14, kTransit = 2e-9, kReverseTransit = 50e-9, kEmitterFarad = 8e-12,
                            kCollectorFarad = 4e-12, kTestAmpere = 5e-3, kZenerOhm = 20, kSourceOhm = 50,
                            kMotorOhm = 10, kMotorConstant = 5.4e-3, kFriction = 2.7e-4, kCoilOhm = 47;

    explicit DrawnKinds(std::mt19937& random) {
        const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
        const auto decades = [&](double least, double most) {
            return least * std::pow(most / least, std::uniform_real_distribution<double>(0, 1)(random));
        };
        nodes = pick(4, 7);
        volt = decades(3, 12);
        const auto inner = [&] { return pick(2, nodes - 1); };
        for (int node = 2; node < nodes; ++node) {
            capacitors.push_back({node, 0, decades(1e-8, 1e-6)});
            resistors.push_back({node, node % 2 == 0 ? 1 : 0, decades(100, 1e4)});
            const int other = inner();
            if (other != node) resistors.push_back({node, other, decades(300, 3e4)});
        }
        const auto some = [&](int most, const auto& add) {
            for (int k = pick(0, most); k > 0; --k) add();
        };
        some(1, [&] { coils.push_back({inner(), 0, decades(1e-3, 0.3), decades(1, 50)}); });
        some(1, [&] { motors.push_back({inner(), 0, decades(1e-9, 1e-7)}); });
        some(1, [&] { membranes.push_back({inner(), 0, 0}); });
        some(1, [&] { zeners.push_back({0, inner(), decades(2.4, 6)}); });
        some(1, [&] { lights.push_back({inner(), 0, decades(1e-6, 1e-3)}); });
        some(1, [&] { sparks.push_back({inner(), 0, decades(60, 330)}); });
        some(1, [&] { sources.push_back({inner(), 0, decades(0.5, 3), decades(50, 2000)}); });
        some(2, [&] {
            const double sign = pick(0, 1) == 0 ? 1 : -1;
            const int gate = inner(), drain = inner();
            if (gate != drain)
                channels.push_back({drain, gate, sign > 0 ? 0 : 1, decades(0.8, 2), decades(1e-3, 0.1), sign});
        });
        some(2, [&] {
            const double sign = pick(0, 1) == 0 ? 1 : -1;
            // A PNP's emitter never straight on the supply, where nothing but itself would hold back the first inrush.
            const int base = inner(), collector = inner(), emitter = sign > 0 ? 0 : inner();
            if (base != collector && base != emitter && collector != emitter)
                bipolars.push_back({collector, base, emitter, decades(50, 300), sign});
        });
    }

    std::size_t unknowns() const {
        return static_cast<std::size_t>(nodes - 2) + coils.size() + motors.size() + membranes.size();
    }

    void residual(double second, const double* y, const double* slope, double* left) const {
        std::vector<double> v{0, volt}, rate{0, 0}, sum(static_cast<std::size_t>(nodes), 0.0);
        for (int node = 2; node < nodes; ++node) {
            v.push_back(y[node - 2]);
            rate.push_back(slope[node - 2]);
        }
        const auto flow = [&](int a, int b, double ampere) {
            sum[a] += ampere;
            sum[b] -= ampere;
        };
        const auto grown = [](double volts, double unit) { return std::exp(std::min(volts / unit, 600.0)); };
        for (const auto& r : resistors) flow(r.a, r.b, (v[r.a] - v[r.b]) / r.figure);
        for (const auto& c : capacitors) flow(c.a, c.b, c.figure * (rate[c.a] - rate[c.b]));
        for (const auto& z :
             zeners) {  // from anode a to cathode b; the breakdown's softness is its test current times its resistance
            const double across = v[z.a] - v[z.b];
            flow(z.a, z.b,
                 kSaturation * (grown(across, kThermalVoltage) - 1) -
                     kTestAmpere * grown(-(across + z.figure), kTestAmpere * kZenerOhm));
        }
        for (const auto& l : lights) flow(l.b, l.a, l.figure);
        for (const auto& s : sparks) {
            const double across = v[s.a] - v[s.b];
            flow(s.a, s.b, std::exp(-s.figure / 12) * (grown(across, 12) - grown(-across, 12)));
        }
        for (const auto& s : sources)
            flow(s.b, s.a,
                 (s.figure * std::sin(2 * std::numbers::pi * s.other * second) - (v[s.a] - v[s.b])) / kSourceOhm);
        for (const auto& m : channels) {
            const double unit = 2 * 1.3 * kThermalVoltage;
            const auto bent = [&](double over) {
                const double x = over / unit;
                return std::pow(unit * (x > 30 ? x : std::log1p(std::exp(x))), 2);
            };
            flow(m.drain, m.source,
                 m.sign * m.strength / 2 *
                     (bent(m.sign * (v[m.gate] - v[m.source]) - m.threshold) -
                      bent(m.sign * (v[m.gate] - v[m.drain]) - m.threshold)));
        }
        for (const auto& q : bipolars) {
            const double emitter = v[q.base] - v[q.emitter], collector = v[q.base] - v[q.collector];
            const double emitterRate = rate[q.base] - rate[q.emitter], collectorRate = rate[q.base] - rate[q.collector];
            const double there = kSaturation * (grown(q.sign * emitter, kThermalVoltage) - 1);
            const double back = kSaturation * (grown(q.sign * collector, kThermalVoltage) - 1);
            const double thereFarad = kTransit * (there + kSaturation) / kThermalVoltage,
                         backFarad = kReverseTransit * (back + kSaturation) / kThermalVoltage;
            flow(q.collector, q.emitter, q.sign * (there - back));
            flow(q.base, q.emitter, q.sign * there / q.gain + (kEmitterFarad + thereFarad) * emitterRate);
            flow(q.base, q.collector, q.sign * back / 2 + (kCollectorFarad + backFarad) * collectorRate);
        }
        int next = nodes - 2;
        for (const auto& c : coils) {
            flow(c.a, c.b, y[next]);
            left[next] = c.figure * slope[next] - (v[c.a] - v[c.b] - c.other * y[next]);
            ++next;
        }
        for (const auto& m : motors) {
            const double ampere = (v[m.a] - v[m.b] - kMotorConstant * y[next]) / kMotorOhm;
            flow(m.a, m.b, ampere);
            left[next] = m.figure * slope[next] -
                         (kMotorConstant * ampere - kFriction * std::tanh(y[next] / 10) - y[next] / 1e9);
            ++next;
        }
        for (const auto& m : membranes) {  // its place of rest follows with 10 ms, through a megohm
            flow(m.a, m.b, (v[m.a] - v[m.b]) / kCoilOhm + (v[m.a] - v[m.b] - y[next]) / 1e6);
            left[next] = 0.01 * slope[next] - (v[m.a] - v[m.b] - y[next]);
            ++next;
        }
        for (int node = 2; node < nodes; ++node) left[node - 2] = sum[node];
    }

    /// The same for the program; the nodes of speeds and places of rest follow those of the circuit.
    Circuit circuit(std::vector<int>& inside) const {
        using Figures = std::vector<double>;
        Circuit c;
        for (int node = 0; node < nodes; ++node) c.addNode();
        c.addSupply(1, 0, volt);
        for (const auto& r : resistors) c.addConductor(r.a, r.b, r.figure);
        for (const auto& each : capacitors) c.add(CapacitanceLaw(Figures{each.figure, 0, 0}), {each.a, each.b});
        for (const auto& z : zeners)
            c.add(ZenerLaw(Figures{kSaturation, 1, 0, z.figure, kTestAmpere, kZenerOhm}), {z.a, z.b});
        for (const auto& l : lights) c.add(PhotocurrentLaw(Figures{l.figure, Surroundings().lightLux}), {l.a, l.b});
        for (const auto& s : sparks) c.add(SparkLaw(s.figure), {s.a, s.b});
        for (const auto& m : channels)
            c.add(FieldEffectLaw(Figures{m.threshold, m.strength, 0, 1.3, m.sign}), {m.drain, m.gate, m.source});
        for (const auto& q : bipolars)
            c.add(TransistorLaw(Figures{q.gain, 2, kSaturation, 1, kTransit, kReverseTransit, kEmitterFarad,
                                        kCollectorFarad, q.sign}),
                  {q.collector, q.base, q.emitter});
        for (const auto& each : coils) c.add(InductanceLaw(Figures{each.figure, each.other, 0}), {each.a, each.b});
        for (const auto& m : motors) {
            inside.push_back(c.addNode());
            c.add(MotorLaw(Figures{kMotorOhm, kMotorConstant, m.figure, kFriction, 0}), {m.a, m.b, inside.back()});
            c.addConductor(inside.back(), 0, 1e9);
        }
        for (const auto& m : membranes) {
            inside.push_back(c.addNode());
            c.add(SounderLaw(Figures{kCoilOhm, 1e-3}), {m.a, m.b, inside.back()});
            c.addConductor(inside.back(), 0, 1e12);
        }
        for (const auto& s : sources) {
            const int phase = c.addNode();
            c.add(WaveLaw(Figures{s.figure, s.other, kSourceOhm, 0}), {s.a, s.b, phase});
            c.addConductor(phase, 0, 1e12);
        }
        return c;
    }
};

TEST(Sundials, TheLawsThatCameWithTime) {
    std::mt19937 random(77);
    int compared = 0, unsolved = 0;
    std::array<int, 9> drawnOf{};
    double worst = 0;
    for (int round = 0; round < 200; ++round) {
        const DrawnKinds drawn(random);
        const std::size_t counts[] = {drawn.coils.size(),    drawn.motors.size(),   drawn.membranes.size(),
                                      drawn.zeners.size(),   drawn.lights.size(),   drawn.sparks.size(),
                                      drawn.channels.size(), drawn.bipolars.size(), drawn.sources.size()};
        for (std::size_t k = 0; k < std::size(counts); ++k) drawnOf[k] += static_cast<int>(counts[k]);
        std::vector<int> inside;
        CircuitRun run(drawn.circuit(inside));
        // From nodes at 0 V: what hangs on the supply has its charge.
        const int supplyNode = 1;
        eachLaw(run.circuit().laws, [&]<class Law>(const LawBranches<Law>& branches) {
            if constexpr (Law::kCharges > 0) {
                for (const auto& b : branches) {
                    typename Law::Volts volts{};
                    for (int port = 0; port < Law::kPorts; ++port)
                        volts[port] = drawn.volt * ((b.nodes[Law::kPortEnds[port].from] == supplyNode) -
                                                    (b.nodes[Law::kPortEnds[port].to] == supplyNode));
                    const auto charges = b.law.chargesAt(volts);
                    for (int k = 0; k < Law::kCharges; ++k) run.state().stored[b.store + k] = charges.coulomb[k];
                }
            }
        });
        test::IdaOracle oracle(std::vector<double>(drawn.unknowns(), 0.0),
                               [&drawn](double second, const double* y, const double* slope, double* left) {
                                   drawn.residual(second, y, slope, left);
                               });
        ASSERT_TRUE(run.start(std::vector<char>(static_cast<std::size_t>(run.circuit().elementCount()), 1), 0))
            << round;
        const bool known = oracle.beside(run, 0.03, [&](double second) {
            const CircuitSolution& s = run.solution();
            for (int node = 2; node < drawn.nodes; ++node) {
                const double apart = std::abs(s.nodeVolt[node] - oracle.at(node - 2)) / drawn.volt;
                worst = std::max(worst, apart);
                EXPECT_LT(apart, 5e-4) << round << " node " << node << " at " << second;
            }
            const int firstInside = drawn.nodes - 2 + static_cast<int>(drawn.coils.size());
            for (std::size_t k = 0; k < inside.size(); ++k) {
                const double there = oracle.at(firstInside + static_cast<int>(k));
                EXPECT_NEAR(s.nodeVolt[inside[k]], there, 5e-4 * std::max(drawn.volt, std::abs(there)))
                    << round << " inside " << k << " at " << second;
            }
            EXPECT_LT(s.kirchhoffWorst, 1e-9);
            ++compared;
        });
        unsolved += !known;
    }
    EXPECT_GT(compared, 2000);
    EXPECT_LT(unsolved, 10) << "circuits that the library gave up on";
    for (const int count : drawnOf) EXPECT_GT(count, 50);
    RecordProperty("worstShare", std::to_string(worst));
}

}  // namespace
}  // namespace tiepoint

#endif
