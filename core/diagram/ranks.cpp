// Method notes. A diagram must not move when a switch is pressed, so the direction of current doesn't come from the solution. Every part counts
// as one unit of resistance between its terminals (a star of halves where it has more than two), the plus of the supplies is held at 1 and the
// minus at 0; the potentials that follow (a harmonic function) order the nets, and on every path from plus to minus they fall. Ties, such
// as both middles of a balanced bridge, are broken by the key of the parts there. In that order every part lies between a net before it and
// one after it, so the graph has no cycle and layers by longest path exist (Sugiyama, Tagawa and Toda 1981, step I).
// Tried and left: directions from the solved potentials (a pressed button turned half the sheet round).

#include "core/diagram/ranks.h"

#include "core/base/disjoint_sets.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <tuple>

namespace tiepoint {
namespace {

struct Anchors {
    std::vector<char> plus, minus;  // by net
};

/// Distinct nets of each part.
std::vector<std::vector<int>> netsOfParts(const Netlist& netlist) {
    std::vector<std::vector<int>> nets(netlist.parts.size());
    for (std::size_t part = 0; part < nets.size(); ++part) {
        for (const int net : netlist.leads[part]) {
            if (net >= 0 && std::ranges::find(nets[part], net) == nets[part].end()) nets[part].push_back(net);
        }
    }
    return nets;
}

Anchors findAnchors(const Netlist& netlist) {
    Anchors anchors{std::vector<char>(netlist.nets.size()), std::vector<char>(netlist.nets.size())};
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        const PartKind& kind = *netlist.parts[part].kind;
        if (!kind.isSupply) continue;
        for (const ElementSpec& spec : kind.model) {
            const int from = kind.leadIndex(spec.from()), to = kind.leadIndex(spec.to());
            if (from < 0 || to < 0) continue;
            const auto netAt = [&](int lead) {
                const std::vector<int> first = firstOfTerminal(kind);
                for (int other = 0; other < std::ssize(first); ++other) {
                    if (first[other] == first[lead] && netlist.leads[part][other] >= 0)
                        return netlist.leads[part][other];
                }
                return -1;
            };
            if (const int net = netAt(from); net >= 0) anchors.plus[net] = 1;
            if (const int net = netAt(to); net >= 0) anchors.minus[net] = 1;
        }
    }
    return anchors;
}

std::vector<double> potentials(const Netlist& netlist, const std::vector<std::vector<int>>& netsOf,
                               const Anchors& anchors) {
    const auto nets = static_cast<Eigen::Index>(netlist.nets.size());
    Eigen::Index size = nets;
    for (const auto& list : netsOf) size += list.size() > 2;
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(size, size);
    Eigen::VectorXd right = Eigen::VectorXd::Zero(size);
    const auto join = [&](Eigen::Index a, Eigen::Index b, double siemens) {
        matrix(a, a) += siemens;
        matrix(b, b) += siemens;
        matrix(a, b) -= siemens;
        matrix(b, a) -= siemens;
    };
    Eigen::Index star = nets;
    for (const auto& list : netsOf) {
        if (list.size() == 2) join(list[0], list[1], 1);
        if (list.size() <= 2) continue;
        for (const int net : list) join(net, star, 2);
        ++star;
    }
    constexpr double kHeld = 1e6, kLoose = 1e-9;
    for (Eigen::Index net = 0; net < nets; ++net) {
        if (anchors.plus[net] != anchors.minus[net]) {
            matrix(net, net) += kHeld;
            right(net) += anchors.plus[net] ? kHeld : 0;
        }
        matrix(net, net) += kLoose;
        right(net) += kLoose / 2;
    }
    for (Eigen::Index node = nets; node < size; ++node) matrix(node, node) += kLoose;
    const Eigen::VectorXd solved = matrix.ldlt().solve(right);
    std::vector<double> volts(netlist.nets.size());
    constexpr double kStep = 1e5;  // equal by symmetry must be equal here
    for (std::size_t net = 0; net < volts.size(); ++net)
        volts[net] = std::round(solved(static_cast<Eigen::Index>(net)) * kStep) / kStep;
    return volts;
}

/// Steps from the plus nets; unreached: far.
std::vector<int> stepsFrom(const Netlist& netlist, const std::vector<std::vector<int>>& netsOf,
                           const std::vector<char>& start) {
    std::vector<int> steps(netlist.nets.size(), std::numeric_limits<int>::max() / 2);
    for (std::size_t net = 0; net < steps.size(); ++net) {
        if (start[net]) steps[net] = 0;
    }
    for (bool changed = true; changed;) {
        changed = false;
        for (std::size_t part = 0; part < netsOf.size(); ++part) {
            if (netlist.parts[part].kind->isSupply) continue;
            int least = std::numeric_limits<int>::max() / 2;
            for (const int net : netsOf[part]) least = std::min(least, steps[net] + 1);
            for (const int net : netsOf[part]) {
                if (steps[net] > least) steps[net] = least, changed = true;
            }
        }
    }
    return steps;
}

/// By net: its place in the order of falling potential.
std::vector<int> orderNets(const Netlist& netlist, const std::vector<std::vector<int>>& netsOf, const Anchors& anchors,
                           const std::vector<double>& volts, const std::vector<double>& key) {
    std::vector<double> netKey(netlist.nets.size(), std::numeric_limits<double>::max()), keySum(netlist.nets.size(), 0);
    for (std::size_t part = 0; part < netsOf.size(); ++part) {
        for (std::size_t lead = 0; lead < netlist.leads[part].size(); ++lead) {
            const int net = netlist.leads[part][lead];
            if (net < 0) continue;
            netKey[net] = std::min(netKey[net], key[part]);
            keySum[net] += key[part] + 1e-3 * static_cast<double>(lead);
        }
    }
    const std::vector<int> steps = stepsFrom(netlist, netsOf, anchors.plus);
    std::vector<int> order(netlist.nets.size());
    std::iota(order.begin(), order.end(), 0);
    std::ranges::sort(order, [&](int a, int b) {
        const auto rank = [&](int net) {
            const bool plus = anchors.plus[net] && !anchors.minus[net],
                       minus = anchors.minus[net] && !anchors.plus[net];
            return std::tuple(plus ? 0 : minus ? 2 : 1, -volts[net], steps[net], netKey[net], keySum[net], net);
        };
        return rank(a) < rank(b);
    });
    std::vector<int> place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) place[order[i]] = static_cast<int>(i);
    return place;
}

