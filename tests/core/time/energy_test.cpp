// Energy through time: over circuits drawn at random with every law that stores something, what sources give is what is taken and what is
// stored. What is stored is reckoned from the laws' charges and fluxes alone, what is taken from their currents, each without the run's own
// bookkeeping of steps.

#include "core/time/circuit_run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

/// A law of the list by itself: what its stores hold, and what it takes for good.
template <class Law>
struct EnergyOf {
    const LawBranch<Law>& branch;
    const SolveState& state;
    const Circuit& circuit;

    /// Through each charge's voltage, by Simpson's rule: exact for a capacitance, close for what is under way through a base.
    double stored() const {
        double joule = 0;
        if constexpr (Law::kCharges > 0) {
            constexpr int kPieces = 400;
            const auto volts = inner();
            for (int k = 0; k < Law::kCharges; ++k) {
                const auto power = [&](double share) {
                    auto at = volts;
                    at[k] *= share;
                    return at[k] * branch.law.chargesAt(at).farad[k][k] * volts[k];
                };
                double sum = power(0) + power(1);
                for (int i = 1; i < kPieces; ++i) sum += (i % 2 == 1 ? 4 : 2) * power(i / double(kPieces));
                joule += sum / (3 * kPieces);
            }
        }
        if constexpr (Law::kFluxes > 0)
            for (int k = 0; k < Law::kFluxes; ++k) joule += windingAmpere(k) * fluxes().weber[k] / 2;
        return joule;
    }

    /// Along its paths, without what only goes into charges there, and in what stands in series with charges and windings.
    double takenWatt() const {
        constexpr LawWays<Law> kWays = waysOf<Law>();
        double watt = 0;
        for (int path = 0; path < Law::kPaths; ++path) {
            const TerminalPair ends = Law::kPathEnds[path];
            double ampere = state.pathAmpere[circuit.firstPath[branch.element] + path];
            for (int k = 0; k < Law::kCharges; ++k)
                if (kWays.ofCharge[k] == path) ampere -= state.storing[branch.store + k];
            watt += ampere * (state.nodeVolt[branch.nodes[ends.from]] - state.nodeVolt[branch.nodes[ends.to]]);
        }
        for (int k = 0; k < Law::kCharges; ++k)
            watt += branch.law.chargeOhm(k) * std::pow(state.storing[branch.store + k], 2);
        for (int k = 0; k < Law::kFluxes; ++k) watt += branch.law.windingOhm(k) * std::pow(windingAmpere(k), 2);
        return watt;
    }

private:
    typename Law::Volts inner() const {
        auto volts = voltsAcross(branch, state.nodeVolt);
        for (int k = 0; k < Law::kCharges; ++k) volts[k] -= branch.law.chargeOhm(k) * state.storing[branch.store + k];
        return volts;
    }
    double windingAmpere(int k) const {
        constexpr auto kWays = waysOf<Law>();
        return state.pathAmpere[circuit.firstPath[branch.element] + kWays.ofFlux[k]];
    }
    auto fluxes() const {
        std::array<double, Law::kFluxes> amperes{};
        for (int k = 0; k < Law::kFluxes; ++k) amperes[k] = windingAmpere(k);
        return branch.law.fluxesAt(amperes);
    }
};

struct EnergyNow {
    double givenWatt = 0, takenWatt = 0, throughWatt = 0;
};

/// A supply, nodes with resistors to it and to ground, and what is drawn between them.
class DrawnStores {
public:
    explicit DrawnStores(std::mt19937& random) : random_(random) {
        circuit.addSupply(plus, ground, decades(3, 12), decades(0.01, 1));
        for (int k = pick(2, 4); k > 0; --k) addNode();
        using Adds = void (DrawnStores::*)();
        constexpr Adds kAll[] = {&DrawnStores::addCapacitor, &DrawnStores::addCoil,     &DrawnStores::addTransistor,
                                 &DrawnStores::addChannel,   &DrawnStores::addMotor,    &DrawnStores::addSounder,
                                 &DrawnStores::addSource,    &DrawnStores::addJunctions};
        // Each of them in turn, so that none is left out, and others by chance.
        static int turn = 0;
        (this->*kAll[static_cast<std::size_t>(turn++) % std::size(kAll)])();
        for (int k = pick(1, 4); k > 0; --k) (this->*kAll[static_cast<std::size_t>(pick(0, 7))])();
        circuit.addConductor(any(), any(), decades(100, 1e5));
    }

