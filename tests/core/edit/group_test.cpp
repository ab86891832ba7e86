#include "core/edit/group.h"

#include "core/edit/placement.h"
#include "core/edit/told.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

/// The ferry's cabin lamp on the upper of two half boards, and a mini board at their right.
BenchBuilder landings() {
    return BenchBuilder()
        .board("A", "half")
        .board("B", "half", 0, 24)
        .board("M", "mini", 40, 0)
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .jumper("W1", "A.top+7", "A.a8");
}

MovedGroup moved(const Bench& bench, const std::vector<std::string>& ids, const Step& step) {
    return GroupPlacer(bench, ids).moved(groupOf(bench, ids), step);
}

TEST(Group, GoesToAnotherBoardWithItsEndsInRails) {
    const Bench bench = landings().build();
    const MovedGroup there = moved(bench, {"R1", "W1"}, {2, 1, 0, "A", "B"});
    ASSERT_EQ(there.refused, "");
    ASSERT_EQ(there.group.parts.size(), 1U);
    ASSERT_EQ(there.group.jumpers.size(), 1U);
    EXPECT_EQ(there.group.parts[0].leads[0], holeAt("B.d10"));
    EXPECT_EQ(there.group.parts[0].leads[1], holeAt("B.d16"));
    EXPECT_EQ(there.group.jumpers[0].ends[0], JumperEnd(holeAt("B.top+9"))) << "rail hole 9 stands over column 10";
    EXPECT_EQ(there.group.jumpers[0].ends[1], JumperEnd(holeAt("B.b10")));
}

TEST(Group, EndsInRailsTakeTheNearestFreeHole) {
    // Rail holes 5 and 6 stand over columns 5 and 7.
    const struct {
        int columns;
        const char *taken, *to;
    } cases[] = {
        {0, "A.top+20", "A.top+7"},  {2, "A.top+20", "A.top+9"}, {2, "A.top+9", "A.top+10"},
        {-2, "A.top+20", "A.top+5"},  // column 6 has no hole: of the two beside it the one ahead
        {-1, "A.top+6", "A.top+7"},   // its own old hole is free
        {-3, "A.top+5", "A.top+4"},
    };
    for (const auto& c : cases) {
        const Bench bench = landings().jumper("W9", c.taken, "A.j25").build();
        const MovedGroup there = moved(bench, {"R1", "W1"}, {c.columns, 0, 0, {}, {}});
        ASSERT_EQ(there.refused, "") << c.columns;
        EXPECT_EQ(there.group.jumpers[0].ends[0], JumperEnd(holeAt(c.to))) << c.columns << " with " << c.taken;
    }
}

TEST(Group, TwoOfItsEndsNeverShareAHoleOfARail) {
    const Bench bench = landings().jumper("W2", "A.top+6", "A.a7").build();
    const MovedGroup there = moved(bench, {"W1", "W2"}, {4, 0, 0, {}, {}});
    ASSERT_EQ(there.refused, "");
    EXPECT_NE(there.group.jumpers[0].ends[0], there.group.jumpers[1].ends[0]);
    EXPECT_EQ(refusalOfChange(bench,
                              [&] {
                                  Bench after = bench;
                                  after.jumpers = there.group.jumpers;
                                  return after;
                              }()),
              std::nullopt);
}

TEST(Group, WhatFindsNoHoleIsNamed) {
    const Bench bench = landings().build();
    EXPECT_EQ(moved(bench, {"R1", "W1"}, {0, 0, 0, "A", "M"}).refused, "W1 needs a rail, and board M has none");
    EXPECT_EQ(moved(bench, {"R1"}, {0, 0, 0, "A", "M"}).refused, "");
    EXPECT_EQ(moved(bench, {"R1", "W1"}, {17, 0, 0, {}, {}}).refused, "R1 would leave the board");
    EXPECT_EQ(moved(bench, {"R1", "W1"}, {0, -3, 0, {}, {}}).refused, "R1 would leave the board");
}

TEST(Group, AFullRailIsNamed) {
    BenchBuilder builder = landings();
    for (int hole = 1; hole <= 25; ++hole) {
        const std::string rail = "B.top+" + std::to_string(hole);
        const std::string strip = std::string(hole % 2 ? "B.e" : "B.f") + std::to_string(hole);
        builder.jumper("X" + std::to_string(hole), rail, strip);
    }
    EXPECT_EQ(moved(builder.build(), {"W1"}, {0, 0, 0, "A", "B"}).refused, "no hole is free for W1 in the rail top+");
}

TEST(Group, AStepLeadsToTheHoleOfItsSort) {
    const Bench bench = landings().build();
    const auto at = [&](const char* hole) { return *holeMm(bench, holeAt(hole)); };
    constexpr double kReachMm = 2;
    EXPECT_EQ(stepTo(bench, holeAt("A.c8"), at("B.d10"), kReachMm), (Step{2, 1, 0, "A", "B"}));
    EXPECT_EQ(stepTo(bench, holeAt("A.c8"), at("A.c8"), kReachMm), (Step{0, 0, 0, "A", "A"}));
    EXPECT_EQ(stepTo(bench, holeAt("A.top+7"), at("B.bottom-9"), kReachMm), (Step{2, 0, 3, "A", "B"}));
    EXPECT_EQ(stepTo(bench, holeAt("A.c8"), at("A.top+9"), kReachMm), std::nullopt) << "a strip's hole isn't a rail's";
}

TEST(Group, JumpersBetweenRailsGoToOtherRails) {
    const Bench bench = landings().jumper("W2", "A.top+20", "A.top-20").build();
    const MovedGroup there = moved(bench, {"W2"}, {-3, 0, 2, "A", "B"});
    ASSERT_EQ(there.refused, "");
    EXPECT_EQ(there.group.jumpers[0].ends[0], JumperEnd(holeAt("B.bottom+17")));
    EXPECT_EQ(there.group.jumpers[0].ends[1], JumperEnd(holeAt("B.bottom-17")));
    EXPECT_EQ(moved(bench, {"W2"}, {0, 0, 3, "A", "B"}).refused, "W2 would leave the board");
}

TEST(Told, SaysWhereThingsLie) {
    const Bench bench = landings().build();
    EXPECT_EQ(placeInWords(bench, "R1"), "R1: 1 in A.c8, 2 in A.c14");
    EXPECT_EQ(placeInWords(bench, "W1"), "W1: from A.top+7 to A.a8");
    EXPECT_EQ(placeInWords(bench, "R7"), "");
    EXPECT_EQ(toldOf(bench, {"R1"}, "moved"), "R1 moved: 1 in A.c8, 2 in A.c14");
    EXPECT_EQ(toldOf(bench, {"R7"}, "removed"), "R7 removed");
    EXPECT_EQ(toldOf(bench, {"R1", "W1"}, "moved"),
              "2 things moved; R1: 1 in A.c8, 2 in A.c14; W1: from A.top+7 to A.a8");
}

}  // namespace
}  // namespace tiepoint
