// Preferred numbers against IEC 60063:2015 and the colour code against IEC 60062:2016.
// E6, E12 and E24: confirmed on a page that repeats the standard. E3: from memory. E96: 83 members confirmed
// on such a page, the other 13 from memory and by the rule round(100 * 10^(i/96)). Bands: T. R. Kuphaldt,
// Lessons in Electric Circuits, Vol. V, colour table and examples; the tolerances of orange and yellow and
// the last three examples: confirmed on pages that repeat the standard.

#include "core/parts/preferred.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

namespace tiepoint {
namespace {

using enum BandColour;

constexpr double kTolerance = 1e-12;

std::vector<int> seriesNumbers(std::string_view series) {
    const auto numbers = preferredNumbers(series);
    return {numbers.begin(), numbers.end()};
}

TEST(Preferred, HoldsTheSeriesOfTheStandard) {
    EXPECT_EQ(seriesNumbers("E3"), (std::vector{10, 22, 47}));
    EXPECT_EQ(seriesNumbers("E6"), (std::vector{10, 15, 22, 33, 47, 68}));
    EXPECT_EQ(seriesNumbers("E12"), (std::vector{10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82}));
    EXPECT_EQ(seriesNumbers("E24"), (std::vector{10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30,
                                                 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91}));
    EXPECT_TRUE(preferredNumbers("E25").empty());
}

TEST(Preferred, E96IsTheRoundedGeometricSeries) {
    const auto numbers = seriesNumbers("E96");
    ASSERT_EQ(numbers.size(), 96u);
    for (int i = 0; i < 96; ++i) EXPECT_EQ(numbers[i], std::lround(100 * std::pow(10, i / 96.0)));
}

TEST(Preferred, SeriesLieInsideEachOther) {
    const auto holds = [](std::string_view inner, std::string_view outer) {
        const auto numbers = seriesNumbers(outer);
        const std::set<int> all(numbers.begin(), numbers.end());
        for (const int number : preferredNumbers(inner)) EXPECT_TRUE(all.contains(number)) << inner << " " << number;
    };
    holds("E3", "E6");
    holds("E6", "E12");
    holds("E12", "E24");
    std::set<int> both;
    const auto e96 = seriesNumbers("E96");
    for (const int number : preferredNumbers("E24")) {
        if (std::find(e96.begin(), e96.end(), number * 10) != e96.end()) both.insert(number);
    }
    EXPECT_EQ(both, (std::set{10, 11, 13, 15, 20, 75}));
}

TEST(Preferred, FindsNeighbours) {
    EXPECT_DOUBLE_EQ(nearestPreferred("E24", 335), 330);
    EXPECT_DOUBLE_EQ(nearestPreferred("E12", 150000), 150000);
    EXPECT_DOUBLE_EQ(nearestPreferred("E24", 9.6), 10);
    EXPECT_DOUBLE_EQ(nearestPreferred("E96", 4.7), 4.75);
    EXPECT_EQ(nearestPreferred("E24", 4.6), 4.7);
    EXPECT_DOUBLE_EQ(preferredAtLeast("E24", 150), 150);
    EXPECT_DOUBLE_EQ(preferredAtLeast("E24", 150.1), 160);
    EXPECT_DOUBLE_EQ(preferredAtLeast("E24", 92), 100);
    EXPECT_DOUBLE_EQ(preferredAtMost("E24", 159.9), 150);
    EXPECT_DOUBLE_EQ(preferredAtMost("E24", 0.99), 0.91);
    EXPECT_DOUBLE_EQ(preferredStep("E24", 330, 1), 360);
    EXPECT_DOUBLE_EQ(preferredStep("E24", 10, -1), 9.1);
    EXPECT_DOUBLE_EQ(preferredStep("E12", 330, 12), 3300);
    EXPECT_DOUBLE_EQ(nearestPreferred("E25", 335), 335);
}

TEST(Preferred, RoundingStaysInItsMember) {
    for (const char* series : {"E3", "E6", "E12", "E24", "E96"}) {
        for (const int number : preferredNumbers(series)) {
            const double value = number * 1e3 * (1 + 1e-10);
            EXPECT_NEAR(preferredAtLeast(series, value) / value, 1, 1e-9);
            EXPECT_NEAR(preferredAtMost(series, value) / value, 1, 1e-9);
        }
    }
}

TEST(Preferred, BoundsHoldForRandomValues) {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> exponent(-2, 9);
    for (int i = 0; i < 500; ++i) {
        const double value = std::pow(10, exponent(random));
        EXPECT_LE(preferredAtMost("E24", value), value * (1 + 1e-9));
        EXPECT_GE(preferredAtLeast("E24", value), value * (1 - 1e-9));
        EXPECT_LT(preferredAtLeast("E24", value) / preferredAtMost("E24", value), 1.2);
    }
}

struct Example {
    std::vector<BandColour> bands;
    double ohm;
    double tolerance;
};

TEST(ColourCode, ReadsThePublishedExamples) {
    const Example examples[] = {
        {{Yellow, Violet, Orange, Gold}, 47e3, 0.05},
        {{Green, Red, Gold, Silver}, 5.2, 0.10},
        {{White, Violet, Black}, 97, 0.20},
        {{Orange, Orange, Black, Brown, Violet}, 3300, 0.001},
        {{Brown, Green, Grey, Silver, Red}, 1.58, 0.02},
        {{Blue, Brown, Green, Silver, Blue}, 6.15, 0.0025},
        {{Brown, Black, Red, Gold}, 1000, 0.05},
        {{Red, Red, Orange, Gold}, 22e3, 0.05},
        {{Brown, Black, Black, Gold, Brown}, 10, 0.01},
    };
    for (const Example& example : examples) {
        const auto reading = readBands(example.bands);
        ASSERT_TRUE(reading);
        EXPECT_NEAR(reading->ohm, example.ohm, kTolerance * example.ohm);
        EXPECT_DOUBLE_EQ(reading->tolerance, example.tolerance);
        EXPECT_EQ(colourBands(example.ohm, example.tolerance), example.bands);
    }
}

TEST(ColourCode, KnowsEachMultiplierAndTolerance) {
    const struct {
        BandColour colour;
        double factor;
    } multipliers[] = {{Black, 1},   {Brown, 1e1},   {Red, 1e2},    {Orange, 1e3}, {Yellow, 1e4},
                       {Green, 1e5}, {Blue, 1e6},    {Violet, 1e7}, {Grey, 1e8},   {White, 1e9},
                       {Gold, 1e-1}, {Silver, 1e-2}, {Pink, 1e-3}};
    for (const auto& m : multipliers) {
        const auto reading = readBands(std::vector{Brown, Black, m.colour, Gold});
        ASSERT_TRUE(reading);
        EXPECT_NEAR(reading->ohm, 10 * m.factor, kTolerance * 10 * m.factor);
    }
    // Grey is left out: sources disagree about it.
    const struct {
        BandColour colour;
        double tolerance;
    } tolerances[] = {{Brown, 0.01},  {Red, 0.02},     {Orange, 0.0005}, {Yellow, 0.0002}, {Green, 0.005},
                      {Blue, 0.0025}, {Violet, 0.001}, {Gold, 0.05},     {Silver, 0.1}};
    for (const auto& t : tolerances) {
        const auto reading = readBands(std::vector{Brown, Black, Black, Black, t.colour});
        ASSERT_TRUE(reading);
        EXPECT_DOUBLE_EQ(reading->tolerance, t.tolerance);
    }
}

TEST(ColourCode, SaysEveryPreferredValue) {
    for (int exponent = -2; exponent <= 7; ++exponent) {
        for (const int number : preferredNumbers("E24")) {
            const double ohm = number * std::pow(10, exponent);
            const auto bands = colourBands(ohm, 0.05);
            ASSERT_TRUE(bands) << ohm;
            EXPECT_EQ(bands->size(), 4u);
            EXPECT_NEAR(readBands(*bands)->ohm, ohm, kTolerance * ohm);
        }
        for (const int number : preferredNumbers("E96")) {
            const double ohm = number * std::pow(10, exponent);
            const auto bands = colourBands(ohm, 0.01);
            ASSERT_TRUE(bands) << ohm;
            EXPECT_EQ(bands->size(), 5u);
            EXPECT_NEAR(readBands(*bands)->ohm, ohm, kTolerance * ohm);
        }
    }
}

TEST(ColourCode, SaysNothingItCannotSay) {
    EXPECT_FALSE(colourBands(1234, 0.05));  // four digits
    EXPECT_FALSE(colourBands(330, 0.03));   // no such tolerance
    EXPECT_FALSE(colourBands(332, 0.20));   // three bands have two digits
    EXPECT_FALSE(colourBands(1e12, 0.05));
    EXPECT_FALSE(colourBands(0.001, 0.05));
    EXPECT_FALSE(colourBands(0, 0.05));
    EXPECT_FALSE(colourBands(-330, 0.05));
    EXPECT_FALSE(readBands(std::vector{Gold, Red, Red, Gold}));
    EXPECT_FALSE(readBands(std::vector{Red, Red, Red, Black}));
    EXPECT_FALSE(readBands(std::vector{Red, Red}));
    EXPECT_FALSE(readBands(std::vector{Black, Black, Black, Gold}));
}

}  // namespace
}  // namespace tiepoint
