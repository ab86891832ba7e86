#include "core/nets/disjoint_strips.h"

#include <numeric>

namespace tiepoint {
namespace {

// Path halving: every second node on the way is hung on its grandparent.
template <class Index>
Index rootOf(std::span<Index> parent, Index at) {
    while (parent[at] != at) {
        parent[at] = parent[parent[at]];
        at = parent[at];
    }
    return at;
}

}  // namespace

template <class Index>
Index DisjointStrips<Index>::build(std::span<const Join> joins, std::span<Index> netOf) {
    std::iota(netOf.begin(), netOf.end(), Index{0});
    for (const Join join : joins) {
        const Index a = rootOf(netOf, join.a);
        const Index b = rootOf(netOf, join.b);
        // The smaller root wins, so that every parent lies before its children.
        if (a < b) {
            netOf[b] = a;
        } else {
            netOf[a] = b;
        }
    }
    // One forward pass: a root takes the next number, anything else the number that its parent already has.
    Index count = 0;
    for (std::size_t i = 0; i < netOf.size(); ++i) {
        const Index parent = netOf[i];
        netOf[i] = parent == i ? count++ : netOf[parent];
    }
    return count;
}

template class DisjointStrips<std::uint16_t>;
template class DisjointStrips<std::uint32_t>;

}  // namespace tiepoint
