#include "core/solve/elimination_order.h"

#include "core/base/disjoint_sets.h"

#include <algorithm>

namespace tiepoint {

SourceForest growSourceForest(int nodeCount, std::span<const ForestSource> sources) {
    const int known = nodeCount;  // all known nodes are one root
    const auto vertex = [&](int node) { return node < 0 ? known : node; };
    SourceForest forest{std::vector<int>(nodeCount, -1), std::vector<int>(nodeCount, -1),
                        std::vector<char>(sources.size(), 0)};

    // Ideal sources first: they have no diagonal of their own to fall back on.
    DisjointSets trees(nodeCount + 1);
    for (bool ideal : {true, false}) {
        for (std::size_t k = 0; k < sources.size(); ++k) {
            if (sources[k].ideal != ideal) continue;
            if (!trees.join(vertex(sources[k].from), vertex(sources[k].to))) forest.closesLoop[k] = 1;
        }
    }

    // Ends of the forest's sources, sorted by node.
    std::vector<int> first(nodeCount + 2, 0), ends;
    for (std::size_t k = 0; k < sources.size(); ++k) {
        if (forest.closesLoop[k]) continue;
        ++first[vertex(sources[k].from) + 1];
        ++first[vertex(sources[k].to) + 1];
    }
    for (int i = 0; i <= nodeCount; ++i) first[i + 1] += first[i];
    ends.resize(first.back());
    std::vector<int> next(first.begin(), first.end() - 1);
    for (std::size_t k = 0; k < sources.size(); ++k) {
        if (forest.closesLoop[k]) continue;
        ends[next[vertex(sources[k].from)]++] = static_cast<int>(k);
        ends[next[vertex(sources[k].to)]++] = static_cast<int>(k);
    }

    // Walk each tree from its root, the known nodes first; a source owns the node that it leads to.
    std::vector<char> reached(nodeCount + 1, 0);
    std::vector<int> open;
    for (int start = nodeCount; start >= 0; --start) {
        const int root = start == nodeCount ? known : nodeCount - 1 - start;
        if (reached[root]) continue;
        reached[root] = 1;
        open.assign(1, root);
        while (!open.empty()) {
            const int node = open.back();
            open.pop_back();
            for (int i = first[node]; i < first[node + 1]; ++i) {
                const int source = ends[i];
                const int from = vertex(sources[source].from), to = vertex(sources[source].to);
                const int other = from == node ? to : from;
                if (reached[other]) continue;
                reached[other] = 1;
                forest.sourceOfNode[other] = source;
                forest.parentOfNode[other] = node == known ? -1 : node;
                open.push_back(other);
            }
        }
    }
    return forest;
}

namespace {

/// The graph of what is left, in one pool of neighbours. Neighbours that are gone are dropped when a list is next read.
class EliminationGraph {
public:
    EliminationGraph(int nodeCount, std::span<const Edge> edges) : lists_(nodeCount), gone_(nodeCount, 0) {
        for (const Edge& e : edges) {
            ++lists_[e.a].capacity;
            ++lists_[e.b].capacity;
        }
        int begin = 0;
        for (List& list : lists_) {
            list.begin = begin;
            begin += list.capacity;
        }
        pool_.resize(begin);
        for (const Edge& e : edges) {
            if (e.a != e.b) connect(e.a, e.b);
        }
    }

    int degree(int node) const { return lists_[node].alive; }

    /// Takes a node out and joins its neighbours with each other. Fills `neighbours`.
    void eliminate(int node, std::vector<int>& neighbours) {
        gone_[node] = 1;
        compact(node);
        neighbours.assign(pool_.begin() + lists_[node].begin, pool_.begin() + lists_[node].begin + lists_[node].length);
        for (int n : neighbours) --lists_[n].alive;
        for (std::size_t i = 0; i < neighbours.size(); ++i) {
            for (std::size_t j = i + 1; j < neighbours.size(); ++j) connect(neighbours[i], neighbours[j]);
        }
    }

private:
    struct List {
        int begin = 0, length = 0, capacity = 0, alive = 0;
    };

