// The digest of a circuit. Refined colours of all vertices, mixed in the order of their colours, tell most circuits apart, but not all:
// three resistors in a ring twice, and six in one ring, look alike from each vertex. So what stays alike is taken apart as in equality.cpp: into
// components, each with a digest of its own, and a component that is still one has the vertices of its smallest colour set apart
// one at a time; the digests that follow are mixed in sorted order, so that nothing depends on which came first. A canonical form would follow
// the search to its leaves. A digest needn't: it goes on as long as the work, which is estimated from sizes alone and is therefore the same
// for equal circuits, stays within bounds.

#include "core/netlist/circuit_graph.h"
#include "core/netlist/digest.h"
#include "core/netlist/equality.h"
#include "core/netlist/refinement.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace tiepoint {
namespace {

constexpr double kAllowedWork = 4e6;  ///< edges looked at for a whole circuit, about
constexpr double kUsualRounds = 8;    ///< of a refinement

class GraphDigest {
public:
    explicit GraphDigest(const CircuitGraph& graph) : graph_(graph), refinement_(graph) {}

    std::uint64_t run() {
        Vertices all(static_cast<std::size_t>(graph_.size()));
        std::iota(all.begin(), all.end(), 0);
        return digestOfSet(std::move(all), kAllowedWork);
    }

private:
    std::uint64_t digestOfSet(Vertices vertices, double allowed) {
        refinement_.refine(vertices);
        sortByColour(vertices, refinement_.colours);
        std::uint64_t digest = mixed(0, vertices.size());
        for (const int vertex : vertices) digest = mixed(digest, refinement_.colours[vertex]);
        const Vertices alike = withTwins(vertices);
        if (alike.empty()) return digest;
        std::vector<std::uint64_t> parts;
        const std::vector<Vertices> components = refinement_.components(alike);
        for (const Vertices& component : components) {
            const double share = allowed * static_cast<double>(component.size()) / static_cast<double>(alike.size());
            parts.push_back(components.size() > 1 ? digestOfSet(component, share) : digestByBranches(component, share));
        }
        return mixedSorted(digest, std::move(parts));
    }

    /// Of vertices in the order of their colours those that share theirs.
    Vertices withTwins(const Vertices& sorted) const {
        Vertices twins;
        const auto colour = [&](std::size_t i) { return refinement_.colours[sorted[i]]; };
        for (std::size_t i = 0; i < sorted.size(); ++i) {
            const bool before = i > 0 && colour(i - 1) == colour(i);
            const bool after = i + 1 < sorted.size() && colour(i + 1) == colour(i);
            if (before || after) twins.push_back(sorted[i]);
        }
        return twins;
    }

    std::uint64_t digestByBranches(Vertices vertices, double allowed) {
        sortByColour(vertices, refinement_.colours);
        const Vertices cell = smallestCell(vertices);
        double edges = 0;
        for (const int vertex : vertices) edges += static_cast<double>(graph_.arcsOf(vertex).size());
        const auto branches = static_cast<double>(cell.size());
        if (branches * edges * kUsualRounds > allowed) return 0;
        std::vector<std::uint64_t> before, digests;
        for (const int vertex : vertices) before.push_back(refinement_.colours[vertex]);
        for (const int vertex : cell) {
            refinement_.setApart(vertex);
            digests.push_back(digestOfSet(vertices, allowed / branches));
            for (std::size_t i = 0; i < vertices.size(); ++i) refinement_.colours[vertices[i]] = before[i];
        }
        return mixedSorted(1, std::move(digests));
    }

    /// The vertices of the rarest colour, the smallest colour among equally rare ones.
    Vertices smallestCell(const Vertices& sorted) const {
        std::size_t best = 0, bestSize = sorted.size() + 1;
        for (std::size_t begin = 0, end = 0; begin < sorted.size(); begin = end) {
            while (end < sorted.size() && refinement_.colours[sorted[end]] == refinement_.colours[sorted[begin]]) ++end;
            if (end - begin >= bestSize) continue;
            best = begin;
            bestSize = end - begin;
        }
        return {sorted.begin() + static_cast<std::ptrdiff_t>(best),
                sorted.begin() + static_cast<std::ptrdiff_t>(best + bestSize)};
    }

    static std::uint64_t mixedSorted(std::uint64_t digest, std::vector<std::uint64_t> parts) {
        std::ranges::sort(parts);
        for (const std::uint64_t part : parts) digest = mixed(digest, part);
        return digest;
    }

    const CircuitGraph& graph_;
    Refinement refinement_;
};

}  // namespace

std::uint64_t canonicalHash(const Netlist& netlist, const Likeness& likeness) {
    CircuitGraph graph = graphOf(netlist, likeness);
    return GraphDigest(graph).run();
}

}  // namespace tiepoint
