// Which holes bodies cover, and what runs through them: tables for the packages, and an oracle that samples.

#include "core/bench/bodies.h"

#include "core/edit/placement.h"
#include "support/brute_force.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

/// The holes of a board that the only part covers, its own left out: "d8 d9 d10".
std::string coveredBy(const Bench& bench) {
    const Table table = placeThings(bench);
    const auto body = bodyOf(bench.parts[0], table.parts[0], 0);
    std::string text;
    for (int line = 0; body && line < kRowCount + kRailCount; ++line) {
        for (int number = 1; bench.boards[0].kind->has(static_cast<Line>(line), number); ++number) {
            const Hole hole{bench.boards[0].id, static_cast<Line>(line), number};
            const auto& leads = bench.parts[0].leads;
            if (std::find(leads.begin(), leads.end(), hole) != leads.end() || !covers(*body, *holeMm(bench, hole)))
                continue;
            text += (text.empty() ? "" : " ") + shortName(hole);
        }
    }
    return text;
}

TEST(Bodies, CoverTheHolesUnderThem) {
    const struct {
        const char *kind, *from, *to;  ///< the last hole of a bending part; else null
        int turns;
        const char* covered;
    } cases[] = {
        {"resistor", "A.c8", "A.c14", 0, "c10 c11 c12"},
        {"resistor", "A.c8", "A.c13", 0, "c10 c11"},
        {"resistor", "A.d8", "A.g8", 0, ""},   // lies over the gap
        {"resistor", "A.c8", "A.c10", 0, ""},  // stands on its first hole
        {"diode", "A.c8", "A.c12", 0, "c10"},
        {"led", "A.h16", "A.h17", 0, ""},  // an edge over half of g16 covers nothing
        {"led", "A.h16", "A.h18", 0, "h17"},
        {"led", "A.h16", "A.h19", 0, "h17 h18"},
        {"led", "A.e16", "A.f16", 0, ""},
        {"lamp", "A.h16", "A.h18", 0, "g17 h17 i17"},
        {"push-button", "A.e14", nullptr, 0, ""},         // astride the gap
        {"push-button", "A.b14", nullptr, 0, "c15 d15"},  // no hole of its legs' columns
        {"slide-switch", "A.c5", nullptr, 0, ""},
        {"toggle", "A.c10", nullptr, 0, "c11"},
        {"potentiometer", "A.e7", nullptr, 0, "d7 d8 d9 d10 d11 e8 e10"},
    };
    for (const auto& c : cases) {
        Bench bench = BenchBuilder().board("A", "half").build();
        Part part = makePart(*findKind(c.kind), "X1");
        if (c.to != nullptr)
            part.leads = {holeAt(c.from), holeAt(c.to)};
        else
            part = placedAt(bench, part, holeAt(c.from), c.turns);
        bench.parts = {part};
        EXPECT_EQ(coveredBy(bench), c.covered) << c.kind << " " << c.from;
    }
}

TEST(Bodies, WhatLiesIsLowAndRaised) {
    for (const PartKind& kind : catalogue()) {
        const Package& package = *kind.package;
        if (package.reach == Reach::Flying) {
            EXPECT_EQ(package.heightMm, 0) << package.name;
            continue;
        }
        EXPECT_GT(package.heightMm, 0) << package.name;
        EXPECT_EQ(package.raised, package.heightMm <= kArcRiseMm) << package.name;
    }
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c10"}})
                            .part("R2", "resistor", {{"1", "A.h8"}, {"2", "A.h14"}})
                            .build();
    const Table table = placeThings(bench);
    EXPECT_TRUE(bodyOf(bench.parts[0], table.parts[0], 0)->isTall());  // stands
    EXPECT_FALSE(bodyOf(bench.parts[1], table.parts[1], 1)->isTall());
}

TEST(Bodies, AgreeWithSampling) {
    std::mt19937 random(17);
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    constexpr double kUnsure = 0.08;  // where pieces of 0.2 mm and samples may differ
    int through = 0, clear = 0;
    for (int i = 0; i < 1500; ++i) {
        Body body;
        body.outline.shape = i % 2 ? BodyShape::Box : BodyShape::Round;
        body.outline.centre = {between(-1, 1), between(-1, 1)};
        body.outline.angle = between(0, 3.1);
        body.outline.halfLength = between(1, 6.4);
        body.outline.halfWidth = i % 2 ? between(1, 5) : body.outline.halfLength;
        body.radiusMm = i % 2 ? std::hypot(body.outline.halfLength, body.outline.halfWidth) : body.outline.halfLength;
        const auto edge = test::edgeOf(body.outline);
        const Point a{between(-12, 12), between(-12, 12)}, b{between(-12, 12), between(-12, 12)};
        const double depth = -test::farOutside(edge, a);
        if (std::abs(depth - kUnderEdgeMm) > 0.02) {
            EXPECT_EQ(covers(body, a), depth > kUnderEdgeMm);
        }
        const Leg leg{0, 0, a, b};
        const double legSpare = test::leastSpare(body.outline, test::straight(a, b), kLegRoomMm, {a});
        if (std::abs(legSpare) > kUnsure) {
            EXPECT_EQ(runsThrough(body, leg), legSpare < 0);
        }
        const double wireSpare = test::leastSpare(body.outline, test::straight(a, b), kWireRoomMm, {a, b});
        if (std::abs(wireSpare) > kUnsure) {
            EXPECT_EQ(runsThrough(body, a, b), wireSpare < 0);
            ++(wireSpare < 0 ? through : clear);
        }
    }
    EXPECT_GT(through, 200);
    EXPECT_GT(clear, 200);
}

TEST(Bodies, BareMetalTouchesWithinHalfAMillimetre) {
    std::mt19937 random(4);
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    const auto point = [&] { return Point{between(0, 6), between(0, 6)}; };
    int touching = 0;
    for (int i = 0; i < 1500; ++i) {
        const Leg one{0, 0, point(), point()}, other{1, 0, point(), point()};
        const auto first = test::straight(one.tip, one.exit), second = test::straight(other.tip, other.exit);
        double least = 1e9, pin = 1e9;
        for (const Point a : first) {
            pin = std::min(pin, distance(a, other.tip));
            for (const Point b : second) least = std::min(least, distance(a, b));
        }
        if (std::abs(least - kBareMm) > 0.03) {
            EXPECT_EQ(touch(one, other), least < kBareMm);
        }
        if (std::abs(pin - kBareMm) > 0.03) {
            EXPECT_EQ(touches(one, other.tip), pin < kBareMm);
        }
        touching += least < kBareMm;
    }
    EXPECT_GT(touching, 300);
    EXPECT_LT(touching, 1200);
}

}  // namespace
}  // namespace tiepoint