    void connect(int a, int b) {
        if (lists_[a].length > lists_[b].length) std::swap(a, b);
        const auto begin = pool_.begin() + lists_[a].begin;
        if (std::find(begin, begin + lists_[a].length, b) != begin + lists_[a].length) return;
        append(a, b);
        append(b, a);
    }

    void append(int node, int neighbour) {
        if (lists_[node].length == lists_[node].capacity) compact(node);
        if (lists_[node].length == lists_[node].capacity) grow(node);
        List& list = lists_[node];
        pool_[list.begin + list.length++] = neighbour;
        ++list.alive;
    }

    void compact(int node) {
        List& list = lists_[node];
        const auto begin = pool_.begin() + list.begin;
        const auto end = std::remove_if(begin, begin + list.length, [&](int n) { return gone_[n] != 0; });
        list.length = static_cast<int>(end - begin);
    }

    void grow(int node) {
        List& list = lists_[node];
        const int begin = static_cast<int>(pool_.size());
        list.capacity = 2 * list.capacity + 4;
        pool_.resize(pool_.size() + list.capacity);
        std::copy_n(pool_.begin() + list.begin, list.length, pool_.begin() + begin);
        list.begin = begin;
    }

    std::vector<List> lists_;
    std::vector<int> pool_;
    std::vector<char> gone_;
};

/// Vertices by number of neighbours, each count a doubly linked list.
class DegreeQueue {
public:
    explicit DegreeQueue(int count)
        : head_(count + 1, -1),
          next_(count, -1),
          previous_(count, -1),
          degree_(count, -1) {}

    void put(int vertex, int degree) {
        take(vertex);
        degree_[vertex] = degree;
        next_[vertex] = head_[degree];
        previous_[vertex] = -1;
        if (head_[degree] >= 0) previous_[head_[degree]] = vertex;
        head_[degree] = vertex;
        lowest_ = std::min(lowest_, degree);
    }

    void take(int vertex) {
        if (degree_[vertex] < 0) return;
        if (previous_[vertex] >= 0)
            next_[previous_[vertex]] = next_[vertex];
        else
            head_[degree_[vertex]] = next_[vertex];
        if (next_[vertex] >= 0) previous_[next_[vertex]] = previous_[vertex];
        degree_[vertex] = -1;
    }

    bool waits(int vertex) const { return degree_[vertex] >= 0; }

    /// The vertex with the fewest neighbours, taken out; -1 if none waits.
    int pop() {
        while (lowest_ < static_cast<int>(head_.size()) && head_[lowest_] < 0) ++lowest_;
        if (lowest_ >= static_cast<int>(head_.size())) return -1;
        const int vertex = head_[lowest_];
        take(vertex);
        return vertex;
    }

private:
    std::vector<int> head_, next_, previous_, degree_;
    int lowest_ = 0;
};

}  // namespace

std::vector<int> eliminationOrder(int nodeCount, std::span<const Edge> edges, const SourceForest& forest) {
    std::vector<int> children(nodeCount, 0);
    for (int node = 0; node < nodeCount; ++node) {
        if (forest.parentOfNode[node] >= 0) ++children[forest.parentOfNode[node]];
    }
    EliminationGraph graph(nodeCount, edges);
    DegreeQueue queue(nodeCount);
    for (int node = nodeCount - 1; node >= 0; --node) {
        if (children[node] == 0) queue.put(node, graph.degree(node));
    }
    std::vector<int> order, neighbours;
    order.reserve(nodeCount);
    for (int node = queue.pop(); node >= 0; node = queue.pop()) {
        order.push_back(node);
        graph.eliminate(node, neighbours);
        const int parent = forest.parentOfNode[node];
        if (parent >= 0 && --children[parent] == 0) queue.put(parent, graph.degree(parent));
        for (int n : neighbours) {
            if (queue.waits(n)) queue.put(n, graph.degree(n));
        }
    }
    return order;
}

}  // namespace tiepoint
