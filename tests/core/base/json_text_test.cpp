// Text and numbers of JSON (RFC 8259), pointers (RFC 6901), UTF-8 (RFC 3629), and places in a text.

#include "core/base/json_text.h"

#include "core/base/line_counter.h"
#include "core/base/name_set.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <string>

namespace tiepoint {
namespace {

TEST(JsonText, EscapesWhatJsonDemandsAndWhatATerminalWouldObey) {
    EXPECT_EQ(jsonString(""), R"("")");
    EXPECT_EQ(jsonString("a\"b\\c/d"), R"("a\"b\\c/d")");
    EXPECT_EQ(jsonString("1\n2\r3\t4"), R"("1\n2\r3\t4")");
    EXPECT_EQ(jsonString(std::string("\x01\x1f\x20\x7f", 4)), "\"\\u0001\\u001f \\u007f\"");
    EXPECT_EQ(jsonString("\u03a9"), "\"\u03a9\"");
}

TEST(JsonText, NumbersAreShortAndPlainWherePeopleWriteThemSo) {
    const struct {
        double value;
        const char* text;
    } cases[] = {
        {0, "0"},        {-0.0, "0"},         {220, "220"},       {-1.5, "-1.5"},
        {0.05, "0.05"},  {100000, "100000"},  {1e-4, "0.0001"},   {999999999999999.0, "999999999999999"},
        {1e15, "1e+15"}, {9.9e-5, "9.9e-05"}, {-1e-18, "-1e-18"},
    };
    for (const auto& c : cases) EXPECT_EQ(jsonNumber(c.value), c.text);
    std::mt19937_64 random(5);
    for (int i = 0; i < 2000; ++i) {
        std::uniform_real_distribution<double> exponent(-300, 300);
        const double value = (i % 2 ? -1 : 1) * std::pow(10, exponent(random));
        EXPECT_EQ(std::stod(jsonNumber(value)), value);
    }
}

TEST(JsonText, CanonicalSpacingLeavesStringsAlone) {
    EXPECT_EQ(canonicalJson("{ \"a b\" :\t[1,\n2 , {\"c\":\"x , y\\\" : z\"}] }"),
              "{\"a b\": [1, 2, {\"c\": \"x , y\\\" : z\"}]}");
    EXPECT_EQ(canonicalJson("\r\n true "), "true");
    EXPECT_EQ(canonicalJson(R"("\\")"), R"("\\")");
    EXPECT_EQ(canonicalJson(R"(["\\","b"])"), R"(["\\", "b"])");
}

TEST(JsonText, PointersEscapeTildeAndSlash) {
    EXPECT_EQ(pointerToken("a/b~c"), "a~1b~0c");
    EXPECT_EQ(pointerToken(std::string(100, 'x')), std::string(100, 'x'));
    EXPECT_EQ(pointerToken(std::string(101, 'x')), std::string(100, 'x') + "\u2026");
}

TEST(JsonText, QuotesAreCutBetweenCharacters) {
    EXPECT_EQ(inQuotes("D1"), "\"D1\"");
    EXPECT_EQ(inQuotes(std::string(60, 'x')), '"' + std::string(60, 'x') + '"');
    EXPECT_EQ(inQuotes(std::string(61, 'x')), '"' + std::string(60, 'x') + "\u2026\"");
    // The sixtieth byte is the middle of an omega: it goes as a whole.
    EXPECT_EQ(inQuotes(std::string(59, 'x') + "\u03a9\u03a9"), '"' + std::string(59, 'x') + "\u2026\"");
    EXPECT_EQ(inQuotes(std::string(58, 'x') + "\u03a9\u03a9"), '"' + std::string(58, 'x') + "\u03a9\u2026\"");
}

TEST(JsonText, KnowsUtf8) {
    const std::string good[] = {"",
                                "A",
                                "\x7f",
                                "\xc2\x80",
                                "\xdf\xbf",
                                "\xe0\xa0\x80",
                                "\xed\x9f\xbf",
                                "\xee\x80\x80",
                                "\xef\xbf\xbf",
                                "\xf0\x90\x80\x80",
                                "\xf4\x8f\xbf\xbf",
                                "Tide \u00e9"};
    for (const std::string& text : good) EXPECT_TRUE(isText(text)) << text;
    const std::string bad[] = {std::string(1, '\0'), "\x80",         "\xbf",
                               "\xc0\x80",           "\xc1\xbf",     "\xc2",
                               "\xc2\x7f",           "\xc2\xc0",     "\xe0\x9f\xbf",
                               "\xe0\xa0",           "\xed\xa0\x80", "\xed\xbf\xbf",
                               "\xf0\x8f\xbf\xbf",   "\xf0\x90\x80", "\xf4\x90\x80\x80",
                               "\xf5\x80\x80\x80",   "\xff",         "good\xe9"};
    for (const std::string& text : bad) EXPECT_FALSE(isText(text)) << text;
}

TEST(JsonText, TellsASingleCodePoint) {
    EXPECT_EQ(singleCodePoint("A"), U'A');
    EXPECT_EQ(singleCodePoint("\u00e9"), U'\u00e9');
    EXPECT_EQ(singleCodePoint("\u20ac"), U'\u20ac');
    EXPECT_EQ(singleCodePoint("\U0001f600"), U'\U0001f600');
    for (const char* none : {"", "AB", "\xc3", "A\xff"}) EXPECT_FALSE(singleCodePoint(none)) << none;
}

TEST(LineCounter, CountsCharactersNotBytes) {
    LineCounter counter("ab\n\u00e9\u03a9x\n\nend");
    const struct {
        std::size_t offset;
        int line, column;
    } cases[] = {{0, 1, 1},  {2, 1, 3},  {3, 2, 1},  {5, 2, 2}, {7, 2, 3}, {8, 2, 4}, {9, 3, 1},
                 {10, 4, 1}, {13, 4, 4}, {99, 4, 4}, {7, 2, 3}, {7, 2, 3}, {0, 1, 1}};
    for (const auto& c : cases) {
        Place place;
        counter.locate(c.offset, place);
        EXPECT_EQ(place.line, c.line) << c.offset;
        EXPECT_EQ(place.column, c.column) << c.offset;
    }
}

TEST(NameSet, KnowsEachNameHoweverManyThereAre) {
    NameSet names;
    for (int i = 0; i < 60; ++i) {
        for (int j = 0; j < i; ++j) EXPECT_FALSE(names.insert("k" + std::to_string(j))) << i << ", " << j;
        EXPECT_TRUE(names.insert("k" + std::to_string(i))) << i;
    }
}

}  // namespace
}  // namespace tiepoint
