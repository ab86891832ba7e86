// Looking for few differences. Parts and nets get a measure of resemblance (resemblance.h). From a first pair of parts a matching grows along the
// nets: each time the pair that agrees best with the nets matched so far joins it and brings its nets with it, so that a branch is matched
// to one branch and not to pieces of several like it. Then parts and nets take turns: the best assignment of nets for these partners, the best
// assignment of parts for these nets, while the count of differences falls. From several first pairs the best is taken.
//
// Counted are parts without a partner, terminals on another net, and settings. A pair is worth it while its own differences are no more than the
// two parts without a partner that it saves.
//
// While a matching grows, a pair's score changes only where one of its nets was matched: scores are kept, and each net is matched once.
// What is no more than a bound from below (difference_bound.h) is the smallest there is, and nothing else is tried.

#include "core/netlist/difference.h"

#include "core/base/stopping.h"
#include "core/netlist/assignment.h"
#include "core/netlist/difference_bound.h"
#include "core/netlist/equality.h"
#include "core/netlist/resemblance.h"

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

namespace tiepoint {
namespace {

constexpr int kStarts = 8;      ///< first pairs that are tried
constexpr int kMostTurns = 12;  ///< of parts and nets, from each start
constexpr double kPairSaves =
    2.5;  ///< two parts without partner, and a little: of two equal accounts the one with the pair
constexpr double kNudge = 0.01;  ///< resemblance decides between equals

struct PartialMatch {
    std::vector<int> partTo, netTo;  // by part and net of the first; -1: none
    std::vector<int> partFrom, netFrom;
};

class DifferenceFinder {
public:
    DifferenceFinder(const Netlist& first, const Netlist& second, const Likeness& likeness)
        : likeness_(likeness),
          a_(first, likeness),
          b_(second, likeness),
          alike_(resemblanceOf(a_, b_, likeness)),
          fewest_(fewestDifferences(a_, b_, alike_.apart)) {
        candidates_.resize(first.parts.size());
        wantedBy_.resize(second.parts.size());
        for (const int p : a_.parts) {
            for (const int q : b_.parts) {
                if (alike_.parts.at(p, q) <= 0) continue;
                candidates_[p].push_back(q);
                wantedBy_[q].push_back(p);
            }
        }
    }

    CircuitDifference run() {
        CircuitDifference best = accountOf(nothing());
        for (const auto& [p, q] : firstPairs()) {
            stopIfAsked();
            PartialMatch match = grown(p, q);
            CircuitDifference account = accountOf(match);
            for (int turn = 0; turn < kMostTurns && account.count() > fewest_; ++turn) {
                assignNets(match);
                assignParts(match);
                CircuitDifference next = accountOf(match);
                if (next.count() >= account.count()) break;
                account = std::move(next);
            }
            if (account.count() < best.count()) best = std::move(account);
            if (best.count() <= fewest_) break;
        }
        return best;
    }

    CircuitDifference accountOf(const PartialMatch& match) const {
        CircuitDifference account;
        account.partOf = match.partTo;
        account.netOf = match.netTo;
        for (int net = 0; net < a_.netCount(); ++net)
            account.netOf[net] = match.netTo[a_.wiring.terminals.rootOfNet[net]];
        account.leadOf.resize(a_.netlist.parts.size());
        const std::vector<int> ours = matchedOn(a_, match.partTo), theirs = matchedOn(b_, match.partFrom);
        for (const int p : a_.parts) {
            if (match.partTo[p] < 0) {
                account.onlyInFirst.push_back(p);
            } else {
                addPair(match, p, ours, theirs, account);
            }
        }
        for (const int q : b_.parts) {
            if (match.partFrom[q] < 0) account.onlyInSecond.push_back(q);
        }
        return account;
    }

    PartialMatch matchOf(std::vector<int> partTo, std::vector<int> netTo) const {
        PartialMatch match = nothing();
        for (std::size_t p = 0; p < partTo.size(); ++p) {
            if (partTo[p] >= 0) match.partFrom[partTo[p]] = static_cast<int>(p);
        }
        match.partTo = std::move(partTo);
        match.netTo = std::move(netTo);
        for (std::size_t net = 0; net < match.netTo.size(); ++net) {
            if (match.netTo[net] >= 0) match.netFrom[match.netTo[net]] = static_cast<int>(net);
        }
        return match;
    }

private:
    template <class See>
    void eachPair(See see) const {
        for (const int p : a_.parts) {
            for (const int q : candidates_[p]) see(p, q);
        }
    }

    PartialMatch nothing() const {
        return {std::vector<int>(a_.netlist.parts.size(), -1), std::vector<int>(a_.contacts.size(), -1),
                std::vector<int>(b_.netlist.parts.size(), -1), std::vector<int>(b_.contacts.size(), -1)};
    }

