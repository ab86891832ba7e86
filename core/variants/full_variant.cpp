#include "core/variants/full_variant.h"

#include "core/bench/bench_inputs.h"
#include "core/circuit/element.h"
#include "core/circuit/surrounded.h"

#include <algorithm>
#include <limits>

namespace tiepoint {

Status FullVariant::solve(const Bench& base, const Variant& variant, const Inputs& inputs) {
    layout_ = buildLayout(benchOf(base, variant));
    compiled_ = compile(*layout_);
    const std::vector<Part>& parts = layout_->bench->parts;
    firstElement_.assign(parts.size(), -1);
    present_.assign(compiled_.elements.size(), 0);
    bool anySupplyOn = false;
    for (int e = 0; e < static_cast<int>(present_.size()); ++e) {
        const CompiledElement& element = compiled_.elements[e];
        if (element.spec == 0) firstElement_[element.part] = e;
        const bool isOpen = std::ranges::find(variant.open, element.part) != variant.open.end() ||
                            !partIn(variant, element.part, parts[element.part]);
        const Part& part = parts[element.part];
        const ElementSpec& spec = part.kind->model[element.spec];
        present_[e] = !isOpen && isPresent(part, spec, inputs);
        anySupplyOn = anySupplyOn || (present_[e] && drives(*part.kind, spec));
    }
    if (!anySupplyOn) return status_ = Status::Off;
    const Bench& bench = *layout_->bench;
    surround(compiled_.circuit, surroundingsOf(bench, compiled_.elements, inputsOn(bench, inputs)));
    dryOut(variant);
    solver_ = CircuitSolver(std::move(compiled_.circuit));
    solution_ = solver_.solve(present_, compiled_.reference);
    return status_ = solution_.solved() ? Status::Solved : Status::None;
}

/// Puts a resistance before the first terminal of each element of the parts that are dry.
void FullVariant::dryOut(const Variant& variant) {
    Circuit& circuit = compiled_.circuit;
    const auto elements = static_cast<int>(present_.size());
    for (int e = 0; e < elements; ++e) {
        const auto dry = std::ranges::find(variant.dry, compiled_.elements[e].part, &Variant::Dry::part);
        if (dry == variant.dry.end()) continue;
        const int outside = circuit.nodesOf(e).front(), inside = circuit.addNode();
        circuit.moveTerminal(e, 0, inside);
        circuit.addConductor(outside, inside, dry->ohm);
        present_.push_back(present_[e]);
    }
}

double FullVariant::ampere(int part, int spec) const {
    if (status_ == Status::Off) return 0;
    if (status_ == Status::None) return std::numeric_limits<double>::quiet_NaN();
    return solution_.elementAmpere[firstElement_[part] + spec];
}

double FullVariant::volt(int part, int lead) const {
    constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
    if (status_ != Status::Solved) return kUnknown;
    const int node = compiled_.nodeOfNet[layout_->netOfLead[layout_->leadIndex(part, lead)]];
    return node < 0 || solution_.floating[node] ? kUnknown : solution_.nodeVolt[node];
}

}  // namespace tiepoint
