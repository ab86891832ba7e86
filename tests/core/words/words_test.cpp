// Texts with named figures: which form is said, where figures go, and what is refused when they are read.

#include "core/words/words.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

Words wordsOf(std::string_view json) {
    const EmbeddedFile file{"words/xx/test.json", json};
    Result<Words> words = Words::read({&file, 1});
    EXPECT_TRUE(words.ok()) << words.error().oneLine();
    return std::move(words).value();
}

TEST(Words, FiguresGoWhereTheTextWantsThem) {
    const Words words =
        wordsOf(R"({"a.b": "{part} carries {current}", "a.turned": "{current} trägt {part}, ja {part}"})");
    EXPECT_EQ(words.say("a.b", {{"current", "9.37 mA"}, {"part", std::string("R1")}}), "R1 carries 9.37 mA");
    EXPECT_EQ(words.say("a.turned", {{"current", "9.37 mA"}, {"part", "R1"}}), "9.37 mA trägt R1, ja R1");
    EXPECT_EQ(words.figuresOf("a.b"), (std::set<std::string, std::less<>>{"part", "current"}));
}

TEST(Words, AFigureThatLooksLikeATextIsLeftAsItIs) {
    EXPECT_EQ(wordsOf(R"({"a.b": "{x}, {y}"})").say("a.b", {{"x", "{y}"}, {"y", "}"}}), "{y}, }");
}

TEST(Words, ACountChoosesTheForm) {
    const Words words =
        wordsOf(R"({"a.b": {"by": "n", "1": "jeden {what}", "2-4": "{n} {what}y", "other": "{n} {what}ów"}})");
    const auto said = [&](int n) { return words.say("a.b", {{"n", n}, {"what", "kabel"}}); };
    EXPECT_EQ(said(0), "0 kabelów");
    EXPECT_EQ(said(1), "jeden kabel");
    EXPECT_EQ(said(2), "2 kabely");
    EXPECT_EQ(said(4), "4 kabely");
    EXPECT_EQ(said(5), "5 kabelów");
    EXPECT_EQ(words.figuresOf("a.b"), (std::set<std::string, std::less<>>{"n", "what"}));
}

TEST(Words, ThingsInARow) {
    const std::vector<std::string> three{"D1", "D2", "D3"};
    EXPECT_EQ(sayList(three, "list.comma", "list.and"), "D1, D2 and D3");
    EXPECT_EQ(sayList(three, "list.and"), "D1 and D2 and D3");
    EXPECT_EQ(sayList(std::span(three).first(1), "list.and"), "D1");
    EXPECT_EQ(sayList({}, "list.and"), "");
}

TEST(Words, WhatCantBeSaidIsRefusedWithItsPlace) {
    struct Case {
        std::string_view json, told;
    };
    const Case cases[] = {
        {R"({"a": "{x"})", "words/xx/test.json: /a: a brace doesn't close"},
        {R"({"a": "x}"})", "words/xx/test.json: /a: a brace doesn't close"},
        {R"({"a": "{}"})", "words/xx/test.json: /a: a brace doesn't close"},
        {R"({"a": 7})", "words/xx/test.json: /a: there is no text for all \"other\" counts"},
        {R"({"a": {"by": "n", "1": "one"}})", "words/xx/test.json: /a: there is no text for all \"other\" counts"},
        {R"({"a": {"1": "one", "other": "all"}})",
         "words/xx/test.json: /a: \"by\" doesn't name the count that chooses the form"},
        {R"({"a": {"by": "n", "4-2": "x", "other": "y"}})",
         "words/xx/test.json: /a: a form is for counts, such as 1 or 2-4, or for all \"other\""},
        {R"({"a": {"by": "n", "few": "x", "other": "y"}})",
         "words/xx/test.json: /a: a form is for counts, such as 1 or 2-4, or for all \"other\""},
        {R"({"a": {"by": "n", "1": 1, "other": "y"}})", "words/xx/test.json: /a: a form is text"},
    };
    for (const Case& each : cases) {
        const EmbeddedFile file{"words/xx/test.json", each.json};
        const Result<Words> words = Words::read({&file, 1});
        ASSERT_FALSE(words.ok()) << each.json;
        EXPECT_EQ(words.error().oneLine(), each.told);
    }
    const EmbeddedFile twice{"words/xx/test.json", R"({"a": "x", "a": "y"})"};
    EXPECT_FALSE(Words::read({&twice, 1}).ok());
}

TEST(Words, AnIdStandsInOneFileOnly) {
    const EmbeddedFile files[] = {{"words/xx/one.json", R"({"a": "x"})"}, {"words/xx/two.json", R"({"a": "y"})"}};
    const Result<Words> words = Words::read(files);
    ASSERT_FALSE(words.ok());
    EXPECT_EQ(words.error().oneLine(), "words/xx/two.json: /a: the id stands in another file too");
}

}  // namespace
}  // namespace tiepoint
