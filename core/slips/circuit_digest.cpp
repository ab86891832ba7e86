// The walk is the usual one for bridges: a join is one where nothing below it leads back above it (Tarjan, "A note on finding the bridges of
// a graph", Information Processing Letters 2, 1974; from memory). It is written without recursion, since a rail may tie thousands of strips.

#include "core/slips/circuit_digest.h"

#include "core/slips/changed_nets.h"
#include "core/slips/exchangeable.h"

#include <algorithm>
#include <array>
#include <bit>

namespace tiepoint {
namespace {

int holeIndexOn(const Layout& layout, int board, const Hole& hole) {
    return layout.boardFirstHole[board] + layout.bench->boards[board].kind->holeIndex(hole.line, hole.number);
}

/// Of a part's setting, for the sum over all.
std::uint64_t numberOfSetting(int part, bool state, int index, double value) {
    return mixedNumber(
        mixedNumber(static_cast<std::uint64_t>(part) * 64 + static_cast<std::uint64_t>(index) * 2 + state) ^
        std::bit_cast<std::uint64_t>(value + 0.0));
}

/// Of a part in which nothing passes; dead or open inside is the same circuit. A dry contact shows in the nets.
std::uint64_t numberOfCondition(int part, Condition condition) {
    return hasElements(condition) ? 0 : mixedNumber(mixedNumber(static_cast<std::uint64_t>(part)) + 1);
}

std::uint64_t numberOfSettings(int index, const Part& part) {
    std::uint64_t sum = numberOfCondition(index, part.condition);
    for (int i = 0; i < static_cast<int>(part.values.size()); ++i)
        sum += numberOfSetting(index, false, i, part.value(i));
    for (int i = 0; i < static_cast<int>(part.state.size()); ++i)
        sum += numberOfSetting(index, true, i, part.stateValue(i));
    return sum;
}

}  // namespace

std::uint64_t mixedNumber(std::uint64_t number) {
    // The finalizer of a generator that steps by the golden ratio; constants from memory, any good mixer serves.
    number += 0x9e3779b97f4a7c15u;
    number = (number ^ (number >> 30)) * 0xbf58476d1ce4e5b9u;
    number = (number ^ (number >> 27)) * 0x94d049bb133111ebu;
    return number ^ (number >> 31);
}

CircuitDigest::CircuitDigest(const Layout& layout) : layout_(layout) {
    const Bench& bench = *layout.bench;
    for (int b = 0; b < static_cast<int>(bench.boards.size()); ++b) boards_.emplace(bench.boards[b].id, b);
    for (int p = 0; p < static_cast<int>(bench.parts.size()); ++p) parts_.emplace(bench.parts[p].id, p);
    for (int j = 0; j < static_cast<int>(bench.jumpers.size()); ++j) jumpers_.emplace(bench.jumpers[j].id, j);
    numberLeads();
    makeJoins();
    const std::size_t vertices = layout.netOfStrip.size() + layout.netOfLead.size();
    entered_.assign(vertices, -1);
    left_.assign(vertices, -1);
    for (Vertex vertex = 0; vertex < static_cast<Vertex>(vertices); ++vertex) {
        if (entered_[vertex] < 0) walk(vertex);
    }
    sumUp();
}

void CircuitDigest::numberLeads() {
    const Bench& bench = *layout_.bench;
    for (int p = 0; p < static_cast<int>(bench.parts.size()); ++p) {
        const std::vector<int> terminals = terminalsOf(*bench.parts[p].kind);
        const int untouched = untouchedLead(bench.parts[p]);
        for (const int terminal : terminals) {
            const auto place = static_cast<std::uint64_t>(layout_.firstLead[p] + terminal);
            numberOf_.push_back(mixedNumber(place + 1));
            const int lead = static_cast<int>(vertexOf_.size()), hole = layout_.holeOfLead[lead];
            const bool touches = hole >= 0 && lead - layout_.firstLead[p] != untouched;
            vertexOf_.push_back(touches ? layout_.stripOfHole[hole] : ownVertexOf(lead));
        }
    }
}

CircuitDigest::Vertex CircuitDigest::vertexOfHole(const Hole& hole) const {
    return layout_.stripOfHole[holeIndexOn(layout_, boards_.at(hole.board), hole)];
}
CircuitDigest::Vertex CircuitDigest::vertexOfEnd(const JumperEnd& end) const {
    if (const Hole* hole = std::get_if<Hole>(&end)) return vertexOfHole(*hole);
    const Socket& socket = std::get<Socket>(end);
    return ownVertexOf(layout_.leadIndex(parts_.at(socket.part), socket.lead));
}

int CircuitDigest::netOf(Vertex vertex) const {
    const auto strips = static_cast<Vertex>(layout_.netOfStrip.size());
    return vertex < strips ? layout_.netOfStrip[vertex] : layout_.netOfLead[vertex - strips];
}

void CircuitDigest::makeJoins() {
    const Bench& bench = *layout_.bench;
    for (const Jumper& jumper : bench.jumpers) {
        if (jumper.condition == Condition::Sound)
            joins_.push_back({vertexOfEnd(jumper.ends[0]), vertexOfEnd(jumper.ends[1])});
        else
            joins_.push_back({-1, -1});
    }
    for (int p = 0; p < static_cast<int>(bench.parts.size()); ++p) {
        firstJoin_.push_back(static_cast<int>(joins_.size()));
        for (const auto& group : bench.parts[p].kind->joined) {
            for (std::size_t i = 1; i < group.size(); ++i)
                joins_.push_back(
                    {vertexOfLead(layout_.firstLead[p] + group[0]), vertexOfLead(layout_.firstLead[p] + group[i])});
        }
    }
    firstJoin_.push_back(static_cast<int>(joins_.size()));
    arcs_.resize(layout_.netOfStrip.size() + layout_.netOfLead.size());
    for (int j = 0; j < static_cast<int>(joins_.size()); ++j) {
        if (joins_[j].from < 0) continue;
        arcs_[joins_[j].from].push_back({joins_[j].to, j});
        arcs_[joins_[j].to].push_back({joins_[j].from, j});
    }
}

void CircuitDigest::walk(Vertex root) {
    struct Step {
        Vertex at;
        int by;  ///< the join that led here
        std::size_t next = 0;
        int lowest;
    };
    const auto enter = [&](Vertex vertex) {
        entered_[vertex] = static_cast<int>(order_.size());
        order_.push_back(vertex);
        return entered_[vertex];
    };
    std::vector<Step> steps{{root, -1, 0, enter(root)}};
    while (!steps.empty()) {
        Step& step = steps.back();
        if (step.next < arcs_[step.at].size()) {
            const Arc arc = arcs_[step.at][step.next++];
            if (arc.join == step.by) continue;
            if (entered_[arc.to] >= 0)
                step.lowest = std::min(step.lowest, entered_[arc.to]);
            else
                steps.push_back({arc.to, arc.join, 0, enter(arc.to)});
            continue;
        }
        const Step done = step;
        left_[done.at] = static_cast<int>(order_.size());
        steps.pop_back();
        if (steps.empty()) break;
        steps.back().lowest = std::min(steps.back().lowest, done.lowest);
        if (done.lowest == entered_[done.at]) {
            joins_[done.by].bridge = true;
            joins_[done.by].below = done.at;
        }
    }
}

void CircuitDigest::sumUp() {
    own_.assign(arcs_.size(), 0);
    for (int lead = 0; lead < layout_.leadCount(); ++lead) own_[vertexOfLead(lead)] += numberOf_[lead];
    netSums_.assign(static_cast<std::size_t>(layout_.netCount), 0);
    sums_.assign(order_.size() + 1, 0);
    for (std::size_t time = 0; time < order_.size(); ++time) sums_[time + 1] = sums_[time] + own_[order_[time]];
    for (int lead = 0; lead < layout_.leadCount(); ++lead) netSums_[layout_.netOfLead[lead]] += numberOf_[lead];
    for (const std::uint64_t sum : netSums_) now_ += numberOfNet(sum);
    for (int p = 0; p < static_cast<int>(layout_.bench->parts.size()); ++p)
        now_ += numberOfSettings(p, layout_.bench->parts[p]);
}

bool CircuitDigest::isBelow(Vertex vertex, Vertex top) const {
    return entered_[vertex] >= entered_[top] && entered_[vertex] < left_[top];
}
std::uint64_t CircuitDigest::sumBelow(Vertex top) const { return sums_[left_[top]] - sums_[entered_[top]]; }

std::uint64_t CircuitDigest::settingDifference(const SetFigure& figure) const {
    const int index = parts_.at(figure.part);
    const Part& part = layout_.bench->parts[index];
    const double was = figure.state ? part.stateValue(figure.index) : part.value(figure.index);
    return numberOfSetting(index, figure.state, figure.index, figure.to) -
           numberOfSetting(index, figure.state, figure.index, was);
}

/// Rails that break change nothing where one half of each isn't used; else the circuit is told apart by the board alone.
std::uint64_t CircuitDigest::railsDifference(const SetRails& rails) const {
    const int index = boards_.at(rails.board);
    const Board& board = layout_.bench->boards[index];
    if (board.rails == rails.to || !board.kind->hasRails()) return 0;
    const std::uint64_t number = mixedNumber(~static_cast<std::uint64_t>(index));
    if (rails.to == Rails::Through) return number;
    constexpr std::array kRails = {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};
    const bool matters = std::ranges::any_of(kRails, [&](Line rail) { return breakMatters(index, rail); });
    return matters ? number : 0;
}

std::uint64_t CircuitDigest::afterJoining(int net, int other) const {
    if (net == other) return now_;
    const std::uint64_t one = netSums_[net], two = netSums_[other];
    return now_ - numberOfNet(one) - numberOfNet(two) + numberOfNet(one + two);
}

std::uint64_t CircuitDigest::after(const BenchChange& change, std::size_t& work) const {
    ChangedNets nets(*this);
    std::uint64_t digest = now_ + nets.difference(change);
    work += nets.work();
    for (const SetFigure& figure : change.figures) digest += settingDifference(figure);
    for (const SetCondition& each : change.conditions) {
        const auto part = parts_.find(each.id);
        if (part == parts_.end()) continue;
        digest += numberOfCondition(part->second, each.to) -
                  numberOfCondition(part->second, layout_.bench->parts[part->second].condition);
    }
    for (const SetRails& rails : change.rails) digest += railsDifference(rails);
    return digest;
}

}  // namespace tiepoint