    std::vector<std::pair<int, int>> firstPairs() const {
        std::vector<std::pair<int, int>> pairs;
        eachPair([&](int p, int q) { pairs.emplace_back(p, q); });
        std::ranges::stable_sort(pairs, std::greater{},
                                 [&](const auto& pair) { return alike_.parts.at(pair.first, pair.second); });
        std::vector<char> began(a_.netlist.parts.size(), 0);
        std::erase_if(pairs, [&](const auto& pair) { return std::exchange(began[pair.first], 1) != 0; });
        if (pairs.size() > kStarts) pairs.resize(kStarts);
        return pairs;
    }

    /// Whether two terminals are on nets that correspond.
    static bool agrees(const PartialMatch& match, int net, int otherNet) {
        return net < 0 ? otherNet < 0 : otherNet >= 0 && match.netTo[net] == otherNet;
    }

    /// Which of its terminals correspond to which of the partner's: the exchange that agrees best.
    const std::vector<int>& orderOf(const PartialMatch& match, int p, int q, int& disagreeing) const {
        const std::vector<int>* best = nullptr;
        double bestScore = 0;
        for (const std::vector<int>& order : a_.exchanges[p]) {
            int apart = 0;
            double score = 0;
            for (std::size_t slot = 0; slot < order.size(); ++slot) {
                const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
                const bool agree = agrees(match, x, y);
                apart += agree ? 0 : 1;
                score += agree ? 1 : 0;
                const bool open = x >= 0 && y >= 0 && match.netTo[x] < 0 && match.netFrom[y] < 0;
                if (open) score += kNudge + kNudge * alike_.nets.at(x, y);
            }
            if (best && score <= bestScore) continue;
            best = &order;
            bestScore = score;
            disagreeing = apart;
        }
        return *best;
    }

    /// A matching that grows: how well each pair would join it, and the best partner of each part.
    struct Growth {
        PartialMatch match;
        Grid<double> score;
        std::vector<int> best;                     ///< by part of the first: the partner of the best score, or -1
        std::vector<char> stale;                   ///< whether that has to be looked up
        std::vector<std::pair<int, int>> newNets;  ///< matched by the last pair
    };

    PartialMatch grown(int p, int q) const {
        Growth growth{nothing(),
                      Grid<double>(candidates_.size(), wantedBy_.size()),
                      std::vector<int>(candidates_.size(), -1),
                      std::vector<char>(candidates_.size(), 1),
                      {}};
        eachPair([&](int r, int t) { growth.score.at(r, t) = fit(growth.match, r, t); });
        while (p >= 0) {
            stopIfAsked();
            join(growth, p, q);
            scoreAnew(growth);
            std::tie(p, q) = bestPair(growth);
        }
        return std::move(growth.match);
    }

    void scoreAnew(Growth& growth) const {
        const PartialMatch& match = growth.match;
        const auto score = [&](int p, int q) {
            if (match.partTo[p] >= 0 || match.partFrom[q] >= 0) return;
            growth.score.at(p, q) = fit(match, p, q);
            growth.stale[p] = 1;
        };
        for (const auto& [x, y] : growth.newNets) {
            for (const auto& contact : a_.contacts[x])
                for (const int q : candidates_[contact.part]) score(contact.part, q);
            for (const auto& contact : b_.contacts[y])
                for (const int p : wantedBy_[contact.part]) score(p, contact.part);
        }
    }

    /// The pair of the best score among those still free, the first of equals; -1 twice where there is none.
    std::pair<int, int> bestPair(Growth& growth) const {
        const PartialMatch& match = growth.match;
        std::pair<int, int> found{-1, -1};
        double best = -std::numeric_limits<double>::infinity();
        for (const int p : a_.parts) {
            if (match.partTo[p] >= 0) continue;
            int& partner = growth.best[p];
            if (growth.stale[p] || (partner >= 0 && match.partFrom[partner] >= 0)) {
                partner = -1;
                growth.stale[p] = 0;
                for (const int q : candidates_[p]) {
                    if (match.partFrom[q] >= 0) continue;
                    if (partner < 0 || growth.score.at(p, q) > growth.score.at(p, partner)) partner = q;
                }
            }
            if (partner < 0 || growth.score.at(p, partner) <= best) continue;
            best = growth.score.at(p, partner);
            found = {p, partner};
        }
        return found;
    }

    /// How well a pair would join: terminals that agree with the nets matched so far, less those that contradict them.
    double fit(const PartialMatch& match, int p, int q) const {
        int unused = 0;
        const std::vector<int>& order = orderOf(match, p, q, unused);
        double score = alike_.parts.at(p, q) - alike_.apart.at(p, q);
        for (std::size_t slot = 0; slot < order.size(); ++slot) {
            const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
            if (x >= 0 && agrees(match, x, y)) {
                score += 2;
            } else if ((x >= 0 && match.netTo[x] >= 0) || (y >= 0 && match.netFrom[y] >= 0)) {
                score -= 1;
            }
        }
        return score;
    }

