#pragma once
// Union-find over strips: 16-bit (or 32-bit past 256 boards) indices, the smaller root wins, one forward pass numbers the nets.
// No structure for deletion: taking a jumper away builds all anew, well under a microsecond for a full board.

#include <cstdint>
#include <span>
#include <vector>

namespace tiepoint {

template <class Index>
class DisjointStrips {
public:
    struct Join {
        Index a, b;
    };

    /// Joins everything anew. Fills netOf (size = strips) with compact net numbers ordered by their smallest strip.
    /// Returns how many nets there are. `netOf` doubles as the parent array, so nothing else is allocated.
    static Index build(std::span<const Join> joins, std::span<Index> netOf);
};

extern template class DisjointStrips<std::uint16_t>;
extern template class DisjointStrips<std::uint32_t>;

}  // namespace tiepoint
