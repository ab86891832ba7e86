// Two levels: from part to part round the solved loop, and inside each net from hole to hole along the pieces, the largest current first.

#include "core/why/potential_walk.h"

#include "core/snapshot/readings.h"
#include "core/snapshot/solved_loop.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint {
namespace {

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

    PotentialWalk walk(const SolvedLoop& loop) {
        walk_.end = WalkEnd::Closed;
        walk_.supply = loop.source();
        const LoopPart& first = loop.parts.front();
        land(metal_.door(first.part, first.fromNet, 1), first.fromNet);
        for (std::size_t i = 0; i < loop.parts.size(); ++i) {
            through(loop.parts[i]);
            along(loop.parts[(i + 1) % loop.parts.size()]);
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
    const ShownFigures& shown() const { return snapshot_.shown(); }
    int lastPoint() const { return static_cast<int>(walk_.points.size()) - 1; }
    void land(int joint, int net) { walk_.points.push_back({joint, volt(net), shown().volt(net)}); }

    void through(const LoopPart& here) {
        const double whole = traffic_.given(here.part), goesOn = traffic_.outOf(here.part, here.toNet);
        const Figure wholeShown = shown().through(here.part).out, shownOn = shown().atNet(here.part, here.toNet).out;
        if (whole - goesOn > traffic_.least() && shownOn.steps() < wholeShown.steps())
            walk_.divisions.push_back({lastPoint(), here.part, goesOn, whole,
                                       goesOn >= traffic_.mostGiven(here.part) - traffic_.least(), shownOn,
                                       wholeShown});
        walk_.steps.push_back({here.part, -1, here.ampere, volt(here.toNet) - volt(here.fromNet),
                               shown().volt(here.toNet) - shown().volt(here.fromNet)});
        land(metal_.door(here.part, here.toNet, -1), here.toNet);
    }

    /// From where the last part gives its current to where the next one takes it.
    void along(const LoopPart& next) {
        const int begin = lastPoint(), net = next.fromNet;
        const int to = metal_.door(next.part, net, 1);
        for (const int piece : metal_.way(walk_.points.back().joint, to)) {
            const int joint = walk_.points.back().joint;
            walk_.steps.push_back({-1, piece, metal_.ampere(piece, joint), 0, {}});
            land(metal_.beyond(piece, joint), net);
        }
        const double whole = traffic_.whole(net), goesOn = traffic_.into(next.part, net);
        const Figure wholeShown = shown().atNet(-1, net).in, shownOn = shown().atNet(next.part, net).in;
        if (whole - goesOn > traffic_.least() && shownOn.steps() < wholeShown.steps())
            walk_.divisions.push_back({dividesAt(begin), -1, goesOn, whole,
                                       goesOn >= traffic_.most(net) - traffic_.least(), shownOn, wholeShown});
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
    const Traffic traffic(snapshot, part);
    const auto loop = loopThrough(snapshot, traffic, part);
    return loop ? Walker(snapshot, traffic).walk(*loop) : ended(WalkEnd::NoCurrent);
}

int partToWalk(const Snapshot& snapshot) {
    const auto& parts = snapshot.layout->bench->parts;
    int found = -1;
    for (int part = 0; part < static_cast<int>(parts.size()); ++part) {
        if (!parts[part].kind->isSupply) continue;
        // Watts, since currents at different voltages don't compare; then amperes, for a supply that metal joins plus to minus.
        const auto gives = [&](int each) {
            return std::pair(-snapshot.partPower[each], currentThrough(snapshot, each).outAmpere);
        };
        if (found < 0 || gives(part) > gives(found)) found = part;
    }
    return found;
}

}  // namespace tiepoint