/// Leads whose net lies after the part.
std::vector<char> sidesOf(const std::vector<int>& leads, const std::vector<int>& netsOf, const std::vector<int>& place,
                          const std::vector<double>& volts, const std::vector<char>& isReturn) {
    std::vector<char> after(leads.size(), 1);
    if (netsOf.empty()) return after;
    if (netsOf.size() == 1) {
        std::ranges::fill(after, isReturn[netsOf[0]]);
        return after;
    }
    std::vector<int> sorted = netsOf;
    std::ranges::sort(sorted, {}, [&](int net) { return place[net]; });
    double mean = 0;
    for (const int net : sorted) mean += volts[net] / static_cast<double>(sorted.size());
    std::vector<int> before{sorted.front()};
    for (std::size_t i = 1; i + 1 < sorted.size(); ++i) {
        if (volts[sorted[i]] >= mean) before.push_back(sorted[i]);
    }
    for (std::size_t lead = 0; lead < leads.size(); ++lead) {
        if (leads[lead] >= 0) after[lead] = std::ranges::find(before, leads[lead]) == before.end();
    }
    return after;
}

class Layering {
public:
    Layering(const Netlist& netlist, const std::vector<std::vector<int>>& netsOf, SheetRanks& ranks,
             const std::vector<int>& place, bool beside)
        : netlist_(netlist),
          netsOf_(netsOf),
          ranks_(ranks),
          place_(place),
          beside_(beside) {}

