// Packages: spans and footprints of the board, and bodies in each other's way. Distances are counted in
// pitches of 2.54 mm. The push button's grid of 3 by 2 pitches: data sheets of 6 x 6 mm tactile switches and
// notes with hole numbers.

#include "core/parts/package.h"

#include <gtest/gtest.h>

#include <numbers>
#include <set>

namespace tiepoint {
namespace {

using Places = std::vector<std::optional<Point>>;

constexpr double kNear = 1e-9;
constexpr double kQuarterTurn = std::numbers::pi / 2;

const Package& package(std::string_view name) {
    const Package* found = findPackage(name);
    if (!found) throw std::invalid_argument(std::string(name));
    return *found;
}

/// Places given in pitches.
Places places(std::initializer_list<Point> pitches) {
    Places result;
    for (const Point p : pitches) result.emplace_back(p * kPitchMm);
    return result;
}

/// Two leads so many pitches apart along a column or a row.
Places span(double pitches) { return places({{0, 0}, {pitches, 0}}); }

TEST(Package, TableHasUniqueUsablePackages) {
    std::set<std::string_view> names;
    for (const Package& each : packages()) {
        EXPECT_TRUE(names.insert(each.name).second) << each.name;
        EXPECT_EQ(findPackage(each.name), &each);
        EXPECT_GT(each.bodyLengthMm, 0) << each.name;
        EXPECT_GT(each.bodyWidthMm, 0) << each.name;
        if (each.reach == Reach::Bending) {
            EXPECT_TRUE(each.footprint.empty()) << each.name;
            EXPECT_GE(each.defaultSpan, each.minSpan) << each.name;
            EXPECT_LE(each.defaultSpan, each.maxSpan) << each.name;
            EXPECT_LT(each.standingMaxSpan, each.minSpan) << each.name;
        } else {
            EXPECT_GE(each.footprint.size(), 2u) << each.name;
        }
        if (each.reach == Reach::Rigid) {
            EXPECT_EQ(each.footprint[0], (Point{0, 0})) << each.name;
        }
    }
    EXPECT_EQ(findPackage("barrel"), nullptr);
}

// Spacing of legs: data sheets of the push button, the rest from memory, as the packages' own files say.
TEST(Package, LegsStandAsOnTheRealPart) {
    const struct {
        const char* name;
        std::vector<Point> pitches;
    } cases[] = {{"push-button", {{0, 0}, {0, 3}, {2, 0}, {2, 3}}},
                 {"slide-switch", {{0, 0}, {1, 0}, {2, 0}}},
                 {"toggle", {{0, 0}, {2, 0}}},
                 {"potentiometer", {{0, 0}, {2, 0}, {4, 0}}},
                 {"rgb-led-5mm", {{0, 0}, {2, 0}, {3, 0}, {1, 0}}},
                 {"relay-changeover", {{0, 0}, {0, -3}, {3, 0}, {5, 0}, {5, -3}}},
                 {"buzzer", {{0, 0}, {3, 0}}}};
    std::size_t rigid = 0;
    for (const auto& c : cases) EXPECT_EQ(package(c.name).footprint, c.pitches) << c.name;
    for (const Package& each : packages()) rigid += each.reach == Reach::Rigid ? 1 : 0;
    EXPECT_EQ(rigid, std::size(cases)) << "each rigid package stands above";
}

/// Sockets are in the box and in one line, evenly apart, so that they can be told and met.
TEST(Package, SocketsLieEvenlyInALine) {
    for (const Package& each : packages()) {
        if (each.reach != Reach::Flying) continue;
        const Point step = each.footprint[1] - each.footprint[0];
        EXPECT_TRUE(step.x == 0 || step.y == 0) << each.name;
        EXPECT_GE(std::abs(step.x + step.y), 4) << each.name << ": a plug is 4 mm broad";
        for (std::size_t i = 0; i < each.footprint.size(); ++i) {
            const Point at = each.footprint[i];
            EXPECT_TRUE((Rect{0, 0, each.bodyLengthMm, each.bodyWidthMm}).contains(at)) << each.name;
            if (i > 0) {
                EXPECT_EQ(at - each.footprint[i - 1], step) << each.name;
            }
        }
    }
    for (const char* leaving : {"cells", "block-9v"})
        for (const Point exit : package(leaving).footprint)
            EXPECT_EQ(exit.x, package(leaving).bodyLengthMm) << leaving << ": its leads leave at the right";
}

// Sizes in mm with their height over the board: data sheets and makers' drawings, from memory.
TEST(Package, BodiesHaveTheSizeOfTheRealPart) {
    const struct {
        const char* name;
        double length, width, height;
        bool raised;
    } cases[] = {{"axial-quarter-watt", 6.5, 2.5, 3.5, true}, {"diode-axial", 4, 2, 3, true},
                 {"lamp-wired", 6.4, 6.4, 12, false},         {"push-button", 6.1, 6.1, 5, false},
                 {"slide-switch", 8.6, 4, 6.5, false},        {"toggle", 8.4, 5.2, 13, false},
                 {"potentiometer", 12.8, 9.5, 15, false},     {"block-9v", 26.5, 48.5, 0, false}};
    for (const auto& c : cases) {
        EXPECT_EQ(package(c.name).bodyLengthMm, c.length) << c.name;
        EXPECT_EQ(package(c.name).bodyWidthMm, c.width) << c.name;
        EXPECT_EQ(package(c.name).heightMm, c.height) << c.name;
        EXPECT_EQ(package(c.name).raised, c.raised) << c.name;
    }
}

TEST(Package, BendingLeadsHaveASpan) {
    const struct {
        const char* name;
        double pitches;
        bool fits;
    } cases[] = {
        {"axial-quarter-watt", 1, true},
        {"axial-quarter-watt", 3, true},
        {"axial-quarter-watt", 4, true},
        {"axial-quarter-watt", 17, true},
        {"axial-quarter-watt", 18, false},
        {"axial-quarter-watt", 0.5, false},
        {"diode-axial", 1, true},
        {"diode-axial", 16, true},
        {"diode-axial", 17, false},
        {"led-5mm", 1, true},
        {"led-5mm", 6, true},
        {"led-5mm", 7, false},
    };
    for (const auto& c : cases)
        EXPECT_EQ(!misfit(package(c.name), span(c.pitches)).has_value(), c.fits) << c.name << " " << c.pitches;
    EXPECT_EQ(misfit(package("led-5mm"), span(8)), "its leads reach 6 holes at most; these are 8 apart");
    EXPECT_FALSE(misfit(package("led-5mm"), Places{Point{1, 1}, std::nullopt}));
}

TEST(Package, ShortSpansStand) {
    const struct {
        const char* name;
        double pitches;
        bool standing;
    } cases[] = {{"axial-quarter-watt", 3, true},
                 {"axial-quarter-watt", 4, false},
                 {"diode-axial", 2, true},
                 {"diode-axial", 3, false},
                 {"led-5mm", 1, false}};
    for (const auto& c : cases) {
        const auto pose = poseOf(package(c.name), span(c.pitches));
        ASSERT_TRUE(pose);
        EXPECT_EQ(pose->standing, c.standing) << c.name << " " << c.pitches;
    }
}

TEST(Package, LyingBodyIsInTheMiddle) {
    const auto pose = poseOf(package("axial-quarter-watt"), places({{10, 2}, {10, 8}}));
    ASSERT_TRUE(pose);
    EXPECT_NEAR(pose->centre.x, 10 * kPitchMm, kNear);
    EXPECT_NEAR(pose->centre.y, 5 * kPitchMm, kNear);
    EXPECT_NEAR(pose->angle, kQuarterTurn, kNear);
    EXPECT_NEAR(pose->body.halfLength, 3.25, kNear);
}

/// Between holes as far apart as its legs its body hides both; farther apart the anode's leg, the longer one, shows more.
TEST(Package, AnLedSitsTowardsItsCathodeWhereItsLegsAreBent) {
    const Package& led = package("led-5mm");
    for (const auto& [pitches, off] : {std::pair{1.0, 0.0}, {2.0, 1.0}, {3.0, 1.0}, {6.0, 1.0}}) {
        const auto pose = poseOf(led, span(pitches));
        ASSERT_TRUE(pose);
        EXPECT_NEAR(pose->centre.x, pitches * kPitchMm / 2 + off, kNear) << pitches;
        EXPECT_EQ(pose->body.centre, pose->centre);
    }
    const auto back = poseOf(led, places({{3, 0}, {0, 0}}));
    EXPECT_NEAR(back->centre.x, 1.5 * kPitchMm - 1, kNear) << "turned round";
}

TEST(Package, StandingBodyIsOnItsFirstLead) {
    const auto pose = poseOf(package("axial-quarter-watt"), places({{4, 1}, {2, 1}}));
    ASSERT_TRUE(pose);
    EXPECT_NEAR(pose->centre.x, 4 * kPitchMm, kNear);
    EXPECT_EQ(pose->body.shape, BodyShape::Round);
    EXPECT_NEAR(pose->body.halfLength, 1.25, kNear);
}

TEST(Package, HangingLeadIsTakenAtTheDefaultSpan) {
    const auto pose = poseOf(package("led-5mm"), Places{std::nullopt, Point{10, 10}});
    ASSERT_TRUE(pose);
    EXPECT_NEAR(pose->centre.x, 10 - kPitchMm / 2, kNear);
    EXPECT_NEAR(pose->angle, 0, kNear);
}

TEST(Package, NothingInHolesHasNoPose) {
    EXPECT_FALSE(poseOf(package("led-5mm"), Places(2)));
    EXPECT_FALSE(poseOf(package("push-button"), Places(4)));
    EXPECT_FALSE(poseOf(package("bench-supply"), span(3)));
    EXPECT_FALSE(misfit(package("bench-supply"), span(60)));
}

TEST(Package, RigidLegsFitInFourQuarterTurns) {
    const Places turns[] = {
        places({{10, 4}, {10, 7}, {12, 4}, {12, 7}}),  // unturned
        places({{10, 4}, {7, 4}, {10, 6}, {7, 6}}),    // a quarter clockwise: down becomes left
        places({{10, 4}, {10, 1}, {8, 4}, {8, 1}}),
        places({{10, 4}, {13, 4}, {10, 2}, {13, 2}}),
    };
    for (int turn = 0; turn < 4; ++turn) {
        EXPECT_FALSE(misfit(package("push-button"), turns[turn])) << turn;
        const auto pose = poseOf(package("push-button"), turns[turn]);
        ASSERT_TRUE(pose);
        EXPECT_NEAR(pose->angle, turn * kQuarterTurn, kNear);
        Point middle;
        for (const auto& leg : turns[turn]) middle = middle + *leg * 0.25;
        EXPECT_NEAR(distance(pose->centre, middle), 0, kNear);
    }
}

TEST(Package, RigidLegsThatMissAreToldInHoles) {
    // Turned astride the gap: three holes where the legs are two apart.
    EXPECT_EQ(misfit(package("push-button"), places({{10, 4}, {7, 4}, {10, 7}, {7, 7}})),
              "its legs are 2 holes apart; these holes are 3 apart");
    // A mirror image has the right distances, and still isn't this part.
    EXPECT_EQ(misfit(package("push-button"), places({{10, 4}, {10, 7}, {8, 4}, {8, 7}})),
              "its legs don't fall on these holes");
    EXPECT_TRUE(misfit(package("slide-switch"), places({{1, 0}, {2, 0}, {4, 0}})));
    EXPECT_FALSE(misfit(package("potentiometer"), places({{1, 0}, {3, 0}, {5, 0}})));
}

TEST(Package, PresentLegsAreEnough) {
    Places legs = places({{10, 4}, {7, 4}, {10, 6}, {7, 6}});
    legs[0].reset();
    legs[3].reset();
    EXPECT_FALSE(misfit(package("push-button"), legs));
    EXPECT_NEAR(poseOf(package("push-button"), legs)->angle, kQuarterTurn, kNear);
}

Outline box(Point centre, double halfLength, double halfWidth, double angle = 0) {
    return {BodyShape::Box, centre, angle, halfLength, halfWidth};
}
Outline circle(Point centre, double radius) { return {BodyShape::Round, centre, 0, radius, radius}; }

TEST(Overlap, TellsTouchingFromOverlapping) {
    const struct {
        Outline a, b;
        bool overlaps;
    } cases[] = {
        {box({0, 0}, 2, 1), box({4, 0}, 2, 1), false},  // edge to edge
        {box({0, 0}, 2, 1), box({3.9, 0}, 2, 1), true},
        {box({0, 0}, 2, 1), box({3.96, 0}, 2, 1), false},  // less than a touch
        {box({0, 0}, 2, 1), box({0, 2.5}, 2, 1), false},
        {box({0, 0}, 2, 1), box({0, 2.5}, 2, 1, kQuarterTurn), true},
        {box({0, 0}, 2, 2), box({3.9, 3.9}, 2, 2, kQuarterTurn / 2), false},  // corner towards corner
        {box({0, 0}, 2, 2), box({3.2, 3.2}, 2, 2, kQuarterTurn / 2), true},
        {circle({0, 0}, 2.9), circle({5.8, 0}, 2.9), false},
        {circle({0, 0}, 2.9), circle({5.08, 0}, 2.9), true},
        {circle({0, 0}, 1), box({3, 0}, 2, 1), false},
        {circle({0, 0}, 1.2), box({3, 0}, 2, 1), true},
        {circle({0, 0}, 1.2), box({2.8, 1.8}, 2, 1), true},  // over a corner
        {circle({0, 0}, 1.2), box({3, 2}, 2, 1), false},
        {circle({0, 0}, 1.2), box({3, 2}, 2, 1.0, kQuarterTurn), false},
        {circle({3, 0}, 0.5), box({3, 0}, 2, 1), true},  // wholly inside
    };
    for (const auto& c : cases) {
        EXPECT_EQ(overlap(c.a, c.b), c.overlaps) << c.b.centre.x << "," << c.b.centre.y;
        EXPECT_EQ(overlap(c.b, c.a), c.overlaps);
    }
}

}  // namespace
}  // namespace tiepoint
