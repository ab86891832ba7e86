#pragma once
// Union-find over the nodes of a circuit; the smaller root wins, so that roots don't depend on the order of joining.

#include <numeric>
#include <vector>

namespace tiepoint {

class DisjointNodes {
public:
    explicit DisjointNodes(int count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0); }

    int root(int node) {
        while (parent_[node] != node) node = parent_[node] = parent_[parent_[node]];
        return node;
    }

    /// Whether they were apart before.
    bool join(int a, int b) {
        a = root(a);
        b = root(b);
        if (a == b) return false;
        parent_[a < b ? b : a] = a < b ? a : b;
        return true;
    }

private:
    std::vector<int> parent_;
};

}  // namespace tiepoint
