#pragma once
// Union-find: which things belong together. Things are numbered from 0; the smaller root wins, so that neither roots nor the numbers
// of sets depend on the order of joining. No structure for deletion: taking a join away builds all anew, well under a microsecond
// for the strips of a full board.

#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace tiepoint {

/// Sets to which things and joins are added one by one. Not thread-safe, not even for reading: looking for a root shortens the way to it.
class DisjointSets {
public:
    /// So many things, each apart.
    explicit DisjointSets(std::size_t count);

    /// One more thing, apart from all others; returns its number.
    int add();
    /// The smallest thing of the set.
    int root(int thing);
    bool areJoined(int a, int b) { return root(a) == root(b); }
    /// Whether the two were apart before.
    bool join(int a, int b);

private:
    std::vector<int> parent_;
};

/// Joins everything at once. Fills `numberOf`, by thing, with compact numbers of the sets, ordered by the smallest thing of each, and
/// returns how many sets there are. It works in `numberOf` itself, so nothing is allocated. Index is a 16-bit or 32-bit unsigned integer.
template <class Index>
Index numberSets(std::span<const std::pair<Index, Index>> joins, std::span<Index> numberOf);

extern template std::uint16_t numberSets(std::span<const std::pair<std::uint16_t, std::uint16_t>>,
                                         std::span<std::uint16_t>);
extern template std::uint32_t numberSets(std::span<const std::pair<std::uint32_t, std::uint32_t>>,
                                         std::span<std::uint32_t>);

}  // namespace tiepoint
