#include "core/time/bench_run.h"

#include "core/base/spread_hash.h"
#include "core/circuit/element.h"
#include "core/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

constexpr double kUnevenVolt = 1e-6;

/// As what the charges of a law are remembered.
template <class Law>
constexpr Memory kHeldBy = Turns<Law> ? Memory::Speed : Memory::Voltage;

/// Visits all that parts remember in a circuit, in the order of its elements:
/// volts(branch, part, first place), amperes(branch, part, first place), bits(branch, part, first place).
template <class Volts, class Amperes, class Bits>
void eachMemory(const Circuit& circuit, const std::vector<CompiledElement>& elements, Volts volts, Amperes amperes,
                Bits bits) {
    // Places count within a part: by sort, in the order of its model.
    struct Counts {
        int volt = 0, ampere = 0, bit = 0;
    };
    std::vector<Counts> countOf(elements.size());
    eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        for (const LawBranch<Law>& b : branches) {
            if (b.element >= static_cast<int>(elements.size())) continue;
            countOf[b.element] = {Law::kCharges > 0 ? Law::kPorts : 0, Law::kFluxes, Law::kBits};
        }
    });
    std::vector<Counts> firstOf(elements.size());
    for (std::size_t e = 1; e < elements.size(); ++e) {  // elements of a part follow each other
        if (elements[e].part != elements[e - 1].part) continue;
        firstOf[e] = {firstOf[e - 1].volt + countOf[e - 1].volt, firstOf[e - 1].ampere + countOf[e - 1].ampere,
                      firstOf[e - 1].bit + countOf[e - 1].bit};
    }
    eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        for (const LawBranch<Law>& b : branches) {
            if (b.element >= static_cast<int>(elements.size())) continue;
            const int part = elements[b.element].part;
            if constexpr (Law::kCharges > 0) volts(b, part, firstOf[b.element].volt);
            if constexpr (Law::kFluxes > 0) amperes(b, part, firstOf[b.element].ampere);
            if constexpr (Law::kBits > 0) bits(b, part, firstOf[b.element].bit);
        }
    });
}

}  // namespace

/// What a charge that has all but gone still drives is nothing to look at.
bool BenchRun::isAlive(const CircuitSolution& found) {
    constexpr double kNoVolt = 1e-3, kNoAmpere = 1e-6;
    const auto more = [](double least) { return [least](double each) { return std::abs(each) > least; }; };
    return std::ranges::any_of(found.nodeVolt, more(kNoVolt)) ||
           std::ranges::any_of(found.terminalAmpere, more(kNoAmpere));
}

void BenchRun::addAir(Circuit& circuit) {
    if (circuit.branches<InductanceLaw>().empty()) return;
    const auto count = static_cast<int>(bench_.elements().size());
    for (int e = 0; e < count; ++e) {
        const CompiledElement& element = bench_.elements()[e];
        const ElementSpec& spec = bench_.layout().bench->parts[element.part].kind->model[element.spec];
        if (findElement(spec.element) != &kContactElement) continue;
        const auto nodes = circuit.nodesOf(e);
        const std::array<int, 2> ends{nodes[0], nodes[1]};
        circuit.add(SparkLaw(), ends);
        bench_.addHidden(circuit, e);
    }
}

void BenchRun::setLayout(std::shared_ptr<const Layout> layout) {
    State kept = state();
    std::erase_if(kept.values, [&](const auto& each) {
        return layout->bench->partIndex(each.first.part) < 0;  // what is gone has forgotten
    });
    bounce_.settle();
    Circuit circuit = bench_.setLayout(std::move(layout));
    addAir(circuit);
    hasLayout_ = true;
    moves_ = movesByItself(circuit);
    run_ = CircuitRun(std::move(circuit), tolerance_);
    run_.setSecond(second_);
    state_ = std::move(kept);
    isFresh_ = true;
    running_ = stopped_ = false;
}

void BenchRun::setInputs(const Inputs& inputs) {
    if (running_ && inputs.held == inputs_.held && inputs.surroundings == inputs_.surroundings) {
        inputs_ = inputs;
        return;
    }
    inputs_ = inputs;
    running_ = false;  // begins anew at the present time
}

void BenchRun::setState(const State& state) {
    state_ = state;
    isFresh_ = true;
    running_ = stopped_ = false;
}

