#include "core/bench/bench.h"

#include "core/bench/natural_order.h"
#include "core/bench/validate.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

namespace tiepoint {
namespace {

TEST(Bench, StartsWithAHalfBoardAndASupplyInBothRails) {
    const Bench bench = makeNewBench();
    ASSERT_TRUE(validate(bench).ok());
    ASSERT_EQ(bench.boards.size(), 1u);
    EXPECT_EQ(bench.boards[0].kind, findBoardKind("half"));
    ASSERT_EQ(bench.parts.size(), 1u);
    const Part& supply = bench.parts[0];
    EXPECT_EQ(supply.kind, findKind("bench-supply"));
    EXPECT_EQ(supply.leads[supply.kind->leadIndex("+")], parseHole("A.top+3"));
    EXPECT_EQ(supply.leads[supply.kind->leadIndex("-")], parseHole("A.bottom-3"));
    EXPECT_EQ(supply.value(supply.kind->valueIndex("voltage")), 5);
    EXPECT_EQ(supply.stateValue(supply.kind->stateIndex("on")), 1);
    EXPECT_TRUE(bench.jumpers.empty());
}

TEST(Bench, FindsObjectsById) {
    const Bench bench = test::BenchBuilder()
                            .board("A", "half")
                            .board("B", "mini", 40, 0)
                            .part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}})
                            .part("D1", "led", {{"anode", "A.h9"}, {"cathode", "A.h10"}})
                            .jumper("W1", "A.a1", "B.a1")
                            .build();
    EXPECT_EQ(bench.findBoard("B"), &bench.boards[1]);
    EXPECT_EQ(bench.findPart("D1"), &bench.parts[1]);
    EXPECT_EQ(bench.findJumper("W1"), &bench.jumpers[0]);
    EXPECT_EQ(bench.partIndex("D1"), 1);
    EXPECT_EQ(bench.jumperIndex("W1"), 0);
    EXPECT_EQ(bench.findPart("W1"), nullptr);
    EXPECT_EQ(bench.partIndex("A"), -1);
    EXPECT_EQ(bench.jumperIndex("R1"), -1);
}

TEST(Bench, KnowsWhereHolesLie) {
    const Bench bench = test::BenchBuilder().board("A", "full", 2, 1.5).build();
    const auto at = holeMm(bench, test::holeAt("A.a1"));
    ASSERT_TRUE(at);
    EXPECT_NEAR(at->x, 2 * 2.54 + 3.76, 1e-9);
    EXPECT_NEAR(at->y, 1.5 * 2.54 + 13.53, 1e-9);
    EXPECT_FALSE(holeMm(bench, test::holeAt("A.a64")));
    EXPECT_FALSE(holeMm(bench, test::holeAt("B.a1")));
}

TEST(Bench, GivesTheSmallestFreeIdOfTheOneNamespace) {
    const Bench bench = test::BenchBuilder()
                            .board("R1", "half")
                            .part("R3", "resistor", {})
                            .part("W1", "resistor", {})
                            .jumper("W2", "R1.a1", "R1.a2")
                            .build();
    EXPECT_EQ(freeId(bench, "R"), "R2");
    EXPECT_EQ(freeId(bench, "W"), "W3");
    EXPECT_EQ(freeId(bench, "D"), "D1");
}

TEST(Bench, JudgesIds) {
    for (const char* id : {"A", "z", "R1", "gate_left", "A234567890123456789012345678901_"})
        EXPECT_TRUE(isId(id)) << id;
    for (const char* id : {"", "1R", "_a", "R-1", "R 1", "R.1", "Ä", "A234567890123456789012345678901_x", "R1\n"}) {
        EXPECT_FALSE(isId(id)) << id;
    }
}

TEST(NaturalOrder, CountsDigitsAsNumbers) {
    const std::pair<const char*, const char*> table[] = {
        {"R2", "R10"},     {"R9", "R10"},
        {"PS1", "PS2"},    {"A", "B"},
        {"A", "A1"},       {"", "A"},
        {"R1", "R2"},      {"S1a", "S1b"},
        {"S2a", "S10a"},   {"R99999999999999999999", "R100000000000000000000"},
        {"R01", "R1"},     {"R1", "R01a"},
        {"R1a2", "R1a10"},
    };
    for (const auto& [a, b] : table) {
        EXPECT_TRUE(naturalLess(a, b)) << a << ' ' << b;
        EXPECT_FALSE(naturalLess(b, a)) << a << ' ' << b;
        EXPECT_FALSE(naturalLess(a, a)) << a;
    }
}

TEST(NaturalOrder, IsATotalOrderOfDifferentTexts) {
    std::mt19937 random(7);
    std::vector<std::string> texts;
    for (int i = 0; i < 40; ++i) {
        std::string text;
        for (auto length = random() % 5; length > 0; --length) text += "R0a19"[random() % 5];
        texts.push_back(text);
    }
    for (const auto& a : texts) {
        for (const auto& b : texts) {
            EXPECT_EQ(naturalLess(a, b) + naturalLess(b, a), a == b ? 0 : 1) << a << ' ' << b;
            for (const auto& c : texts) {
                if (!naturalLess(a, b) || !naturalLess(b, c)) continue;
                EXPECT_TRUE(naturalLess(a, c)) << a << " " << b << " " << c;
            }
        }
    }
}

}  // namespace
}  // namespace tiepoint
