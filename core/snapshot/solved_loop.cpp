// Nets are places, parts lead from the net in which they take current to the one into which they give it. Since every net gets as much as
// it gives, all current runs in loops that pass no net twice, and each part that carries some is on one; a search that tries the largest
// share first and steps back from dead ends finds it in linear time. No net twice: two circuits that share a ground are two loops, not an
// eight. Current falls through every part but sources, so there is a source on every loop.

#include "core/snapshot/solved_loop.h"

#include "core/circuit/element.h"
#include "core/snapshot/readings.h"

#include <algorithm>
#include <utility>

namespace tiepoint {
namespace {

constexpr double kLeakShare = 1e-6;  ///< of the largest current: less is leakage beside what is followed

using Hop = Traffic::Hop;
using Hops = std::vector<Hop>;

bool measuresVolts(const Snapshot& snapshot, int part) {
    return std::ranges::any_of(snapshot.solution.elements(), [&](const ElementState& element) {
        return element.part == part && element.closed &&
               snapshot.layout->bench->parts[part].kind->model[element.spec].reads == "voltage";
    });
}

/// By part: supplies, and instruments whose test source is in the circuit.
std::vector<char> sourcesOf(const Snapshot& snapshot) {
    const auto& parts = snapshot.layout->bench->parts;
    std::vector<char> isSource(parts.size(), 0);
    for (const ElementState element : snapshot.solution.elements()) {
        const PartKind& kind = *parts[element.part].kind;
        if (element.closed && drives(kind, kind.model[element.spec])) isSource[element.part] = 1;
    }
    return isSource;
}

/// From a part on with the current until it is back there: the parts in order, that one last.
std::optional<Hops> wayRound(const Traffic& traffic, int part, std::size_t parts, std::size_t nets) {
    struct Choice {
        Hops hops;
        std::size_t next = 0;
    };
    std::vector<char> seenPart(parts, 0), seenNet(nets, 0);
    const auto choices = [&](int from) {
        Hops hops = traffic.after(from);
        std::erase_if(hops, [&](const Hop& hop) { return seenNet[hop.net] != 0; });
        for (const Hop& hop : hops) seenNet[hop.net] = 1;
        std::stable_partition(hops.begin(), hops.end(), [part](const Hop& hop) { return hop.part == part; });
        return hops;
    };
    Hops way;
    std::vector<Choice> open{{choices(part)}};
    while (!open.empty()) {
        Choice& choice = open.back();
        if (choice.next == choice.hops.size()) {
            open.pop_back();
            if (!way.empty()) way.pop_back();
            continue;
        }
        const Hop hop = choice.hops[choice.next++];
        if (hop.part != part && std::exchange(seenPart[hop.part], 1)) continue;
        way.push_back(hop);
        if (hop.part == part) return way;
        open.push_back({choices(hop.part)});
    }
    return std::nullopt;
}

/// The same from a source on: the part itself, or the nearest one before it.
std::optional<Hops> hopsThrough(const Snapshot& snapshot, const Traffic& traffic, int part) {
    const std::vector<char> sources = sourcesOf(snapshot);
    auto round = wayRound(traffic, part, sources.size(), static_cast<std::size_t>(snapshot.layout->netCount));
    if (!round) return std::nullopt;
    const auto first = std::find_if(round->rbegin(), round->rend(), [&](const Hop& hop) { return sources[hop.part]; });
    if (first == round->rend()) return std::nullopt;
    std::rotate(round->begin(), first.base() - 1, round->end());
    return round;
}

}  // namespace

Traffic::Traffic(const Snapshot& snapshot, int asked)
    : least_(std::max(kNoCurrentAmpere, kLeakShare * snapshot.largestCurrentAmpere)) {
    const Layout& layout = *snapshot.layout;
    byPart_.resize(layout.bench->parts.size());
    byNet_.resize(static_cast<std::size_t>(layout.netCount));
    if (snapshot.status() != Status::Solved) return;
    for (int part = 0; part < static_cast<int>(byPart_.size()); ++part) {
        if (part != asked && measuresVolts(snapshot, part)) continue;
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
            const double ampere = snapshot.solution.leadInjection[lead];
            if (std::abs(ampere) <= least_) continue;
            Share& share = byPart_[part][layout.netOfLead[lead]];
            (ampere > 0 ? share.in : share.out) += std::abs(ampere);
        }
        for (const auto& [net, share] : byPart_[part]) byNet_[net].push_back(part);
    }
}

double Traffic::into(int part, int net) const {
    const auto found = byPart_[part].find(net);
    return found == byPart_[part].end() ? 0 : found->second.in;
}

double Traffic::outOf(int part, int net) const {
    const auto found = byPart_[part].find(net);
    return found == byPart_[part].end() ? 0 : found->second.out;
}

double Traffic::whole(int net) const {
    double sum = 0;
    for (const int part : byNet_[net]) sum += into(part, net);
    return sum;
}

double Traffic::most(int net) const {
    double most = 0;
    for (const int part : byNet_[net]) most = std::max(most, into(part, net));
    return most;
}

double Traffic::given(int part) const {
    double sum = 0;
    for (const auto& [net, share] : byPart_[part]) sum += share.out;
    return sum;
}

double Traffic::mostGiven(int part) const {
    double most = 0;
    for (const auto& [net, share] : byPart_[part]) most = std::max(most, share.out);
    return most;
}

std::vector<Hop> Traffic::after(int part) const {
    std::vector<std::pair<double, Hop>> found;
    for (const auto& [net, share] : byPart_[part]) {
        if (share.out <= 0) continue;
        for (const int next : byNet_[net]) {
            // What can go on is no more than leaves the part here and no more than enters the next one, which may be the same: a supply
            // whose plus and minus metal joins.
            const double there = into(next, net);
            if (there > 0) found.push_back({std::min(share.out, there), {next, net}});
        }
    }
    std::ranges::stable_sort(found, [](const auto& a, const auto& b) { return a.first > b.first; });
    Hops hops;
    for (const auto& [ampere, hop] : found) hops.push_back(hop);
    return hops;
}

std::optional<SolvedLoop> loopThrough(const Snapshot& snapshot, const Traffic& traffic, int part) {
    if (snapshot.status() != Status::Solved || !traffic.carries(part)) return std::nullopt;
    const auto hops = hopsThrough(snapshot, traffic, part);
    if (!hops) return std::nullopt;
    SolvedLoop loop;
    for (std::size_t i = 0; i < hops->size(); ++i) {
        const Hop& here = (*hops)[i];
        const int toNet = (*hops)[(i + 1) % hops->size()].net;
        const double ampere = std::min(traffic.into(here.part, here.net), traffic.outOf(here.part, toNet));
        loop.parts.push_back({here.part, here.net, toNet, ampere});
    }
    return loop;
}

std::optional<SolvedLoop> loopThrough(const Snapshot& snapshot, int part) {
    return loopThrough(snapshot, Traffic(snapshot, part), part);
}

bool divides(const Traffic& traffic, const SolvedLoop& loop) {
    return std::ranges::any_of(loop.parts, [&](const LoopPart& each) {
        return traffic.given(each.part) - each.ampere > traffic.least() ||
               traffic.whole(each.fromNet) - traffic.into(each.part, each.fromNet) > traffic.least();
    });
}

}  // namespace tiepoint
