#include "core/compare/chain_order.h"

#include "core/netlist/series.h"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace tiepoint {
namespace {

class ChainSorter {
public:
    explicit ChainSorter(const Netlist& circuit) : sorted_(circuit), wiring_(wiringOf(circuit, false)) {}

    Netlist run() {
        for (Chain& chain : seriesChains(sorted_, wiring_)) sort(chain);
        return std::move(sorted_);
    }

private:
    const Part& part(const ChainedPart& link) const { return sorted_.parts[static_cast<std::size_t>(link.part)]; }
    /// Supplies first, then by kind and values; ids say nothing.
    auto rankOf(const ChainedPart& link) const {
        std::vector<double> values;
        for (int i = 0; i < std::ssize(part(link).values); ++i) values.push_back(part(link).value(i));
        return std::tuple(!part(link).kind->isSupply, hasEnds(link) ? 0 : 1, part(link).kind->name, values);
    }
    /// Whether it minds which way round it lies; such a part says which way a chain is read.
    bool hasEnds(const ChainedPart& link) const {
        return part(link).kind->isSupply || part(link).kind->leadIndex("anode") >= 0;
    }
    int netBefore(const ChainedPart& link) const {
        return wiring_.terminals.netOf[static_cast<std::size_t>(
            wiring_.terminals.firstOfPart[static_cast<std::size_t>(link.part)] + (link.turned ? 1 : 0))];
    }
    int netAfter(const ChainedPart& link) const { return netBefore({link.part, !link.turned}); }

    static void turnRound(std::vector<ChainedPart>& parts) {
        std::ranges::reverse(parts);
        for (ChainedPart& link : parts) link.turned = !link.turned;
    }

    void sort(Chain& chain) {
        std::vector<ChainedPart>& parts = chain.parts;
        const auto less = [&](const ChainedPart& a, const ChainedPart& b) { return rankOf(a) < rankOf(b); };
        const auto leader = std::ranges::min_element(parts, less);
        if (leader->turned && hasEnds(*leader)) turnRound(parts);
        if (chain.ring) std::ranges::rotate(parts, std::ranges::min_element(parts, less));
        std::vector<int> nets;
        for (const ChainedPart& link : parts) nets.push_back(netBefore(link));
        nets.push_back(netAfter(parts.back()));
        std::stable_sort(parts.begin(), parts.end(), less);
        for (std::size_t k = 0; k < parts.size(); ++k) put(parts[k], nets[k], nets[k + 1]);
    }

    void put(const ChainedPart& link, int before, int after) {
        const auto index = static_cast<std::size_t>(link.part);
        const int first = wiring_.terminals.firstOfPart[index];
        std::vector<int>& leads = sorted_.leads[index];
        for (std::size_t lead = 0; lead < leads.size(); ++lead) {
            if (leads[lead] < 0) continue;
            const bool isFirst = wiring_.terminals.ofLead[index][lead] == first;
            leads[lead] = isFirst != link.turned ? before : after;
        }
    }

    Netlist sorted_;
    Wiring wiring_;
};

using KindsInOrder = std::vector<const PartKind*>;

/// The kinds along each chain, read from the end that comes first; sorted.
std::vector<KindsInOrder> kindsAlongChains(const Netlist& circuit, bool inOrder) {
    std::vector<KindsInOrder> all;
    for (const Chain& chain : seriesChains(circuit, wiringOf(circuit, false))) {
        KindsInOrder kinds;
        for (const ChainedPart& link : chain.parts)
            kinds.push_back(circuit.parts[static_cast<std::size_t>(link.part)].kind);
        if (!inOrder) std::ranges::sort(kinds);
        KindsInOrder backwards(kinds.rbegin(), kinds.rend());
        all.push_back(inOrder ? std::min(kinds, backwards) : kinds);
    }
    std::ranges::sort(all);
    return all;
}

std::size_t unmatchedChains(const Netlist& one, const Netlist& other, bool inOrder) {
    const auto ours = kindsAlongChains(one, inOrder), theirs = kindsAlongChains(other, inOrder);
    std::vector<KindsInOrder> unmatched;
    std::ranges::set_symmetric_difference(ours, theirs, std::back_inserter(unmatched));
    return unmatched.size();
}

}  // namespace

bool chainsDifferInOrder(const Netlist& one, const Netlist& other) {
    return unmatchedChains(one, other, true) != unmatchedChains(one, other, false);
}

Netlist withChainsSorted(const Netlist& circuit) { return ChainSorter(circuit).run(); }

}  // namespace tiepoint
