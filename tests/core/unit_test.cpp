// Units beyond ohm, volt, ampere and watt: what is written and what is read. Sources: prefixes and symbols, the SI brochure (BIPM, 9th
// edition 2019, tables 1, 4 and 7; degree Celsius 2.3.4); letter codes of capacitances, IEC 60062 (table of the code letters p, n, µ, m
// and F, from memory); which prefixes are left out is common practice.

#include "core/base/unit.h"

#include "core/base/quantity.h"
#include "core/base/said_quantity.h"
#include "core/parts/ladder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

TEST(Unit, IsWrittenWithThePrefixesThatPeopleWrite) {
    const struct {
        double value;
        const char* unit;
        const char* quantity;
        const char* setting;
    } cases[] = {
        {100e-9, "F", "100 nF", "100 nF"},
        {4.7e-6, "F", "4.70 \u00b5F", "4.7 \u00b5F"},
        {330e-12, "F", "330 pF", "330 pF"},
        {2.2e-3, "F", "2.20 mF", "2.2 mF"},
        {1, "F", "1.00 F", "1 F"},
        {4700, "F", "4700 F", "4700 F"},  // no kilofarad
        {0.1, "F", "100 mF", "100 mF"},
        {1e-3, "H", "1.00 mH", "1 mH"},
        {100e-3, "H", "100 mH", "100 mH"},
        {4.7e-6, "H", "4.70 \u00b5H", "4.7 \u00b5H"},
        {3e-11, "H", "0.0300 nH", "0.03 nH"},  // no picohenry
        {0.5, "s", "500 ms", "0.5 s"},
        {90, "s", "90.0 s", "90 s"},
        {3600, "s", "3600 s", "3600 s"},  // no kilosecond
        {20e-3, "s", "20.0 ms", "20 ms"},
        {50, "Hz", "50.0 Hz", "50 Hz"},
        {1000, "Hz", "1.00 kHz", "1 kHz"},
        {2.2e6, "Hz", "2.20 MHz", "2.2 MHz"},
        {0.2, "Hz", "0.200 Hz", "0.2 Hz"},  // no millihertz beside megahertz
        {0.025, "Hz", "0.0250 Hz", "0.025 Hz"},
        {300, "lx", "300 lx", "300 lx"},
        {10e3, "lx", "10.0 klx", "10 klx"},
        {0.01, "lx", "0.0100 lx", "0.01 lx"},  // no millilux
        {2e6, "lx", "2000 klx", "2000 klx"},
        {298.15, "K", "298 K", "298.15 K"},
        {2700, "K", "2700 K", "2700 K"},  // no kilokelvin
        {25, "\u00b0C", "25.0 \u00b0C", "25 \u00b0C"},
        {-12.5, "\u00b0C", "\u221212.5 \u00b0C", "\u221212.5 \u00b0C"},
        {0, "\u00b0C", "0 \u00b0C", "0 \u00b0C"},
    };
    for (const auto& c : cases) {
        EXPECT_EQ(formatQuantity(c.value, c.unit), c.quantity);
        EXPECT_EQ(formatSetting(c.value, c.unit), c.setting);
        EXPECT_EQ(parseQuantity(c.setting, c.unit), c.value) << c.setting;
    }
}

TEST(Unit, IsReadAsPeopleTypeIt) {
    const struct {
        const char* text;
        const char* unit;
        double value;
    } cases[] = {
        {"100n", "F", 100e-9},
        {"10uF", "F", 10e-6},
        {"4u7", "F", 4.7e-6},
        {"4\u00b57", "F", 4.7e-6},
        {"0.1 \u03bcF", "F", 0.1e-6},
        {"330p", "F", 330e-12},
        {"2,2n", "F", 2.2e-9},
        {"n33", "F", 0.33e-9},
        {"p5", "F", 0.5e-12},
        {".47u", "F", 0.47e-6},
        {"1F", "F", 1},
        {"1F5", "F", 1.5},
        {"2200uf", "F", 2200e-6},
        {"1mH", "H", 1e-3},
        {"4m7", "H", 4.7e-3},
        {"100 uH", "H", 100e-6},
        {"2", "H", 2},
        {"20ms", "s", 20e-3},
        {"1.5 s", "s", 1.5},
        {"2 sec", "s", 2},
        {"50 Hz", "Hz", 50},
        {"50", "Hz", 50},
        {"1k", "Hz", 1000},
        {"2M2", "Hz", 2.2e6},
        {"300 lx", "lx", 300},
        {"300 lux", "lx", 300},
        {"10k lx", "lx", 10e3},
        {"10klx", "lx", 10e3},
        {"300 K", "K", 300},
        {"25 \u00b0C", "K", 298.15},
        {"-40 C", "K", 233.15},
        {"25", "\u00b0C", 25},
        {"\u221210 \u00b0C", "\u00b0C", -10},
    };
    for (const auto& c : cases) {
        const auto read = parseQuantity(c.text, c.unit);
        ASSERT_TRUE(read) << c.text;
        EXPECT_DOUBLE_EQ(*read, c.value) << c.text;
    }
    EXPECT_NEAR(*parseQuantity("300 K", "\u00b0C"), 26.85, 1e-12);
}