    Circuit circuit;
    int ground = circuit.addNode(), plus = circuit.addNode();

private:
    int pick(int from, int to) { return std::uniform_int_distribution<int>(from, to)(random_); }
    double decades(double least, double most) {
        return least * std::pow(most / least, std::uniform_real_distribution<double>(0, 1)(random_));
    }
    int any() { return nodes_[static_cast<std::size_t>(pick(0, static_cast<int>(nodes_.size()) - 1))]; }
    int addNode() {
        const int node = circuit.addNode();
        circuit.addConductor(plus, node, decades(100, 3e4));
        circuit.addConductor(node, ground, decades(1e3, 1e5));
        nodes_.push_back(node);
        return node;
    }
    void store(int from, int to, double farad, double ohm) {
        circuit.add(CapacitanceLaw(std::vector<double>{farad, ohm, 0}), {from, to});
    }

    void addCapacitor() {
        const int from = any();
        store(from, pick(0, 1) == 0 || any() == from ? ground : addNode(), decades(1e-8, 1e-5), decades(0.01, 5));
    }
    void addCoil() {
        const int from = any();
        circuit.add(InductanceLaw(std::vector<double>{decades(1e-3, 1), decades(1, 100), 0}), {from, ground});
        store(from, ground, 20e-12, 10e3);
    }
    void addTransistor() {
        const int base = circuit.addNode(), sign = pick(0, 1) == 0 ? 1 : -1;
        circuit.addConductor(any(), base, decades(1e3, 1e5));
        circuit.add(TransistorLaw(std::vector<double>{decades(50, 400), 1, 1e-14, 1, 0.4e-9, 50e-9, 8e-12, 4e-12,
                                                      static_cast<double>(sign)}),
                    {any(), base, sign > 0 ? ground : plus});
    }
    void addChannel() {
        const int gate = circuit.addNode(), drain = any();
        circuit.addConductor(any(), gate, decades(1e3, 1e6));
        circuit.add(FieldEffectLaw(std::vector<double>{decades(1, 2.5), 0.1, 0, 1.3, 1}), {drain, gate, ground});
        circuit.addConductor(gate, ground, 100e9);
        store(gate, ground, 40e-12, 10);
        store(gate, drain, 5e-12, 10);
    }
    void addMotor() {
        const int top = circuit.addNode(), winding = circuit.addNode(), shaft = circuit.addNode();
        circuit.addConductor(plus, top, decades(1, 30));
        circuit.add(InductanceLaw(std::vector<double>{1e-3, 0, 0}), {top, winding});
        circuit.add(MotorLaw(std::vector<double>{10, 5.4e-3, decades(1e-8, 4e-7), 2.7e-4, 0}),
                    {winding, ground, shaft});
        circuit.addConductor(shaft, ground, 1e9);
        store(ground, top, 100e-12, 2000);
    }
    void addSounder() {
        const int top = circuit.addNode(), coil = circuit.addNode(), rest = circuit.addNode();
        circuit.addConductor(any(), top, decades(10, 1e3));
        circuit.add(InductanceLaw(std::vector<double>{20e-3, 0, 0}), {top, coil});
        circuit.add(SounderLaw(std::vector<double>{47, 1e-3}), {coil, ground, rest});
        circuit.addConductor(rest, ground, 1e12);
        store(ground, top, 100e-12, 5000);
    }
    void addSource() {
        const int out = circuit.addNode(), phase = circuit.addNode();
        circuit.add(
            WaveLaw(std::vector<double>{decades(0.5, 3), decades(50, 2000), 50, static_cast<double>(pick(0, 2))}),
            {out, ground, phase});
        circuit.addConductor(phase, ground, 1e12);
        circuit.addConductor(out, any(), decades(100, 1e4));
    }
    void addJunctions() {
        circuit.add(JunctionLaw(decades(1e-15, 1e-10), 1.5, decades(0.1, 5)), {any(), addNode()});
        circuit.add(ZenerLaw(std::vector<double>{1e-14, 1, 0.5, decades(2.4, 8), 5e-3, 20}), {ground, any()});
    }

