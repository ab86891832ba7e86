// always-closed: push buttons whose two sides are in one net.

#include "support/inspect_bench.h"

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
    builder.part("D1", "led", {{"anode", turnedByAQuarter ? "A.e13" : "A.g12"}, {"cathode", turnedByAQuarter ? "A.f13" : "A.g15"}})
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

TEST(AlwaysClosed, SilentAstrideTheGap) { EXPECT_TRUE(inspected(buttoned(false).share()).empty()); }

}  // namespace
}  // namespace tiepoint::test
