// What the meter shows, against figures worked by hand, one published one, and what handheld meters do (common practice, marked so).

#include "core/meter/meter.h"

#include "core/base/constants.h"
#include "core/base/display.h"
#include "core/bench/resolve.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

using test::BenchBuilder;

std::shared_ptr<const Snapshot> run(const BenchBuilder& builder) { return evaluate(builder.share()); }

MeterReading read(const BenchBuilder& builder, std::string_view meter = "M1") {
    const auto snapshot = run(builder);
    return *meterReading(*snapshot, snapshot->layout->bench->partIndex(meter));
}

BenchBuilder supplied(double volt, bool on = true) {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
              {{"voltage", volt}, {"seriesResistance", 0.0}}, {{"on", on ? 1.0 : 0.0}})
        .jumper("A.top+7", "A.a5")
        .jumper("A.bottom-14", "A.a15");
}

/// Two resistors in series from plus (column 5) by column 10 to minus (column 15).
BenchBuilder divider(double volt, double upperOhm, double lowerOhm, bool on = true) {
    return supplied(volt, on)
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", upperOhm}})
        .part("R2", "resistor", {{"1", "A.d10"}, {"2", "A.d15"}}, {{"resistance", lowerOhm}});
}

BenchBuilder metered(BenchBuilder builder, std::string_view red, std::string_view black, const char* dial) {
    return builder.part("M1", "multimeter", {{"+", red}, {"com", black}}, {}, {{"dial", dial}});
}

TEST(MeterDigits, ChooseTheRangeThatShowsMost) {
    constexpr std::array kRanges = {MeterRange{"mV", 1e3, 1}, MeterRange{"V", 1, 3}, MeterRange{"V", 1, 2}};
    const struct {
        double figure;
        const char *digits, *unit;
    } cases[] = {
        {0, "0.0", "mV"},      {0.1999, "199.9", "mV"}, {0.19994, "199.9", "mV"},       {0.19996, "0.200", "V"},
        {1.999, "1.999", "V"}, {1.9996, "2.00", "V"},   {-4.285714, "\u22124.29", "V"}, {-0.00004, "0.0", "mV"},
        {19.99, "19.99", "V"}};
    for (const auto& c : cases) {
        const auto shown = meterDigits(kRanges, c.figure);
        ASSERT_TRUE(shown) << c.figure;
        EXPECT_EQ(shown->digits, c.digits) << c.figure;
        EXPECT_EQ(shown->unit, c.unit) << c.figure;
    }
    EXPECT_FALSE(meterDigits(kRanges, 20));
    EXPECT_FALSE(meterDigits(kRanges, INFINITY));
    EXPECT_FALSE(meterDigits(kRanges, NAN));
}

TEST(Meter, EveryReadingOfTheCatalogueIsKnown) {
    const auto known = readingNames();
    std::vector<std::string> used;
    for (const PartKind& kind : catalogue()) {
        for (const ElementSpec& spec : kind.model) {
            if (spec.reads.empty()) continue;
            EXPECT_NE(std::ranges::find(known, std::string_view(spec.reads)), known.end())
                << kind.name << ' ' << spec.reads;
            used.push_back(spec.reads);
        }
        // Beside the meters lie instruments that show no figure: a signal source, a logic probe.
        const bool showsNone = kind.name == "signal-source" || kind.name == "logic-probe";
        EXPECT_EQ(isMeter(kind), kind.family == "Meter" && !showsNone) << kind.name;
    }
    for (const std::string_view name : known) EXPECT_NE(std::ranges::find(used, name), used.end()) << name;
}

TEST(Meter, VoltsLoadTheCircuitWithTenMegohms) {
    const struct {
        double volt, upperOhm, lowerOhm, expectedVolt;
        const char* text;
    } cases[] = {
        // By hand: 1 Mohm beside 10 Mohm is 10/11 Mohm; 9 V * (10/11) / (21/11).
        {9, 1e6, 1e6, 9.0 * 10 / 21, "4.29 V"},
        // T. R. Kuphaldt, Lessons in Electric Circuits, Vol. I, ch. 8, "Voltmeter impact on measured circuit": 0.8889 V.
        {24, 250e6, 250e6, 0.8889, "0.889 V"},
        // Common practice: at a kilohm a meter of 10 Mohm changes nothing that shows.
        {9, 1e3, 1e3, 4.5, "4.50 V"},
    };
    for (const auto& c : cases) {
        const MeterReading reading = read(metered(divider(c.volt, c.upperOhm, c.lowerOhm), "A.e10", "A.e15", "volts"));
        EXPECT_EQ(reading.text(), c.text);
        EXPECT_NEAR(reading.value, c.expectedVolt, 1e-4 * c.expectedVolt) << c.text;
        EXPECT_EQ(reading.quantity, "voltage");
        EXPECT_FALSE(reading.beeps);
    }
}

/// By hand: 1 Mohm beside 1 Mohm is half a Mohm, a third of the whole.
TEST(Meter, APoorerMeterLoadsMore) {
    const auto poor =
        divider(9, 1e6, 1e6).part("M1", "multimeter", {{"+", "A.e10"}, {"com", "A.e15"}}, {{"inputResistance", 1e6}});
    EXPECT_EQ(read(poor).text(), "3.00 V");
}

