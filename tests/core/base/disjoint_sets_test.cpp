// Union-find against a general-purpose graph library's connected components, by partition, number and order.

#include "core/base/disjoint_sets.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/connected_components.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace tiepoint {
namespace {

template <class Index>
class SetsNumbered : public testing::Test {};
using Indices = testing::Types<std::uint16_t, std::uint32_t>;
TYPED_TEST_SUITE(SetsNumbered, Indices);

/// The library numbers components in the order of their smallest vertex, as nets are numbered.
std::vector<int> componentsOf(int count, const std::vector<std::pair<int, int>>& pairs) {
    boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS> graph(static_cast<std::size_t>(count));
    for (const auto& [a, b] : pairs) boost::add_edge(static_cast<std::size_t>(a), static_cast<std::size_t>(b), graph);
    std::vector<int> component(count);
    if (count > 0) boost::connected_components(graph, component.data());
    return component;
}

TYPED_TEST(SetsNumbered, MatchesConnectedComponents) {
    std::mt19937 random(11);
    constexpr int kTrials = 2000, kMostStrips = 300;
    for (int trial = 0; trial < kTrials; ++trial) {
        const int strips = 1 + static_cast<int>(random() % kMostStrips);
        const int joins = static_cast<int>(random() % (2 * static_cast<unsigned>(strips)));
        std::vector<std::pair<int, int>> pairs;
        std::vector<std::pair<TypeParam, TypeParam>> typed;
        for (int j = 0; j < joins; ++j) {
            const int a = static_cast<int>(random() % static_cast<unsigned>(strips)),
                      b = static_cast<int>(random() % static_cast<unsigned>(strips));
            pairs.emplace_back(a, b);
            typed.emplace_back(static_cast<TypeParam>(a), static_cast<TypeParam>(b));
        }
        std::vector<TypeParam> netOf(strips);
        const int count = static_cast<int>(numberSets<TypeParam>(typed, netOf));
        const std::vector<int> expected = componentsOf(strips, pairs);
        ASSERT_EQ(std::vector<int>(netOf.begin(), netOf.end()), expected) << "trial " << trial;
        ASSERT_EQ(count, 1 + *std::max_element(expected.begin(), expected.end()));
    }
}

TYPED_TEST(SetsNumbered, TakesNothingAndJoinsToItself) {
    std::vector<TypeParam> none;
    EXPECT_EQ(numberSets<TypeParam>({}, none), 0);
    std::vector<TypeParam> three(3);
    const std::vector<std::pair<TypeParam, TypeParam>> self{{1, 1}};
    EXPECT_EQ(numberSets<TypeParam>(self, three), 3);
    EXPECT_EQ(three, (std::vector<TypeParam>{0, 1, 2}));
}

TEST(DisjointSets, MatchConnectedComponentsWithSmallestRoots) {
    std::mt19937 random(12);
    constexpr int kTrials = 500, kMost = 120;
    for (int trial = 0; trial < kTrials; ++trial) {
        const int things = 1 + static_cast<int>(random() % kMost);
        DisjointSets sets(static_cast<std::size_t>(things));
        std::vector<std::pair<int, int>> pairs;
        const int joins = static_cast<int>(random() % (2 * static_cast<unsigned>(things)));
        for (int j = 0; j < joins; ++j) {
            const int a = static_cast<int>(random() % static_cast<unsigned>(things));
            const int b = static_cast<int>(random() % static_cast<unsigned>(things));
            const std::vector<int> before = componentsOf(things, pairs);
            ASSERT_EQ(sets.areJoined(a, b), before[a] == before[b]) << "trial " << trial;
            ASSERT_EQ(sets.join(a, b), before[a] != before[b]) << "trial " << trial;
            pairs.emplace_back(a, b);
        }
        const std::vector<int> component = componentsOf(things, pairs);
        for (int thing = 0; thing < things; ++thing) {
            const auto smallest = std::find(component.begin(), component.end(), component[thing]) - component.begin();
            ASSERT_EQ(sets.root(thing), smallest) << "trial " << trial;
        }
    }
}

TEST(DisjointSets, ThingsAreAddedApart) {
    DisjointSets sets(2);
    EXPECT_TRUE(sets.join(0, 1));
    EXPECT_EQ(sets.add(), 2);
    EXPECT_EQ(sets.add(), 3);
    EXPECT_EQ(sets.root(3), 3);
    EXPECT_TRUE(sets.join(3, 1));
    EXPECT_FALSE(sets.join(0, 3));
    EXPECT_FALSE(sets.areJoined(2, 3));
    EXPECT_EQ(sets.root(3), 0);
}

}  // namespace
}  // namespace tiepoint
