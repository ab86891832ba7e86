// Biconnected components of a graph whose edges are elements: one walk in depth, that keeps for each node how far back its branch reaches
// (J. Hopcroft and R. Tarjan, "Algorithm 447", Comm. ACM 16 (1973) 372; from memory). With a stack of its own, since chains may be long.

#include "core/solve/loops.h"

#include <algorithm>

namespace tiepoint {
namespace {

class BlockFinder {
public:
    BlockFinder(const Circuit& circuit, std::span<const char> counted)
        : circuit_(circuit),
          at_(static_cast<std::size_t>(circuit.nodeCount)),
          order_(at_.size(), -1),
          reach_(at_.size(), 0),
          blockOf_(static_cast<std::size_t>(circuit.elementCount()), -1) {
        for (int element = 0; element < circuit.elementCount(); ++element) {
            const auto [from, to] = circuit.terminals[element];
            if (!counted[element] || from == to) continue;
            at_[from].push_back(element);
            at_[to].push_back(element);
        }
    }

    std::vector<int> run() {
        for (int node = 0; node < circuit_.nodeCount; ++node)
            if (order_[node] < 0) walkFrom(node);
        number();
        return std::move(blockOf_);
    }

private:
    struct Visit {
        int node, by;  ///< by: the element that led here, or -1
        std::size_t next = 0;
    };

    int beyond(int element, int node) const {
        const auto [from, to] = circuit_.terminals[element];
        return from == node ? to : from;
    }

    void enter(std::vector<Visit>& open, int node, int by) {
        order_[node] = reach_[node] = met_++;
        open.push_back({node, by});
    }

    void walkFrom(int start) {
        std::vector<Visit> open;
        enter(open, start, -1);
        while (!open.empty()) {
            Visit& here = open.back();
            if (here.next == at_[here.node].size()) {
                const Visit left = here;
                open.pop_back();
                if (!open.empty()) leave(left, open.back().node);
                continue;
            }
            const int element = at_[here.node][here.next++];
            if (element == here.by) continue;
            const int other = beyond(element, here.node);
            if (order_[other] < 0) {
                waiting_.push_back(element);
                enter(open, other, element);
            } else if (order_[other] < order_[here.node]) {
                waiting_.push_back(element);
                reach_[here.node] = std::min(reach_[here.node], order_[other]);
            }
        }
    }

    /// Back from a branch: if it reaches no further back than where it began, what waits since then is one block.
    void leave(const Visit& branch, int node) {
        reach_[node] = std::min(reach_[node], reach_[branch.node]);
        if (reach_[branch.node] < order_[node]) return;
        const auto first = std::find(waiting_.rbegin(), waiting_.rend(), branch.by).base() - 1;
        if (waiting_.end() - first > 1) {
            for (auto element = first; element != waiting_.end(); ++element) blockOf_[*element] = found_;
            ++found_;
        }
        waiting_.erase(first, waiting_.end());
    }

    void number() {
        std::vector<int> numberOf(static_cast<std::size_t>(found_), -1);
        int next = 0;
        for (int& block : blockOf_) {
            if (block < 0) continue;
            if (numberOf[block] < 0) numberOf[block] = next++;
            block = numberOf[block];
        }
    }

    const Circuit& circuit_;
    std::vector<std::vector<int>> at_;  ///< by node: elements
    std::vector<int> order_,
        reach_;  ///< by node: when it was met (-1: not yet), and the earliest that its branch leads back to
    std::vector<int> waiting_;  ///< elements on the way whose block isn't closed
    std::vector<int> blockOf_;
    int met_ = 0, found_ = 0;
};

}  // namespace

std::vector<int> loopBlocks(const Circuit& circuit, std::span<const char> counted) {
    return BlockFinder(circuit, counted).run();
}

}  // namespace tiepoint
