#include "core/circuit/compile.h"

#include "core/bench/natural_order.h"
#include "core/bench/table.h"
#include "core/circuit/element.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace tiepoint {

namespace {

/// Compiles part after part; lives only for that.
class Compiler {
public:
    explicit Compiler(const Layout& layout) : layout_(layout) { compiled_.nodeOfNet.assign(layout.netCount, -1); }

    CompiledCircuit run() {
        const std::vector<Part>& parts = layout_.bench->parts;
        std::vector<int> order(parts.size());
        std::iota(order.begin(), order.end(), 0);
        std::sort(order.begin(), order.end(), [&](int a, int b) { return naturalLess(parts[a].id, parts[b].id); });
        for (int part : order) addPart(part);
        if (compiled_.reference < 0) compiled_.reference = instrumentReference_;
        return std::move(compiled_);
    }

private:
    /// A terminal of an element: its node, and the lead that it hangs on.
    struct End {
        int node, lead;
    };

    void addPart(int part) {
        const PartKind& kind = *layout_.bench->parts[part].kind;
        innerNodes_.clear();
        for (int spec = 0; spec < static_cast<int>(kind.model.size()); ++spec) addElement(part, spec);
    }

    void addElement(int part, int specIndex) {
        const Part& owner = layout_.bench->parts[part];
        const ElementSpec& spec = owner.kind->model[specIndex];
        const ElementKind* element = findElement(spec.element);
        assert(element != nullptr && "the catalogue's loader checks the names of elements");

        CompiledElement compiled{part, specIndex, {}};
        const std::vector<double> figures = figuresOf(*element, spec, owner);
        for (std::size_t i = 0; i < figures.size(); ++i) {
            const std::string_view name = element->parameters[i].name;
            if (isGiven(spec, name)) compiled.constants.emplace_back(name, figures[i]);
        }

        assert(spec.between.size() == element->terminals.size() && "a model gives every terminal a node");
        nodes_.clear();
        for (const std::string& name : spec.between) {
            const End end = endOf(part, name);
            nodes_.push_back(end.node);
            compiled_.leadOfTerminal.push_back(end.lead);
        }
        const int number = element->add(compiled_.circuit, nodes_, figures);
        compiled_.elements.push_back(std::move(compiled));
        if (!drives(*owner.kind, spec) || !isPluggedIn(compiled_.leadOfTerminal.back())) return;
        if (owner.kind->isSupply) compiled_.suppliesPluggedIn.push_back(number);
        chooseReference(*owner.kind, nodes_.back());
    }

    /// The minus of the first supply; the test source of an instrument gives way to any supply.
    void chooseReference(const PartKind& kind, int node) {
        int& reference = kind.isSupply ? compiled_.reference : instrumentReference_;
        if (reference < 0) reference = node;
    }

    static bool isGiven(const ElementSpec& spec, std::string_view name) {
        return std::ranges::any_of(spec.parameters, [&](const auto& given) { return given.first == name; });
    }

    End endOf(int part, const std::string& name) {
        const PartKind& kind = *layout_.bench->parts[part].kind;
        const int lead = kind.leadIndex(name);
        if (lead < 0) return {innerNode(name), -1};
        int& node = compiled_.nodeOfNet[layout_.netOfLead[layout_.leadIndex(part, lead)]];
        if (node < 0) node = compiled_.circuit.addNode();
        return {node, layout_.leadIndex(part, firstOfGroup(kind, lead))};
    }

    int innerNode(const std::string& name) {
        for (const auto& [known, node] : innerNodes_) {
            if (known == name) return node;
        }
        innerNodes_.emplace_back(name, compiled_.circuit.addNode());
        return innerNodes_.back().second;
    }

    static int firstOfGroup(const PartKind& kind, int lead) {
        for (const std::vector<int>& group : kind.joined) {
            if (std::find(group.begin(), group.end(), lead) != group.end()) return group.front();
        }
        return lead;
    }

    /// A lead in a hole, or a socket (or one joined to it) that a jumper is in.
    bool isPluggedIn(int lead) const {
        return lead >= 0 && (layout_.holeOfLead[lead] >= 0 || layout_.netUsed[layout_.netOfLead[lead]]);
    }

    const Layout& layout_;
    CompiledCircuit compiled_;
    int instrumentReference_ = -1;
    std::vector<std::pair<std::string, int>> innerNodes_;
    std::vector<int> nodes_;  ///< of the element that is being added
};

}  // namespace

CompiledCircuit compile(const Layout& layout) { return Compiler(layout).run(); }

bool isOf(const Part& part, const ElementSpec& spec) {
    if (spec.ofValue.empty()) return true;
    const int index = part.kind->valueIndex(spec.ofValue);
    return part.kind->values[index].choices[static_cast<std::size_t>(part.value(index))].name == spec.ofChoice;
}

void findSurroundings(const Bench& bench, std::span<const CompiledElement> elements, const Inputs& inputs,
                      std::vector<Surroundings>& found) {
    const Surroundings& all = inputs.surroundings;
    found.assign(elements.size(), surroundingsAside(all));
    if (!all.torch && !all.hand) return;
    for (std::size_t e = 0; e < elements.size(); ++e) {
        if (e > 0 && elements[e].part == elements[e - 1].part)
            found[e] = found[e - 1];
        else if (const auto place = middleOfHolesMm(bench, bench.parts[static_cast<std::size_t>(elements[e].part)]))
            found[e] = surroundingsAt(all, *place);
    }
}

std::vector<Surroundings> surroundingsOf(const Bench& bench, std::span<const CompiledElement> elements,
                                         const Inputs& inputs) {
    std::vector<Surroundings> found;
    findSurroundings(bench, elements, inputs, found);
    return found;
}

bool isPresent(const Part& part, const ElementSpec& spec, const Inputs& inputs) {
    if (!hasElements(part.condition)) return false;
    if (!isOf(part, spec)) return false;
    if (spec.whenHeld) return inputs.held.contains(part.id);
    if (spec.whenState.empty()) return true;
    const int index = part.kind->stateIndex(spec.whenState);
    const double state = part.stateValue(index);
    if (spec.whenChoice.empty()) return state != 0;
    return part.kind->state[index].choices[static_cast<std::size_t>(state)].name == spec.whenChoice;
}

}  // namespace tiepoint
