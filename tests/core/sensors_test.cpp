// Sensors, solar cells and lights of three colours of the catalogue against published figures and closed forms, each in a circuit on a bench.
// Sources stand beside the checks. Computed: reckoned in the test from the named equation.
#include "core/base/constants.h"
#include "core/bench/resolve.h"
#include "core/circuit/photo_resistance_law.h"
#include "core/circuit/thermal_resistance_law.h"
#include "core/snapshot/readings.h"
#include "support/driven_bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint::test {
namespace {

std::shared_ptr<const Snapshot> litBySensor(BenchBuilder& builder, double lux, double celsius = 25) {
    Bench bench = builder.build();
    bench.surroundings.emplace().lightLux = lux;
    bench.surroundings->temperatureCelsius = celsius;
    return evaluate(std::make_shared<const Bench>(std::move(bench)));
}

// Sensors

/// Definition of gamma by the makers (Hamamatsu, Token, Globe); anchors computed: 15 kohm at 10 lx gives 3768 ohm at 100 lx with gamma 0.6, 2993
/// ohm with 0.7. RS data sheet 232-3816, NORP12: 9 kohm at 10 lx, 400 ohm at 1000 lx. P1202-12: 3.5 to 14 kohm at 10 lx, gamma 0.70.
TEST(Photoresistor, FollowsTheLight) {
    const auto ohm = [](double reference, double gamma, double lux) {
        return PhotoResistanceLaw(std::array{reference, gamma, 1e6}).ohmAt(lux);
    };
    EXPECT_NEAR(ohm(15e3, 0.6, 100), 3768, 0.5);
    EXPECT_NEAR(ohm(15e3, 0.7, 100), 2993, 0.5);
    EXPECT_NEAR(ohm(9e3, 0.676, 1000), 400, 1);
    EXPECT_EQ(ohm(15e3, 0.7, 0), 1e6);
    for (const double lux : {0.0, 10.0, 100.0, 1000.0}) {
        BenchBuilder builder = driven(5, 1000);
        const auto s = litBySensor(builder.part("LDR1", "photoresistor", {{"1", "A.c10"}, {"2", "A.c20"}}), lux);
        const double expected = lux == 0 ? 1e6 : 15e3 * std::pow(lux / 10, -0.7);
        EXPECT_NEAR(leadAmpere(*s, "LDR1", "1"), 5 / (1000 + expected), 1e-12) << lux;
    }
}

/// Amphenol Thermometrics, Temperature Resistance Curves (rev. C, 2014), material type 1: 32,640 ohm at 0, 3601 at 50, 1070 at 85 degrees.
/// One constant for all of it is 3.9 % high at 0 and 1.1 % low at 50 degrees (computed: 33,900 and 3563 ohm).
TEST(Thermistor, FollowsTheWarmth) {
    const ThermalResistanceLaw law(std::array{10e3, 3977.0});
    EXPECT_DOUBLE_EQ(law.ohmAt(25), 10e3);
    EXPECT_NEAR(law.ohmAt(0), 33900, 50);
    EXPECT_NEAR(law.ohmAt(0), 32640, 0.04 * 32640);
    EXPECT_NEAR(law.ohmAt(50), 3563, 1);
    EXPECT_NEAR(law.ohmAt(50), 3601, 0.012 * 3601);
    EXPECT_NEAR(law.ohmAt(85), 1070, 1);
    BenchBuilder builder = driven(5, 10e3);
    builder.part("TH1", "thermistor", {{"1", "A.c10"}, {"2", "A.c20"}});
    EXPECT_NEAR(leadVolt(*litBySensor(builder, 300, 25), "TH1", "1"), 2.5, 1e-9);
    EXPECT_LT(leadVolt(*litBySensor(builder, 300, 50), "TH1", "1"), 1.4);
    EXPECT_GT(leadVolt(*litBySensor(builder, 300, 0), "TH1", "1"), 3.8);
}

/// Panasonic PNA1401LF: at least 0.1, typically 0.3 mA at 100 lx and 10 V; 0.4 V at most saturated; 300 nA at most in the dark. Vishay
/// TEMT6000: five times the light, five times the current.
TEST(Phototransistor, IsInProportionToTheLight) {
    const auto read = [](double ohm, double lux) {
        BenchBuilder builder = driven(10, ohm);
        const auto s =
            litBySensor(builder.part("PT1", "phototransistor", {{"collector", "A.c10"}, {"emitter", "A.c20"}}), lux);
        EXPECT_EQ(s->status(), Status::Solved) << s->solution.reason;
        return std::pair(leadAmpere(*s, "PT1", "collector"), leadVolt(*s, "PT1", "collector"));
    };
    const double at20 = read(1, 20).first, at100 = read(1, 100).first;
    EXPECT_GT(at100, 0.1e-3);
    EXPECT_NEAR(at100, 0.3e-3, 0.01e-3);
    EXPECT_NEAR(at100 / at20, 5, 0.01);
    EXPECT_LT(read(1, 0).first, 300e-9);
    EXPECT_LT(read(100e3, 1000).second, 0.4);
}

// Solar cells

/// B. Van Zeghbroeck, Principles of Semiconductor Devices, Example 4.6: saturation current 1e-12 A, photocurrent 25 mA: 0.62 V open, 0.54 V and
/// 24 mA at the most power, fill factor 83 %. The same by I = Iph - Is (exp(V / Vt) - 1). Computed.
TEST(SolarCell, IsTheWorkedExample) {
    constexpr double kSaturation = 1e-12, kLit = 0.025;
    const double open = kThermalVoltage * std::log(kLit / kSaturation + 1);
    EXPECT_NEAR(open, 0.62, 0.005);
    const auto loaded = [&](double ohm) {
        BenchBuilder builder;
        builder.board("A", "half")
            .part("PV1", "solar-cell", {{"+", "A.a5"}, {"-", "A.a10"}},
                  {{"shortCircuitCurrent", kLit}, {"openVoltage", open}, {"ideality", 1.0}, {"shuntResistance", 1e9}})
            .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}}, {{"resistance", ohm}});
        const auto s = litBySensor(builder, 100e3);
        EXPECT_EQ(s->status(), Status::Solved) << s->solution.reason;
        return std::pair(leadVolt(*s, "R1", "1") - leadVolt(*s, "R1", "2"), leadAmpere(*s, "R1", "1"));
    };
    EXPECT_NEAR(loaded(1e6).first, open, 1e-5);
    EXPECT_NEAR(loaded(0.01).second, kLit, 1e-6);
    double most = 0, mostVolt = 0, mostAmpere = 0;
    for (double ohm = 15; ohm < 35; ohm += 0.05) {
        const auto [volt, ampere] = loaded(ohm);
        EXPECT_NEAR(ampere, kLit - kSaturation * std::expm1(volt / kThermalVoltage), 1e-8);
        if (volt * ampere <= most) continue;
        most = volt * ampere;
        mostVolt = volt;
        mostAmpere = ampere;
    }
    EXPECT_NEAR(mostVolt, 0.54, 0.005);
    EXPECT_NEAR(mostAmpere, 0.024, 0.0005);
    EXPECT_NEAR(most / (open * kLit), 0.83, 0.005);
}

