// Arcs of jumpers: usual where nothing is in the way, off bodies and off each other where it can be.

#include "core/bench/jumper_routes.h"

#include "core/bench/cable_routes.h"
#include "core/bench/id_places.h"
#include "support/build_bench.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

using test::BenchBuilder;

Point endOf(const Bench& bench, std::string_view hole) { return *holeMm(bench, test::holeAt(hole)); }

/// Least distance between an arc's inner stretch and a point.
double clearance(const Bench& bench, int jumper, Point from) {
    const Table table = arrange(bench);
    const Point a = endMm(bench, table, bench.jumpers[jumper].ends[0]),
                b = endMm(bench, table, bench.jumpers[jumper].ends[1]);
    double least = 1e9;
    for (int i = 10; i <= 90; ++i)
        least = std::min(least, distance(arcPoint(a, b, table.jumperArcs[jumper], i / 100.0), from));
    return least;
}

TEST(JumperRoutes, AnArcEndsInItsHolesAndStandsOutByItsBow) {
    const Point a{0, 0}, b{30, 0};
    EXPECT_EQ(arcPoint(a, b, {0.2, 0}, 0), a);
    EXPECT_EQ(arcPoint(a, b, {0.2, 0}, 1), b);
    // The middle of a cubic stands at three quarters of its controls.
    EXPECT_NEAR(arcPoint(a, b, {0.2, 0}, 0.5).x, 15, 1e-12);
    EXPECT_NEAR(arcPoint(a, b, {0.2, 0}, 0.5).y, -0.75 * 0.2 * 30, 1e-12);
    EXPECT_NEAR(arcPoint(a, b, {0, 0}, 0.5).y, 0, 1e-12);
}

/// To the left of the way from the end nearer to the boards' middle line; where both are as near, from the left one.
TEST(JumperRoutes, TheUsualBowIsToTheLeftOfTheWayFromTheMiddle) {
    const Point near{10, 22}, far{12, 5}, left{3, 15}, right{30, 25};
    constexpr double kMiddleY = 20;
    EXPECT_EQ(usualBow(near, far, kMiddleY), jumperBow(distance(near, far)));
    EXPECT_EQ(usualBow(far, near, kMiddleY), -jumperBow(distance(near, far)));
    EXPECT_EQ(usualBow(left, right, kMiddleY), jumperBow(distance(left, right)));
    EXPECT_EQ(usualBow(right, left, kMiddleY), -jumperBow(distance(left, right)));
    EXPECT_GT(jumperBow(distance(near, far)), 0);
}

TEST(JumperRoutes, FreeJumpersKeepTheUsualArcAndFlatOnesNone) {
    Bench bench = BenchBuilder().board("A", "half").jumper("A.a4", "A.a12").build();
    const Table table = arrange(bench);
    const double middle = table.boardsMm.top + table.boardsMm.height / 2;
    EXPECT_EQ(table.jumperArcs[0], (Arc{usualBow(endOf(bench, "A.a4"), endOf(bench, "A.a12"), middle), 0}));
    bench.jumpers[0].flat = true;
    EXPECT_EQ(arrange(bench).jumperArcs[0], Arc{});
}

TEST(JumperRoutes, AnArcGoesRoundABody) {
    // An LED stands where the usual arc from a4 to a12 would pass.
    const Bench empty = BenchBuilder().board("A", "half").jumper("A.c4", "A.c12").build();
    const Table table = arrange(empty);
    const Point top = arcPoint(endOf(empty, "A.c4"), endOf(empty, "A.c12"), table.jumperArcs[0], 0.5);
    const auto row = top.y < endOf(empty, "A.c4").y ? "a" : "e";
    const Bench bench =
        BenchBuilder(empty)
            .part("D1", "led", {{"anode", std::string("A.") + row + "8"}, {"cathode", std::string("A.") + row + "9"}})
            .build();
    const Outline body = arrange(bench).parts[0].pose.body;
    EXPECT_GE(clearance(bench, 0, body.centre), body.halfLength + 0.5);
    EXPECT_NE(arrange(bench).jumperArcs[0], table.jumperArcs[0]);
}

TEST(JumperRoutes, TwoOverTheSameGroundTakeDifferentArcs) {
    const Bench bench = BenchBuilder().board("A", "half").jumper("A.b4", "A.b16").jumper("A.b5", "A.b15").build();
    const Table table = arrange(bench);
    const auto middle = [&](int jumper) {
        return arcPoint(endMm(bench, table, bench.jumpers[jumper].ends[0]),
                        endMm(bench, table, bench.jumpers[jumper].ends[1]), table.jumperArcs[jumper], 0.5);
    };
    EXPECT_GE(distance(middle(0), middle(1)), 1.9);
}

TEST(JumperRoutes, LeanStandsOutNearTheFirstEnd) {
    const Point a{0, 0}, b{30, 0};
    EXPECT_LT(arcPoint(a, b, {0.2, 0.1}, 0.25).y, arcPoint(a, b, {0.2, 0.1}, 0.75).y);  // to the left is up
    EXPECT_NEAR(arcPoint(a, b, {0.2, 0.1}, 0.5).y, arcPoint(a, b, {0.2, 0}, 0.5).y, 1e-12);
}

TEST(JumperRoutes, AnArcKeepsOffAnId) {
    // R1's id stands above it, where the usual arc between b6 and b16 bows.
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.b8"}, {"2", "A.b14"}})
                            .jumper("W1", "A.b5", "A.b17")
                            .build();
    const Table table = arrange(bench);
    const Rect id = [&] {
        Rect found;
        idPlaces(bench, bodiesOn(bench, table), table).each([&](const Rect& place) { found = place; });
        return found;
    }();
    EXPECT_LT(id.bottom(), table.parts[0].pose.centre.y);
    const Point a = endOf(bench, "A.b5"), b = endOf(bench, "A.b17");
    for (int i = 0; i <= 100; ++i) {
        const Point at = arcPoint(a, b, table.jumperArcs[0], i / 100.0);
        EXPECT_FALSE(id.contains(at)) << at.x << " " << at.y;
    }
}

