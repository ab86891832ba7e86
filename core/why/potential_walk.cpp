// Two levels. First from part to part: nets are places, parts lead from the net in which they take current to the one into which they give
// it. Upstream of the part the walk follows the largest share to the first supply; downstream it does so until it is back there, through
// further supplies if they stand in a row. Since every net gets as much as it gives, such ways exist; a search that tries the largest share
// first and steps back from dead ends finds them in linear time. Then, inside each net, from hole to hole along the pieces, the largest current first.

#include "core/why/potential_walk.h"

#include "core/snapshot/readings.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <utility>

namespace tiepoint {
namespace {

constexpr double kLeakShare = 1e-6;  ///< of the largest current: less is leakage beside what is followed

/// A part on the way, and the net that was crossed to reach it.
struct Hop {
    int part = 0;
    int net = 0;
};
using Hops = std::vector<Hop>;

/// What every part draws out of every net.
class Traffic {
public:
    explicit Traffic(const Snapshot& snapshot)
        : least_(std::max(kNoCurrentAmpere, kLeakShare * snapshot.largestCurrentAmpere)) {
        const Layout& layout = *snapshot.layout;
        byPart_.resize(layout.bench->parts.size());
        byNet_.resize(static_cast<std::size_t>(layout.netCount));
        for (int part = 0; part < static_cast<int>(byPart_.size()); ++part) {
            for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead)
                byPart_[part][layout.netOfLead[lead]] += snapshot.solution.leadInjection[lead];
            std::erase_if(byPart_[part], [this](const auto& entry) { return std::abs(entry.second) <= least_; });
            for (const auto& [net, ampere] : byPart_[part]) byNet_[net].push_back(part);
        }
    }

    double least() const { return least_; }
    /// Into the part out of the net; 0 if too little to follow.
    double into(int part, int net) const {
        const auto found = byPart_[part].find(net);
        return found == byPart_[part].end() ? 0 : found->second;
    }
    bool carries(int part) const { return !byPart_[part].empty(); }

    /// All that leaves a net.
    double whole(int net) const {
        double sum = 0;
        for (const int part : byNet_[net]) sum += std::max(0.0, into(part, net));
        return sum;
    }
    /// The most that leaves a net into one part.
    double most(int net) const {
        double most = 0;
        for (const int part : byNet_[net]) most = std::max(most, into(part, net));
        return most;
    }
    /// All that a part gives, and the most that it gives into one net.
    double given(int part) const {
        double sum = 0;
        for (const auto& [net, ampere] : byPart_[part]) sum += std::max(0.0, -ampere);
        return sum;
    }
    double mostGiven(int part) const {
        double most = 0;
        for (const auto& [net, ampere] : byPart_[part]) most = std::max(most, -ampere);
        return most;
    }

