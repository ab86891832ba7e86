#include "core/slips/changed_nets.h"

#include <algorithm>
#include <map>

namespace tiepoint {

ChangedNets::Parted* ChangedNets::partedOf(int net) {
    const auto found = std::ranges::find(parted_, net, &Parted::net);
    return found == parted_.end() ? nullptr : &*found;
}

void ChangedNets::takeJoin(int join) {
    if (circuit_.joins_[join].from < 0) return;  // a broken wire joins nothing
    const int net = circuit_.netOf(circuit_.joins_[join].from);
    Parted* parted = partedOf(net);
    if (parted == nullptr) {
        parted = &parted_.emplace_back();
        parted->net = net;
    }
    if (std::ranges::find(parted->joins, join) == parted->joins.end()) parted->joins.push_back(join);
}

void ChangedNets::readParts(const BenchChange& change) {
    const Bench& bench = *circuit_.layout_.bench;
    std::map<int, Part> parts;
    const auto partAt = [&](int index) -> Part& { return parts.try_emplace(index, bench.parts[index]).first->second; };
    for (const PlacedLead& each : change.leads)
        partAt(circuit_.parts_.at(each.part)).leads[static_cast<std::size_t>(each.lead)] = each.to;
    for (const SetCondition& each : change.conditions) {
        if (const auto part = circuit_.parts_.find(each.id); part != circuit_.parts_.end())
            partAt(part->second).condition = each.to;
    }
    for (const auto& [index, part] : parts) movePart(index, part);
}

void ChangedNets::movePart(int index, const Part& part) {
    const int first = circuit_.layout_.firstLead[index], untouched = untouchedLead(part);
    std::vector<Vertex> places;
    bool moves = false;
    for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
        const auto& hole = part.leads[static_cast<std::size_t>(lead)];
        const Vertex from = circuit_.vertexOfLead(first + lead);
        const Vertex to = hole && lead != untouched ? circuit_.vertexOfHole(*hole) : circuit_.ownVertexOf(first + lead);
        places.push_back(to);
        if (from == to) continue;
        moved_.push_back({first + lead, from, to});
        moves = true;
    }
    if (!moves) return;
    for (int join = circuit_.firstJoin_[index]; join < circuit_.firstJoin_[index + 1]; ++join) takeJoin(join);
    for (const auto& group : part.kind->joined) {
        for (std::size_t i = 1; i < group.size(); ++i)
            joined_.emplace_back(places[static_cast<std::size_t>(group[0])],
                                 places[static_cast<std::size_t>(group[i])]);
    }
}

void ChangedNets::readJumpers(const BenchChange& change) {
    const Bench& bench = *circuit_.layout_.bench;
    std::map<int, Jumper> jumpers;
    const auto jumperAt = [&](int index) -> Jumper& {
        return jumpers.try_emplace(index, bench.jumpers[index]).first->second;
    };
    for (const PlacedEnd& each : change.ends)
        jumperAt(circuit_.jumpers_.at(each.jumper)).ends[static_cast<std::size_t>(each.end)] = each.to;
    for (const SetCondition& each : change.conditions) {
        if (const auto jumper = circuit_.jumpers_.find(each.id); jumper != circuit_.jumpers_.end())
            jumperAt(jumper->second).condition = each.to;
    }
    const auto join = [&](const Jumper& jumper) {
        if (jumper.condition == Condition::Sound)
            joined_.emplace_back(circuit_.vertexOfEnd(jumper.ends[0]), circuit_.vertexOfEnd(jumper.ends[1]));
    };
    for (const auto& [index, jumper] : jumpers) {
        takeJoin(index);
        join(jumper);
    }
    for (const Jumper& jumper : change.removed) takeJoin(circuit_.jumpers_.at(jumper.id));
    for (const Jumper& jumper : change.added) join(jumper);
}

void ChangedNets::part(Parted& parted) {
    ++work_;
    nets_.push_back(parted.net);
    if (parted.joins.size() > 1) return walkApart(parted);
    const CircuitDigest::Join& join = circuit_.joins_[parted.joins.front()];
    const std::uint64_t all = circuit_.netSums_[parted.net];
    parted.first = static_cast<int>(pieces_.size());
    if (!join.bridge) {
        pieces_.push_back({all});
        return;
    }
    parted.below = join.below;
    const std::uint64_t below = circuit_.sumBelow(join.below);
    pieces_.push_back({all - below});
    pieces_.push_back({below});
}

void ChangedNets::walkApart(Parted& parted) {
    const auto isTaken = [&](int join) { return std::ranges::find(parted.joins, join) != parted.joins.end(); };
    for (const int join : parted.joins) {
        for (const Vertex start : {circuit_.joins_[join].from, circuit_.joins_[join].to}) {
            if (parted.pieceOf.contains(start)) continue;
            const int piece = static_cast<int>(pieces_.size());
            std::uint64_t sum = 0;
            std::vector<Vertex> open{start};
            parted.pieceOf.emplace(start, piece);
            while (!open.empty()) {
                const Vertex at = open.back();
                open.pop_back();
                sum += circuit_.own_[at];
                ++work_;
                for (const CircuitDigest::Arc& arc : circuit_.arcs_[at]) {
                    if (!isTaken(arc.join) && parted.pieceOf.emplace(arc.to, piece).second) open.push_back(arc.to);
                }
            }
            pieces_.push_back({sum});
        }
    }
}

int ChangedNets::pieceOf(Vertex vertex) {
    const auto strips = static_cast<Vertex>(circuit_.layout_.netOfStrip.size());
    if (vertex >= strips && circuit_.vertexOfLead(vertex - strips) != vertex) {  // a lead pulled out hangs by itself
        const auto [known, isNew] = pulledOut_.try_emplace(vertex, static_cast<int>(pieces_.size()));
        if (isNew) pieces_.push_back({});
        return known->second;
    }
    const int net = circuit_.netOf(vertex);
    if (const Parted* parted = partedOf(net)) {
        if (const auto known = parted->pieceOf.find(vertex); known != parted->pieceOf.end()) return known->second;
        return parted->first + (parted->below >= 0 && circuit_.isBelow(vertex, parted->below) ? 1 : 0);
    }
    const auto [known, isNew] = whole_.try_emplace(net, static_cast<int>(pieces_.size()));
    if (isNew) {
        ++work_;
        pieces_.push_back({circuit_.netSums_[net]});
        nets_.push_back(net);
    }
    return known->second;
}

int ChangedNets::rootOf(int piece) const {
    while (pieces_[piece].joinedTo >= 0) piece = pieces_[piece].joinedTo;
    return piece;
}

std::uint64_t ChangedNets::difference(const BenchChange& change) {
    readParts(change);
    readJumpers(change);
    for (Parted& each : parted_) part(each);
    for (const MovedLead& each : moved_) {
        const int from = pieceOf(each.from), to = pieceOf(each.to);
        pieces_[from].sum -= circuit_.numberOf_[each.lead];
        pieces_[to].sum += circuit_.numberOf_[each.lead];
    }
    for (const auto& [a, b] : joined_) {
        const int from = pieceOf(a), to = pieceOf(b);
        const int root = rootOf(from), other = rootOf(to);
        if (root == other) continue;
        pieces_[root].sum += pieces_[other].sum;
        pieces_[other].joinedTo = root;
    }
    std::uint64_t difference = 0;
    for (const int net : nets_) difference -= numberOfNet(circuit_.netSums_[net]);
    for (const Piece& piece : pieces_) {
        if (piece.joinedTo < 0) difference += numberOfNet(piece.sum);
    }
    return difference;
}

}  // namespace tiepoint
