#include "core/solve/bench_circuit.h"

#include "core/circuit/element.h"
#include "core/solve/loops.h"
#include "core/words/words.h"

#include <algorithm>
#include <limits>

namespace tiepoint {

namespace {

constexpr double kUnknownFigure = std::numeric_limits<double>::quiet_NaN();

/// What each trouble means to a person: the id of the words.
std::string_view reasonFor(Trouble trouble) {
    switch (trouble) {
        case Trouble::IdealLoop:
            return "solve.idealLoop";
        case Trouble::Unbalanced:
            return "solve.unbalanced";
        case Trouble::LimitsContend:
            return "solve.limits";
        case Trouble::ManyRests:
            return "solve.manyRests";
        case Trouble::NeverRests:
            return "solve.neverRests";
        case Trouble::NotConverged:
        case Trouble::None:
            break;
    }
    return "solve.notFound";
}

}  // namespace

Circuit BenchCircuit::setLayout(std::shared_ptr<const Layout> layout) {
    layout_ = std::move(layout);
    compiled_ = compile(*layout_);
    prepareSolution();
    Circuit circuit = std::move(compiled_.circuit);
    for (std::size_t k = 0; k < circuit.supplies.size(); ++k)
        supplyOf_[circuit.supplies[k].element] = static_cast<int>(k);
    return circuit;
}

void BenchCircuit::addHidden(const Circuit& circuit, int ofElement) {
    placeOf_.push_back(placeOf_[ofElement]);
    supplyOf_.push_back(-1);
    present_.push_back(1);
    for (std::size_t t = 0; t < circuit.terminalCount(ofElement); ++t) {
        const int lead = compiled_.leadOfTerminal[circuit.firstTerminal[ofElement] + t];
        compiled_.leadOfTerminal.push_back(lead);
    }
}

void BenchCircuit::prepareSolution() {
    const int count = static_cast<int>(compiled_.elements.size());
    std::vector<int> order(count);
    for (int e = 0; e < count; ++e) order[e] = e;
    const auto place = [&](int e) { return std::pair(compiled_.elements[e].part, compiled_.elements[e].spec); };
    std::sort(order.begin(), order.end(), [&](int a, int b) { return place(a) < place(b); });
    placeOf_.resize(count);
    solution_ = {};
    auto places = std::make_shared<ElementPlaces>();
    for (int e : order) {
        CompiledElement& element = compiled_.elements[e];
        placeOf_[e] = static_cast<int>(places->size());
        places->push_back({element.part, element.spec, std::move(element.constants)});
    }
    solution_.places = std::move(places);
    solution_.elementAmpere.resize(count);
    solution_.elementWatt.resize(count);
    solution_.elementTold.resize(count);
    solution_.elementClosed.resize(count);
    solution_.elementLimiting.resize(count);
    supplyOf_.assign(count, -1);
    present_.resize(count);
    drives_.resize(count);
    for (int e = 0; e < count; ++e) {
        const PartKind& kind = *layout_->bench->parts[compiled_.elements[e].part].kind;
        drives_[e] = drives(kind, kind.model[compiled_.elements[e].spec]);
    }
    referredTo_.clear();
    foundReference_ = compiled_.reference;
    solution_.netVoltage.resize(layout_->netCount);
    solution_.leadInjection.resize(layout_->leadCount());
}

bool BenchCircuit::setInputs(const Inputs& inputs) {
    findSurroundings(*layout_->bench, compiled_.elements, inputs, surroundings_);  // in place: each press comes here
    bool driven = false;
    for (std::size_t e = 0; e < compiled_.elements.size(); ++e) {
        const Part& part = layout_->bench->parts[compiled_.elements[e].part];
        present_[e] = isPresent(part, part.kind->model[compiled_.elements[e].spec], inputs);
        if (present_[e] && drives_[e] && (supplyOf_[e] >= 0 || surroundings_[e].lightLux > 0)) driven = true;
    }
    return driven;
}

void BenchCircuit::clear() {
    solution_.reason.clear();
    solution_.troubleParts.clear();
    solution_.iterations = 0;
    solution_.kirchhoffWorst = solution_.powerBalance = 0;
}

void BenchCircuit::write(const CircuitSolution& found) {
    if (found.solved())
        copy(found);
    else
        explain(found);
}

bool BenchCircuit::hasStored(const State& state) const {
    return std::ranges::any_of(state.values, [this](const auto& each) {
        const auto& [key, value] = each;
        return holdsEnergy(key.what) && value != 0 && layout_->bench->partIndex(key.part) >= 0;
    });
}

int BenchCircuit::reference(const Circuit& circuit) {
    if (present_ != referredTo_) {
        foundReference_ = findReference(circuit);
        referredTo_ = present_;
    }
    return foundReference_;
}

/// The minus of the first supply that is on and, with the contacts as they stand, in a loop with another element: what it drives is
/// what people look at. Without one, that of the first supply plugged in.
int BenchCircuit::findReference(const Circuit& circuit) const {
    const std::vector<int>& supplies = compiled_.suppliesPluggedIn;
    if (supplies.size() < 2) return compiled_.reference;
    const std::vector<int> blocks = loopBlocks(circuit, present_);
    const auto drives = [&](int element) { return present_[element] && blocks[element] >= 0; };
    const auto first = std::find_if(supplies.begin(), supplies.end(), drives);
    return first == supplies.end() ? compiled_.reference : circuit.nodesOf(*first).back();
}

void BenchCircuit::fillWith(Status status, double current) {
    solution_.status = status;
    std::fill(solution_.netVoltage.begin(), solution_.netVoltage.end(), kUnknownFigure);
    std::fill(solution_.leadInjection.begin(), solution_.leadInjection.end(), current);
    for (std::size_t e = 0; e < compiled_.elements.size(); ++e) {
        const int place = placeOf_[e];
        solution_.elementClosed[place] = present_[e];
        solution_.elementLimiting[place] = 0;
        solution_.elementAmpere[place] = solution_.elementWatt[place] = current;
        solution_.elementTold[place] = 0;
    }
}

void BenchCircuit::copy(const CircuitSolution& found) {
    fillWith(Status::Solved, 0);
    for (std::size_t net = 0; net < solution_.netVoltage.size(); ++net) {
        const int node = compiled_.nodeOfNet[net];
        if (node >= 0 && !found.floating[node]) solution_.netVoltage[net] = found.nodeVolt[node];
    }
    for (std::size_t e = 0; e < present_.size(); ++e) {
        const int place = placeOf_[e];
        solution_.elementAmpere[place] += found.elementAmpere[e];
        solution_.elementWatt[place] += found.elementWatt[e];
        solution_.elementTold[place] = found.elementTold[e];
        if (supplyOf_[e] >= 0) solution_.elementLimiting[place] = found.limiting[supplyOf_[e]];
    }
    for (std::size_t t = 0; t < compiled_.leadOfTerminal.size(); ++t) {
        const int lead = compiled_.leadOfTerminal[t];
        if (lead >= 0) solution_.leadInjection[lead] += found.terminalAmpere[t];
    }
    solution_.iterations = found.iterations;
    solution_.kirchhoffWorst = found.kirchhoffWorst;
    solution_.powerBalance = found.powerBalance;
}

void BenchCircuit::explain(const CircuitSolution& found) {
    fillWith(Status::None, kUnknownFigure);
    for (int e : found.troubleElements) solution_.troubleParts.push_back((*solution_.places)[placeOf_[e]].part);
    std::sort(solution_.troubleParts.begin(), solution_.troubleParts.end());
    const auto end = std::unique(solution_.troubleParts.begin(), solution_.troubleParts.end());
    solution_.troubleParts.erase(end, solution_.troubleParts.end());
    std::vector<std::string> ids;
    for (int part : solution_.troubleParts) ids.push_back(layout_->bench->parts[part].id);
    solution_.reason = say(reasonFor(found.trouble), {{"parts", sayList(ids, "list.comma")}});
}

}  // namespace tiepoint
