// Positions of switches: those that feel each other in every combination, those that don't in turns, and once everything at the same time.
// Checked against all combinations: whatever a combination of a bench does that its plan leaves out, each circuit does in one of the plan.

#include "core/behaviour/position_plan.h"

#include "core/behaviour/position_solver.h"
#include "core/behaviour/switch_groups.h"
#include "core/snapshot/lit.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace tiepoint::test {
namespace {

const char* const kTwoCircuits =
    "half; PS1 top+3 bottom-3 5; S1 e6; R1 h8 h12 330; D1 g12 g14 red; S2 e18; R2 h20 h24 330; D2 g24 g26 green; W1 "
    "top+6 a6 red; "
    "W2 j14 bottom-12 black; W3 top+15 a18 red; W4 j26 bottom-22 black";
const char* const kInARow =
    "half; PS1 top+3 bottom-3 5; R1 c3 c8 330; S1 e8; S2 e14; D1 g16 g20 red; W1 top+4 a3 red; W2 c10 c14 yellow; W3 "
    "j20 bottom-17 black";
/// Two buttons that join the plus rails and the minus rails of two supplies: only both together close a loop.
const char* const kBridges =
    "half; PS1 top+3 top-3 5; PS2 bottom+3 bottom-3 9; S1 e8; S2 e14; W1 top+8 a8 red; W2 j10 bottom+10 red; W3 top-14 "
    "a14 black; W4 j16 bottom-14 black";

std::shared_ptr<const Layout> layoutOf(const char* text) {
    return buildLayout(std::make_shared<const Bench>(compactBench(text)));
}

TEST(SwitchGroups, AreCircuitsThatMeetOnlyAtSupplies) {
    struct Case {
        const char* text;
        std::vector<int> groups;
    };
    for (const Case& each : {Case{kTwoCircuits, {0, 1}}, Case{kInARow, {0, 0}}, Case{kBridges, {0, 0}}}) {
        const auto layout = layoutOf(each.text);
        EXPECT_EQ(switchGroups(*layout, throwsOf(*layout->bench)), each.groups) << each.text;
    }
}

TEST(Positions, OfSeparateCircuitsAddUp) {
    const auto layout = layoutOf(kTwoCircuits);
    const PositionPlan plan = planPositions(*layout, throwsOf(*layout->bench), {0, 0});
    EXPECT_TRUE(plan.complete());
    EXPECT_EQ(plan.others, (std::vector<Digits>{{1, 0}, {0, 1}, {1, 1}}));
}

TEST(Positions, OfOneCircuitMultiply) {
    const auto layout = layoutOf(kInARow);
    for (const Digits& now : {Digits{0, 0}, Digits{1, 0}, Digits{1, 1}}) {
        const PositionPlan plan = planPositions(*layout, throwsOf(*layout->bench), now);
        std::set<Digits> all(plan.others.begin(), plan.others.end());
        EXPECT_EQ(all.size(), 3u);
        EXPECT_EQ(all.size(), plan.others.size());
        EXPECT_FALSE(all.contains(now));
    }
}

/// Six buttons in six circuits: a place for each, and one for all, in place of 64.
TEST(Positions, StayFewWithManyCircuits) {
    std::string text = "full; PS1 top+3 bottom-3 5";
    for (int i = 0; i < 6; ++i) {
        const int column = 4 + 9 * i;
        text += "; S" + std::to_string(i + 1) + " e" + std::to_string(column) + "; W" + std::to_string(2 * i + 1) +
                " top+" + std::to_string(5 + 7 * i) + " a" + std::to_string(column) + " red; R" +
                std::to_string(i + 1) + " h" + std::to_string(column + 2) + " h" + std::to_string(column + 6) +
                " 330; W" + std::to_string(2 * i + 2) + " j" + std::to_string(column + 6) + " bottom-" +
                std::to_string(5 + 7 * i) + " black";
    }
    const auto layout = layoutOf(text.c_str());
    const PositionPlan plan = planPositions(*layout, throwsOf(*layout->bench), Digits(6, 0));
    EXPECT_TRUE(plan.complete());
    EXPECT_EQ(plan.others.size(), 7u);
    EXPECT_EQ(plan.others.back(), Digits(6, 1));
}

TEST(Positions, WhatAnyCombinationLightsThePlanLightsToo) {
    for (const char* text : {kTwoCircuits, kInARow}) {
        const auto layout = layoutOf(text);
        PositionSolver solver(layout);
        const auto litIn = [&](const Digits& digits) {
            std::set<int> lit;
            const auto snapshot = solver.solve(digits);
            for (int part = 0; part < static_cast<int>(layout->bench->parts.size()); ++part) {
                if (isLit(*snapshot, part)) lit.insert(part);
            }
            return lit;
        };
        std::set<int> byAll, byPlan = litIn({0, 0});
        for (const Digits& each : {Digits{0, 0}, Digits{0, 1}, Digits{1, 0}, Digits{1, 1}}) byAll.merge(litIn(each));
        for (const Digits& each : planPositions(*layout, solver.throws(), {0, 0}).others) byPlan.merge(litIn(each));
        EXPECT_EQ(byPlan, byAll) << text;
        EXPECT_FALSE(byAll.empty());
    }
}

}  // namespace
}  // namespace tiepoint::test