    /// The parts after one (sign 1: with the current), the largest share first.
    Hops after(int part, double sign) const {
        std::vector<std::pair<double, Hop>> found;
        for (const auto& [net, ampere] : byPart_[part]) {
            if (-sign * ampere <= 0) continue;
            for (const int next : byNet_[net]) {
                // What can go on is no more than leaves the part here and no more than enters the next one.
                const double there = sign * into(next, net);
                if (next != part && there > 0) found.push_back({std::min(-sign * ampere, there), {next, net}});
            }
        }
        std::ranges::stable_sort(found, [](const auto& a, const auto& b) { return a.first > b.first; });
        Hops hops;
        for (const auto& [ampere, hop] : found) hops.push_back(hop);
        return hops;
    }

private:
    double least_;
    std::vector<std::map<int, double>> byPart_;
    std::vector<std::vector<int>> byNet_;
};

/// From a part on to the first one that is a goal, which is the last hop; nothing if no way leads there. Parts that are `seen` are no way.
std::optional<Hops> wayTo(const Traffic& traffic, int start, double sign, const std::function<bool(int)>& isGoal,
                          std::vector<char>& seen) {
    struct Choice {
        Hops hops;
        std::size_t next = 0;
    };
    Hops way;
    std::vector<Choice> open{{traffic.after(start, sign)}};
    while (!open.empty()) {
        Choice& choice = open.back();
        if (choice.next == choice.hops.size()) {
            open.pop_back();
            if (!way.empty()) way.pop_back();
            continue;
        }
        const Hop hop = choice.hops[choice.next++];
        if (isGoal(hop.part)) {
            way.push_back(hop);
            return way;
        }
        if (std::exchange(seen[hop.part], 1)) continue;
        way.push_back(hop);
        open.push_back({traffic.after(hop.part, sign)});
    }
    return std::nullopt;
}

/// The parts once round, each with the net before it, from a supply on; the net of the first is the one that leads back to it.
std::optional<Hops> loopThrough(const Snapshot& snapshot, const Traffic& traffic, int part) {
    const auto& parts = snapshot.layout->bench->parts;
    const auto isSupply = [&](int p) { return parts[p].kind->isSupply; };
    std::vector<char> seen(parts.size(), 0);
    seen[part] = 1;
    if (isSupply(part)) {
        auto round = wayTo(
            traffic, part, 1, [part](int p) { return p == part; }, seen);
        if (round) std::rotate(round->begin(), round->end() - 1, round->end());
        return round;
    }
    const auto upstream = wayTo(traffic, part, -1, isSupply, seen);
    if (!upstream) return std::nullopt;
    const int first = upstream->back().part;
    seen.assign(parts.size(), 0);
    seen[part] = 1;
    for (const Hop& hop : *upstream) seen[hop.part] = 1;
    const auto downstream = wayTo(
        traffic, part, 1, [first](int p) { return p == first; }, seen);
    if (!downstream) return std::nullopt;
    // Upstream a hop's net lies behind its part, so the nets move on by one part when the way is turned round.
    Hops round{{first, 0}};
    for (auto hop = upstream->rbegin(); hop != upstream->rend(); ++hop) {
        const auto before = std::next(hop);
        round.push_back({before == upstream->rend() ? part : before->part, hop->net});
    }
    round.insert(round.end(), downstream->begin(), downstream->end());
    round.front().net = round.back().net;
    round.pop_back();
    return round;
}

/// Ways inside the metal.
class Metal {
public:
    explicit Metal(const Snapshot& snapshot)
        : snapshot_(snapshot),
          layout_(*snapshot.layout),
          at_(layout_.joints.size()) {
        for (int piece = 0; piece < static_cast<int>(layout_.pieces.size()); ++piece) {
            at_[layout_.pieces[piece].from].push_back(piece);
            at_[layout_.pieces[piece].to].push_back(piece);
        }
    }

    int beyond(int piece, int joint) const {
        return layout_.pieces[piece].from == joint ? layout_.pieces[piece].to : layout_.pieces[piece].from;
    }
    /// Along the piece, away from the joint.
    double ampere(int piece, int joint) const {
        return (layout_.pieces[piece].from == joint ? 1 : -1) * snapshot_.pieceCurrent[piece];
    }

    /// The joint at which the part takes most (sign 1) or gives most (sign -1) in the net.
    int door(int part, int net, double sign) const {
        int found = layout_.firstLead[part];
        double most = 0;
        for (int lead = found; lead < layout_.firstLead[part + 1]; ++lead) {
            const double ampere = sign * snapshot_.solution.leadInjection[lead];
            if (layout_.netOfLead[lead] != net || ampere <= most) continue;
            most = ampere;
            found = lead;
        }
        return layout_.drawJointOf(found);
    }

    /// The pieces from one joint to another of the same net.
    std::vector<int> way(int from, int to) const {
        struct Choice {
            int joint;
            std::vector<int> pieces;
            std::size_t next = 0;
        };
        std::vector<char> seen(at_.size(), 0);
        std::vector<int> taken;
        std::vector<Choice> open{{from, largestFirst(from)}};
        seen[from] = 1;
        while (!open.empty() && open.back().joint != to) {
            Choice& choice = open.back();
            if (choice.next == choice.pieces.size()) {
                open.pop_back();
                if (!taken.empty()) taken.pop_back();
                continue;
            }
            const int piece = choice.pieces[choice.next++];
            const int next = beyond(piece, choice.joint);
            if (std::exchange(seen[next], 1)) continue;
            taken.push_back(piece);
            open.push_back({next, largestFirst(next)});
        }
        return taken;
    }

private:
    std::vector<int> largestFirst(int joint) const {
        std::vector<int> pieces = at_[joint];
        std::ranges::stable_sort(pieces, [&](int a, int b) { return ampere(a, joint) > ampere(b, joint); });
        return pieces;
    }

