// Boards: docked edge to edge with columns or rows in line, removed only while empty, lettered from either edge.

#include "core/edit/boards.h"

#include "core/bench/table.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

Bench afterEdit(const Bench& bench, const Edit& edit) {
    auto done = apply(bench, edit);
    EXPECT_TRUE(done.ok()) << (done.ok() ? "" : done.error().message);
    return std::move(done).value().bench;
}

TEST(Boards, DockBelowWithTheirColumnsInLine) {
    for (const char* first : {"full", "half", "mini"}) {
        for (const char* second : {"full", "half", "mini"}) {
            const Bench bench = test::BenchBuilder().board("A", first, 2, 3).build();
            const Bench docked = afterEdit(bench, dockBoardEdit(bench, *findBoardKind(second)));
            ASSERT_EQ(docked.boards.size(), 2u);
            const Board &a = docked.boards[0], &b = docked.boards[1];
            EXPECT_EQ(b.id, "B");
            EXPECT_NEAR(b.frameMm().top, a.frameMm().bottom(), 1e-9) << first << second;
            EXPECT_NEAR(holeMm(docked, {"B", Line::A, 1})->x, holeMm(docked, {"A", Line::A, 1})->x, 1e-9)
                << first << second;
        }
    }
}

TEST(Boards, ManyDockWithoutOverlapping) {
    Bench bench = makeNewBench();
    const char* kinds[] = {"full", "half", "mini"};
    for (int i = 0; i < 30; ++i) bench = afterEdit(bench, dockBoardEdit(bench, *findBoardKind(kinds[i % 3])));
    EXPECT_EQ(bench.boards.size(), 31u);
}

TEST(Boards, BesideWhereBelowIsTaken) {
    const double below = findBoardKind("half")->heightMm / kPitchMm;
    const Bench bench = test::BenchBuilder().board("B", "half", 0, below).board("A", "half").build();
    const Bench docked = afterEdit(bench, dockBoardEdit(bench, *findBoardKind("mini")));
    const Board& mini = docked.boards[2];
    EXPECT_NEAR(mini.frameMm().left, docked.findBoard("A")->frameMm().right(), 1e-9);
    EXPECT_NEAR(holeMm(docked, {mini.id, Line::A, 1})->y, holeMm(docked, {"A", Line::A, 1})->y, 1e-9) << "rows in line";
}

TEST(Boards, AnEmptyBoardGoesWithItsNotes) {
    Bench bench = test::BenchBuilder()
                      .board("A", "half")
                      .board("B", "half", 0, 24)
                      .part("R1", "resistor", {{"1", "A.a1"}, {"2", "A.a6"}})
                      .build();
    bench.notes = {{"N1", {"B", Line::A, 1}, "empty", {}}, {"N2", {"A", Line::A, 2}, "stays", {}}};
    const auto edit = removeBoardEdit(bench, "B");
    ASSERT_TRUE(edit.ok());
    const auto done = apply(bench, *edit);
    ASSERT_TRUE(done.ok()) << done.error().message;
    EXPECT_EQ(done->bench.boards.size(), 1u);
    ASSERT_EQ(done->bench.notes.size(), 1u);
    EXPECT_EQ(done->bench.notes[0].id, "N2");
    EXPECT_EQ(apply(done->bench, done->inverse)->bench, bench);
}

TEST(Boards, WhatIsInTheWayIsNamed) {
    const Bench bench = test::BenchBuilder()
                            .board("A", "half")
                            .board("B", "half", 0, 24)
                            .part("R1", "resistor", {{"1", "A.a1"}, {"2", "A.a6"}})
                            .jumper("W1", "A.b1", "B.b1")
                            .build();
    EXPECT_EQ(removeBoardEdit(bench, "A").error().message, "board A can't go: R1 and W1 are plugged into it");
    EXPECT_EQ(removeBoardEdit(bench, "B").error().message, "board B can't go: W1 is plugged into it");
    EXPECT_FALSE(removeBoardEdit(makeNewBench(), "A").ok()) << "the last one stays";
}

TEST(Boards, LabelsTurnAndTurnBack) {
    const Bench bench = makeNewBench();
    const Bench turned = afterEdit(bench, turnLabelsEdit(bench, "A"));
    EXPECT_EQ(turned.boards[0].labels, Labels::ABottom);
    EXPECT_EQ(holeMm(turned, {"A", Line::A, 1}), holeMm(bench, {"A", Line::A, 1}));
    EXPECT_EQ(afterEdit(turned, turnLabelsEdit(turned, "A")), bench);
}

