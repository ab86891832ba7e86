#include "core/netlist/refinement.h"

#include "core/base/stopping.h"
#include "core/netlist/digest.h"

#include <algorithm>

namespace tiepoint {

void sortByColour(Vertices& vertices, const std::vector<std::uint64_t>& colours) {
    std::ranges::sort(vertices, {}, [&](int vertex) { return colours[vertex]; });
}

std::size_t Refinement::countColours(const Vertices& vertices) {
    sorted_.clear();
    for (const int vertex : vertices) sorted_.push_back(colours[vertex]);
    std::ranges::sort(sorted_);
    const auto last = std::unique(sorted_.begin(), sorted_.end());
    return static_cast<std::size_t>(last - sorted_.begin());
}

std::size_t Refinement::refine(const Vertices& vertices) {
    std::size_t count = countColours(vertices);
    while (true) {
        stopIfAsked();
        next_.clear();
        for (const int vertex : vertices) {
            std::uint64_t around = 0;  // a sum, since neighbours have no order
            const auto arcs = graph_.arcsOf(vertex);
            for (const CircuitGraph::Arc& arc : arcs) around += mixed(colours[arc.to], arc.role);
            next_.push_back(mixed(colours[vertex], around));
            work_ += arcs.size() + 1;
        }
        for (std::size_t i = 0; i < vertices.size(); ++i) colours[vertices[i]] = next_[i];
        const std::size_t finer = countColours(vertices);
        if (finer <= count) return finer;
        count = finer;
    }
}

void Refinement::setApart(int vertex) {
    constexpr std::uint64_t kApart = 0x61706172;
    colours[vertex] = mixed(colours[vertex], kApart);
}

std::vector<Vertices> Refinement::components(const Vertices& vertices) {
    seen_.resize(static_cast<std::size_t>(graph_.size()), 0);
    const int open = ++search_, met = ++search_;
    for (const int vertex : vertices) seen_[vertex] = open;
    std::vector<Vertices> found;
    for (const int start : vertices) {
        if (seen_[start] != open) continue;
        seen_[start] = met;
        Vertices& component = found.emplace_back(1, start);
        for (std::size_t i = 0; i < component.size(); ++i) {
            for (const CircuitGraph::Arc& arc : graph_.arcsOf(component[i])) {
                ++work_;
                if (seen_[arc.to] != open) continue;
                seen_[arc.to] = met;
                component.push_back(arc.to);
            }
        }
    }
    return found;
}

}  // namespace tiepoint