    void join(Growth& growth, int p, int q) const {
        PartialMatch& match = growth.match;
        growth.newNets.clear();
        int unused = 0;
        const std::vector<int> order = orderOf(match, p, q, unused);
        match.partTo[p] = q;
        match.partFrom[q] = p;
        for (std::size_t slot = 0; slot < order.size(); ++slot) {
            const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
            if (x < 0 || y < 0 || match.netTo[x] >= 0 || match.netFrom[y] >= 0) continue;
            match.netTo[x] = y;
            match.netFrom[y] = x;
            growth.newNets.emplace_back(x, y);
        }
    }

    /// Nets for these partners: each pair of terminals is a vote.
    void assignNets(PartialMatch& match) const {
        Grid<double> votes = alike_.nets;
        for (double& vote : votes.all()) vote = vote > 0 ? vote * kNudge : -1;  // nets that share nothing stay apart
        for (const int p : a_.parts) {
            const int q = match.partTo[p];
            if (q < 0) continue;
            int unused = 0;
            const std::vector<int>& order = orderOf(match, p, q, unused);
            for (std::size_t slot = 0; slot < order.size(); ++slot) {
                const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
                if (x >= 0 && y >= 0) votes.at(x, y) = std::max(votes.at(x, y), 0.0) + 1;
            }
        }
        match = matchOf(match.partTo, bestAssignment(votes));
    }

    /// Partners for these nets.
    void assignParts(PartialMatch& match) const {
        Grid<double> gains(a_.netlist.parts.size(), b_.netlist.parts.size(), -1);
        eachPair([&](int p, int q) {
            int disagreeing = 0;
            orderOf(match, p, q, disagreeing);
            gains.at(p, q) = kPairSaves - disagreeing - alike_.apart.at(p, q) + kNudge * alike_.parts.at(p, q);
        });
        match = matchOf(bestAssignment(gains), match.netTo);
    }

    /// By net: how many terminals of parts with a partner are on it.
    static std::vector<int> matchedOn(const CircuitSide& side, const std::vector<int>& partner) {
        std::vector<int> count(side.contacts.size(), 0);
        for (const int part : side.parts) {
            for (const int net : side.netOf[part]) {
                if (net >= 0 && partner[part] >= 0) ++count[net];
            }
        }
        return count;
    }

    void addPair(const PartialMatch& match, int p, const std::vector<int>& ours, const std::vector<int>& theirs,
                 CircuitDifference& account) const {
        const int q = match.partTo[p];
        int unused = 0;
        const std::vector<int>& order = orderOf(match, p, q, unused);
        account.leadOf[p] = leadsOf(p, q, order);
        for (std::size_t slot = 0; slot < order.size(); ++slot) {
            const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
            const bool bothAlone = (x < 0 || ours[x] < 2) && (y < 0 || theirs[y] < 2);
            if (bothAlone || agrees(match, x, y)) continue;
            account.movedLeads.push_back(
                {p, leadOf(a_, p, static_cast<int>(slot)), q, leadOf(b_, q, order[slot]), x, y});
        }
        if (alike_.apart.at(p, q) == 0) return;
        const SettingsApart apart = SettingsCompared(likeness_)(a_.netlist.parts[p], b_.netlist.parts[q]);
        for (const int index : apart.values) account.otherSettings.push_back({p, q, false, index});
        for (const int index : apart.states) account.otherSettings.push_back({p, q, true, index});
    }

    /// By lead of a part: the lead of its partner by which the terminal that corresponds is known.
    std::vector<int> leadsOf(int p, int q, const std::vector<int>& order) const {
        const Terminals& terminals = a_.wiring.terminals;
        std::vector<int> leads;
        for (const int terminal : terminals.ofLead[p])
            leads.push_back(leadOf(b_, q, order[terminal - terminals.firstOfPart[p]]));
        return leads;
    }

    /// The lead by which a terminal is known: the first one on a net, or its first.
    static int leadOf(const CircuitSide& side, int part, int slot) {
        const Terminals& terminals = side.wiring.terminals;
        const std::vector<int>& of = terminals.ofLead[part];
        int known = -1;
        for (int lead = 0; lead < std::ssize(of); ++lead) {
            if (of[lead] != terminals.firstOfPart[part] + slot) continue;
            if (side.netlist.leads[part][lead] >= 0) return lead;
            if (known < 0) known = lead;
        }
        return known;
    }

    const Likeness& likeness_;
    CircuitSide a_, b_;
    Resemblance alike_;
    int fewest_;  ///< no account has fewer differences
    std::vector<std::vector<int>> candidates_,
        wantedBy_;  ///< by part of the first, of the second: those it may pair with
};

}  // namespace

CircuitDifference differenceOf(const Netlist& first, const Netlist& second, const Likeness& likeness) {
    const Correspondence equal = compareCircuits(first, second, likeness);
    if (equal.verdict != Verdict::Equal) return DifferenceFinder(first, second, likeness).run();
    CircuitDifference none;
    none.partOf = equal.partOf;
    none.netOf = equal.netOf;
    return none;
}

}  // namespace tiepoint