TEST(Meter, TheLeadsExchangedGiveAMinus) {
    EXPECT_EQ(read(metered(divider(9, 1e3, 1e3), "A.e15", "A.e10", "volts")).text(), "\u22124.50 V");
}

TEST(Meter, ReadsNothingBetweenLeadsInOneStripOrInTheAir) {
    EXPECT_EQ(read(metered(divider(9, 1e3, 1e3), "A.e10", "A.b10", "volts")).text(), "0.0 mV");
    EXPECT_EQ(read(supplied(9).part("M1", "multimeter", {})).text(), "0.0 mV");
    EXPECT_EQ(read(metered(divider(9, 1e3, 1e3, false), "A.e10", "A.e15", "volts")).text(), "0.0 mV")
        << "the supply is off";
}

/// By bisection of the loop's own law, with and without the burden: 2 ohm take 1.5 % of the current away beside 47 ohm on 3 V.
TEST(Meter, AmperesTakeTheirBurdenAwayFromTheCircuit) {
    const Part led = makePart(*findKind("led"), "D1");
    const auto figure = [&](std::string_view name) {
        for (const auto& [each, parameter] : led.kind->model[0].parameters)
            if (each == name) return resolve(parameter, led);
        return 0.0;
    };
    const auto ampereWith = [&](double ohm) {
        double low = 0, high = 3 / ohm;
        for (int i = 0; i < 200; ++i) {
            const double middle = (low + high) / 2;
            const double volt =
                figure("ideality") * kThermalVoltage * std::log1p(middle / figure("saturationCurrent")) +
                middle * (ohm + figure("seriesResistance"));
            (volt < 3 ? low : high) = middle;
        }
        return low;
    };
    const auto bench = [](const char* dial) {
        return metered(supplied(3)
                           .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 47.0}})
                           .part("D1", "led", {{"anode", "A.d10"}, {"cathode", "A.d12"}}),
                       "A.e12", "A.e15", dial);
    };
    const double with = ampereWith(47 + 2), without = ampereWith(47);
    const MeterReading reading = read(bench("amperes"));
    EXPECT_NEAR(reading.value, with, 1e-9);
    EXPECT_LT(with, 0.99 * without);
    EXPECT_EQ(reading.text(), "20.4 mA");
    EXPECT_LT(std::abs(read(bench("volts")).value - 3), 1.4) << "in series it takes the whole voltage that is left";
    EXPECT_EQ(run(bench("off"))->brightness(2), 0);
    EXPECT_EQ(read(bench("off")).text(), "off");
    EXPECT_FALSE(read(bench("off")).on);
}

TEST(Meter, OverItsFuseItSaysSo) {
    const MeterReading reading = read(metered(supplied(5), "A.b5", "A.b15", "amperes"));
    EXPECT_EQ(reading.digits, "FUSE");
    EXPECT_TRUE(std::isnan(reading.value));
    EXPECT_EQ(reading.why, "500 mA: its fuse bears 200 mA and blows.");
    const auto loaded = [](double ohm) {
        return metered(supplied(5).part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", ohm}}),
                       "A.e10", "A.b15", "amperes");
    };
    EXPECT_EQ(read(loaded(24)).text(), "192.3 mA") << "5 V over 24 and 2 ohm";
    EXPECT_EQ(read(loaded(22)).digits, "FUSE") << "208 mA";
}

TEST(Meter, OhmsOfWhatLiesBetweenTheLeads) {
    const auto bench = [] { return BenchBuilder().board("A", "half"); };
    const struct {
        double ohm;
        const char* text;
    } cases[] = {{1, "1.0 Ω"},        {47, "47.0 Ω"},    {330, "330 Ω"},     {4700, "4.70 kΩ"},
                 {150e3, "150.0 kΩ"}, {1e6, "1.000 MΩ"}, {10e6, "10.00 MΩ"}, {100e6, "OL"}};
    for (const auto& c : cases) {
        const auto one = bench().part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", c.ohm}});
        EXPECT_EQ(read(metered(one, "A.e5", "A.e10", "ohms")).text(), c.text);
        EXPECT_EQ(read(metered(one, "A.e10", "A.e5", "ohms")).text(), c.text) << "either way round";
    }
    EXPECT_EQ(read(metered(bench(), "A.e5", "A.e10", "ohms")).text(), "OL");
    EXPECT_EQ(read(metered(bench(), "A.e5", "A.a5", "ohms")).text(), "0.0 Ω");
}

/// By hand: 470 and 1000 ohm side by side are 319.7 ohm, whichever of them one means to measure.
TEST(Meter, InACircuitItMeasuresEverythingBetweenItsLeads) {
    const auto pair = BenchBuilder()
                          .board("A", "half")
                          .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 470.0}})
                          .part("R2", "resistor", {{"1", "A.d5"}, {"2", "A.d10"}}, {{"resistance", 1000.0}});
    const MeterReading reading = read(metered(pair, "A.e5", "A.e10", "ohms"));
    EXPECT_EQ(reading.text(), "320 Ω");
    EXPECT_NEAR(reading.value, 470.0 * 1000 / 1470, 1e-6);
    // Through a supply that is off no current runs: what is left of the divider is one resistor.
    EXPECT_EQ(read(metered(divider(9, 470, 1000, false), "A.e10", "A.e15", "ohms")).text(), "1000 Ω");
}

