#include "core/netlist/series.h"

#include <algorithm>
#include <array>
#include <utility>

namespace tiepoint {
namespace {

/// Part of each terminal.
std::vector<int> ownersOf(const Terminals& terminals) {
    std::vector<int> owners(terminals.netOf.size());
    for (int part = 0; part + 1 < std::ssize(terminals.firstOfPart); ++part) {
        for (int t = terminals.firstOfPart[part]; t < terminals.firstOfPart[part + 1]; ++t) owners[t] = part;
    }
    return owners;
}

/// Terminals by net.
std::vector<std::vector<int>> terminalsByNet(const Terminals& terminals) {
    std::vector<std::vector<int>> byNet(terminals.rootOfNet.size());
    for (int t = 0; t < std::ssize(terminals.netOf); ++t) {
        if (terminals.netOf[t] >= 0) byNet[terminals.netOf[t]].push_back(t);
    }
    return byNet;
}

/// Takes away parts that lead nowhere, and then what led only to them.
class Pruning {
public:
    explicit Pruning(Wiring& wiring)
        : wiring_(wiring),
          owners_(ownersOf(wiring.terminals)),
          byNet_(terminalsByNet(wiring.terminals)) {}

    void run() {
        std::vector<int> doubtful(wiring_.counts.size());
        for (std::size_t part = 0; part < doubtful.size(); ++part) doubtful[part] = static_cast<int>(part);
        while (!doubtful.empty()) {
            const int part = doubtful.back();
            doubtful.pop_back();
            if (wiring_.counts[part] && used(part) < 2) takeAway(part, doubtful);
        }
    }

private:
    int used(int part) const {
        int count = 0;
        const Terminals& terminals = wiring_.terminals;
        for (int t = terminals.firstOfPart[part]; t < terminals.firstOfPart[part + 1]; ++t) {
            const int net = terminals.netOf[t];
            if (net >= 0 && wiring_.terminalsOn[net] > 1) ++count;
        }
        return count;
    }

    void takeAway(int part, std::vector<int>& doubtful) {
        wiring_.counts[part] = 0;
        const Terminals& terminals = wiring_.terminals;
        for (int t = terminals.firstOfPart[part]; t < terminals.firstOfPart[part + 1]; ++t) {
            const int net = terminals.netOf[t];
            if (net < 0 || --wiring_.terminalsOn[net] != 1) continue;
            for (const int other : byNet_[net]) doubtful.push_back(owners_[other]);
        }
    }

    Wiring& wiring_;
    std::vector<int> owners_;
    std::vector<std::vector<int>> byNet_;
};

class ChainFinder {
public:
    ChainFinder(const Netlist& netlist, const Wiring& wiring) : wiring_(wiring), terminals_(wiring.terminals) {
        partner_.assign(terminals_.netOf.size(), -1);
        owners_ = ownersOf(terminals_);
        chained_.assign(netlist.parts.size(), 0);
        std::vector<int> waiting(terminals_.rootOfNet.size(), -1);
        for (int t = 0; t < std::ssize(owners_); ++t) {
            const int net = terminals_.netOf[t];
            if (net < 0 || !isLink(t) || wiring.terminalsOn[net] != 2) continue;
            const int other = std::exchange(waiting[net], t);
            if (other < 0 || owners_[other] == owners_[t]) continue;
            partner_[t] = other;
            partner_[other] = t;
        }
    }

    std::vector<Chain> run() {
        for (int t = 0; t < std::ssize(owners_); ++t) {  // from the ends of chains
            if (isLink(t) && partner_[t] < 0 && partner_[across(t)] >= 0 && !chained_[owners_[t]]) follow(t, false);
        }
        for (int t = 0; t < std::ssize(owners_); ++t) {  // what is left has none
            if (isLink(t) && partner_[t] >= 0 && !chained_[owners_[t]]) follow(t, true);
        }
        return std::move(chains_);
    }

private:
    bool isLink(int terminal) const {
        const int part = owners_[terminal];
        return wiring_.counts[part] && terminals_.countOf(part) == 2;
    }
    int across(int terminal) const {
        const int first = terminals_.firstOfPart[owners_[terminal]];
        return first + (terminal == first ? 1 : 0);
    }

    /// Along the chain from a terminal at which a part is entered.
    void follow(int entry, bool ring) {
        Chain chain;
        chain.ring = ring;
        if (!ring) chain.firstNet = terminals_.netOf[entry];
        while (entry >= 0 && !chained_[owners_[entry]]) {
            const int part = owners_[entry];
            chained_[part] = 1;
            const int exit = across(entry);
            chain.parts.push_back({part, exit < entry});
            if (!ring) chain.lastNet = terminals_.netOf[exit];
            entry = partner_[exit];
        }
        chains_.push_back(std::move(chain));
    }

    const Wiring& wiring_;
    const Terminals& terminals_;
    std::vector<int> owners_;
    std::vector<int> partner_;  // by terminal: the one terminal that meets it, of another part that is a link
    std::vector<char> chained_;
    std::vector<Chain> chains_;
};

}  // namespace

Wiring wiringOf(const Netlist& netlist, bool unusedParts) {
    Wiring wiring;
    wiring.terminals = terminalsOf(netlist);
    wiring.counts.assign(netlist.parts.size(), 1);
    wiring.terminalsOn.assign(netlist.nets.size(), 0);
    for (const int net : wiring.terminals.netOf) {
        if (net >= 0) ++wiring.terminalsOn[net];
    }
    if (!unusedParts) Pruning(wiring).run();
    return wiring;
}

std::vector<Chain> seriesChains(const Netlist& netlist, const Wiring& wiring) {
    return ChainFinder(netlist, wiring).run();
}

}  // namespace tiepoint
