#pragma once
// The order in which unknowns are eliminated, from the structure alone.
//
// A circuit's matrix without sources is an M-matrix: taken along its diagonal in any order nothing grows. Each voltage source
// is therefore given one node of its own, away from the reference, along a spanning forest of the sources ("source forest");
// node and source go as one: the source's equation yields the node's voltage with a pivot of exactly one, and the node's sum of
// currents then yields the source's current with 1 + r G, never under one. A source that closes a loop of the forest has a series
// resistance (or else the circuit has no solution) and is eliminated first, on its own diagonal.
// Among what may go next, the vertex with the fewest neighbours goes first. Tried and rejected: all sources first, which couples
// every branch on a rail with every other through the supply's series resistance.

#include <span>
#include <vector>

namespace tiepoint {

/// One source between two nodes of an island; a node that is known has the number -1.
struct ForestSource {
    int from, to;
    bool ideal;
};

/// Which node each source owns.
struct SourceForest {
    std::vector<int> sourceOfNode;  ///< by node: the source that owns it, or -1
    std::vector<int> parentOfNode;  ///< by node: the owned node's other end, or -1 (known, or not owned)
    std::vector<char> closesLoop;   ///< by source: owns no node
};

SourceForest growSourceForest(int nodeCount, std::span<const ForestSource> sources);

/// An undirected edge between two nodes of an island.
struct Edge {
    int a, b;
};

/// Nodes in order of elimination: fewest neighbours first, an owned node always before its parent.
std::vector<int> eliminationOrder(int nodeCount, std::span<const Edge> edges, const SourceForest& forest);

}  // namespace tiepoint
