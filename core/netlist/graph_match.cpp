// Two circuits are equal if their graphs are isomorphic. The method is refinement and individualisation, as tools for graph automorphisms use it
// (B. D. McKay, "Practical graph isomorphism", Congressus Numerantium 30 (1981); B. D. McKay and A. Piperno, "Practical graph isomorphism, II",
// Journal of Symbolic Computation 60 (2014); both from memory), with the graph cut into pieces wherever it falls apart:
//
//  1. Refine the colours of both graphs together, by what each vertex is joined to. Equal vertices keep equal colours, so if the colours
//     don't pair off, the graphs differ.
//  2. A colour that one vertex on each side has is settled: these two belong together. Each is checked as it is settled, all its edges to
//     settled vertices.
//  3. What is left falls into components that share no edge (most of all: equal branches between the same two nets). They are settled each by
//     itself. Between components that look alike any pairing of equal ones will do, since being equal is transitive and colours hold
//     what joins a component to what is settled: so many equal branches cost what they cost one by one, and no choice is ever taken back.
//  4. A component that doesn't fall apart has a vertex of its rarest colour set apart, and each vertex of that colour on the other side is
//     tried in its stead. All of them: whatever the true image is, it is among them. Where the circuit is symmetric the first one fits.
//
// Nothing rests on digests being free of collisions. Equal is said only of a mapping whose edges were checked one by one; different only where
// colours, which are functions of what equal graphs have in common, don't pair off or all images were tried.
//
// Tried and left: plain backtracking over parts (many equal branches cost their factorial when the last one differs), and colours as dense
// numbers from sorted neighbourhoods instead of digests (exact as well, but they mean nothing outside of one comparison, so the hash would have
// needed a second refinement).
//
// Within a tolerance being alike isn't transitive: 100, 104 and 108 ohm within 5 %. Numbers of both circuits that hang together through
// neighbours within the tolerance share a colour; pairs are checked as they are settled, and components are assigned by augmenting paths,
// which finds a pairing wherever there is one.

#include "core/netlist/graph_match.h"

#include "core/base/stopping.h"
#include "core/netlist/digest.h"
#include "core/netlist/matching.h"
#include "core/netlist/refinement.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

namespace tiepoint {
namespace {

/// Both graphs as one, the second after the first.
CircuitGraph graphsSideBySide(const CircuitGraph& first, const CircuitGraph& second) {
    CircuitGraph both = first;
    const int vertices = first.size(), arcs = static_cast<int>(first.arcs.size());
    const int figures = static_cast<int>(first.figures.size());
    both.firstArc.pop_back();
    both.firstFigure.pop_back();
    for (const int at : second.firstArc) both.firstArc.push_back(at + arcs);
    for (const int at : second.firstFigure) both.firstFigure.push_back(at + figures);
    for (const CircuitGraph::Arc& arc : second.arcs) both.arcs.push_back({arc.to + vertices, arc.role});
    both.colours.insert(both.colours.end(), second.colours.begin(), second.colours.end());
    both.figures.insert(both.figures.end(), second.figures.begin(), second.figures.end());
    return both;
}

/// Mixes into each colour to which cluster its figures belong: those that hang together through neighbours within the tolerance.
void mixClusters(CircuitGraph& graph, double tolerance) {
    struct Slot {
        std::uint64_t colour;
        int number;
        double figure;
        int vertex;
    };
    std::vector<Slot> slots;
    for (int vertex = 0; vertex < graph.size(); ++vertex) {
        const auto figures = graph.figuresOf(vertex);
        for (int i = 0; i < std::ssize(figures); ++i) slots.push_back({graph.colours[vertex], i, figures[i], vertex});
    }
    std::ranges::sort(slots, {}, [](const Slot& s) { return std::tuple(s.colour, s.number, s.figure); });
    std::uint64_t cluster = 0;
    for (std::size_t i = 0; i < slots.size(); ++i) {
        const Slot* before = i > 0 ? &slots[i - 1] : nullptr;
        const bool sameKind = before && before->colour == slots[i].colour && before->number == slots[i].number;
        if (!sameKind || !alike(before->figure, slots[i].figure, tolerance)) ++cluster;
        std::uint64_t& colour = graph.colours[slots[i].vertex];
        colour = mixed(colour, mixed(cluster, static_cast<std::uint64_t>(slots[i].number)));
    }
}

/// Thrown when the effort is used up.
struct UsedUp {};

class Matcher {
public:
    Matcher(const CircuitGraph& both, int split, double tolerance, std::uint64_t effort)
        : graph_(both),
          split_(split),
          tolerance_(tolerance),
          effort_(effort),
          refinement_(both),
          partner_(static_cast<std::size_t>(both.size()), -1) {}

