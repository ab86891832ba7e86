// Packages of a family, sized by numbers. Measures: JEDEC MS-001 and MS-011 for dual in-line packages, IEC 60384-4 and makers' tables for
// cans, IEC 60191 for TO-92, all from memory; a board's pitch is 2.54 mm.

#include "core/bench/bodies.h"
#include "core/bench/resolve.h"
#include "core/bench/table.h"
#include "core/bench/validate.h"
#include "core/edit/placement.h"
#include "core/parts/kind_file.h"
#include "support/build_bench.h"
#include "support/test_catalogue.h"

#include <gtest/gtest.h>

#include <set>

namespace tiepoint::test {
namespace {

const PartKind& testKind(std::string_view name) { return *testCatalogue().find(name); }

Part canOf(double farad, double volt) {
    Part part = makePart(testKind("test-can"), "C1");
    part.values = {farad, volt};
    return part;
}

TEST(PackageFamily, TableHasUniqueNames) {
    std::set<std::string_view> names;
    for (const Package& each : packages()) names.insert(each.name);
    for (const PackageFamily& each : packageFamilies()) {
        EXPECT_TRUE(names.insert(each.name).second) << each.name;
        EXPECT_EQ(findPackageFamily(each.name), &each);
    }
    EXPECT_EQ(findPackageFamily("barrel"), nullptr);
}

TEST(PackageFamily, SizesHangTogether) {
    for (const char* name : {"test-star", "test-chip", "test-can", "test-disc"}) {
        const PackageSizes& sizes = *testKind(name).sizes;
        for (const Package& each : sizes.packages) {
            EXPECT_EQ(each.name, sizes.family->name);
            EXPECT_GT(each.heightMm, 0);
            EXPECT_GT(each.bodyWidthMm, 0);
            if (each.reach == Reach::Bending) {
                EXPECT_GE(each.defaultSpan, each.minSpan);
                EXPECT_LE(each.defaultSpan, each.maxSpan);
            }
        }
    }
}

TEST(Dip, HasItsLegsInTwoRowsCountedAgainstTheClock) {
    for (int legs = 4; legs <= 40; legs += 2) {
        for (const int rows : {3, 6}) {
            const auto kind = readPartKind("chip", chipText(legs, rows).text());
            ASSERT_TRUE(kind.ok()) << kind.error().oneLine();
            const Package& dip = *kind->package;
            ASSERT_EQ(std::ssize(dip.footprint), legs);
            EXPECT_EQ(dip.footprint.front(), (Point{0, 0}));
            EXPECT_EQ(dip.footprint[legs / 2 - 1], (Point{legs / 2 - 1.0, 0})) << "to the right along the lower row";
            EXPECT_EQ(dip.footprint[legs / 2], (Point{legs / 2 - 1.0, -1.0 * rows})) << "up";
            EXPECT_EQ(dip.footprint.back(), (Point{0, -1.0 * rows})) << "and back to the left";
            // The body covers its own columns and no leg of its rows.
            EXPECT_GT(dip.bodyLengthMm, (legs / 2 - 1) * kPitchMm);
            EXPECT_LT(dip.bodyLengthMm, (legs / 2 + 0.6) * kPitchMm);
            EXPECT_LT(dip.bodyWidthMm, rows * kPitchMm);
        }
    }
    const auto length = [](int legs) { return readPartKind("chip", chipText(legs, 3).text())->package->bodyLengthMm; };
    EXPECT_NEAR(length(8), 9.3, 0.5);    // MS-001 BA: 9.02 to 10.16
    EXPECT_NEAR(length(14), 19.1, 0.6);  // AA: 18.67 to 19.69
    EXPECT_NEAR(length(20), 25.4, 1.6);  // AD: 24.89 to 26.92
}

TEST(Dip, StandsAstrideTheGapAndNowhereElse) {
    const Bench bench = BenchBuilder().board("A", "half").build();
    const Part chip = makePart(testKind("test-chip"), "U1");
    const Part there = placedAt(bench, chip, holeAt("A.f5"), 0);
    EXPECT_FALSE(refusal(bench, there)) << *refusal(bench, there);
    const char* holes[] = {"A.f5", "A.f6", "A.f7", "A.f8", "A.e8", "A.e7", "A.e6", "A.e5"};
    for (std::size_t leg = 0; leg < 8; ++leg) EXPECT_EQ(there.leads[leg], holeAt(holes[leg])) << leg;
    EXPECT_TRUE(refusal(bench, placedAt(bench, chip, holeAt("A.h5"), 0)));
    EXPECT_TRUE(refusal(bench, placedAt(bench, chip, holeAt("A.f28"), 0))) << "over the edge";
    // Turned by half it stands on its head: leg 1 at the upper right.
    const Part turnedOnce = turned(bench, there, 2);
    EXPECT_FALSE(refusal(bench, turnedOnce));
    EXPECT_EQ(quarterTurnsOf(bench, turnedOnce), 2);

    Part wrong = there;
    wrong.leads[3] = holeAt("A.f9");
    Bench with = bench;
    with.parts.push_back(wrong);
    const auto valid = validate(with);
    ASSERT_FALSE(valid.ok());
    EXPECT_EQ(valid.error().kind, ErrorKind::Placement);
}

TEST(To92, BendsItsLegsToHolesOneOrTwoApart) {
    const Bench bench = BenchBuilder().board("A", "half").build();
    const Part star = makePart(testKind("test-star"), "Q1");
    const auto with = [&](const char* left, const char* middle, const char* right) {
        Part part = star;
        part.leads = {holeAt(left), holeAt(middle), holeAt(right)};
        return part;
    };
    const struct {
        const char *left, *middle, *right;
        bool fits;
    } cases[] = {
        {"A.c5", "A.c6", "A.c7", true},  {"A.c5", "A.c7", "A.c9", true},  {"A.c5", "A.c6", "A.c8", true},
        {"A.c5", "A.c7", "A.c8", true},  {"A.c7", "A.c6", "A.c5", true},  {"A.a5", "A.b5", "A.c5", true},
        {"A.c5", "A.c8", "A.c9", false}, {"A.c5", "A.c7", "A.c6", false}, {"A.c5", "A.d6", "A.c7", false},
        {"A.c5", "A.c6", "A.c9", false},
    };
    for (const auto& c : cases) {
        const Part part = with(c.left, c.middle, c.right);
        EXPECT_EQ(!refusal(bench, part), c.fits) << c.left << ' ' << c.middle << ' ' << c.right;
        if (!c.fits) continue;
        const auto pose = poseOf(packageOf(part), leadHolesMm(bench, part));
        const Point middle = (*holeMm(bench, *part.leads[0]) + *holeMm(bench, *part.leads[2])) * 0.5;
        EXPECT_LT(distance(pose->centre, middle), 1e-9) << "between the outer legs";
    }
    EXPECT_EQ(*refusal(bench, with("A.c5", "A.c6", "A.c9")), "its legs bend to three holes in line, one or two apart");
    EXPECT_TRUE(bendsLegs(*star.kind->package));
    // Moved along or turned round, the legs stay as far apart as they are.
    const Part broad = with("A.c5", "A.c7", "A.c9");
    const Part moved = placedAt(bench, broad, holeAt("A.h12"), 0);
    EXPECT_EQ(moved.leads[2], holeAt("A.h16"));
    const Part round = turned(bench, broad, 2);
    EXPECT_EQ(round.leads[0], holeAt("A.c5"));
    EXPECT_EQ(round.leads[2], holeAt("A.c1"));
}

TEST(RadialCan, GrowsWithTheChargeItHolds) {
    const struct {
        double farad, volt, diameterMm;
    } cases[] = {{1e-6, 50, 5},   {10e-6, 50, 5}, {100e-6, 16, 5},    {220e-6, 16, 6.3}, {100e-6, 50, 8},
                 {470e-6, 16, 8}, {1e-3, 16, 10}, {2.2e-3, 16, 12.5}, {4.7e-3, 16, 16},  {10e-3, 35, 18}};
    for (const auto& c : cases) {
        const Package& can = packageOf(canOf(c.farad, c.volt));
        EXPECT_EQ(can.bodyLengthMm, c.diameterMm) << c.farad << " F, " << c.volt << " V";
        EXPECT_EQ(can.shape, BodyShape::Round);
    }
    EXPECT_EQ(testKind("test-can").package->bodyLengthMm, 5) << "at its usual values";
    double last = 0;
    for (double farad = 1e-7; farad <= 0.01; farad *= 1.2) {
        const double now = packageOf(canOf(farad, 16)).bodyLengthMm;
        EXPECT_GE(now, last);
        last = now;
    }
}

TEST(RadialCan, TakesTheRoomOfItsSize) {
    const auto bodyIn = [](double farad) {
        Part can = canOf(farad, 16);
        can.leads = {holeAt("A.c10"), holeAt("A.c12")};
        Bench bench = BenchBuilder().board("A", "half").build();
        bench.parts.push_back(can);
        EXPECT_TRUE(validate(bench).ok());
        const Table table = arrange(bench);
        return *bodyOf(bench.parts[0], table.parts[0], 0);
    };
    EXPECT_EQ(bodyIn(10e-6).outline.halfLength, 2.5);
    EXPECT_EQ(bodyIn(10e-6).heightMm, 11);
    EXPECT_EQ(bodyIn(1e-3).outline.halfLength, 5);
    EXPECT_EQ(bodyIn(4.7e-3).heightMm, 25);

    // What lies beside a small one is in the way of a large one.
    const auto beside = [](double farad) {
        Part can = canOf(farad, 16);
        can.leads = {holeAt("A.c10"), holeAt("A.c11")};
        const Bench bench =
            BenchBuilder().board("A", "half").part("D1", "led", {{"anode", "A.c13"}, {"cathode", "A.c14"}}).build();
        return refusal(bench, can).has_value();
    };
    EXPECT_FALSE(beside(10e-6));
    EXPECT_TRUE(beside(4.7e-3));
    Part far = canOf(10e-6, 16);
    far.leads = {holeAt("A.c10"), holeAt("A.c14")};
    EXPECT_TRUE(refusal(BenchBuilder().board("A", "half").build(), far)) << "its leads bend to 3 pitches";
}

TEST(CeramicDisc, StandsOnEdge) {
    const Package& disc = *testKind("test-disc").package;
    EXPECT_EQ(disc.bodyLengthMm, 5);
    EXPECT_EQ(disc.bodyWidthMm, 2.5);
    EXPECT_EQ(disc.defaultSpan, 2);
    const auto broad =
        readPartKind("disc", KindText{"x", R"({"family": "ceramic-disc", "diameter": 8, "thickness": 3})",
                                      R"([{"name": "1", "description": "a"}, {"name": "2", "description": "b"}])"}
                                 .text());
    ASSERT_TRUE(broad.ok());
    EXPECT_EQ(broad->package->bodyLengthMm, 8);
    EXPECT_EQ(broad->package->bodyWidthMm, 3);
}

TEST(PackageFamily, NumbersAreReadStrictly) {
    const char* const two = R"([{"name": "+", "description": "a"}, {"name": "-", "description": "b"}])";
    const char* const values =
        R"([{"name": "c", "label": "C", "type": "number", "unit": "F", "minimum": 0, "maximum": 1,
        "default": 0}, {"name": "s", "label": "S", "type": "switch", "default": true}])";
    const struct {
        std::string package;
        const char *leads, *pointer, *message;
    } cases[] = {
        {R"({"family": "barrel"})", two, "/package/family", "no such family of packages exists"},
        {R"({"family": "dip"})", two, "/package/legs", "this member is missing"},
        {R"({"family": "dip", "legs": 42})", two, "/package/legs", "this is 4 to 40, an even number"},
        {R"({"family": "dip", "legs": 7})", two, "/package/legs", "this is 4 to 40, an even number"},
        {R"({"family": "dip", "legs": 8, "rows": 4})", two, "/package/rows", "this is 3 to 6, 3 or 6 pitches"},
        {R"({"family": "dip", "legs": "c"})", two, "/package/legs", "this isn't a number"},
        {R"({"family": "dip", "legs": 8, "feet": 8})", two, "/package/feet", "no such member is known"},
        {R"({"family": "dip", "legs": 8})", two, "/leads", "the package has another number of leads"},
        {R"({"family": "radial-can", "capacitance": "q"})", two, "/package/capacitance",
         "this is neither a number nor one of the part's numbers"},
        {R"({"family": "radial-can", "capacitance": "s"})", two, "/package/capacitance",
         "this is neither a number nor one of the part's numbers"},
        {R"({"family": "radial-can", "capacitance": 2})", two, "/package/capacitance", "this is 1e-09 to 1"},
        {R"("dip")", two, "/package", "no such package exists"},
        {"3", two, "/package", "this isn't a text"},
    };
    for (const auto& c : cases) {
        const auto kind = readPartKind("x.json", KindText{"x", c.package, c.leads, values}.text());
        ASSERT_FALSE(kind.ok()) << c.package;
        EXPECT_EQ(kind.error().place.pointer, c.pointer) << c.package;
        EXPECT_EQ(kind.error().message, c.message) << c.package;
    }
}

}  // namespace
}  // namespace tiepoint::test