State BenchRun::state() {
    if (isFresh_ || !hasLayout_) return state_;
    run_.solution();
    State now;
    const auto& parts = bench_.layout().bench->parts;
    const SolveState& solved = run_.state();
    const Circuit& circuit = run_.circuit();
    eachMemory(
        circuit, bench_.elements(),
        [&]<class Law>(const LawBranch<Law>& b, int part, int place) {
            for (int port = 0; port < Law::kPorts; ++port) {
                const TerminalPair ends = Law::kPortEnds[port];
                double volt = solved.nodeVolt[b.nodes[ends.from]] - solved.nodeVolt[b.nodes[ends.to]];
                if (port < Law::kCharges) volt -= b.law.chargeOhm(port) * solved.storing[b.store + port];
                now.values[{parts[part].id, kHeldBy<Law>, place + port}] = volt;
            }
        },
        [&]<class Law>(const LawBranch<Law>& b, int part, int place) {
            constexpr LawWays<Law> kWays = waysOf<Law>();
            for (int k = 0; k < Law::kFluxes; ++k)
                now.values[{parts[part].id, Memory::Current, place + k}] =
                    solved.pathAmpere[circuit.firstPath[b.element] + kWays.ofFlux[k]];
        },
        [&]<class Law>(const LawBranch<Law>& b, int part, int place) {
            for (int bit = 0; bit < Law::kBits; ++bit)
                now.values[{parts[part].id, Memory::Bit, place + bit}] = (solved.bits[b.bits] >> bit) & 1U;
        });
    return now;
}

/// Puts what parts remember into the circuit.
void BenchRun::restore() {
    run_.beginFromState();
    const auto& parts = bench_.layout().bench->parts;
    SolveState& solved = run_.state();
    eachMemory(
        run_.circuit(), bench_.elements(),
        [&]<class Law>(const LawBranch<Law>& b, int part, int place) {
            auto volts = b.law.beginVolts();
            for (int port = 0; port < Law::kPorts; ++port) {
                const double uneven = kUnevenVolt * spreadHash(parts[part].id, place + port);
                volts[port] = state_.of(parts[part].id, kHeldBy<Law>, place + port, volts[port] + uneven);
            }
            // Where it was, the search begins: from elsewhere a transistor that was driven hard may not be found again.
            if (state_.values.contains({parts[part].id, Memory::Voltage, place})) solved.setTouch(b, volts);
            const auto charges = b.law.chargesAt(volts);
            for (int k = 0; k < Law::kCharges; ++k) solved.stored[b.store + k] = charges.coulomb[k];
        },
        [&]<class Law>(const LawBranch<Law>& b, int part, int place) {
            constexpr LawWays<Law> kWays = waysOf<Law>();
            std::array<double, Law::kFluxes> amperes{};
            for (int k = 0; k < Law::kFluxes; ++k) {
                amperes[k] = state_.of(parts[part].id, Memory::Current, place + k, b.law.beginAmpere(k));
                solved.pathAmpere[run_.circuit().firstPath[b.element] + kWays.ofFlux[k]] = amperes[k];
            }
            const auto fluxes = b.law.fluxesAt(amperes);
            for (int k = 0; k < Law::kFluxes; ++k) solved.stored[b.store + Law::kCharges + k] = fluxes.weber[k];
        },
        [&]<class Law>(const LawBranch<Law>& b, int part, int place) {
            unsigned& bits = solved.bits[b.bits];
            for (int bit = 0; bit < Law::kBits; ++bit) {
                const double now = state_.of(parts[part].id, Memory::Bit, place + bit, (bits >> bit) & 1U);
                bits = now != 0 ? bits | 1U << bit : bits & ~(1U << bit);
            }
        });
}

void BenchRun::start() {
    if (running_ || !hasLayout_) return;
    if (isFresh_) restore();
    isFresh_ = false;
    isDriven_ = bench_.setInputs(inputs_);
    bounce_.follow(*bench_.layout().bench, bench_.elements(), bench_.present(), second_);
    bounce_.apply(bench_.present(), second_);
    run_.setSurroundings(bench_.surroundings());
    stopped_ = !run_.start(bench_.present(), bench_.reference(run_.circuit()));
    running_ = true;
}

bool BenchRun::advanceTo(double second) {
    for (;;) {
        start();
        if (stopped_) return false;
        const double edge = bounce_.nextAfter(second_), goal = std::min(second, edge);
        stopped_ = !run_.advanceTo(goal);
        second_ = stopped_ ? run_.second() : std::max(second_, goal);
        if (stopped_ || edge > second) return !stopped_;
        running_ = false;  // a contact parts or meets now
    }
}

const Solution& BenchRun::solution() {
    start();
    bench_.clear();
    const CircuitSolution& found = run_.solution();
    if (isDriven_ || !found.solved() || isAlive(found))
        bench_.write(found);
    else
        bench_.writeOff();
    Solution& solution = bench_.solution();
    if (!found.solved() && found.trouble != Trouble::IdealLoop)
        solution.reason = say("solve.stopped", {{"second", fmt::format("{:.6g}", second_)}, {"why", solution.reason}});
    return solution;
}

}  // namespace tiepoint
