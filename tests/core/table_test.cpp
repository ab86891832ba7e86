// Where things lie: numbers of the board's drawing, in millimetres.

#include "core/bench/table.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using test::BenchBuilder;

constexpr double kNearMm = 1e-9;

Rect bodyOf(const Table& table, int part) {
    const Outline& body = table.parts[part].pose.body;
    return {body.centre.x - body.halfLength, body.centre.y - body.halfWidth, 2 * body.halfLength, 2 * body.halfWidth};
}

bool apart(const Rect& a, const Rect& b) {
    return a.right() <= b.left || b.right() <= a.left || a.bottom() <= b.top || b.bottom() <= a.top;
}

TEST(Table, SupplyStandsAtTheLeftAndLeadsReachTheirHoles) {
    const Bench bench = makeNewBench();
    const Table table = arrange(bench);
    const Rect body = bodyOf(table, 0);
    EXPECT_NEAR(body.right(), table.boardsMm.left - 23, kNearMm);
    EXPECT_NEAR(body.top + body.height / 2, table.boardsMm.top + table.boardsMm.height / 2, kNearMm);
    EXPECT_NEAR(body.width, 30, kNearMm);
    EXPECT_NEAR(body.height, 51, kNearMm);
    const PartPlace& place = table.parts[0];
    EXPECT_EQ(place.leadsMm[0], *holeMm(bench, test::holeAt("A.top+3")));
    EXPECT_EQ(place.leadsMm[1], *holeMm(bench, test::holeAt("A.bottom-3")));
    // Measured on the drawing of the bench: plus socket, and the lower of the two minus sockets.
    EXPECT_NEAR(place.exitsMm[0].x, body.left + 22.5, kNearMm);
    EXPECT_NEAR(place.exitsMm[0].y, body.top + 26.5, kNearMm);
    EXPECT_NEAR(place.exitsMm[1].y, body.top + 44.5, kNearMm);
    EXPECT_LE(table.allMm.left, body.left);
    EXPECT_GE(table.allMm.right(), table.boardsMm.right());
}

TEST(Table, MoreSuppliesNeverOverlap) {
    BenchBuilder builder;
    builder.board("A", "full").board("B", "full", 0, 24).board("C", "half", 70, 0);
    int number = 0;
    for (const char* kind : {"bench-supply", "usb-supply", "cells", "block-9v", "bench-supply", "cells"})
        builder.part("PS" + std::to_string(++number), kind, {});
    const Table table = arrange(builder.build());
    for (int a = 0; a < number; ++a) {
        EXPECT_LE(bodyOf(table, a).right(), table.boardsMm.left - 23 + kNearMm);
        for (int b = a + 1; b < number; ++b) EXPECT_TRUE(apart(bodyOf(table, a), bodyOf(table, b))) << a << b;
    }
}

TEST(Table, SocketsAreOnTheBodyAndHangingLeadsBesideIt) {
    const Bench bench =
        BenchBuilder().board("A", "half").part("PS1", "usb-supply", {}).part("PS2", "cells", {}).build();
    const Table table = arrange(bench);
    EXPECT_EQ(table.parts[0].leadsMm, table.parts[0].exitsMm);
    EXPECT_TRUE(bodyOf(table, 0).contains(table.parts[0].leadsMm[2]));
    for (const Point tip : table.parts[1].leadsMm) {
        EXPECT_FALSE(bodyOf(table, 1).contains(tip));
        EXPECT_TRUE(table.allMm.contains(tip));
    }
    EXPECT_EQ(endMm(bench, table, Socket{"PS1", 1}), table.parts[0].leadsMm[1]);
    EXPECT_EQ(endMm(bench, table, test::holeAt("A.e12")), *holeMm(bench, test::holeAt("A.e12")));
}

