// Biconnected components of a graph whose edges are the paths through elements: one walk in depth, that keeps for each node how far back its branch reaches
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
          blockOf_(circuit.paths.size(), -1) {
        for (int element = 0; element < circuit.elementCount(); ++element)
            if (counted[element]) enterPaths(element);
    }

    std::vector<int> run() {
        for (int node = 0; node < circuit_.nodeCount; ++node)
            if (order_[node] < 0) walkFrom(node);
        return number();
    }

private:
    /// Without those that only lead round inside the element itself.
    void enterPaths(int element) {
        const int first = circuit_.firstPath[element], end = circuit_.firstPath[element + 1];
        joined_.clear();
        for (int path = first; path < end; ++path) {
            const int from = rootOf(circuit_.paths[path].from), to = rootOf(circuit_.paths[path].to);
            if (from == to) continue;
            joined_.emplace_back(from, to);
            at_[circuit_.paths[path].from].push_back(path);
            at_[circuit_.paths[path].to].push_back(path);
        }
    }
    /// Of a node among the paths of one element so far, which are few.
    int rootOf(int node) const {
        for (const auto& [from, to] : joined_)
            if (node == from) node = to;
        return node;
    }

    struct Visit {
        int node, by;  ///< by: the path that led here, or -1
        std::size_t next = 0;
    };

    int beyond(int path, int node) const {
        const Path& way = circuit_.paths[path];
        return way.from == node ? way.to : way.from;
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
            const int path = at_[here.node][here.next++];
            if (path == here.by) continue;
            const int other = beyond(path, here.node);
            if (order_[other] < 0) {
                waiting_.push_back(path);
                enter(open, other, path);
            } else if (order_[other] < order_[here.node]) {
                waiting_.push_back(path);
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
            for (auto path = first; path != waiting_.end(); ++path) blockOf_[*path] = found_;
            ++found_;
        }
        waiting_.erase(first, waiting_.end());
    }

    /// By element, from the blocks of its paths.
    std::vector<int> number() const {
        std::vector<int> numberOf(static_cast<std::size_t>(found_), -1);
        std::vector<int> byElement(static_cast<std::size_t>(circuit_.elementCount()), -1);
        int next = 0;
        for (std::size_t path = 0; path < blockOf_.size(); ++path) {
            int& block = byElement[circuit_.paths[path].element];
            if (blockOf_[path] < 0 || block >= 0) continue;
            int& number = numberOf[blockOf_[path]];
            if (number < 0) number = next++;
            block = number;
        }
        return byElement;
    }

    const Circuit& circuit_;
    std::vector<std::vector<int>> at_;         ///< by node: paths
    std::vector<std::pair<int, int>> joined_;  ///< of the element whose paths are entered: who leads to whom
    std::vector<int> order_,
        reach_;  ///< by node: when it was met (-1: not yet), and the earliest that its branch leads back to
    std::vector<int> waiting_;  ///< paths on the way whose block isn't closed
    std::vector<int> blockOf_;  ///< by path
    int met_ = 0, found_ = 0;
};

}  // namespace

std::vector<int> loopBlocks(const Circuit& circuit, std::span<const char> counted) {
    return BlockFinder(circuit, counted).run();
}

}  // namespace tiepoint