/// Half a millimetre from a body and clear of a light's halo; beside what stands upright or is pressed, above what lies.
TEST(IdPlaces, StandBesideTheirBodies) {
    const struct {
        const char* text;
        bool beside;
        double awayMm;
    } cases[] = {{"half; R1 c5 c12 330", false, 0.5},
                 {"half; R1 a5 f5 330", true, 0.5},
                 {"half; D1 c5 c6 red", false, 2.25},
                 {"half; V1 c5 c9", false, 0.5},
                 {"half; S1 e5", true, 0.5}};
    for (const auto& c : cases) {
        const Bench bench = test::compactBench(c.text);
        const Table table = arrange(bench);
        const Body body = *bodyOf(bench.parts[0], table.parts[0], 0);
        int count = 0;
        idPlaces(bench, bodiesOn(bench, table), table).each([&](const Rect& id) {
            const Point centre = body.outline.centre, middle{id.left + id.width / 2, id.top + id.height / 2};
            const Point nearest{std::clamp(centre.x, id.left, id.right()), std::clamp(centre.y, id.top, id.bottom())};
            EXPECT_NEAR(distanceOutside(body.outline, nearest), c.awayMm, 1e-9) << c.text;
            EXPECT_NEAR(c.beside ? middle.y : middle.x, c.beside ? centre.y : centre.x, 1e-9) << c.text;
            EXPECT_LT(c.beside ? middle.x : middle.y, c.beside ? centre.x : centre.y) << c.text << ": left, or above";
            EXPECT_GT(id.width, 2) << c.text << ": two letters at least";
            ++count;
        });
        EXPECT_EQ(count, 1);
    }
}

/// Whatever stands in the way of one arc, the mirror images and the way back are there to be tried too; the usual ones come first.
TEST(JumperRoutes, EachArcHasItsMirrorImages) {
    const std::vector<Arc>& shapes = arcShapes();
    const auto has = [&](const Arc& arc) { return std::ranges::find(shapes, arc) != shapes.end(); };
    for (const Arc& arc : shapes) {
        SCOPED_TRACE(testing::Message() << arc.bow << " " << arc.lean << " " << arc.first << " " << arc.second);
        EXPECT_TRUE(has({-arc.bow, -arc.lean, arc.first, arc.second})) << "on the other side";
        EXPECT_TRUE(has({arc.bow, -arc.lean, arc.second, arc.first})) << "from the other end";
        EXPECT_EQ(std::ranges::count(shapes, arc), 1);
        EXPECT_LE(std::abs(arc.bow) + std::abs(arc.lean), 5) << "no arc leaves the boards";
    }
    EXPECT_EQ(shapes[0], (Arc{1, 0}));
    EXPECT_EQ(shapes[1], (Arc{-1, 0}));
}

TEST(JumperRoutes, OneMoreChoosesAsItWillLie) {
    Bench bench = BenchBuilder()
                      .board("A", "half")
                      .part("D1", "led", {{"anode", "A.c8"}, {"cathode", "A.c9"}})
                      .jumper("W1", "A.b4", "A.b16")
                      .build();
    const Jumper more{"W2", {test::holeAt("A.b5"), test::holeAt("A.b15")}, 0, false, {}};
    const Arc drawn = routeJumper(bench, arrange(bench), more);
    bench.jumpers.push_back(more);
    EXPECT_EQ(arrange(bench).jumperArcs[1], drawn);
}

TEST(CableRoutes, GoRoundWhatStandsTall) {
    const Bench empty =
        BenchBuilder().board("A", "half").part("PS1", "bench-supply", {{"+", "A.e14"}, {"-", "A.bottom-3"}}).build();
    const std::vector<WireCurve> usual = arrange(empty).parts[0].cablesMm;
    const Point tip = endOf(empty, "A.e14");
    int inTheWay = 0;
    for (int column = 2; column < 20; ++column) {
        const Bench bench =
            BenchBuilder(empty)
                .part("D1", "led",
                      {{"anode", "A.c" + std::to_string(column)}, {"cathode", "A.c" + std::to_string(column + 1)}})
                .build();
        const Table table = arrange(bench);
        const Body body = *bodyOf(bench.parts[1], table.parts[1], 1);
        const bool hit = runsThrough(body, usual[0], kWireRoomMm, {tip});
        inTheWay += hit;
        EXPECT_FALSE(runsThrough(body, table.parts[0].cablesMm[0], kWireRoomMm, {tip})) << column;
        EXPECT_EQ(table.parts[0].cablesMm[0] == usual[0], !hit) << column;
        EXPECT_EQ(table.parts[0].cablesMm[0].d, tip);
        EXPECT_EQ(table.parts[0].cablesMm[1], usual[1]);
    }
    EXPECT_GT(inTheWay, 1);
}

TEST(JumperRoutes, AreTheSameEachTime) {
    BenchBuilder builder;
    builder.board("A", "full");
    for (int i = 1; i <= 20; ++i) builder.jumper("A.a" + std::to_string(i), "A.j" + std::to_string(i + 20));
    const Bench bench = builder.build();
    EXPECT_EQ(arrange(bench).jumperArcs, arrange(bench).jumperArcs);
}

}  // namespace
}  // namespace tiepoint