TEST(Boards, DockToEachSideOfAnyKind) {
    for (const char* first : {"full", "half", "mini"}) {
        for (const char* second : {"full", "half", "mini"}) {
            const Bench bench = test::BenchBuilder().board("A", first).board("B", second, 200, 200).build();
            for (const Side side : kSides) {
                const auto edit = moveBoardBesideEdit(bench, "B", "A", side);
                ASSERT_TRUE(edit.ok()) << edit.error().message;
                const Bench docked = afterEdit(bench, *edit);
                const Rect a = docked.boards[0].frameMm(), b = docked.boards[1].frameMm();
                const Point a1 = *holeMm(docked, {"A", Line::A, 1}), b1 = *holeMm(docked, {"B", Line::A, 1});
                const bool upright = side == Side::Below || side == Side::Above;
                EXPECT_NEAR(upright ? a1.x : a1.y, upright ? b1.x : b1.y, 1e-9) << "columns or rows in line";
                const double apart = side == Side::Below   ? b.top - a.bottom()
                                     : side == Side::Above ? a.top - b.bottom()
                                     : side == Side::Right ? b.left - a.right()
                                                           : a.left - b.right();
                EXPECT_NEAR(apart, 0, 1e-9);
                EXPECT_FALSE(dockedWords(docked, "B", {docked.boards[1].atX, docked.boards[1].atY}).empty());
            }
        }
    }
}

TEST(Boards, WhatIsPluggedInGoesAlong) {
    const Bench bench = test::BenchBuilder()
                            .board("A", "half")
                            .board("B", "half", 0, 24)
                            .part("R1", "resistor", {{"1", "B.a1"}, {"2", "B.a6"}})
                            .jumper("W1", "A.j1", "B.b1")
                            .build();
    const auto edit = moveBoardEdit(bench, "B", {50, -3});
    ASSERT_TRUE(edit.ok());
    const auto done = apply(bench, *edit);
    ASSERT_TRUE(done.ok());
    EXPECT_EQ(done->bench.parts, bench.parts);
    const Table before = arrange(bench), after = arrange(done->bench);
    const Point by = done->bench.boards[1].cornerMm() - bench.boards[1].cornerMm();
    EXPECT_NEAR(after.parts[0].pose.centre.x, before.parts[0].pose.centre.x + by.x, 1e-9);
    EXPECT_NEAR(after.parts[0].pose.centre.y, before.parts[0].pose.centre.y + by.y, 1e-9);
    EXPECT_EQ(apply(done->bench, done->inverse)->bench, bench);
}

TEST(Boards, NoneLiesOnAnotherNorOnABox) {
    Bench bench =
        test::BenchBuilder().board("A", "half").board("B", "half", 0, 24).part("PS1", "usb-supply", {}).build();
    bench.parts[0].at = Point{40, 0};
    EXPECT_EQ(moveBoardEdit(bench, "B", {0, 5}).error().message, "board B would lie on board A");
    EXPECT_EQ(moveBoardEdit(bench, "B", {40, 0}).error().message, "board B would lie on PS1");
    EXPECT_TRUE(moveBoardEdit(bench, "B", {0, 30}).ok());
    const Bench more = afterEdit(bench, dockBoardEdit(bench, *findBoardKind("full")));
    EXPECT_EQ(more.boards.size(), 3u) << "a new one looks for room beside it";
}

TEST(Boards, LandDockedNearAnotherAndElseAtWholePitches) {
    const Bench bench = test::BenchBuilder().board("A", "half").board("B", "half", 100, 100).build();
    const Point right = dockedAt(bench.boards[0], Side::Right, *bench.boards[1].kind);
    const Point near = boardLandsAt(bench, "B", right * kPitchMm + Point{2, -3});
    EXPECT_EQ(near, right);
    EXPECT_EQ(boardLandsAt(bench, "B", {200.1, 77}), (Point{79, 30}));
    EXPECT_EQ(boardLandsAt(bench, "B", bench.boards[1].cornerMm() + Point{1, 1}), (Point{100, 100})) << "a shaky click";
}

TEST(Boards, RailsBreakAndJoinAndSayWhatIsParted) {
    const Bench bench = test::BenchBuilder()
                            .board("A", "half")
                            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
                            .jumper("W1", "A.top+20", "A.a20")
                            .build();
    const auto split = turnRailsEdit(bench, "A");
    ASSERT_TRUE(split.ok());
    const auto broken = apply(bench, *split);
    ASSERT_TRUE(broken.ok());
    EXPECT_EQ(broken->bench.boards[0].rails, Rails::Split);
    EXPECT_EQ(partedByRails(bench, broken->bench, "A"), "top+ is parted between holes 12 and 13");
    EXPECT_EQ(apply(broken->bench, broken->inverse)->bench, bench);
    EXPECT_EQ(afterEdit(broken->bench, *turnRailsEdit(broken->bench, "A")), bench);
    const Bench empty = test::BenchBuilder().board("A", "half").build();
    EXPECT_EQ(partedByRails(empty, afterEdit(empty, *turnRailsEdit(empty, "A")), "A"), "")
        << "nothing was joined by them";
    const Bench mini = test::BenchBuilder().board("A", "mini").build();
    EXPECT_EQ(turnRailsEdit(mini, "A").error().message, "board A has no rails");
}

}  // namespace
}  // namespace tiepoint
