#pragma once
// Colour refinement: vertices of a graph told apart by what they are joined to, again and again until nothing new shows.

#include "core/netlist/circuit_graph.h"

#include <cstdint>
#include <vector>

namespace tiepoint {

using Vertices = std::vector<int>;

class Refinement {
public:
    /// Borrows the graph.
    explicit Refinement(const CircuitGraph& graph) : graph_(graph), colours(graph.colours) {}

    /// Refines these vertices, all others keep their colours. Returns how many colours they have. Equal vertices of equal graphs have
    /// the same colour afterwards, since a colour is a digest of what was seen; vertices of the same colour needn't be equal.
    std::size_t refine(const Vertices& vertices);
    /// Sets a vertex apart from all others of its colour.
    void setApart(int vertex);
    /// The parts into which these vertices fall that share no edge.
    std::vector<Vertices> components(const Vertices& vertices);
    /// Edges that have been looked at.
    std::uint64_t work() const { return work_; }

private:
    std::size_t countColours(const Vertices& vertices);

    const CircuitGraph& graph_;
    std::uint64_t work_ = 0;
    std::vector<std::uint64_t> next_, sorted_;
    std::vector<int> seen_;  // by vertex: number of the last search for components that met it
    int search_ = 0;

public:
    std::vector<std::uint64_t> colours;  ///< by vertex
};

/// Puts vertices in the order of their colours.
void sortByColour(Vertices& vertices, const std::vector<std::uint64_t>& colours);

}  // namespace tiepoint
