// A meter on the bench: used well it is never found fault with; across a supply, in a line on the wrong dial, or under power it is.

#include "core/meter/meter.h"
#include "support/inspect_bench.h"

namespace tiepoint {
namespace {

using namespace test;

/// Supply, resistor and LED from column 5 to column 15; the line is open between columns 12 and 15, where a meter may close it.
BenchBuilder lampBeside(bool closed, bool on = true) {
    BenchBuilder builder = BenchBuilder()
                               .board("A", "half")
                               .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5.0}},
                                     {{"on", on ? 1.0 : 0.0}})
                               .jumper("W1", "A.top+7", "A.a5")
                               .jumper("W2", "A.bottom-14", "A.j15", "black")
                               .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}})
                               .part("D1", "led", {{"anode", "A.d10"}, {"cathode", "A.d12"}})
                               .jumper("W3", "A.e15", "A.f15", "yellow");
    if (closed) builder.jumper("W4", "A.b12", "A.b15", "green");
    return builder;
}

std::shared_ptr<const Bench> with(BenchBuilder builder, std::string_view red, std::string_view black,
                                  const char* dial) {
    return builder.part("M1", "multimeter", {{"+", red}, {"com", black}}, {}, {{"dial", dial}}).share();
}

TEST(MeterDial, AMeterUsedWellIsNoFault) {
    EXPECT_EQ(told(inspected(with(lampBeside(true), "A.e10", "A.e12", "volts"))), "") << "across the LED";
    EXPECT_EQ(told(inspected(with(lampBeside(true), "A.top+9", "A.bottom-9", "volts"))), "") << "across the supply";
    EXPECT_EQ(told(inspected(with(lampBeside(false), "A.e12", "A.d15", "amperes"))), "") << "in the line";
    EXPECT_EQ(told(inspected(with(lampBeside(true, false), "A.e5", "A.e10", "ohms"))), "")
        << "the supply is off, as it has to be";
    EXPECT_EQ(told(inspected(with(lampBeside(true, false), "A.e12", "A.d15", "continuity"))), "")
        << "both leads in one net";
    EXPECT_EQ(told(inspected(lampBeside(true).part("M1", "multimeter", {}).share())), "") << "its leads hang";
    EXPECT_EQ(told(inspected(lampBeside(true).part("M1", "multimeter", {{"com", "A.bottom-9"}}).share())), "")
        << "one lead hangs";
}

TEST(MeterDial, AmperesStraightAcrossTheSupplyAreAShort) {
    const auto bench = with(lampBeside(true), "A.top+9", "A.bottom-9", "amperes");
    const auto findings = inspected(bench);
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings.front().rule, "short-circuit") << told(findings);
    EXPECT_EQ(findings.front().severity, Severity::Fault);
    EXPECT_EQ(findings.front().text,
              "Short circuit: + and - of PS1 meet with next to no resistance between them; M1 joins them: set to "
              "amperes, M1 lets current through like a wire.");
    ASSERT_TRUE(findings.front().mend);
    EXPECT_EQ(findings.front().mend->text, "Turn the dial of M1 to volts");
    EXPECT_EQ(told(afterMend(*bench, findings.front())), "");
}

TEST(MeterDial, VoltsInTheLineLetNoCurrentThrough) {
    for (const char* dial : {"volts", "off"}) {
        const auto bench = with(lampBeside(false), "A.e12", "A.d15", dial);
        const auto findings = found("meter-dial", bench);
        ASSERT_EQ(findings.size(), 1u) << dial << told(inspected(bench));
        EXPECT_EQ(findings.front().parts, (Ids{"M1", "D1"}));
        ASSERT_TRUE(findings.front().mend);
        EXPECT_EQ(findings.front().mend->text, "Turn the dial of M1 to amperes");
        EXPECT_GT(brightnessAfterMend(*bench, findings.front(), "D1"), 0.5);
    }
}

TEST(MeterDial, OhmsUnderPowerAreARisk) {
    const auto bench = with(lampBeside(true), "A.e5", "A.e10", "ohms");
    const auto findings = inspected(bench);
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings.front().rule, "meter-dial");
    EXPECT_EQ(findings.front().severity, Severity::Risk);
    EXPECT_EQ(findings.front().text,
              "M1 is set to ohms while PS1 is on: it can't tell its own small current from that of PS1.");
    ASSERT_TRUE(findings.front().mend);
    const auto mended = apply(*bench, findings.front().mend->edit);
    ASSERT_TRUE(mended.ok());
    const auto snapshot = evaluate(std::make_shared<const Bench>(mended->bench));
    EXPECT_EQ(meterReading(*snapshot, snapshot->layout->bench->partIndex("M1"))->text(), "330 Ω");
}

/// The resistor's far leg is in a column of its own, but for the probe: the gap is told, with or without a meter there.
TEST(MeterDial, ALeadThatOnlyAMeterTouchesIsStillAlone) {
    const auto bench = [](bool meter) {
        BenchBuilder builder =
            BenchBuilder()
                .board("A", "half")
                .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5.0}})
                .jumper("W1", "A.top+7", "A.a5")
                .jumper("W2", "A.bottom-24", "A.j28", "black")
                .jumper("W3", "A.e28", "A.f28", "yellow")
                .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}})
                .part("D1", "led", {{"anode", "A.c22"}, {"cathode", "A.c28"}});
        if (meter) builder.part("M1", "multimeter", {{"+", "A.e10"}, {"com", "A.bottom-9"}});
        return told(inspected(builder.share()));
    };
    EXPECT_NE(bench(false), "");
    EXPECT_EQ(bench(true), bench(false));
}

}  // namespace
}  // namespace tiepoint