    const Snapshot& snapshot_;
    const Layout& layout_;
    std::vector<std::vector<int>> at_;  ///< by joint
};

/// Lays the points of a loop of parts.
class Walker {
public:
    Walker(const Snapshot& snapshot, const Traffic& traffic)
        : snapshot_(snapshot),
          traffic_(traffic),
          metal_(snapshot) {}

    PotentialWalk walk(const Hops& loop) {
        walk_.end = WalkEnd::Closed;
        walk_.supply = loop.front().part;
        land(metal_.door(loop.front().part, loop.front().net, 1), loop.front().net);
        for (std::size_t i = 0; i < loop.size(); ++i) {
            const Hop& here = loop[i];
            const Hop& next = loop[(i + 1) % loop.size()];
            through(here.part, here.net, next.net);
            along(next.part, next.net);
        }
        const bool known =
            std::ranges::none_of(walk_.points, [](const WalkPoint& point) { return std::isnan(point.volt); });
        if (known) return std::move(walk_);
        PotentialWalk floating;
        floating.end = WalkEnd::Floating;
        return floating;
    }

private:
    double volt(int net) const { return snapshot_.solution.netVoltage[net]; }
    int lastPoint() const { return static_cast<int>(walk_.points.size()) - 1; }
    void land(int joint, int net) { walk_.points.push_back({joint, volt(net)}); }

    void through(int part, int fromNet, int toNet) {
        const double in = traffic_.into(part, fromNet), out = -traffic_.into(part, toNet);
        const double ampere = std::min(in, out), whole = traffic_.given(part);
        if (whole - ampere > traffic_.least())
            walk_.divisions.push_back(
                {lastPoint(), part, ampere, whole, ampere >= traffic_.mostGiven(part) - traffic_.least()});
        walk_.steps.push_back({part, -1, ampere, volt(toNet) - volt(fromNet)});
        land(metal_.door(part, toNet, -1), toNet);
    }

    void along(int part, int net) {
        const int begin = lastPoint();
        const int to = metal_.door(part, net, 1);
        for (const int piece : metal_.way(walk_.points.back().joint, to)) {
            const int joint = walk_.points.back().joint;
            walk_.steps.push_back({-1, piece, metal_.ampere(piece, joint), 0});
            land(metal_.beyond(piece, joint), net);
        }
        const double whole = traffic_.whole(net), goesOn = traffic_.into(part, net);
        if (whole - goesOn > traffic_.least())
            walk_.divisions.push_back(
                {dividesAt(begin), -1, goesOn, whole, goesOn >= traffic_.most(net) - traffic_.least()});
    }

    /// The point, from `begin` on, after which less goes on than came there: the place to look at.
    int dividesAt(int begin) const {
        double most = 0;
        int at = begin;
        for (int point = begin; point < lastPoint(); ++point) {
            const double ampere = walk_.steps[point].ampere;
            if (ampere < most - traffic_.least()) return at;
            most = std::max(most, ampere);
            at = point + 1;
        }
        return at;
    }

    const Snapshot& snapshot_;
    const Traffic& traffic_;
    Metal metal_;
    PotentialWalk walk_;
};

PotentialWalk ended(WalkEnd end) {
    PotentialWalk walk;
    walk.end = end;
    return walk;
}

}  // namespace

PotentialWalk walkPotential(const Snapshot& snapshot, int part) {
    if (snapshot.status() == Status::Off) return ended(WalkEnd::Off);
    if (snapshot.status() == Status::None) return ended(WalkEnd::NoSolution);
    const Traffic traffic(snapshot);
    if (!traffic.carries(part)) return ended(WalkEnd::NoCurrent);
    const auto loop = loopThrough(snapshot, traffic, part);
    return loop ? Walker(snapshot, traffic).walk(*loop) : ended(WalkEnd::NoCurrent);
}

int partToWalk(const Snapshot& snapshot) {
    const auto& parts = snapshot.layout->bench->parts;
    int found = -1;
    for (int part = 0; part < static_cast<int>(parts.size()); ++part) {
        if (!parts[part].kind->isSupply) continue;
        if (found < 0 || currentThrough(snapshot, part).outAmpere > currentThrough(snapshot, found).outAmpere)
            found = part;
    }
    return found;
}

}  // namespace tiepoint
