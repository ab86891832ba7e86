// always-closed: push buttons whose two sides are in one net.

#include "support/inspect_bench.h"

#include <fmt/format.h>

namespace tiepoint::test {
namespace {

/// Legs by the turn: joined pairs face each other over 3 pitches, the pairs are 2 pitches apart.
BenchBuilder buttoned(bool turnedByAQuarter) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c10"}});
    if (turnedByAQuarter) {
        builder.part("S1", "push-button", {{"1a", "A.b13"}, {"1b", "A.b10"}, {"2a", "A.d13"}, {"2b", "A.d10"}});
    } else {
        builder.part("S1", "push-button", {{"1a", "A.e10"}, {"1b", "A.f10"}, {"2a", "A.e12"}, {"2b", "A.f12"}});
    }
    builder
        .part("D1", "led",
              {{"anode", turnedByAQuarter ? "A.e13" : "A.g12"}, {"cathode", turnedByAQuarter ? "A.f13" : "A.g15"}})
        .jumper("W1", "A.top+4", "A.a4", "red")
        .jumper("W2", turnedByAQuarter ? "A.j13" : "A.j15", "A.bottom-14", "black");
    return builder;
}

TEST(AlwaysClosed, TurnedByAQuarter) {
    const auto bench = buttoned(true);
    const auto findings = found("always-closed", bench.share());
    ASSERT_EQ(findings.size(), 1u) << told(inspected(bench.share()));
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, Ids{"S1"});
    EXPECT_EQ(findings[0].holes.size(), 4u);
    EXPECT_NE(findings[0].text.find("joined, current passes"), std::string::npos);
}

TEST(AlwaysClosed, PutAstrideTheGapTheButtonSwitchesAgain) {
    const Bench bench = buttoned(true).build();
    const auto findings = found("always-closed", std::make_shared<const Bench>(bench));
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_TRUE(afterMend(bench, findings[0]).empty()) << told(afterMend(bench, findings[0]));
    EXPECT_EQ(brightnessAfterMend(bench, findings[0], "D1"), 0) << "at rest";
    EXPECT_GT(brightnessAfterMend(bench, findings[0], "D1", {"S1"}), 0.4) << "pressed";
    EXPECT_EQ(findings[0].mend->text, "Turn S1 by a quarter and put it across the gap; join d8 with d13 by a jumper")
        << "between columns 10 and 12 the LED in column 13 leaves no room";
}

TEST(AlwaysClosed, NoPlaceAstrideTheGapMeansNoMend) {
    auto builder = buttoned(true);
    int id = 2;
    for (int column = 5; column <= 18; ++column) {
        if (column == 10 || column == 13) continue;
        const std::string hole = fmt::format("A.e{}", column), other = fmt::format("A.a{}", column);
        builder.part(fmt::format("R{}", id++), "resistor", {{"1", hole}, {"2", other}});
    }
    const auto findings = found("always-closed", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_FALSE(findings[0].mend);
}

TEST(AlwaysClosed, SilentAstrideTheGap) { EXPECT_TRUE(inspected(buttoned(false).share()).empty()); }

}  // namespace
}  // namespace tiepoint::test
