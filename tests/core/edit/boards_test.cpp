// Boards: docked edge to edge with columns or rows in line, removed only while empty, lettered from either edge.

#include "core/edit/boards.h"

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

}  // namespace
}  // namespace tiepoint
