// Quantities among typed words: one value, one unit, however it is spelt.

#include "core/base/said_quantity.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

struct Spelling {
    std::string_view text;
    double value;
    std::string_view unit;
};

TEST(SaidQuantity, EachSpellingIsExactlyItsValue) {
    const Spelling cases[] = {
        // ohms
        {"47 ohm", 47, "ohm"},
        {"47ohm", 47, "ohm"},
        {"47 ohms", 47, "ohm"},
        {"47 Ohm", 47, "ohm"},
        {"47 OHM", 47, "ohm"},
        {"47 \u03a9", 47, "ohm"},
        {"47\u2126", 47, "ohm"},
        {"47R", 47, "ohm"},
        {"47r", 47, "ohm"},
        {"47 R", 47, "ohm"},
        {"4R7", 4.7, "ohm"},
        {"4r7", 4.7, "ohm"},
        {"R47", 0.47, "ohm"},
        {"0R47", 0.47, "ohm"},
        {"4\u03a97", 4.7, "ohm"},
        {"4k7", 4700, ""},
        {"4K7", 4700, ""},
        {"4k7 ohm", 4700, "ohm"},
        {"4.7k", 4700, ""},
        {"4,7 k\u03a9", 4700, "ohm"},
        {"47 k", 47000, ""},
        {"47 kilohm", 47000, "ohm"},
        {"47 kilohms", 47000, "ohm"},
        {"47 kiloohm", 47000, "ohm"},
        {"47 kilo-ohm", 47000, "ohm"},
        {"47 kilo ohm", 47000, "ohm"},
        {"47 k ohm", 47000, "ohm"},
        {"47 Kilohm", 47000, "ohm"},
        {"47 kOhm", 47000, "ohm"},
        {"47 KOHM", 47000, "ohm"},
        {"47k\u00a0ohm", 47000, "ohm"},
        {"2M2", 2.2e6, ""},
        {"1M", 1e6, ""},
        {"10 meg", 1e7, ""},
        {"10 Megohm", 1e7, "ohm"},
        {"10 megaohm", 1e7, "ohm"},
        {"10 M\u03a9", 1e7, "ohm"},
        {"10 Mohm", 1e7, "ohm"},
        {"10 mohm", 0.01, "ohm"},
        {"10 milliohm", 0.01, "ohm"},
        {"1 000 ohm", 1000, "ohm"},
        {"10 000", 10000, ""},
        {"1 500 ohm", 1500, "ohm"},
        {"1e3 ohm", 1000, "ohm"},
        {".5 ohm", 0.5, "ohm"},
        // amperes
        {"100 mA", 0.1, "A"},
        {"100mA", 0.1, "A"},
        {"100 ma", 0.1, "A"},
        {"100 milliamps", 0.1, "A"},
        {"100 milli amps", 0.1, "A"},
        {"100 milliamperes", 0.1, "A"},
        {"100 \u00b5A", 1e-4, "A"},
        {"100 \u03bcA", 1e-4, "A"},
        {"100 uA", 1e-4, "A"},
        {"100 microamps", 1e-4, "A"},
        {"1 A", 1, "A"},
        {"1 amp", 1, "A"},
        {"0,5 A", 0.5, "A"},
        // volts and watts
        {"5 V", 5, "V"},
        {"5V", 5, "V"},
        {"5 v", 5, "V"},
        {"5 volts", 5, "V"},
        {"3V3", 3.3, "V"},
        {"12.5 Volt", 12.5, "V"},
        {"100 mV", 0.1, "V"},
        {"-5 V", -5, "V"},
        {"\u22125 V", -5, "V"},
        {"1/4 W", 0.25, "W"},
        {"1/4W", 0.25, "W"},
        {"0,25 W", 0.25, "W"},
        {"250 mW", 0.25, "W"},
        {"2 watts", 2, "W"},
        // shares, and bare numbers
        {"1 %", 0.01, "%"},
        {"5%", 0.05, "%"},
        {"5 percent", 0.05, "%"},
        {"5 per cent", 0.05, "%"},
        {"330", 330, ""},
        {"330.", 330, ""},
    };
    for (const Spelling& each : cases) {
        const SaidWords said = readSaid(each.text);
        ASSERT_EQ(said.quantities.size(), 1u) << each.text;
        EXPECT_EQ(said.quantities[0].value, each.value) << each.text;
        EXPECT_EQ(said.quantities[0].unit, each.unit) << each.text;
        EXPECT_FALSE(said.quantities[0].ambiguous) << each.text;
        EXPECT_TRUE(said.words.empty()) << each.text;
    }
}

