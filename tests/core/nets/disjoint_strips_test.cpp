// Union-find against a general-purpose graph library's connected components, by partition, number and order.

#include "core/nets/disjoint_strips.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/connected_components.hpp>
#include <gtest/gtest.h>

#include <random>

namespace tiepoint {
namespace {

template <class Index>
class DisjointStripsOf : public testing::Test {};
using Indices = testing::Types<std::uint16_t, std::uint32_t>;
TYPED_TEST_SUITE(DisjointStripsOf, Indices);

/// The library numbers components in the order of their smallest vertex, as nets are numbered.
std::vector<int> componentsOf(int count, const std::vector<std::pair<int, int>>& pairs) {
    boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS> graph(static_cast<std::size_t>(count));
    for (const auto& [a, b] : pairs) boost::add_edge(static_cast<std::size_t>(a), static_cast<std::size_t>(b), graph);
    std::vector<int> component(count);
    if (count > 0) boost::connected_components(graph, component.data());
    return component;
}

TYPED_TEST(DisjointStripsOf, MatchesConnectedComponents) {
    std::mt19937 random(11);
    constexpr int kTrials = 2000, kMostStrips = 300;
    for (int trial = 0; trial < kTrials; ++trial) {
        const int strips = 1 + static_cast<int>(random() % kMostStrips);
        const int joins = static_cast<int>(random() % (2 * static_cast<unsigned>(strips)));
        std::vector<std::pair<int, int>> pairs;
        std::vector<typename DisjointStrips<TypeParam>::Join> typed;
        for (int j = 0; j < joins; ++j) {
            const int a = static_cast<int>(random() % static_cast<unsigned>(strips)),
                      b = static_cast<int>(random() % static_cast<unsigned>(strips));
            pairs.emplace_back(a, b);
            typed.push_back({static_cast<TypeParam>(a), static_cast<TypeParam>(b)});
        }
        std::vector<TypeParam> netOf(strips);
        const int count = static_cast<int>(DisjointStrips<TypeParam>::build(typed, netOf));
        const std::vector<int> expected = componentsOf(strips, pairs);
        ASSERT_EQ(std::vector<int>(netOf.begin(), netOf.end()), expected) << "trial " << trial;
        ASSERT_EQ(count, 1 + *std::max_element(expected.begin(), expected.end()));
    }
}

TYPED_TEST(DisjointStripsOf, TakesNothingAndJoinsToItself) {
    std::vector<TypeParam> none;
    EXPECT_EQ(DisjointStrips<TypeParam>::build({}, none), 0);
    std::vector<TypeParam> three(3);
    const std::vector<typename DisjointStrips<TypeParam>::Join> self{{1, 1}};
    EXPECT_EQ(DisjointStrips<TypeParam>::build(self, three), 3);
    EXPECT_EQ(three, (std::vector<TypeParam>{0, 1, 2}));
}

}  // namespace
}  // namespace tiepoint