TEST(Table, PartsLieBetweenTheirHoles) {
    const Bench bench =
        BenchBuilder()
            .board("A", "half")
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .part("D1", "led", {{"anode", "A.h16"}})
            .build();
    const Table table = arrange(bench);
    const Point c8 = *holeMm(bench, test::holeAt("A.c8")), c14 = *holeMm(bench, test::holeAt("A.c14"));
    EXPECT_NEAR(table.parts[0].pose.centre.x, (c8.x + c14.x) / 2, kNearMm);
    EXPECT_NEAR(table.parts[0].exitsMm[0].x, table.parts[0].pose.centre.x - 3.25, kNearMm);
    EXPECT_NEAR(table.parts[0].exitsMm[1].x, table.parts[0].pose.centre.x + 3.25, kNearMm);
    EXPECT_NEAR(table.parts[0].exitsMm[1].y, c14.y, kNearMm);
    const Point e14 = *holeMm(bench, test::holeAt("A.e14"));
    EXPECT_NEAR(table.parts[1].pose.centre.x, e14.x + kPitchMm, kNearMm);
    EXPECT_NEAR(table.parts[1].pose.centre.y, e14.y + 1.5 * kPitchMm, kNearMm);
    EXPECT_NEAR(table.parts[1].exitsMm[0].y, table.parts[1].pose.centre.y - 3.05, kNearMm);
    // The cathode hangs one pitch away, the span of the tray.
    const Point h16 = *holeMm(bench, test::holeAt("A.h16"));
    EXPECT_NEAR(distance(table.parts[2].leadsMm[1], {h16.x + kPitchMm, h16.y}), 0, kNearMm);
}

TEST(Table, LoosePartsLieInARowBelowTheBoards) {
    BenchBuilder builder;
    builder.board("A", "mini");
    for (int i = 1; i <= 12; ++i) builder.part("R" + std::to_string(i), i % 3 ? "resistor" : "push-button", {});
    const Bench bench = builder.build();
    const Table table = arrange(bench);
    double first = 1e9;
    for (int a = 0; a < 12; ++a) {
        double top = bodyOf(table, a).top;
        for (const Point lead : table.parts[a].leadsMm) top = std::min(top, lead.y);
        first = std::min(first, top);
        EXPECT_GE(bodyOf(table, a).left, table.boardsMm.left);
        for (int b = a + 1; b < 12; ++b) EXPECT_TRUE(apart(bodyOf(table, a), bodyOf(table, b))) << a << " " << b;
    }
    EXPECT_NEAR(first, table.boardsMm.bottom() + 12, kNearMm);
}

TEST(Table, EmptyBenchHasATable) {
    EXPECT_TRUE(arrange(Bench{}).parts.empty());
    const Table table = arrange(BenchBuilder().part("R1", "resistor", {}).part("PS1", "cells", {}).build());
    EXPECT_TRUE(apart(bodyOf(table, 0), bodyOf(table, 1)));
}

TEST(Jumper, LengthIsTheArcAndTheEndsInTheHoles) {
    EXPECT_NEAR(jumperBow(5), 0.3, kNearMm);
    EXPECT_NEAR(jumperBow(100), 0.12, kNearMm);
    // The arc against a chain of short pieces of the same parabola.
    for (const double span : {5.0, 20.0, 60.0, 150.0}) {
        const double rise = jumperBow(span) * span;
        double arc = 0;
        Point before{0, 0};
        for (int i = 1; i <= 2000; ++i) {
            const double t = i / 2000.0;
            const Point next{t * span, 4 * rise * t * (1 - t)};
            arc += distance(before, next);
            before = next;
        }
        EXPECT_NEAR(jumperLengthMm({0, 0}, {span, 0}), arc + 12, 0.015 * arc) << span;
    }
    double shorter = 0;
    for (double span = 1; span < 200; span += 1) {
        const double length = jumperLengthMm({0, 0}, {0, span});
        EXPECT_GT(length, shorter);
        shorter = length;
    }
}

}  // namespace
}  // namespace tiepoint
