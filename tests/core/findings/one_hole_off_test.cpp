// one-hole-off: leads whose neighbouring strip closes the circuit, each broken and mended.

#include "core/bench/bench_file.h"
#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

std::shared_ptr<const Bench> harbour(const std::string& name) {
    auto read = readBenchFile(std::string(TIEPOINT_SOURCE_DIR "/resources/benches/") + name + ".bench.json");
    EXPECT_TRUE(read.ok());
    return std::make_shared<const Bench>(std::move(read).value().bench);
}

TEST(OneHoleOff, DarkBeaconIsFoundFirstAndMended) {
    const auto bench = harbour("dark-beacon");
    const auto findings = inspected(bench);
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "one-hole-off");
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, Ids{"D1"});
    EXPECT_EQ(names(findings[0].holes), (Ids{"A.h17", "A.h16"}));
    EXPECT_EQ(findings[0].text,
              "The anode of D1 is one hole off: from h17 the circuit is open (no complete path), in h16 it is closed "
              "and D1 lights while S1 is "
              "pressed.");
    EXPECT_TRUE(afterMend(*bench, findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(*bench, findings[0], "D1", {"S1"}), 0.2);
}

TEST(OneHoleOff, NoHarbourBenchButTheDarkBeaconHasFindings) {
    for (const char* name : {"beacon-lamp", "lock-gate", "quay-bell-lamp", "fairway-dimmer", "two-way-stair-lamp",
                             "three-buoys", "gangway"}) {
        const auto findings = inspected(harbour(name));
        EXPECT_TRUE(findings.empty()) << name << ": " << told(findings);
    }
}

/// The beacon with one lead or end moved where a slip of the hand would put it.
struct SlippedLead {
    const char* what;
    const char* r2 = "A.c14";
    const char* anode = "A.e14";
    const char* cathode = "A.f14";
    const char* w1 = "A.a8";
    const char* w2 = "A.j14";
    const char* w2Rail = "A.bottom-13";
};

TEST(OneHoleOff, EachSlipOfTheBeacon) {
    const SlippedLead slips[] = {
        {.what = "anode one column on", .anode = "A.e15"},
        {.what = "cathode one column on", .cathode = "A.f15"},
        {.what = "resistor one column on", .r2 = "A.c15"},
        {.what = "plus jumper one column on", .w1 = "A.a9"},
        {.what = "minus jumper one column back", .w2 = "A.j13"},
        {.what = "minus jumper in the neighbouring rail", .w2Rail = "A.bottom+13"},
    };
    for (const SlippedLead& slip : slips) {
        auto builder = supplied();
        builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", slip.r2}})
            .part("D1", "led", {{"anode", slip.anode}, {"cathode", slip.cathode}})
            .jumper("W1", "A.top+7", slip.w1, "red")
            .jumper("W2", slip.w2, slip.w2Rail, "black");
        const auto findings = inspected(builder.share());
        ASSERT_FALSE(findings.empty()) << slip.what;
        EXPECT_EQ(findings[0].rule, "one-hole-off") << slip.what << ": " << told(findings);
        EXPECT_EQ(findings.size(), 1u) << slip.what << ": " << told(findings);
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty()) << slip.what;
        EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2) << slip.what;
    }
}

}  // namespace
}  // namespace tiepoint::test