TEST(Unit, RefusesWhatNobodyWrites) {
    const struct {
        const char* text;
        const char* unit;
    } cases[] = {{"1 kF", "F"},
                 {"1M", "F"},
                 {"5 mlx", "lx"},
                 {"1m", "Hz"},
                 {"3 kK", "K"},
                 {"1k", "s"},
                 {"10 uF", "ohm"},
                 {"1 H", "F"},
                 {"5 V", "Hz"},
                 {"n", "F"},
                 {"F", "F"},
                 {"1pH", "H"},
                 {"1 k\u00b0C", "\u00b0C"},
                 {"n3n3", "F"},
                 {"4u7u", "F"},
                 {"3 Hz5", "Hz"},
                 {"1MlxK", "lx"},
                 {"2 s s", "s"}};
    for (const auto& c : cases) EXPECT_EQ(parseQuantity(c.text, c.unit), std::nullopt) << c.text;
}

TEST(LetterCode, OfCapacitancesFollowsIec60062) {
    const struct {
        double farad;
        const char* text;
    } cases[] = {{100e-9, "100n"},  {4.7e-6, "4\u00b57"}, {3.3e-12, "3p3"}, {33e-12, "33p"}, {2.2e-9, "2n2"},
                 {1e-6, "1\u00b5"}, {1.5e-3, "1m5"},      {1, "1F"},        {0.5e-12, "p5"}, {470e-6, "470\u00b5"}};
    for (const auto& c : cases) {
        EXPECT_EQ(formatLetterCode(c.farad, "F"), c.text);
        EXPECT_EQ(parseQuantity(c.text, "F"), c.farad) << c.text;
    }
    EXPECT_EQ(formatLetterCode(0, "F"), "0F");
}

TEST(Unit, OfEveryKindComesBackExactly) {
    std::mt19937 random(23);
    std::uniform_real_distribution<double> exponent(-13, 11);
    for (const Unit& unit : units()) {
        EXPECT_FALSE(unit.examples.empty()) << unit.name;
        for (int i = 0; i < 300; ++i) {
            const double value = std::pow(10, exponent(random));
            const auto read = parseQuantity(formatSetting(value, unit.name), unit.name);
            ASSERT_TRUE(read) << formatSetting(value, unit.name);
            EXPECT_NEAR(*read / value, 1, 1e-14);
        }
    }
    EXPECT_EQ(unitOf("parsec").symbol, "parsec");
}

TEST(Temperature, IsReadInDegreesCelsius) {
    EXPECT_EQ(formatTemperature(298.15), "25 \u00b0C");
    EXPECT_EQ(formatTemperature(273.15), "0 \u00b0C");
    EXPECT_EQ(formatTemperature(253.75), "\u221219.4 \u00b0C");
    EXPECT_EQ(formatTemperature(2973.15), "2700 \u00b0C");
    EXPECT_EQ(formatTemperature(std::nan("")), "no value");
}

TEST(SaidUnit, IsHeardAmongWords) {
    const struct {
        const char* text;
        double value;
        const char* unit;
    } cases[] = {{"100 nF ceramic", 100e-9, "F"},
                 {"10 microfarad", 10e-6, "F"},
                 {"4u7F", 4.7e-6, "F"},
                 {"1 mH coil", 1e-3, "H"},
                 {"2 millihenries", 2e-3, "H"},
                 {"20 ms", 20e-3, "s"},
                 {"3 seconds", 3, "s"},
                 {"50 Hz", 50, "Hz"},
                 {"1 kilohertz", 1e3, "Hz"},
                 {"300 lx", 300, "lx"},
                 {"2700 kelvin", 2700, "K"},
                 {"25 \u00b0C", 25, "\u00b0C"},
                 {"10K", 10e3, ""},  // ohms, as ever
                 {"47 kilohm", 47e3, "ohm"}};
    for (const auto& c : cases) {
        const SaidWords said = readSaid(c.text);
        ASSERT_EQ(said.quantities.size(), 1u) << c.text;
        EXPECT_DOUBLE_EQ(said.quantities[0].value, c.value) << c.text;
        EXPECT_EQ(said.quantities[0].unit, c.unit) << c.text;
    }
    EXPECT_EQ(readSaid("5 kF").quantities.at(0).unit, "") << "nobody says kilofarad";
}

TEST(Ladder, ClimbsTheSeriesOfAnyUnit) {
    ValueSpec farad;
    farad.unit = "F";
    farad.minimum = 1e-12;
    farad.maximum = 10e-3;
    farad.series = "E6";
    std::string rungs;
    for (const double rung : ladderAbout(farad, 100e-9, 4)) rungs += formatSetting(rung, "F") + " ";
    EXPECT_EQ(rungs, "22 nF 33 nF 47 nF 68 nF 100 nF 150 nF 220 nF 330 nF 470 nF ");
    double value = farad.minimum;
    for (int i = 0; i < 60; ++i) {  // sixty rungs of E6 are ten decades
        value = ladderStep(farad, value, 1);
        EXPECT_LE(formatSetting(value, "F").size(), 7u) << "as short as a label";
    }
    EXPECT_EQ(formatSetting(value, "F"), "10 mF");
}

}  // namespace
}  // namespace tiepoint
