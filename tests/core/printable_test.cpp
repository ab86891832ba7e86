// Text from outside as text and nothing else: which code points are shown as their numbers, and that JSON keeps what it means.

#include "core/base/printable.h"

#include "core/base/json_text.h"
#include "core/base/result.h"
#include "core/base/utf8.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>
#include <vector>

namespace tiepoint {
namespace {

struct Shown {
    std::string_view text, as;
};

TEST(Printable, ShowsWhatCouldCommandOrDisguiseAsItsNumber) {
    const Shown cases[] = {
        {"Beacon lamp", "Beacon lamp"},
        {"Größe 4,7 kΩ — 港の灯 \U0001F6DF", "Größe 4,7 kΩ — 港の灯 \U0001F6DF"},
        {"<script>&amp;", "<script>&amp;"},  // markup is the sink's concern
        {"\x1b[31mred", "\\u001b[31mred"},
        {"one\ntwo\r\tthree", "one\\u000atwo\\u000d\\u0009three"},
        {"\x7f", "\\u007f"},
        {"\u009b31m", "\\u009b31m"},         // the C1 twin of ESC [
        {"\u0080\u009f", "\\u0080\\u009f"},  // first and last of C1
        {"\u00a0\u00ad", "\u00a0\u00ad"},    // the next ones are spaces and hyphens
        {"lamp\u202egnp.exe", "lamp\\u202egnp.exe"},
        {"\u2066a\u2069", "\\u2066a\\u2069"},
        {"\u200e\u200f\u200d", "\u200e\u200f\u200d"},  // names in Hebrew, Arabic and Hindi need them
        {"a\u2028b\u2029c", "a\\u2028b\\u2029c"},
        {"\uffff\ufdd0", "\\uffff\\ufdd0"},
        {"\U0001fffe", "\\U0001fffe"},
        {"\xff\xc2", "\\xff\\xc2"},
        {"\xf0\x1b[31m", "\\xf0\\u001b[31m"},  // a byte that promises four may not hide an ESC
        {"\xc2\x41",
         "\\xc2"
         "A"},
        {"\xed\xa0\x80", "\\xed\\xa0\\x80"},  // a surrogate
        {"\xc0\x80", "\\xc0\\x80"},           // an overlong NUL
    };
    for (const Shown& each : cases) EXPECT_EQ(printable(each.text), each.as);
    EXPECT_EQ(printable(std::string_view("a\0b", 3)), "a\\u0000b");
}

// Controls, separators, marks of direction, surrogates and noncharacters by The Unicode Standard, chapter 23 (ranges from memory).
TEST(Printable, OfAllCodePointsOnlyTheseAreHidden) {
    const std::vector<std::pair<char32_t, char32_t>> hidden = {{0x00, 0x1F},     {0x7F, 0x9F},     {0x2028, 0x202E},
                                                               {0x2066, 0x2069}, {0xD800, 0xDFFF}, {0xFDD0, 0xFDEF}};
    for (char32_t code = 0; code <= 0x110000; ++code) {
        const bool isHidden =
            (code & 0xFFFF) >= 0xFFFE || code > 0x10FFFF || std::ranges::any_of(hidden, [code](const auto& range) {
                return code >= range.first && code <= range.second;
            });
        ASSERT_EQ(isPrintable(code), !isHidden) << std::hex << static_cast<unsigned>(code);
    }
}

/// RFC 3629, section 3.
std::string encoded(char32_t code) {
    const auto byte = [](char32_t bits) { return static_cast<char>(static_cast<unsigned char>(bits)); };
    if (code < 0x80) return {byte(code)};
    if (code < 0x800) return {byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F))};
    if (code < 0x10000) return {byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
    return {byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)), byte(0x80 | (code >> 6 & 0x3F)),
            byte(0x80 | (code & 0x3F))};
}

TEST(Utf8, TakesEveryCodePointAndNoOther) {
    for (char32_t code = 0; code <= 0x110400; ++code) {
        const std::string text = encoded(code) + "x";
        std::string_view rest = text;
        const auto taken = takeCodePoint(rest);
        const bool isCharacter = code <= 0x10FFFF && (code < 0xD800 || code > 0xDFFF);
        ASSERT_EQ(taken.has_value(), isCharacter) << std::hex << static_cast<unsigned>(code);
        ASSERT_EQ(rest, isCharacter ? "x" : text) << std::hex << static_cast<unsigned>(code);
        if (isCharacter) {
            ASSERT_EQ(*taken, code);
        }
        std::string_view cut = std::string_view(text).substr(0, text.size() - 2);
        ASSERT_EQ(takeCodePoint(cut).has_value(), false) << "the last byte is missing";
    }
    // Overlong forms, and bytes that begin nothing.
    for (const std::string_view text : {"\xc0\x80", "\xc1\xbf", "\xe0\x9f\xbf", "\xf0\x8f\xbf\xbf", "\xf5\x80\x80\x80",
                                        "\x80", "\xbf", "\xff", "\xe2\x82(", "\xe2(\x82"}) {
        std::string_view rest = text;
        EXPECT_FALSE(takeCodePoint(rest)) << printable(text);
        EXPECT_EQ(rest, text);
    }
}

TEST(Printable, LeavesLinesWhereTheyAreWanted) {
    EXPECT_EQ(printableLines("one\ntwo\r\x1b"), "one\ntwo\\u000d\\u001b");
}

TEST(Printable, IsDoneOnceAndForAll) {
    for (const std::string_view text : {"\x1b\u202e\xff", "plain", "\\u001b"})
        EXPECT_EQ(printable(printable(text)), printable(text));
}

TEST(Printable, NoByteStringLeavesAControlBehind) {
    std::uint64_t state = 20261129;
    for (int round = 0; round < 20'000; ++round) {
        std::string text;
        for (int i = 0; i < 12; ++i) {
            state = state * 6364136223846793005u + 1442695040888963407u;
            text += static_cast<char>(state >> 56);
        }
        const std::string shown = printable(text);
        EXPECT_TRUE(isText(shown));
        std::string_view rest = shown;
        for (const char c : rest) EXPECT_TRUE(static_cast<unsigned char>(c) >= 0x20 && c != 0x7f);
        EXPECT_EQ(shown.find("\xc2\x9b"), std::string::npos);
        EXPECT_EQ(shown.find("\xe2\x80\xae"), std::string::npos);
    }
}

TEST(Printable, AnErrorIsOnePrintableLine) {
    const Error error{
        ErrorKind::Format, "the member \"\x1b]0;x\x07\" isn't known", {"/a\u202eb", 2, 3}, "fi\nle\xf0\x1b.json"};
    EXPECT_EQ(error.oneLine(),
              "fi\\u000ale\\xf0\\u001b.json:2:3: /a\\u202eb: the member \"\\u001b]0;x\\u0007\" isn't known");
}

TEST(Printable, JsonSaysTheSameTextAndIsPrintableItself) {
    for (const std::string_view text : {"\x1b[31m\u009b\u202e\u2028", "\"\\/\n\t\r\b", "\U0001fffe\U0010ffff\uffff",
                                        "Größe \U0001F6DF", "<script>&"}) {
        const std::string json = jsonString(text);
        EXPECT_EQ(printable(json), json);
        EXPECT_EQ(nlohmann::json::parse(json).get<std::string>(), text);
    }
    EXPECT_EQ(jsonString("a\xff"), "\"a\uFFFD\"");
}

}  // namespace
}  // namespace tiepoint