    std::mt19937& random_;
    std::vector<int> nodes_;
};

class EnergyMeter {
public:
    explicit EnergyMeter(CircuitRun& run) : run_(run) {}

    EnergyNow now() {
        const CircuitSolution& solution = run_.solution();
        const Circuit& circuit = run_.circuit();
        EnergyNow now;
        for (const SupplyBranch& s : circuit.supplies) now.givenWatt -= solution.elementWatt[s.element];
        std::vector<char> stores(static_cast<std::size_t>(circuit.elementCount()), 0);
        for (const SupplyBranch& s : circuit.supplies) stores[s.element] = 1;
        eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
            if constexpr (Law::kCharges + Law::kFluxes > 0) {
                for (const auto& b : branches) {
                    stores[b.element] = 1;
                    now.takenWatt += EnergyOf<Law>{b, run_.state(), circuit}.takenWatt();
                }
            }
        });
        for (int e = 0; e < circuit.elementCount(); ++e) {
            if (!stores[e]) now.takenWatt += solution.elementWatt[e];
            now.throughWatt += std::abs(solution.elementWatt[e]) / 2;
        }
        return now;
    }
    double stored() {
        run_.solution();
        double joule = 0;
        eachLaw(run_.circuit().laws, [&]<class Law>(const LawBranches<Law>& branches) {
            if constexpr (Law::kCharges + Law::kFluxes > 0)
                for (const auto& b : branches) joule += EnergyOf<Law>{b, run_.state(), run_.circuit()}.stored();
        });
        return joule;
    }

private:
    CircuitRun& run_;
};

TEST(Energy, GivenIsTakenOrStoredInCircuitsDrawnAtRandom) {
    constexpr double kRelative = 1e-5, kUntil = 0.02;
    constexpr int kMostPieces = 3000;
    std::mt19937 random(815);
    int followed = 0;
    double worst = 0;
    for (int round = 0; round < 200; ++round) {
        DrawnStores drawn(random);
        CircuitRun run(drawn.circuit, Tolerance{kRelative, kRelative * 1e-2, kRelative * 1e-4});
        ASSERT_TRUE(
            run.start(std::vector<char>(static_cast<std::size_t>(drawn.circuit.elementCount()), 1), drawn.ground))
            << round;
        ASSERT_TRUE(run.advanceTo(1e-8)) << round;
        EnergyMeter meter(run);
        const double before = meter.stored();
        double given = 0, taken = 0, through = 0;
        for (int piece = 0; piece < kMostPieces && run.second() < kUntil; ++piece) {
            ASSERT_TRUE(run.makeStep()) << round << " at " << run.second();
            const double from = run.second(), to = std::min(kUntil, run.smoothUntil());
            if (!(to > from)) continue;
            // Boole's rule over the smooth piece; its end belongs to it, not to what happens there.
            constexpr double kWeights[] = {7, 32, 12, 32, 7};
            for (int at = 0; at <= 4; ++at) {
                const double share = at == 4 ? 1 - 1e-9 : at / 4.0;
                ASSERT_TRUE(run.advanceTo(from + share * (to - from))) << round << " at " << run.second();
                const EnergyNow now = meter.now();
                const double seconds = (to - from) * kWeights[at] / 90;
                given += seconds * now.givenWatt;
                taken += seconds * now.takenWatt;
                through += seconds * now.throughWatt;
            }
            ASSERT_TRUE(run.advanceTo(to)) << round << " at " << run.second();
        }
        const double apart = std::abs(given - taken - (meter.stored() - before));
        EXPECT_GT(through, 0) << round;
        EXPECT_LT(apart, 10 * kRelative * through) << round << " of " << through << " J until " << run.second();
        worst = std::max(worst, apart / (kRelative * through));
        followed += run.second() >= kUntil;
    }
    EXPECT_GT(followed, 150);
    RecordProperty("worstInTolerances", std::to_string(worst));
}

}  // namespace
}  // namespace tiepoint