    GraphMatch run() try {
        Vertices left(static_cast<std::size_t>(split_)), right(static_cast<std::size_t>(graph_.size() - split_));
        std::iota(left.begin(), left.end(), 0);
        std::iota(right.begin(), right.end(), split_);
        if (!settle(std::move(left), std::move(right))) return {};
        GraphMatch match;
        match.to.emplace();
        for (int vertex = 0; vertex < split_; ++vertex) match.to->push_back(partner_[vertex] - split_);
        return match;
    } catch (const UsedUp&) {
        return {false, std::nullopt};
    }

private:
    std::uint64_t& colour(int vertex) { return refinement_.colours[vertex]; }

    /// Pairs all vertices of both sides, or leaves them as they were.
    bool settle(Vertices left, Vertices right) {
        if (left.size() != right.size()) return false;
        const std::size_t mark = trail_.size();
        Vertices all = left;
        all.insert(all.end(), right.begin(), right.end());
        std::vector<std::uint64_t> before;
        for (const int vertex : all) before.push_back(colour(vertex));
        refine(all);
        sortByColour(left, refinement_.colours);
        sortByColour(right, refinement_.colours);
        if (pairOff(left, right)) return true;
        while (trail_.size() > mark) {
            const int vertex = trail_.back();
            trail_.pop_back();
            partner_[partner_[vertex]] = -1;
            partner_[vertex] = -1;
        }
        for (std::size_t i = 0; i < all.size(); ++i) colour(all[i]) = before[i];
        return false;
    }

    void refine(const Vertices& vertices) {
        refinement_.refine(vertices);
        if (refinement_.work() + checks_ > effort_) throw UsedUp{};
    }

    /// Both sides in the order of their colours.
    bool pairOff(const Vertices& left, const Vertices& right) {
        for (std::size_t i = 0; i < left.size(); ++i) {
            if (colour(left[i]) != colour(right[i])) return false;
        }
        Vertices restLeft, restRight;
        for (std::size_t begin = 0, end = 0; begin < left.size(); begin = end) {
            while (end < left.size() && colour(left[end]) == colour(left[begin])) ++end;
            if (end == begin + 1) {
                if (!join(left[begin], right[begin])) return false;
            } else {
                restLeft.insert(restLeft.end(), left.begin() + begin, left.begin() + end);
                restRight.insert(restRight.end(), right.begin() + begin, right.begin() + end);
            }
        }
        return restLeft.empty() || settleRest(restLeft, restRight);
    }

    /// Settles two vertices, if all their edges to settled ones agree.
    bool join(int left, int right) {
        if (!figuresAgree(left, right)) return false;
        partner_[left] = right;
        partner_[right] = left;
        trail_.push_back(left);
        ends_.clear();
        otherEnds_.clear();
        for (const CircuitGraph::Arc& arc : graph_.arcsOf(left)) {
            if (partner_[arc.to] >= 0) ends_.emplace_back(partner_[arc.to], arc.role);
        }
        for (const CircuitGraph::Arc& arc : graph_.arcsOf(right)) {
            if (partner_[arc.to] >= 0) otherEnds_.emplace_back(arc.to, arc.role);
        }
        checks_ += ends_.size() + otherEnds_.size() + 1;
        std::ranges::sort(ends_);
        std::ranges::sort(otherEnds_);
        return ends_ == otherEnds_;
    }

    bool figuresAgree(int left, int right) const {
        const auto a = graph_.figuresOf(left), b = graph_.figuresOf(right);
        return std::ranges::equal(a, b, [&](double x, double y) { return alike(x, y, tolerance_); });
    }

    bool settleRest(const Vertices& left, const Vertices& right) {
        std::vector<Vertices> lefts = refinement_.components(left), rights = refinement_.components(right);
        if (lefts.size() != rights.size()) return false;
        if (lefts.size() == 1) return branch(lefts.front(), rights.front());
        const auto groups = groupsOf(lefts), others = groupsOf(rights);
        if (groups.size() != others.size()) return false;
        for (auto group = groups.begin(), other = others.begin(); group != groups.end(); ++group, ++other) {
            if (group->first != other->first || group->second.size() != other->second.size()) return false;
            if (!settleGroup(lefts, group->second, rights, other->second)) return false;
        }
        return true;
    }

