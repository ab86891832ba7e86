// The table with its boards turned over.

#include "core/bench/turned_table.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

constexpr double kToleranceMm = 1e-9;

Bench harbourLight() {
    return test::BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("D2", "led", {})
        .jumper("A.top+7", "A.a8")
        .build();
}

TEST(TurnedTable, MirrorsWhatStandsInHolesAboutTheMiddleOfTheBoards) {
    const Bench bench = harbourLight();
    const Table upright = arrange(bench), turned = turnedOver(bench, upright);
    const double twiceMiddle = 2 * upright.boardsMm.left + upright.boardsMm.width;
    for (const char* id : {"R1", "S1"}) {
        SCOPED_TRACE(id);
        const auto part = static_cast<std::size_t>(bench.partIndex(id));
        EXPECT_NEAR(turned.parts[part].pose.centre.x, twiceMiddle - upright.parts[part].pose.centre.x, kToleranceMm);
        EXPECT_NEAR(turned.parts[part].pose.centre.y, upright.parts[part].pose.centre.y, kToleranceMm);
        for (std::size_t lead = 0; lead < upright.parts[part].leadsMm.size(); ++lead) {
            EXPECT_NEAR(turned.parts[part].leadsMm[lead].x, twiceMiddle - upright.parts[part].leadsMm[lead].x,
                        kToleranceMm);
            EXPECT_NEAR(turned.parts[part].leadsMm[lead].y, upright.parts[part].leadsMm[lead].y, kToleranceMm);
        }
    }
    const Point end = endMm(bench, turned, bench.jumpers[0].ends[1]);
    EXPECT_NEAR(end.x, twiceMiddle - endMm(bench, upright, bench.jumpers[0].ends[1]).x, kToleranceMm);
}

TEST(TurnedTable, LeavesSuppliesAndLoosePartsWhereTheyAre) {
    const Bench bench = harbourLight();
    const Table upright = arrange(bench), turned = turnedOver(bench, upright);
    for (const char* id : {"PS1", "D2"}) {
        const auto part = static_cast<std::size_t>(bench.partIndex(id));
        EXPECT_EQ(turned.parts[part].pose.centre, upright.parts[part].pose.centre) << id;
        EXPECT_EQ(turned.parts[part].exitsMm, upright.parts[part].exitsMm) << id;
    }
    const auto supply = static_cast<std::size_t>(bench.partIndex("PS1"));
    EXPECT_EQ(turned.parts[supply].leadsMm[0], turned.seen(*holeMm(bench, *parseHole("A.top+3"))))
        << "its lead follows the hole";
}

TEST(TurnedTable, SeeingTwiceIsLookingFromAbove) {
    const Bench bench = harbourLight();
    const Table turned = turnedOver(bench, arrange(bench));
    for (const Point at : {Point{0, 0}, Point{12.5, 3}, Point{80, 50}}) {
        EXPECT_NEAR(turned.seen(turned.seen(at)).x, at.x, kToleranceMm);
        EXPECT_EQ(arrange(bench).seen(at), at);
    }
}

}  // namespace
}  // namespace tiepoint
