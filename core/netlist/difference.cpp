// Looking for few differences. Parts and nets get a measure of resemblance (resemblance.h). From a first pair of parts a matching grows along the
// nets: each time the pair that agrees best with the nets matched so far joins it and brings its nets with it, so that a branch is matched
// to one branch and not to pieces of several like it. Then parts and nets take turns: the best assignment of nets for these partners, the best
// assignment of parts for these nets, while the count of differences falls. From several first pairs the best is taken.
//
// Counted are parts without a partner, terminals on another net, and settings. A pair is worth it while its own differences are no more than the
// two parts without a partner that it saves.

#include "core/netlist/difference.h"

#include "core/base/stopping.h"
#include "core/netlist/assignment.h"
#include "core/netlist/equality.h"
#include "core/netlist/resemblance.h"

#include <algorithm>
#include <limits>
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
          alike_(resemblanceOf(a_, b_, likeness)) {
        apart_.assign(first.parts.size(), std::vector<int>(second.parts.size(), 0));
        eachPair(
            [&](int p, int q) { apart_[p][q] = settingsApart(first.parts[p], second.parts[q], likeness).count(); });
    }

    CircuitDifference run() {
        CircuitDifference best = accountOf(nothing());
        for (const auto& [p, q] : firstPairs()) {
            stopIfAsked();
            PartialMatch match = grown(p, q);
            CircuitDifference account = accountOf(match);
            for (int turn = 0; turn < kMostTurns; ++turn) {
                assignNets(match);
                assignParts(match);
                CircuitDifference next = accountOf(match);
                if (next.count() >= account.count()) break;
                account = std::move(next);
            }
            if (account.count() < best.count()) best = std::move(account);
            if (best.count() <= 1) break;
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
            for (const int q : b_.parts) {
                if (alike_.parts[p][q] > 0) see(p, q);
            }
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
                                 [&](const auto& pair) { return alike_.parts[pair.first][pair.second]; });
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
                if (open) score += kNudge + kNudge * alike_.nets[x][y];
            }
            if (best && score <= bestScore) continue;
            best = &order;
            bestScore = score;
            disagreeing = apart;
        }
        return *best;
    }

    PartialMatch grown(int p, int q) const {
        PartialMatch match = nothing();
        while (p >= 0) {
            stopIfAsked();
            join(match, p, q);
            p = -1;
            double best = -std::numeric_limits<double>::infinity();
            eachPair([&](int r, int s) {
                if (match.partTo[r] >= 0 || match.partFrom[s] >= 0) return;
                const double score = fit(match, r, s);
                if (score <= best) return;
                best = score;
                p = r;
                q = s;
            });
        }
        return match;
    }

    /// How well a pair would join: terminals that agree with the nets matched so far, less those that contradict them.
    double fit(const PartialMatch& match, int p, int q) const {
        int unused = 0;
        const std::vector<int>& order = orderOf(match, p, q, unused);
        double score = alike_.parts[p][q] - apart_[p][q];
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

    void join(PartialMatch& match, int p, int q) const {
        int unused = 0;
        const std::vector<int> order = orderOf(match, p, q, unused);
        match.partTo[p] = q;
        match.partFrom[q] = p;
        for (std::size_t slot = 0; slot < order.size(); ++slot) {
            const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
            if (x < 0 || y < 0 || match.netTo[x] >= 0 || match.netFrom[y] >= 0) continue;
            match.netTo[x] = y;
            match.netFrom[y] = x;
        }
    }

    /// Nets for these partners: each pair of terminals is a vote.
    void assignNets(PartialMatch& match) const {
        std::vector<std::vector<double>> votes = alike_.nets;
        for (auto& row : votes) {
            for (double& vote : row) vote = vote > 0 ? vote * kNudge : -1;  // nets that share nothing stay apart
        }
        for (const int p : a_.parts) {
            const int q = match.partTo[p];
            if (q < 0) continue;
            int unused = 0;
            const std::vector<int>& order = orderOf(match, p, q, unused);
            for (std::size_t slot = 0; slot < order.size(); ++slot) {
                const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
                if (x >= 0 && y >= 0) votes[x][y] = std::max(votes[x][y], 0.0) + 1;
            }
        }
        match = matchOf(match.partTo, bestAssignment(votes));
    }

    /// Partners for these nets.
    void assignParts(PartialMatch& match) const {
        std::vector<std::vector<double>> gains(a_.netlist.parts.size(),
                                               std::vector<double>(b_.netlist.parts.size(), -1));
        eachPair([&](int p, int q) {
            int disagreeing = 0;
            orderOf(match, p, q, disagreeing);
            gains[p][q] = kPairSaves - disagreeing - apart_[p][q] + kNudge * alike_.parts[p][q];
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
        const SettingsApart apart = settingsApart(a_.netlist.parts[p], b_.netlist.parts[q], likeness_);
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
    std::vector<std::vector<int>> apart_;  // by part of the first and second: settings that differ
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
