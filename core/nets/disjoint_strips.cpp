// Rem's way of joining (E. W. Dijkstra, A Discipline of Programming, 1976): both ends climb at once, the larger one first, and on
// the way each parent that is too high is set to the lower of the two. No separate search for roots, few branches to guess.
// Tried and rejected: two searches for roots with path halving (1.6 times slower here), without (1.5 times), union by rank, and
// structures that can also take a join away (each costs more than building anew). Because the smaller root wins, every parent
// stands before its children, so that one pass in place turns parents into net numbers.

#include "core/nets/disjoint_strips.h"

#include <cassert>
#include <numeric>

namespace tiepoint {

namespace {

template <class Index>
void join(Index* parent, std::size_t a, std::size_t b) {
    while (a != b) {
        const std::size_t high = a > b ? a : b, low = a > b ? b : a;
        const std::size_t above = parent[high];
        parent[high] = static_cast<Index>(low < above ? low : above);
        if (above == high) return;
        a = above;
        b = low;
    }
}

}  // namespace

template <class Index>
Index DisjointStrips<Index>::build(std::span<const Join> joins, std::span<Index> netOf) {
    Index* const parent = netOf.data();
    std::iota(netOf.begin(), netOf.end(), Index{0});
    for (const Join& pair : joins) {
        assert(pair.a < netOf.size() && pair.b < netOf.size());
        join(parent, pair.a, pair.b);
    }
    Index count = 0;
    const std::size_t strips = netOf.size();
    for (std::size_t strip = 0; strip < strips; ++strip) {
        const Index above = parent[strip];
        parent[strip] = above == strip ? count++ : parent[above];
    }
    return count;
}

template class DisjointStrips<std::uint16_t>;
template class DisjointStrips<std::uint32_t>;

}  // namespace tiepoint