/// Common practice: on ohms a handheld meter drives too little voltage for an LED, which reads OL both ways.
TEST(Meter, OhmsDontLightAnLed) {
    for (const auto& [anode, cathode] : {std::pair("A.c5", "A.c6"), std::pair("A.c6", "A.c5")}) {
        const auto snapshot =
            run(metered(BenchBuilder().board("A", "half").part("D1", "led", {{"anode", anode}, {"cathode", cathode}}),
                        "A.e5", "A.e6", "ohms"));
        EXPECT_EQ(meterReading(*snapshot, 1)->text(), "OL");
        EXPECT_EQ(snapshot->status(), Status::Solved);
        EXPECT_LT(snapshot->brightness(0), 1e-6);
    }
}

/// Common practice: it beeps below a few tens of ohms; this one below 30.
TEST(Meter, ContinuityBeepsBelowItsThreshold) {
    const struct {
        double ohm;
        const char* text;
        bool beeps;
    } cases[] = {{0.5, "0.5 Ω", true},
                 {29, "29.0 Ω", true},
                 {31, "31.0 Ω", false},
                 {1500, "1500 Ω", false},
                 {2200, "OL", false}};
    for (const auto& c : cases) {
        const auto one = BenchBuilder()
                             .board("A", "half")
                             .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", c.ohm}});
        const MeterReading reading = read(metered(one, "A.e5", "A.e10", "continuity"));
        EXPECT_EQ(reading.text(), c.text);
        EXPECT_EQ(reading.beeps, c.beeps) << c.text;
    }
    EXPECT_TRUE(read(metered(BenchBuilder().board("A", "half"), "A.e5", "A.a5", "continuity")).beeps) << "one strip";
    EXPECT_FALSE(read(metered(BenchBuilder().board("A", "half"), "A.e5", "A.f5", "continuity")).beeps)
        << "the gap parts them";
}

TEST(Meter, WithASupplyOnItSaysWhyItShowsNoOhms) {
    for (const char* dial : {"ohms", "continuity"}) {
        const MeterReading reading = read(metered(divider(9, 470, 1000), "A.e10", "A.e15", dial));
        EXPECT_EQ(reading.digits, "---");
        EXPECT_TRUE(std::isnan(reading.value));
        EXPECT_FALSE(reading.beeps);
        EXPECT_EQ(reading.why, std::string("PS1 is on: switch it off to measure ") + dial + ".");
    }
    // A supply that is on elsewhere, or behind an open switch, is in nobody's way.
    const auto apart =
        divider(9, 470, 1000).part("R3", "resistor", {{"1", "A.c20"}, {"2", "A.c25"}}, {{"resistance", 330.0}});
    EXPECT_EQ(read(metered(apart, "A.e20", "A.e25", "ohms")).text(), "330 Ω");
}

TEST(Meter, TheSupplyStaysTheReference) {
    const auto with = run(metered(divider(9, 1e3, 2e3), "A.e10", "A.e15", "volts"));
    EXPECT_NEAR(with->leadVoltage(with->layout->leadIndex(0, 1)), 0, 1e-12) << "M1 comes before PS1 in natural order";
    EXPECT_NEAR(with->leadVoltage(with->layout->leadIndex(0, 0)), 9, 1e-9);
    // Alone, the meter's own black lead is.
    const auto alone =
        run(metered(BenchBuilder().board("A", "half").part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}), "A.e5",
                    "A.e10", "ohms"));
    EXPECT_NEAR(alone->leadVoltage(alone->layout->leadIndex(1, 1)), 0, 1e-12);
    EXPECT_NEAR(alone->leadVoltage(alone->layout->leadIndex(1, 0)), 0.5 * 330 / 1330, 1e-9);
}

TEST(Meter, ItsDialIsTurnedByWhatItIsToRead) {
    const auto bench = metered(divider(9, 470, 1000), "A.e10", "A.e15", "volts").share();
    for (const std::string_view quantity : readingNames()) {
        const auto edit = turnDialEdit(*bench, bench->parts.back(), quantity);
        if (quantity == "trace") {
            EXPECT_FALSE(edit) << "a trace is an oscilloscope's, and that has no such dial";
            continue;
        }
        ASSERT_TRUE(edit) << quantity;
        const auto turned = apply(*bench, *edit);
        ASSERT_TRUE(turned.ok());
        EXPECT_EQ(quantityRead(turned->bench.parts.back()), quantity);
    }
    EXPECT_FALSE(turnDialEdit(*bench, bench->parts.back(), "frequency"));
    EXPECT_FALSE(turnDialEdit(*bench, bench->parts.front(), "voltage")) << "a supply has no dial";
    EXPECT_FALSE(meterReading(*evaluate(bench), 0));
}

}  // namespace
}  // namespace tiepoint
