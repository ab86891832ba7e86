// Dijkstra's search over joints. Two kinds of edges: the layout's pieces (metal: 0 ohm in the solve, but their own small weight
// breaks ties, so that the path shown is the one that most of the current takes) and the near-zero elements of the solution.

#include "core/findings/least_path.h"

#include "core/circuit/element.h"

#include <queue>

#include <algorithm>
#include <functional>
#include <vector>

namespace tiepoint {
namespace {

bool measuresCurrent(const ElementSpec& spec) { return spec.reads == "current"; }

/// The resistance of an element that is closed and conducts like metal, or nothing. What an element is, its own file knows:
/// it is added to a circuit of its own, to see whether a conductor comes of it.
std::optional<double> nearZeroOhm(const ElementSpec& spec, const ElementState& state) {
    const ElementKind& element = *findElement(spec.element);
    std::vector<double> figures;
    for (const auto& [name, fallback] : element.parameters) {
        const auto given = std::find_if(state.constants.begin(), state.constants.end(),
                                        [wanted = name](const auto& constant) { return constant.first == wanted; });
        figures.push_back(given != state.constants.end() ? given->second : fallback.value_or(0));
    }
    Circuit lone;
    std::vector<int> nodes;
    for (std::size_t terminal = 0; terminal < element.terminals.size(); ++terminal) nodes.push_back(lone.addNode());
    element.add(lone, nodes, figures);
    if (lone.conductors.empty()) return std::nullopt;
    const double ohm = 1 / lone.conductors.front().siemens;
    return ohm <= kNearZeroOhm || measuresCurrent(spec) ? std::optional(ohm) : std::nullopt;
}

void addOnce(std::vector<std::string>& ids, const std::string& id) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
}

}  // namespace

NearZeroPaths::NearZeroPaths(const Snapshot& snapshot) : layout_(*snapshot.layout), edges_(layout_.joints.size()) {
    for (const Piece& piece : layout_.pieces) addPiece(piece);
    for (const ElementState element : snapshot.solution.elements()) addElement(element);
    steps_.resize(edges_.size());
}

std::optional<ConductingPath> NearZeroPaths::between(int fromJoint, int toJoint) {
    // Searched from the far end, so that walking back gives the path in order.
    search(toJoint, fromJoint);
    if (steps_[fromJoint].weightOhm == std::numeric_limits<double>::infinity()) return std::nullopt;
    ConductingPath path = walk(fromJoint);
    if (path.ohm - path.burdenOhm > kNearZeroOhm) return std::nullopt;
    return path;
}

void NearZeroPaths::join(int a, int b, Edge edge) {
    edge.to = b;
    edges_[a].push_back(edge);
    edge.to = a;
    edges_[b].push_back(edge);
}

void NearZeroPaths::addPiece(const Piece& piece) {
    Edge edge{0, piece.ohm, 0};
    if (piece.kind == PieceKind::Jumper) edge.jumper = piece.owner;
    if (piece.kind == PieceKind::Bridge) edge.part = layout_.partOfLead(piece.owner);
    join(piece.from, piece.to, edge);
}

void NearZeroPaths::addElement(const ElementState& element) {
    const Part& part = layout_.bench->parts[element.part];
    const ElementSpec& spec = part.kind->model[element.spec];
    if (!element.closed) return;
    if (findElement(spec.element)->joins) {  // of a law only what a switch of it joins is like metal
        for (const JoinedTerminals& each : joinedBy(spec, part, element.told))
            if (each.ohm <= kNearZeroOhm)
                join(nodeOf(element.part, spec.between[each.from]), nodeOf(element.part, spec.between[each.to]),
                     {0, each.ohm, each.ohm, element.part, -1, false});
        return;
    }
    const auto ohm = nearZeroOhm(spec, element);
    if (!ohm) return;
    join(nodeOf(element.part, spec.from()), nodeOf(element.part, spec.to()),
         {0, *ohm, *ohm, element.part, -1, measuresCurrent(spec)});
}

int NearZeroPaths::nodeOf(int part, const std::string& name) {
    const int lead = layout_.bench->parts[part].kind->leadIndex(name);
    if (lead >= 0) return layout_.jointOfLead[layout_.leadIndex(part, lead)];
    const auto [place, added] = inner_.try_emplace({part, name}, static_cast<int>(edges_.size()));
    if (added) edges_.emplace_back();
    return place->second;
}

void NearZeroPaths::search(int start, int goal) {
    for (const int node : touched_) steps_[node] = {};
    touched_.clear();

    using Entry = std::pair<double, int>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
    const auto reach = [&](int node, Step step) {
        if (step.weightOhm >= steps_[node].weightOhm) return;
        steps_[node] = step;
        touched_.push_back(node);
        open.push({step.weightOhm, node});
    };
    reach(start, {0, -1, nullptr});
    while (!open.empty()) {
        const auto [weight, node] = open.top();
        open.pop();
        if (node == goal) return;
        if (weight > steps_[node].weightOhm) continue;
        for (const Edge& edge : edges_[node]) reach(edge.to, {weight + edge.weightOhm, node, &edge});
    }
}

ConductingPath NearZeroPaths::walk(int from) const {
    ConductingPath path;
    for (int node = from; node >= 0; node = steps_[node].from) {
        if (node < static_cast<int>(layout_.joints.size()) && layout_.joints[node].hole >= 0) {
            path.holes.push_back(layout_.holeAt(layout_.joints[node].hole));
        }
        const Edge* edge = steps_[node].by;
        if (edge == nullptr) break;
        path.ohm += edge->partOhm;
        if (edge->burden) path.burdenOhm += edge->partOhm;
        if (edge->part >= 0) addOnce(path.parts, layout_.bench->parts[edge->part].id);
        if (edge->jumper >= 0) addOnce(path.parts, layout_.bench->jumpers[edge->jumper].id);
    }
    return path;
}

}  // namespace tiepoint
