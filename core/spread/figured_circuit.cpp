#include "core/spread/figured_circuit.h"

#include "core/circuit/surrounded.h"

#include <algorithm>
#include <limits>

namespace tiepoint {
namespace {

/// The node at 0 V, as the nominal answer has it.
int referenceOf(const Snapshot& nominal, const CompiledCircuit& compiled) {
    const Circuit& circuit = compiled.circuit;
    for (const int supply : compiled.suppliesPluggedIn) {
        const int node = circuit.nodesOf(supply).back();
        const auto net = std::ranges::find(compiled.nodeOfNet, node);
        if (net == compiled.nodeOfNet.end()) continue;
        if (nominal.solution.netVoltage[static_cast<std::size_t>(net - compiled.nodeOfNet.begin())] == 0) return node;
    }
    return compiled.reference;
}

}  // namespace

FiguredCircuit::FiguredCircuit(std::shared_ptr<const Snapshot> nominal)
    : layout_(nominal->layout),
      compiled_(compile(*layout_)),
      flow_(layout_) {
    for (const CompiledElement& element : compiled_.elements) {
        const Part& part = layout_->bench->parts[static_cast<std::size_t>(element.part)];
        const ElementSpec& spec = part.kind->model[static_cast<std::size_t>(element.spec)];
        present_.push_back(isPresent(part, spec, *nominal->inputs));
        printed_.push_back(figuresOf(*findElement(spec.element), spec, part));
    }
    around_ = surroundingsOf(*layout_->bench, compiled_.elements, *nominal->inputs);
    reference_ = referenceOf(*nominal, compiled_);
    if (!solve(printed_)) return;
    const auto touch = solver_.touchVolts();
    warm_.assign(touch.begin(), touch.end());
}

int FiguredCircuit::elementOf(int part, int spec) const {
    const auto found = std::ranges::find_if(compiled_.elements, [&](const CompiledElement& element) {
        return element.part == part && element.spec == spec;
    });
    return static_cast<int>(found - compiled_.elements.begin());
}

bool FiguredCircuit::solve(const Figures& figures) {
    Circuit circuit;
    circuit.nodeCount = compiled_.circuit.nodeCount;
    for (std::size_t e = 0; e < compiled_.elements.size(); ++e) {
        const CompiledElement& element = compiled_.elements[e];
        const PartKind& kind = *layout_->bench->parts[static_cast<std::size_t>(element.part)].kind;
        const ElementKind* law = findElement(kind.model[static_cast<std::size_t>(element.spec)].element);
        law->add(circuit, compiled_.circuit.nodesOf(static_cast<int>(e)), figures[e]);
    }
    surround(circuit, around_);
    solver_ = CircuitSolver(std::move(circuit));
    if (!warm_.empty()) std::ranges::copy(warm_, solver_.touchVolts().begin());
    solution_ = &solver_.solve(present_, reference_);
    flowKnown_ = false;
    return solution_->solved();
}

double FiguredCircuit::volt(int net) const {
    const int node = compiled_.nodeOfNet[static_cast<std::size_t>(net)];
    if (node < 0 || solution_->floating[static_cast<std::size_t>(node)])
        return std::numeric_limits<double>::quiet_NaN();
    return solution_->nodeVolt[static_cast<std::size_t>(node)];
}

void FiguredCircuit::solveFlow() {
    if (flowKnown_) return;
    injection_.assign(static_cast<std::size_t>(layout_->leadCount()), 0);
    for (std::size_t t = 0; t < compiled_.leadOfTerminal.size(); ++t) {
        if (const int lead = compiled_.leadOfTerminal[t]; lead >= 0)
            injection_[static_cast<std::size_t>(lead)] += solution_->terminalAmpere[t];
    }
    pieces_.assign(layout_->pieces.size(), 0);
    flow_.solve(injection_, pieces_);
    flowKnown_ = true;
}

double FiguredCircuit::leadAmpere(int lead) {
    solveFlow();
    const int bridge = layout_->pieceOfLead[static_cast<std::size_t>(lead)];
    return bridge >= 0 ? pieces_[static_cast<std::size_t>(bridge)] : injection_[static_cast<std::size_t>(lead)];
}

double FiguredCircuit::jumperAmpere(int jumper) {
    solveFlow();
    return pieces_[static_cast<std::size_t>(layout_->pieceOfJumper[static_cast<std::size_t>(jumper)])];
}

}  // namespace tiepoint
