// Expressions: equivalent to their tables, and as short as can be. The least length over three switches is found here by building every
// formula up from its names, which shares nothing with the way the program finds its own.

#include "core/truth/shortest_expression.h"

#include "core/truth/cover.h"
#include "support/say_logic.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <random>

namespace tiepoint::test {
namespace {

const std::vector<std::string> kNames{"S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8", "S9", "S10"};

/// The switches of one row: the first is the leftmost column and changes slowest.
std::map<std::string, bool> switchesOf(std::size_t row, int variables) {
    std::map<std::string, bool> switches;
    for (int v = 0; v < variables; ++v) switches[kNames[v]] = (row >> (variables - 1 - v)) & 1;
    return switches;
}

TruthFunction functionOf(int variables, const std::function<bool(const std::vector<bool>&)>& says) {
    TruthFunction function(variables);
    for (std::size_t row = 0; row < function.rows.size(); ++row) {
        std::vector<bool> set;
        for (const auto& name : std::vector(kNames.begin(), kNames.begin() + variables))
            set.push_back(switchesOf(row, variables)[name]);
        function.rows[row] = says(set) ? Truth::Yes : Truth::No;
    }
    return function;
}

void expectEquivalent(const TruthFunction& function, const std::string& words) {
    SaidLogic said(words);
    for (std::size_t row = 0; row < function.rows.size(); ++row) {
        if (function.rows[row] == Truth::Free) continue;
        ASSERT_EQ(said.holds(switchesOf(row, function.variables)), function.rows[row] == Truth::Yes)
            << words << ", row " << row;
    }
}

TEST(ShortestExpression, SaysWhatTheTradeSays) {
    struct Case {
        int variables;
        std::function<bool(const std::vector<bool>&)> says;
        std::string words;
    };
    using Set = const std::vector<bool>&;
    const Case cases[] = {
        {0, [](Set) { return true; }, "always"},
        {2, [](Set) { return false; }, "never"},
        {1, [](Set s) { return s[0]; }, "S1"},
        {1, [](Set s) { return !s[0]; }, "NOT S1"},
        {2, [](Set s) { return s[0] && s[1]; }, "S1 AND S2"},
        {2, [](Set s) { return s[0] || s[1]; }, "S1 OR S2"},
        {2, [](Set s) { return s[0] != s[1]; }, "S1 XOR S2"},
        {2, [](Set s) { return s[0] == s[1]; }, "NOT (S1 XOR S2)"},
        {2, [](Set s) { return s[0] && !s[1]; }, "S1 AND NOT S2"},
        {2, [](Set s) { return !s[0] || !s[1]; }, "NOT S1 OR NOT S2"},
        {3, [](Set s) { return s[1]; }, "S2"},
        {3, [](Set s) { return s[0] && (s[1] || s[2]); }, "S1 AND (S2 OR S3)"},
        {3, [](Set s) { return (s[0] && s[1]) || s[2]; }, "S3 OR (S1 AND S2)"},
        {3, [](Set s) { return (s[0] != s[1]) != s[2]; }, "S1 XOR S2 XOR S3"},
        {3, [](Set s) { return s[0] == s[2] && s[1]; }, "S2 AND NOT (S1 XOR S3)"},
        {3, [](Set s) { return (s[0] != s[2]) && s[1]; }, "S2 AND (S1 XOR S3)"},
        {3, [](Set s) { return s[0] ? s[2] : s[1]; }, "(NOT S1 AND S2) OR (S1 AND S3)"},
        {3, [](Set s) { return s[0] ? s[1] : s[2]; }, "(S1 AND S2) OR (NOT S1 AND S3)"},
        {3, [](Set s) { return s[2] ? s[0] : s[1]; }, "(S1 AND S3) OR (S2 AND NOT S3)"},
    };
    for (const Case& each : cases) {
        const TruthFunction function = functionOf(each.variables, each.says);
        const Shortest shortest = shortestExpression(function);
        EXPECT_EQ(shortest.expression.inWords(kNames), each.words);
        EXPECT_TRUE(shortest.exact);
        expectEquivalent(function, each.words);
    }
}

/// Named by counting: two of three (W. V. Quine's majority), the bridge of five switches that no series and parallel makes,
/// parity and the multiplexer.
TEST(ShortestExpression, NamesEachSwitchAsSeldomAsPossible) {
    struct Case {
        const char* what;
        int variables, names;
        std::function<bool(const std::vector<bool>&)> says;
    };
    using Set = const std::vector<bool>&;
    const Case cases[] = {
        {"two of three", 3, 5, [](Set s) { return s[0] + s[1] + s[2] >= 2; }},
        {"bridge", 5, 8,
         [](Set s) { return (s[0] && s[3]) || (s[1] && s[4]) || (s[0] && s[2] && s[4]) || (s[1] && s[2] && s[3]); }},
        {"odd number of ten", 10, 10, [](Set s) { return std::count(s.begin(), s.end(), true) % 2 != 0; }},
        {"all of ten", 10, 10, [](Set s) { return std::count(s.begin(), s.end(), true) == 10; }},
        {"one chooses between two", 3, 4, [](Set s) { return s[0] ? s[1] : s[2]; }},
        {"five pairs side by side", 10, 10,
         [](Set s) { return (s[0] && s[1]) || (s[2] && s[3]) || (s[4] && s[5]) || (s[6] && s[7]) || (s[8] && s[9]); }},
    };
    for (const Case& each : cases) {
        SCOPED_TRACE(each.what);
        const TruthFunction function = functionOf(each.variables, each.says);
        const Shortest shortest = shortestExpression(function);
        EXPECT_LE(shortest.expression.length().first, each.names) << shortest.expression.inWords(kNames);
        EXPECT_EQ(shortest.expression.length().first, SaidLogic(shortest.expression.inWords(kNames)).names());
        expectEquivalent(function, shortest.expression.inWords(kNames));
    }
}

/// By table of three switches: the fewest names that a formula of AND, OR, XOR and NOT needs. `plain`: one in which XOR joins names only.
std::vector<int> fewestNames(bool plain) {
    constexpr int kTables = 256, kMostNames = 12;
    std::vector<int> fewest(kTables, 0);
    std::vector<std::vector<int>> byNames(1), oddByNames(1);  // odd: XOR of names, and NOT of it
    std::vector<int> odd(kTables, 0);
    for (int names = 1; std::ranges::count(fewest, 0) > 2 && names <= kMostNames; ++names) {
        std::vector<int> made, madeOdd;
        const auto reach = [names](int table, std::vector<int>& known, std::vector<int>& reached) {
            for (const int each : {table, table ^ 0xff}) {
                if (each == 0 || each == 0xff || known[each] != 0) continue;
                known[each] = names;
                reached.push_back(each);
            }
        };
        const auto reachOdd = [&](int table) {
            reach(table, odd, madeOdd);
            reach(table, fewest, made);
        };
        if (names == 1) {
            for (const int variable : {0xf0, 0xcc, 0xaa}) reachOdd(variable);
        }
        for (int left = 1; left < names; ++left) {
            for (const int a : byNames[left]) {
                for (const int b : byNames[names - left]) {
                    reach(a & b, fewest, made);
                    reach(a | b, fewest, made);
                    if (!plain) reach(a ^ b, fewest, made);
                }
            }
            for (const int a : oddByNames[left]) {
                for (const int b : oddByNames[names - left]) reachOdd(a ^ b);
            }
        }
        byNames.push_back(std::move(made));
        oddByNames.push_back(std::move(madeOdd));
    }
    return fewest;
}

TEST(ShortestExpression, NoneOfAllFunctionsOfThreeSwitchesHasAShorterOne) {
    const std::vector<int> fewest = fewestNames(false);
    for (int table = 1; table < 255; ++table) {
        TruthFunction function(3);
        for (int row = 0; row < 8; ++row) function.rows[row] = (table >> row) & 1 ? Truth::Yes : Truth::No;
        const Expression expression = shortestExpression(function).expression;
        EXPECT_EQ(expression.length().first, fewest[table]) << expression.inWords(kNames);
        expectEquivalent(function, expression.inWords(kNames));
    }
}

/// Where a formula of as few names needs no bracket in an XOR, none is said.
TEST(ShortestExpression, NoneOfAllFunctionsOfThreeSwitchesComparesBracketsInVain) {
    const std::vector<int> fewest = fewestNames(false), plain = fewestNames(true);
    int compared = 0;
    for (int table = 1; table < 255; ++table) {
        TruthFunction function(3);
        for (int row = 0; row < 8; ++row) function.rows[row] = (table >> row) & 1 ? Truth::Yes : Truth::No;
        const Expression expression = shortestExpression(function).expression;
        ASSERT_GT(plain[table], 0);
        EXPECT_EQ(expression.compared() == 0, plain[table] == fewest[table]) << expression.inWords(kNames);
        compared += expression.compared() != 0;
    }
    EXPECT_GT(compared, 0);
    EXPECT_LT(compared, 255);
}

TEST(ShortestExpression, FreeRowsMayGoEitherWay) {
    TruthFunction function(2);
    function.rows = {Truth::No, Truth::Yes, Truth::Yes, Truth::Free};
    EXPECT_EQ(shortestExpression(function).expression.length(), std::pair(2, 1));
    function.rows = {Truth::Free, Truth::Yes, Truth::No, Truth::Yes};
    EXPECT_EQ(shortestExpression(function).expression.inWords(kNames), "S2");
    function.rows = {Truth::Free, Truth::Free, Truth::Free, Truth::Free};
    EXPECT_TRUE(shortestExpression(function).expression.isConstant());
}

TEST(ShortestExpression, IsEquivalentForRandomFunctions) {
    std::mt19937 random(5);
    for (int round = 0; round < 60; ++round) {
        TruthFunction function(std::uniform_int_distribution<int>(1, 7)(random));
        std::discrete_distribution<int> says({4, 4, round % 2 == 0 ? 0.0 : 2.0});
        for (Truth& row : function.rows) row = static_cast<Truth>(says(random));
        expectEquivalent(function, shortestExpression(function).expression.inWords(kNames));
    }
}

/// The search is cut short for these; what it found so far is equivalent all the same.
TEST(ShortestExpression, IsEquivalentForRandomFunctionsOfTenSwitches) {
    std::mt19937 random(6);
    for (int round = 0; round < 3; ++round) {
        TruthFunction function(10);
        for (Truth& row : function.rows) row = random() % 2 ? Truth::Yes : Truth::No;
        expectEquivalent(function, shortestExpression(function).expression.inWords(kNames));
    }
}

/// Least covers against trying all sets of primes, few variables.
TEST(ShortestCover, NoSetOfPrimesIsShorter) {
    const auto namesOf = [](const std::vector<Product>& products) {
        int names = 0;
        for (const Product& product : products) names += std::popcount(product.cares);
        return names;
    };
    std::mt19937 random(7);
    for (int round = 0; round < 200; ++round) {
        TruthFunction function(4);
        for (Truth& row : function.rows) row = static_cast<Truth>(random() % 3);
        const auto primes = primeProducts(function);
        const Cover cover = shortestCover(function);
        ASSERT_TRUE(cover.exact);
        if (primes.size() > 14 || std::ranges::any_of(primes, [](const Product& p) { return p.cares == 0; })) continue;
        int fewest = 1000;
        for (unsigned set = 0; set < 1u << primes.size(); ++set) {
            std::vector<Product> taken;
            for (std::size_t p = 0; p < primes.size(); ++p) {
                if (set >> p & 1) taken.push_back(primes[p]);
            }
            bool covers = true;
            for (std::size_t row = 0; row < function.rows.size() && covers; ++row) {
                covers = function.rows[row] != Truth::Yes ||
                         std::ranges::any_of(taken, [&](const Product& p) { return p.holds(row); });
            }
            if (covers) fewest = std::min(fewest, namesOf(taken));
        }
        EXPECT_EQ(namesOf(cover.products), fewest);
    }
}

}  // namespace
}  // namespace tiepoint::test
