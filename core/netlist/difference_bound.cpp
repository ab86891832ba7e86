// Two bounds, each of which holds by itself.
//
// By parts: a part that no part of its kind on the other side is set like has a setting that differs, or no partner; and of a kind as many have
// no partner as it has more on one side. Pairs are of one kind, so the kinds add up.
//
// By nets: the look of a net is which kinds' terminals meet on it. A terminal on another net changes two looks by one terminal each, the net's where
// it is and the net's where it should be; a part without a partner changes those of its terminals by one each, and a setting none. So
// count what has to be put on nets and taken off them until the looks of both sides are the same, by the cheapest pairing of nets; a net that
// goes keeps one terminal, for alone that joins nothing. Nets of equal looks may be paired off first: what two looks differ in
// is a distance, and going round by an equal one is never shorter.

#include "core/netlist/difference_bound.h"

#include "core/netlist/assignment.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <map>
#include <string>
#include <string_view>
#include <utility>

namespace tiepoint {
namespace {

using Look = std::vector<std::pair<std::string_view, int>>;  ///< kind and terminal, sorted

struct KindCount {
    int first = 0, second = 0;                ///< parts on each side
    int aloneInFirst = 0, aloneInSecond = 0;  ///< of them: set like none on the other side
    int fewest() const { return std::max({aloneInFirst, aloneInSecond, std::abs(first - second)}); }
};

int fewestByParts(const CircuitSide& first, const CircuitSide& second, const Grid<int>& apart) {
    std::map<const PartKind*, KindCount> kinds;
    const auto isLike = [&](int p, int q) {
        return first.netlist.parts[p].kind == second.netlist.parts[q].kind && apart.at(p, q) == 0;
    };
    for (const int p : first.parts) {
        KindCount& count = kinds[first.netlist.parts[p].kind];
        ++count.first;
        count.aloneInFirst += std::ranges::none_of(second.parts, [&](int q) { return isLike(p, q); });
    }
    for (const int q : second.parts) {
        KindCount& count = kinds[second.netlist.parts[q].kind];
        ++count.second;
        count.aloneInSecond += std::ranges::none_of(first.parts, [&](int p) { return isLike(p, q); });
    }
    int sum = 0;
    for (const auto& [kind, count] : kinds) sum += count.fewest();
    return sum;
}

/// By kind, by terminal: the first of the terminals that some part of the kind may have in its place.
class TerminalNames {
public:
    void learnFrom(const CircuitSide& side) {
        for (const int part : side.parts) {
            std::vector<int>& names = of_[side.netlist.parts[part].kind];
            for (int slot = static_cast<int>(names.size()); slot < std::ssize(side.netOf[part]); ++slot)
                names.push_back(slot);
            for (const std::vector<int>& order : side.exchanges[part]) {
                for (std::size_t slot = 0; slot < order.size(); ++slot)
                    unite(names, static_cast<int>(slot), order[slot]);
            }
        }
    }
    int nameOf(const PartKind* kind, int slot) const { return of_.at(kind)[static_cast<std::size_t>(slot)]; }

private:
    static void unite(std::vector<int>& names, int one, int other) {
        const int to = std::min(names[one], names[other]), from = std::max(names[one], names[other]);
        if (to != from) std::ranges::replace(names, from, to);
    }

    std::map<const PartKind*, std::vector<int>> of_;
};

std::vector<Look> looksOf(const CircuitSide& side, const TerminalNames& names) {
    std::vector<Look> looks;
    for (const auto& contacts : side.contacts) {
        if (contacts.empty()) continue;
        Look& look = looks.emplace_back();
        for (const CircuitSide::Contact& contact : contacts) {
            const PartKind* kind = side.netlist.parts[contact.part].kind;
            look.emplace_back(kind->name, names.nameOf(kind, contact.slot));
        }
        std::ranges::sort(look);
    }
    std::ranges::sort(looks);
    return looks;
}

int apart(const Look& a, const Look& b) {
    Look only;
    std::ranges::set_symmetric_difference(a, b, std::back_inserter(only));
    return static_cast<int>(only.size());
}

/// How many terminals are put on nets and taken off them, at least, to make the one looks the others.
int changesBetween(const std::vector<Look>& lost, const std::vector<Look>& gained) {
    const auto toGo = [](const Look& look) { return static_cast<int>(look.size()) - 1; };
    int changes = 0;
    for (const auto* looks : {&lost, &gained})
        for (const Look& look : *looks) changes += toGo(look);
    Grid<double> gains(lost.size(), gained.size());
    for (int i = 0; i < std::ssize(lost); ++i) {
        for (int j = 0; j < std::ssize(gained); ++j)
            gains.at(i, j) = toGo(lost[i]) + toGo(gained[j]) - apart(lost[i], gained[j]);
    }
    const std::vector<int> pairs = bestAssignment(gains);
    for (int i = 0; i < std::ssize(pairs); ++i)
        if (pairs[i] >= 0) changes -= static_cast<int>(gains.at(i, pairs[i]));
    return changes;
}

int fewestByNets(const CircuitSide& first, const CircuitSide& second) {
    TerminalNames names;
    names.learnFrom(first);
    names.learnFrom(second);
    const std::vector<Look> ours = looksOf(first, names), theirs = looksOf(second, names);
    std::vector<Look> lost, gained;
    std::ranges::set_difference(ours, theirs, std::back_inserter(lost));
    std::ranges::set_difference(theirs, ours, std::back_inserter(gained));
    int changedByOne = 2;
    for (const CircuitSide* side : {&first, &second}) {
        for (const int part : side->parts)
            changedByOne = std::max(changedByOne, static_cast<int>(side->netOf[part].size()));
    }
    return (changesBetween(lost, gained) + changedByOne - 1) / changedByOne;
}

}  // namespace

int fewestDifferences(const CircuitSide& first, const CircuitSide& second, const Grid<int>& settingsApart) {
    return std::max({1, fewestByParts(first, second, settingsApart), fewestByNets(first, second)});
}

}  // namespace tiepoint