    /// Components that look alike: by size and a digest of their colours.
    std::map<std::pair<std::size_t, std::uint64_t>, std::vector<int>> groupsOf(
        const std::vector<Vertices>& components) {
        std::map<std::pair<std::size_t, std::uint64_t>, std::vector<int>> groups;
        for (int i = 0; i < std::ssize(components); ++i) {
            std::uint64_t look = 0;
            for (const int vertex : components[i]) look += mixed(colour(vertex), 0);
            groups[{components[i].size(), look}].push_back(i);
        }
        return groups;
    }

    bool settleGroup(const std::vector<Vertices>& lefts, const std::vector<int>& group,
                     const std::vector<Vertices>& rights, const std::vector<int>& others) {
        return tolerance_ > 0 ? assign(lefts, group, rights, others) : settleInTurn(lefts, group, rights, others);
    }

    /// Being equal is transitive: whichever fits first is as good as any.
    bool settleInTurn(const std::vector<Vertices>& lefts, const std::vector<int>& group,
                      const std::vector<Vertices>& rights, const std::vector<int>& others) {
        Vertices open = others;
        for (const int i : group) {
            const auto fits = std::ranges::find_if(open, [&](int j) { return settle(lefts[i], rights[j]); });
            if (fits == open.end()) return false;
            std::swap(*fits, open.back());
            open.pop_back();
        }
        return true;
    }

    bool assign(const std::vector<Vertices>& lefts, const std::vector<int>& group, const std::vector<Vertices>& rights,
                const std::vector<int>& others) {
        const auto suits = [&](int i, int j) { return wouldSettle(lefts[group[i]], rights[others[j]]); };
        const std::vector<int> partners = perfectMatching(static_cast<int>(group.size()), suits);
        if (partners.empty()) return false;
        for (std::size_t i = 0; i < group.size(); ++i) {
            if (!settle(lefts[group[i]], rights[others[partners[i]]])) return false;
        }
        return true;
    }

    bool wouldSettle(const Vertices& left, const Vertices& right) {
        std::vector<std::uint64_t> before;
        for (const auto* side : {&left, &right}) {
            for (const int vertex : *side) before.push_back(colour(vertex));
        }
        const std::size_t mark = trail_.size();
        if (!settle(left, right)) return false;
        for (; trail_.size() > mark; trail_.pop_back()) {
            partner_[partner_[trail_.back()]] = -1;
            partner_[trail_.back()] = -1;
        }
        std::size_t i = 0;
        for (const auto* side : {&left, &right}) {
            for (const int vertex : *side) colour(vertex) = before[i++];
        }
        return true;
    }

    /// One vertex of the rarest colour set apart, and every image of it tried.
    bool branch(Vertices left, Vertices right) {
        sortByColour(left, refinement_.colours);
        sortByColour(right, refinement_.colours);
        const auto [begin, end] = rarest(left);
        const int chosen = left[begin];
        const std::uint64_t before = colour(chosen);
        for (std::size_t i = begin; i < end; ++i) {
            stopIfAsked();
            const int image = right[i];
            if (colour(image) != before) return false;  // the components' colours don't pair off
            refinement_.setApart(chosen);
            refinement_.setApart(image);
            if (settle(left, right)) return true;
            colour(chosen) = colour(image) = before;
        }
        return false;
    }

    /// The stretch of vertices with the rarest colour.
    std::pair<std::size_t, std::size_t> rarest(const Vertices& sorted) {
        std::pair<std::size_t, std::size_t> best{0, sorted.size()};
        for (std::size_t begin = 0, end = 0; begin < sorted.size(); begin = end) {
            while (end < sorted.size() && colour(sorted[end]) == colour(sorted[begin])) ++end;
            if (end - begin < best.second - best.first) best = {begin, end};
        }
        return best;
    }

    const CircuitGraph& graph_;
    int split_;
    double tolerance_;
    std::uint64_t effort_, checks_ = 0;
    Refinement refinement_;
    std::vector<int> partner_;  // by vertex, of both sides; -1: not settled
    std::vector<int> trail_;    // settled ones of the left, in order
    std::vector<std::pair<int, std::uint64_t>> ends_, otherEnds_;
};

}  // namespace

bool alike(double a, double b, double tolerance) {
    return a == b || std::abs(a - b) <= tolerance * std::max(std::abs(a), std::abs(b));
}

GraphMatch matchGraphs(const CircuitGraph& first, const CircuitGraph& second, double tolerance, std::uint64_t effort) {
    if (first.size() != second.size() || first.arcs.size() != second.arcs.size()) return {};
    CircuitGraph both = graphsSideBySide(first, second);
    if (tolerance > 0) mixClusters(both, tolerance);
    return Matcher(both, first.size(), tolerance, effort).run();
}

}  // namespace tiepoint
