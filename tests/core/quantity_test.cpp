// Quantities: the prefixes of the SI brochure, and the letter code of IEC 60062 (examples from memory).

#include "core/base/quantity.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace tiepoint {
namespace {

TEST(FormatQuantity, UsesThreeDigitsAndAPrefix) {
    const struct {
        double value;
        const char* unit;
        const char* text;
    } cases[] = {
        {0.00943, "A", "9.43 mA"},
        {330, "ohm", "330 \u03a9"},
        {4700, "ohm", "4.70 k\u03a9"},
        {5, "V", "5.00 V"},
        {-1.5, "V", "\u22121.50 V"},
        {1e6, "ohm", "1.00 M\u03a9"},
        {2.5e9, "ohm", "2.50 G\u03a9"},
        {1.5e-6, "A", "1.50 \u00b5A"},
        {2e-9, "A", "2.00 nA"},
        {3e-12, "A", "3.00 pA"},
        {5e-14, "A", "0.0500 pA"},
        {1.5e12, "ohm", "1500 G\u03a9"},
        {0, "V", "0 V"},
        {-0.0, "V", "0 V"},
        {9e-16, "A", "0 A"},
        {-9e-16, "A", "0 A"},
        {0.9996, "V", "1.00 V"},
        {999.6, "ohm", "1.00 k\u03a9"},
        {9.994e-3, "A", "9.99 mA"},
        {99.96e-3, "A", "100 mA"},
        {0.5, "", "0.500"},
        {12345, "", "12300"},
        {0.0178, "W", "17.8 mW"},
    };
    for (const auto& c : cases) EXPECT_EQ(formatQuantity(c.value, c.unit), c.text);
    EXPECT_EQ(formatQuantity(std::nan(""), "V"), "no value");
    EXPECT_EQ(formatQuantity(std::numeric_limits<double>::infinity(), "V"), "no value");
}

TEST(FormatQuantity, TakesOtherNumbersOfDigits) {
    EXPECT_EQ(formatQuantity(0.0094321, "A", 1), "9 mA");
    EXPECT_EQ(formatQuantity(0.0094321, "A", 2), "9.4 mA");
    EXPECT_EQ(formatQuantity(0.0094321, "A", 5), "9.4321 mA");
    EXPECT_EQ(formatQuantity(330, "ohm", 1), "300 \u03a9");
}

TEST(FormatQuantity, NeverShowsAHyphen) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> exponent(-18, 12);
    for (int i = 0; i < 500; ++i) {
        const double value = -std::pow(10, exponent(random));
        EXPECT_EQ(formatQuantity(value, "V").find('-'), std::string::npos);
        EXPECT_EQ(formatSetting(value, "V").find('-'), std::string::npos);
    }
}

TEST(FormatSetting, IsAsShortAsItIsExact) {
    const struct {
        double value;
        const char* unit;
        const char* text;
    } cases[] = {
        {330, "ohm", "330 \u03a9"},
        {4700, "ohm", "4.7 k\u03a9"},
        {5, "V", "5 V"},
        {0.25, "W", "0.25 W"},
        {0.03, "A", "30 mA"},
        {0.5, "A", "0.5 A"},
        {0.125, "W", "0.125 W"},
        {0.05, "", "0.05"},
        {2.5e-9, "A", "2.5 nA"},
        {0, "V", "0 V"},
        {-12, "V", "\u221212 V"},
        {1e9, "ohm", "1 G\u03a9"},
        {1e-30, "A", "1e\u221230 A"},
        {123456, "ohm", "123.456 k\u03a9"},
    };
    for (const auto& c : cases) EXPECT_EQ(formatSetting(c.value, c.unit), c.text);
}

TEST(LetterCode, FollowsIec60062) {
    const struct {
        double ohm;
        const char* text;
    } cases[] = {{4.7, "4R7"},   {220, "220R"},  {4700, "4k7"}, {1e6, "1M"},   {0.47, "R47"},  {0.05, "R05"},
                 {10000, "10k"}, {2.2e6, "2M2"}, {1000, "1k"},  {332, "332R"}, {4990, "4k99"}, {1e9, "1G"}};
    for (const auto& c : cases) {
        EXPECT_EQ(formatLetterCode(c.ohm), c.text);
        EXPECT_EQ(parseQuantity(c.text, "ohm"), c.ohm) << c.text;
    }
}

TEST(ParseQuantity, ReadsWhatPeopleType) {
    const struct {
        const char* text;
        const char* unit;
        double value;
    } cases[] = {
        {"220", "ohm", 220},
        {"4k7", "ohm", 4700},
        {"4R7", "ohm", 4.7},
        {"1M", "ohm", 1e6},
        {"0.5", "A", 0.5},
        {"2,2k", "ohm", 2200},
        {"500m", "A", 0.5},
        {"20mA", "A", 0.02},
        {"5 V", "V", 5},
        {"3V3", "V", 3.3},
        {" 4.7 k\u03a9 ", "ohm", 4700},
        {"10 kOhm", "ohm", 1e4},
        {"10K", "ohm", 1e4},
        {"2u5", "A", 2.5e-6},
        {"2 \u00b5A", "A", 2e-6},
        {"2 \u03bcA", "A", 2e-6},
        {"\u22121.5 V", "V", -1.5},
        {"-1.5", "V", -1.5},
        {"1e3", "ohm", 1000},
        {"1e\u221230 A", "A", 1e-30},
        {".5", "W", 0.5},
        {"5 %", "", 0.05},
        {"0.05", "", 0.05},
        {"0,125 W", "W", 0.125},
        {"330 ohms", "ohm", 330},
        {"R47", "ohm", 0.47},
        {"4k7\u03a9", "ohm", 4700},
        {"47 \u2126", "ohm", 47},
    };
    for (const auto& c : cases) EXPECT_EQ(parseQuantity(c.text, c.unit), c.value) << c.text;
}

TEST(ParseQuantity, RefusesWhatIsNone) {
    const struct {
        const char* text;
        const char* unit;
    } cases[] = {{"", "ohm"},      {"k", "ohm"},   {"ohm", "ohm"}, {"4k7k", "ohm"}, {"4.7k7", "ohm"}, {"1e", "V"},
                 {"5 A", "V"},     {"5 W", "ohm"}, {"--5", "V"},   {"1e999", "V"},  {"nan", "V"},     {"inf", "V"},
                 {"1,000", "ohm"}, {"2.", "ohm"},  {"1 2", "ohm"}, {"4R7R", "ohm"}, {"10k", ""},      {"1.2.3", "V"},
                 {"1e9999", "V"},  {"k47", "ohm"}, {"5 %", "V"},   {"0x10", "ohm"}, {"1e-", "V"}};
    for (const auto& c : cases) EXPECT_EQ(parseQuantity(c.text, c.unit), std::nullopt) << c.text;
}

TEST(ParseQuantity, ReadsBackWhatWasWritten) {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> exponent(-11, 11);
    for (int i = 0; i < 500; ++i) {
        const double value = std::pow(10, exponent(random));
        const auto setting = parseQuantity(formatSetting(value, "ohm"), "ohm");
        ASSERT_TRUE(setting);
        EXPECT_EQ(*setting, value);
        const auto shown = parseQuantity(formatQuantity(value, "ohm"), "ohm");
        ASSERT_TRUE(shown);
        EXPECT_NEAR(*shown / value, 1, 0.0051);
    }
}

}  // namespace
}  // namespace tiepoint
