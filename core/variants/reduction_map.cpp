// From a variant to what goes and what comes (see reduction.h).

#include "core/circuit/element.h"
#include "core/variants/reduction.h"

#include <algorithm>

namespace tiepoint {

Reduction::Reduction(const StripCircuit& strips, BaseSystem& base)
    : strips_(strips),
      base_(base),
      ports_(base),
      isTouched_(strips.layout().bench->parts.size(), 0),
      chordGone_(strips.chords().size(), 0),
      isOut_(base.curves().size(), 0) {
    const Bench& bench = *strips.layout().bench;
    edgeOfJumper_.assign(bench.jumpers.size(), -1);
    chordOfJumper_.assign(bench.jumpers.size(), -1);
    edgesOfPart_.resize(bench.parts.size());
    chordsOfPart_.resize(bench.parts.size());
    const auto note = [&](const std::vector<MetalEdge>& edges, std::vector<int>& ofJumper,
                          std::vector<std::vector<int>>& ofPart) {
        for (int e = 0; e < static_cast<int>(edges.size()); ++e) {
            if (edges[e].jumper >= 0)
                ofJumper[edges[e].jumper] = e;
            else
                ofPart[edges[e].part].push_back(e);
        }
    };
    note(strips.tree(), edgeOfJumper_, edgesOfPart_);
    note(strips.chords(), chordOfJumper_, chordsOfPart_);
    neighbours_.resize(base.nodeCount());
    const auto tie = [&](int from, int to, int curve) {
        neighbours_[from].push_back({to, curve});
        neighbours_[to].push_back({from, curve});
    };
    for (const BaseSystem::Stiff& s : base.stiffs()) tie(s.from, s.to, -1);
    for (const BaseSystem::Soft& s : base.softs()) tie(s.from, s.to, -1);
    for (int k = 0; k < static_cast<int>(base.curves().size()); ++k) tie(base.curves()[k].from, base.curves()[k].to, k);
    for (const Curve& c : base.curves()) restAcross_.push_back(base.volt(c.from) - base.volt(c.to));
}

void Reduction::map(const Variant& variant) {
    variant_ = &variant;
    for (const int part : touched_) isTouched_[part] = 0;
    std::fill(chordGone_.begin(), chordGone_.end(), 0);
    own_ = {};
    metalOfOwnNode_.clear();
    ownElements_.clear();
    gone_.clear();
    cuts_.clear();
    touched_.clear();
    coming_.clear();
    joins_.clear();
    fresh_.clear();
    nextMetal_ = static_cast<int>(strips_.compiled().nodeOfNet.size());
    suppliesOn_ = 0;
    for (const SupplyBranch& s : strips_.circuit().supplies) suppliesOn_ += strips_.present()[s.element] != 0;

    const std::vector<Part>& parts = strips_.layout().bench->parts;
    const auto touch = [&](int part) {
        if (isTouched_[part]) return;
        isTouched_[part] = 1;
        touched_.push_back(part);
    };
    for (const auto& each : variant.parts) touch(each.part);
    for (const int part : variant.open) touch(part);
    for (const auto& each : variant.dry) touch(each.part);
    for (const int part : touched_) {
        takePartOut(part);
        const Part* const as = partIn(variant, part, parts[part]);
        if (!as || !keepsJoints(part, *as)) takeJointsOut(part);
        if (as) putPartIn(variant, part, *as);
    }
    for (const auto& each : variant.jumpers) {
        if (edgeOfJumper_[each.jumper] >= 0)
            cuts_.push_back(edgeOfJumper_[each.jumper]);
        else if (chordOfJumper_[each.jumper] >= 0)
            chordGone_[chordOfJumper_[each.jumper]] = 1;
        if (each.as && each.as->condition == Condition::Sound)
            coming_.emplace_back(metalOf(variant, each.as->ends[0]), metalOf(variant, each.as->ends[1]));
    }
    for (const Jumper& jumper : variant.added)
        if (jumper.condition == Condition::Sound)
            coming_.emplace_back(metalOf(variant, jumper.ends[0]), metalOf(variant, jumper.ends[1]));
}

void Reduction::takePartOut(int part) {
    const int first = strips_.firstElement(part);
    const std::vector<SupplyBranch>& supplies = strips_.circuit().supplies;
    for (int e = first; e < first + strips_.elementCount(part); ++e) {
        const auto& place = base_.placeOf(e);
        if (strips_.present()[e] && std::ranges::find(supplies, e, &SupplyBranch::element) != supplies.end())
            --suppliesOn_;
        if (place.stiff < 0 && place.soft < 0 && place.curve < 0) continue;
        const auto nodes = strips_.circuit().nodesOf(e);
        gone_.push_back({nodes[0], nodes[1], place});
    }
}

void Reduction::takeJointsOut(int part) {
    cuts_.insert(cuts_.end(), edgesOfPart_[part].begin(), edgesOfPart_[part].end());
    for (const int chord : chordsOfPart_[part]) chordGone_[chord] = 1;
}

bool Reduction::keepsJoints(int part, const Part& as) const {
    const Part& before = strips_.layout().bench->parts[part];
    for (const std::vector<int>& group : as.kind->joined) {
        for (const int lead : group) {
            const auto now = touchedHole(as, lead), then = touchedHole(before, lead);
            const int metal = strips_.metalOfLead(strips_.layout().leadIndex(part, lead));
            if (now.has_value() != then.has_value() || (now && strips_.metalOf(*now) != metal)) return false;
        }
    }
    return true;
}

void Reduction::putPartIn(const Variant& variant, int part, const Part& as) {
    std::vector<int> metals(as.leads.size(), -1);
    for (std::size_t lead = 0; lead < metals.size(); ++lead) metals[lead] = metalOf(part, static_cast<int>(lead), as);
    if (!keepsJoints(part, as)) {
        for (const std::vector<int>& group : as.kind->joined)
            for (std::size_t i = 1; i < group.size(); ++i) coming_.emplace_back(metals[group[0]], metals[group[i]]);
    }
    if (std::ranges::find(variant.open, part) != variant.open.end()) return;
    const auto dry = std::ranges::find(variant.dry, part, &Variant::Dry::part);
    std::vector<std::pair<std::string, int>> inner;
    const auto ownNode = [&](int metal) {
        for (std::size_t node = 0; node < metalOfOwnNode_.size(); ++node)
            if (metalOfOwnNode_[node] == metal) return static_cast<int>(node);
        metalOfOwnNode_.push_back(metal);
        return own_.addNode();
    };
    for (int spec = 0; spec < static_cast<int>(as.kind->model.size()); ++spec) {
        const ElementSpec& model = as.kind->model[spec];
        if (!isPresent(as, model, strips_.inputs())) continue;
        const ElementKind& kind = *findElement(model.element);
        std::vector<int> nodes;
        for (const std::string& name : model.between) {
            const int lead = as.kind->leadIndex(name);
            int metal = lead >= 0 ? metals[lead] : -1;
            if (lead < 0) {
                auto known = std::ranges::find(inner, name, &std::pair<std::string, int>::first);
                if (known == inner.end()) known = inner.insert(inner.end(), {name, newMetal()});
                metal = known->second;
            }
            nodes.push_back(ownNode(metal));
        }
        if (dry != variant.dry.end()) {
            const int inside = ownNode(newMetal());
            own_.addConductor(nodes[0], inside, dry->ohm);
            nodes[0] = inside;
        }
        ownElements_.push_back({part, spec, kind.add(own_, nodes, figuresOf(kind, model, as))});
        suppliesOn_ += &kind == &kSupplyElement;
    }
}

int Reduction::newMetal() { return nextMetal_++; }

/// Of a lead of a part as it is now. One that newly hangs has metal that the base doesn't know.
int Reduction::metalOf(int part, int lead, const Part& as) {
    if (const auto hole = touchedHole(as, lead)) return strips_.metalOf(*hole);
    const Layout& layout = strips_.layout();
    const bool hungBefore = !touchedHole(layout.bench->parts[part], lead);
    return hungBefore ? strips_.metalOfLead(layout.leadIndex(part, lead)) : newMetal();
}

int Reduction::metalOf(const Variant& variant, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return strips_.metalOf(*hole);
    const Socket& socket = std::get<Socket>(end);
    const Bench& bench = *strips_.layout().bench;
    const int part = bench.partIndex(socket.part);
    const Part* const as = partIn(variant, part, bench.parts[part]);
    return metalOf(part, socket.lead, as ? *as : bench.parts[part]);
}

MetalPoint Reduction::pointOf(int metal) {
    const int node = metal < static_cast<int>(strips_.compiled().nodeOfNet.size()) ? strips_.nodeOf(metal) : -1;
    if (node >= 0) return {node, base_.componentOf(node)};
    auto found = std::find(fresh_.begin(), fresh_.end(), metal);
    if (found == fresh_.end()) found = fresh_.insert(fresh_.end(), metal);
    return {-1, base_.componentCount() + static_cast<int>(found - fresh_.begin())};
}

/// Which of the metal that comes, or was a chord, joins what isn't joined yet: pieces are numbered by the innermost cut above them.
void Reduction::findJoins() {
    std::vector<std::pair<int, int>> sets;  // piece, and the piece that it was joined to
    const auto rootOf = [&](int piece) {
        for (bool moved = true; moved;) {
            moved = false;
            for (const auto& [from, to] : sets) {
                if (from != piece) continue;
                piece = to;
                moved = true;
            }
        }
        return piece;
    };
    const int nodes = base_.nodeCount();
    const auto pieceOf = [&](int metal) {
        const MetalPoint point = pointOf(metal);
        if (point.node < 0) return 2 * nodes + metal;
        const int place = strips_.placeOf(point.node);
        int piece = nodes + strips_.rootOf(point.node), innermost = -1;
        for (const int cut : cuts_) {
            const int lower = strips_.lowerOf(cut), first = strips_.placeOf(lower);
            if (place < first || place >= strips_.endOf(lower) || first <= innermost) continue;
            innermost = first;
            piece = lower;
        }
        return piece;
    };
    const auto join = [&](int a, int b) {
        const int from = rootOf(pieceOf(a)), to = rootOf(pieceOf(b));
        if (from == to) return;
        sets.emplace_back(from, to);
        joins_.emplace_back(a, b);
    };
    if (!cuts_.empty()) {
        for (std::size_t k = 0; k < chordGone_.size(); ++k) {
            const MetalEdge& chord = strips_.chords()[k];
            if (!chordGone_[k] && chord.a != chord.b) join(chord.a, chord.b);
        }
    }
    for (const auto& [a, b] : coming_) join(a, b);
}

}  // namespace tiepoint