/// Limits of single-crystal cells (a maker's page): at least 0.58 V open; here full sun is 100,000 lx. The short-circuit current is in
/// proportion to the light; in the dark nothing drives.
TEST(SolarCell, DrivesByLightAlone) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PV1", "solar-cell", {{"+", "A.a5"}, {"-", "A.a10"}})
        .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}}, {{"resistance", 0.1}});
    EXPECT_NEAR(leadAmpere(*litBySensor(builder, 100e3), "R1", "1"), 0.040, 1e-5);
    EXPECT_NEAR(leadAmpere(*litBySensor(builder, 10e3), "R1", "1"), 0.004, 1e-6);
    EXPECT_EQ(litBySensor(builder, 0)->status(), Status::Off);
    const auto s = litBySensor(builder, 100e3);
    EXPECT_EQ(leadVolt(*s, "PV1", "-"), 0) << "its minus is where volts count from";
    EXPECT_LT(s->partPower[0], 0) << "it gives";
}

TEST(SolarCell, FourInARowLightAnLedInTheSun) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PV1", "solar-cell", {{"+", "A.a5"}, {"-", "A.a10"}})
        .part("PV2", "solar-cell", {{"+", "A.b10"}, {"-", "A.a15"}})
        .part("PV3", "solar-cell", {{"+", "A.b15"}, {"-", "A.a20"}})
        .part("PV4", "solar-cell", {{"+", "A.b20"}, {"-", "A.a25"}})
        .part("D1", "led", {{"anode", "A.b5"}, {"cathode", "A.b25"}});
    const auto sun = litBySensor(builder, 100e3), room = litBySensor(builder, 300);
    EXPECT_GT(sun->brightness(sun->layout->bench->partIndex("D1")), 0.8);
    EXPECT_LT(room->brightness(room->layout->bench->partIndex("D1")), 0.2);
}