TEST(SaidQuantity, AnUnfinishedUnitIsWhatItCanOnlyBecome) {
    for (const std::string_view typed : {"47 o", "47 oh", "47 ohm"}) {
        const SaidWords said = readSaid(typed);
        ASSERT_EQ(said.quantities.size(), 1u) << typed;
        EXPECT_EQ(said.quantities[0].unit, "ohm") << typed;
        EXPECT_EQ(said.quantities[0].value, 47) << typed;
    }
    for (const std::string_view typed : {"47 k", "47 ki", "47 kil", "47 kilo", "47 kiloh", "47 kilohms"})
        EXPECT_EQ(readSaid(typed).quantities.at(0).value, 47000) << typed;
    EXPECT_EQ(readSaid("47 mi").words, std::vector<std::string>{"mi"}) << "milli or micro: nobody knows yet";
    EXPECT_EQ(readSaid("47 o ").words, std::vector<std::string>{"o"}) << "finished, and no unit";
}

TEST(SaidQuantity, WordsStayWords) {
    struct Sentence {
        std::string_view text;
        std::vector<double> values;
        std::vector<std::string> words;
    };
    const Sentence cases[] = {
        {"", {}, {}},
        {"green LED", {}, {"green", "LED"}},
        {"47 ohm resistor", {47}, {"resistor"}},
        {"resistor, 47 ohm, 1 %", {47, 0.01}, {"resistor"}},
        {"lamp 6 V 100 mA", {6, 0.1}, {"lamp"}},
        {"1N4148", {}, {"1N4148"}},
        {"1n4148", {}, {"1n4148"}},
        {"2n2222 transistor", {}, {"2n2222", "transistor"}},
        {"5mm LED", {}, {"5mm", "LED"}},
        {"12vdc", {}, {"12vdc"}},
        {"47 red", {47}, {"red"}},
        {"220 330 470", {220, 330, 470}, {}},
        {"1e400", {}, {"1e400"}},
        {"kilo", {}, {"kilo"}},
        {"per", {}, {"per"}},
    };
    for (const Sentence& each : cases) {
        const SaidWords said = readSaid(each.text);
        std::vector<double> values;
        for (const SaidQuantity& quantity : said.quantities) values.push_back(quantity.value);
        EXPECT_EQ(values, each.values) << each.text;
        EXPECT_EQ(said.words, each.words) << each.text;
    }
}

TEST(SaidQuantity, ACommaThatMayPartThousandsIsNoPoint) {
    EXPECT_TRUE(readSaid("1,000 ohm").quantities.at(0).ambiguous);
    EXPECT_TRUE(readSaid("4,700").quantities.at(0).ambiguous);
    EXPECT_FALSE(readSaid("0,250 W").quantities.at(0).ambiguous);
    EXPECT_FALSE(readSaid("4,7 k").quantities.at(0).ambiguous);
}

TEST(SaidQuantity, TheTextOfAQuantityIsWhatWasTyped) {
    EXPECT_EQ(readSaid("a 47  kilo ohm resistor").quantities.at(0).text, "47 kilo ohm");
    EXPECT_EQ(readSaid("4,7k ohm").quantities.at(0).text, "4,7k ohm");
}

TEST(SaidQuantity, NoTextIsTooStrange) {
    std::uint64_t state = 42;
    constexpr std::string_view kLetters = "0123456789 .,/+-eEkKmMuRrVAW%\u03a9\u00b5ohmxq";
    for (int round = 0; round < 20'000; ++round) {
        std::string text;
        for (int i = 0; i < 10; ++i) {
            state = state * 6364136223846793005u + 1442695040888963407u;
            text += kLetters[(state >> 33) % kLetters.size()];
        }
        for (const SaidQuantity& quantity : readSaid(text).quantities) {
            EXPECT_TRUE(std::isfinite(quantity.value)) << text;
            EXPECT_FALSE(quantity.text.empty()) << text;
        }
    }
}

}  // namespace
}  // namespace tiepoint