    void run() {
        ranks_.netRank.assign(netlist_.nets.size(), 0);
        ranks_.partRank.assign(netlist_.parts.size(), 1);
        std::vector<int> order(place_.size());
        for (std::size_t net = 0; net < order.size(); ++net) order[place_[net]] = static_cast<int>(net);
        for (const int net : order) {
            for (std::size_t part = 0; part < netsOf_.size(); ++part) {
                if (isAside(part) || !touches(part, net, 1) || !hasSide(part, 0)) continue;
                ranks_.netRank[net] = std::max(ranks_.netRank[net], earliest(part) + 1);
            }
        }
        std::vector<int> last(static_cast<std::size_t>(ranks_.components), 0);
        for (std::size_t part = 0; part < netsOf_.size(); ++part) {
            int& ofComponent = last[ranks_.component[part]];
            for (const int net : netsOf_[part]) ofComponent = std::max(ofComponent, ranks_.netRank[net]);
            if (!isAside(part) && hasSide(part, 0)) ofComponent = std::max(ofComponent, earliest(part) + 1);
        }
        for (std::size_t part = 0; part < netsOf_.size(); ++part) {
            for (const int net : netsOf_[part]) {
                if (ranks_.isReturn[net]) ranks_.netRank[net] = last[ranks_.component[part]];
            }
        }
        for (std::size_t part = 0; part < netsOf_.size(); ++part) ranks_.partRank[part] = rankOf(part);
        lift();
    }

private:
    bool isAside(std::size_t part) const { return beside_ && ranks_.supplies[part]; }
    bool touches(std::size_t part, int net, char after) const {
        for (std::size_t lead = 0; lead < netlist_.leads[part].size(); ++lead) {
            if (netlist_.leads[part][lead] == net && ranks_.isAfter[part][lead] == after) return true;
        }
        return false;
    }
    bool hasSide(std::size_t part, char after) const {
        return std::ranges::any_of(netsOf_[part], [&](int net) { return touches(part, net, after); });
    }
    /// The layer right after the nets before it.
    int earliest(std::size_t part) const {
        int rank = -1;
        for (const int net : netsOf_[part]) {
            if (touches(part, net, 0)) rank = std::max(rank, ranks_.netRank[net]);
        }
        return rank + 1;
    }
    int rankOf(std::size_t part) const {
        if (netsOf_[part].empty()) return 1;
        int latest = std::numeric_limits<int>::max();
        bool fromRail = true, toRail = true;
        for (const int net : netsOf_[part]) {
            if (touches(part, net, 1)) {
                latest = std::min(latest, ranks_.netRank[net] - 1);
                toRail = toRail && ranks_.isReturn[net];
            } else {
                fromRail = fromRail && ranks_.netRank[net] == 0;
            }
        }
        if (isAside(part)) return -1;
        if (!hasSide(part, 1)) return earliest(part);
        if (!hasSide(part, 0)) return latest;
        const int first = earliest(part);
        if (fromRail && toRail) return first + (latest - first) / 4 * 2;
        return fromRail ? latest : first;
    }
    /// No layer below 0; the first one is that of a net.
    void lift() {
        int least = 0;
        for (const int rank : ranks_.partRank) least = std::min(least, rank - 1);
        for (int& rank : ranks_.partRank) rank -= least;
        for (int& rank : ranks_.netRank) rank -= least;
    }

    const Netlist& netlist_;
    const std::vector<std::vector<int>>& netsOf_;
    SheetRanks& ranks_;
    const std::vector<int>& place_;
    bool beside_;
};

}  // namespace

SheetRanks rankCircuit(const Netlist& netlist, const std::vector<double>& key, bool beside) {
    const auto netsOf = netsOfParts(netlist);
    const Anchors anchors = findAnchors(netlist);
    const std::vector<double> volts = potentials(netlist, netsOf, anchors);
    const std::vector<int> place = orderNets(netlist, netsOf, anchors, volts, key);

    SheetRanks ranks;
    for (std::size_t net = 0; net < netlist.nets.size(); ++net)
        ranks.isReturn.push_back(anchors.minus[net] && !anchors.plus[net]);
    DisjointSets sets(netlist.parts.size() + netlist.nets.size());
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        ranks.supplies.push_back(netlist.parts[part].kind->isSupply);
        ranks.isAfter.push_back(sidesOf(netlist.leads[part], netsOf[part], place, volts, ranks.isReturn));
        if (beside && netlist.parts[part].kind->isSupply) std::ranges::fill(ranks.isAfter.back(), 1);
        for (const int net : netsOf[part])
            sets.join(static_cast<int>(part), static_cast<int>(netlist.parts.size()) + net);
    }
    std::vector<int> byKey(netlist.parts.size());
    std::iota(byKey.begin(), byKey.end(), 0);
    std::ranges::stable_sort(byKey, {}, [&](int part) { return std::tuple(netsOf[part].empty(), key[part]); });
    std::vector<int> numberOfRoot(netlist.parts.size() + netlist.nets.size(), -1);
    ranks.component.assign(netlist.parts.size(), 0);
    for (const int part : byKey) {
        int& number = numberOfRoot[sets.root(part)];
        if (number < 0) number = ranks.components++;
        ranks.component[part] = number;
    }
    Layering(netlist, netsOf, ranks, place, beside).run();
    // Between two returns a part has both its nets on one side.
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        for (std::size_t lead = 0; lead < netlist.leads[part].size(); ++lead) {
            const int net = netlist.leads[part][lead];
            if (net >= 0) ranks.isAfter[part][lead] = ranks.netRank[net] > ranks.partRank[part];
        }
    }
    return ranks;
}

}  // namespace tiepoint