// LEDs of three colours

TEST(RgbLed, GivesEachColourItsOwnCurrent) {
    for (const char* common : {"cathode", "anode"}) {
        SCOPED_TRACE(common);
        const bool down = std::string_view(common) == "cathode";
        BenchBuilder builder;
        builder.board("A", "half")
            .part("PS1", "bench-supply", {{down ? "+" : "-", "A.a5"}, {down ? "-" : "+", "A.f12"}},
                  {{"voltage", 5}, {"seriesResistance", 0}})
            .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b11"}}, {{"resistance", 150}})
            .part("R2", "resistor", {{"1", "A.c5"}, {"2", "A.c13"}}, {{"resistance", 150}})
            .part("D1", "rgb-led", {{"red", "A.e11"}, {"common", "A.e12"}, {"green", "A.e13"}, {"blue", "A.e14"}},
                  {{"common", common}})
            .jumper("A.a12", "A.g12");
        const auto s = evaluate(builder.share());
        ASSERT_EQ(s->status(), Status::Solved) << s->solution.reason;
        const double sign = down ? 1 : -1;
        EXPECT_NEAR(sign * leadAmpere(*s, "D1", "red"), 0.020, 1e-3);  // 2.0 V at 20 mA
        EXPECT_NEAR(sign * leadAmpere(*s, "D1", "green"), 0.012, 1e-3);
        EXPECT_NEAR(leadAmpere(*s, "D1", "blue"), 0, 1e-9);
        EXPECT_GT(s->brightness(s->layout->bench->partIndex("D1")), 0.7);
    }
}

// Which leg is which

TEST(Legs, TheTwoFamiliesLieTheOtherWayRound) {
    Part part = makePart(*findKind("npn"), "Q1");
    const int legs = part.kind->valueIndex("legs");
    const auto offset = [&](std::string_view lead) { return packageOf(part).footprint[part.kind->leadIndex(lead)].x; };
    EXPECT_LT(offset("emitter"), offset("base")) << "E-B-C from the left, the flat side towards the one who reads";
    EXPECT_LT(offset("base"), offset("collector"));
    part.values[legs] = 1;
    EXPECT_LT(offset("collector"), offset("base")) << "C-B-E";
    EXPECT_LT(offset("base"), offset("emitter"));
    part.values[legs] = 2;
    EXPECT_LT(offset("emitter"), offset("collector")) << "E-C-B: the base isn't always in the middle";
    EXPECT_LT(offset("collector"), offset("base"));
}

}  // namespace
}  // namespace tiepoint::test
