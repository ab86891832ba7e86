#include "core/variants/strip_circuit.h"

#include "core/base/disjoint_sets.h"

namespace tiepoint {

std::optional<Hole> touchedHole(const Part& part, int lead) {
    return lead == untouchedLead(part) ? std::nullopt : part.leads[lead];
}

StripCircuit::StripCircuit(std::shared_ptr<const Layout> layout, const Inputs& inputs)
    : layout_(std::move(layout)),
      inputs_(inputs) {
    numberMetal();
    Layout apart = *layout_;
    apart.netOfLead = metalOfLead_;
    apart.netCount = static_cast<int>(nodeOfMetal_.size());
    apart.netUsed.assign(nodeOfMetal_.size(), 1);
    compiled_ = compile(apart);
    nodeOfMetal_ = compiled_.nodeOfNet;
    const Bench& bench = *layout_->bench;
    firstElement_.assign(bench.parts.size() + 1, -1);
    present_.resize(compiled_.elements.size());
    for (int e = 0; e < static_cast<int>(present_.size()); ++e) {
        const auto [part, spec, constants] = compiled_.elements[e];
        if (spec == 0) firstElement_[part] = e;
        present_[e] = isPresent(bench.parts[part], bench.parts[part].kind->model[spec], inputs_);
    }
    collectEdges();
    walkTrees();
}

int StripCircuit::elementCount(int part) const {
    return static_cast<int>(layout_->bench->parts[part].kind->model.size());
}

void StripCircuit::numberMetal() {
    int own = layout_->boardFirstStrip.back();
    for (const Part& part : layout_->bench->parts) {
        for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
            const auto hole = touchedHole(part, lead);
            metalOfLead_.push_back(hole ? metalOf(*hole) : own++);
        }
    }
    nodeOfMetal_.assign(own, -1);
}

int StripCircuit::metalOf(const JumperEnd& end) const {
    if (const Hole* hole = std::get_if<Hole>(&end)) return metalOf(*hole);
    const Socket& socket = std::get<Socket>(end);
    return metalOfLead_[layout_->leadIndex(layout_->bench->partIndex(socket.part), socket.lead)];
}

void StripCircuit::collectEdges() {
    const Bench& bench = *layout_->bench;
    DisjointSets joined(nodeOfMetal_.size());
    const auto join = [&](const MetalEdge& edge) {
        for (const int metal : {edge.a, edge.b})
            if (nodeOfMetal_[metal] < 0) nodeOfMetal_[metal] = compiled_.circuit.addNode();
        (joined.join(edge.a, edge.b) ? tree_ : chords_).push_back(edge);
    };
    for (std::size_t j = 0; j < bench.jumpers.size(); ++j) {
        const Jumper& jumper = bench.jumpers[j];
        if (jumper.condition == Condition::Sound)
            join({metalOf(jumper.ends[0]), metalOf(jumper.ends[1]), static_cast<int>(j), -1});
    }
    for (std::size_t p = 0; p < bench.parts.size(); ++p) {
        const int first = layout_->firstLead[p];
        for (const std::vector<int>& group : bench.parts[p].kind->joined) {
            for (std::size_t i = 1; i < group.size(); ++i)
                join({metalOfLead_[first + group[0]], metalOfLead_[first + group[i]], -1, static_cast<int>(p)});
        }
    }
}

void StripCircuit::walkTrees() {
    const int nodes = compiled_.circuit.nodeCount;
    std::vector<std::vector<int>> at(nodes);
    for (int e = 0; e < static_cast<int>(tree_.size()); ++e)
        for (const int metal : {tree_[e].a, tree_[e].b}) at[nodeOfMetal_[metal]].push_back(e);
    place_.assign(nodes, -1);
    end_.assign(nodes, -1);
    root_.assign(nodes, -1);
    lower_.assign(tree_.size(), -1);
    int next = 0;
    std::vector<std::pair<int, std::size_t>> open;
    for (int start = 0; start < nodes; ++start) {
        if (place_[start] >= 0) continue;
        const auto enter = [&](int node) {
            place_[node] = next++;
            root_[node] = start;
            open.emplace_back(node, 0);
        };
        enter(start);
        while (!open.empty()) {
            const auto [node, way] = open.back();
            if (way == at[node].size()) {
                end_[node] = next;
                open.pop_back();
                continue;
            }
            ++open.back().second;
            const int edge = at[node][way];
            const int a = nodeOfMetal_[tree_[edge].a], b = nodeOfMetal_[tree_[edge].b];
            const int other = a == node ? b : a;
            if (place_[other] >= 0) continue;
            lower_[edge] = other;
            enter(other);
        }
    }
}

}  // namespace tiepoint
