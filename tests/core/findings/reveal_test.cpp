// How much is told: what each level leaves of a finding, what a lock keeps, and the words of a place.

#include "core/findings/reveal.h"

#include "core/bench/bench_file.h"
#include "core/findings/figure_words.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

#include <array>

namespace tiepoint::test {
namespace {

constexpr std::array kLevels{Reveal::Nothing, Reveal::Place, Reveal::Proof, Reveal::Mend};

Bench board(const char* kind = "half") { return compactBench(std::string(kind) + "; PS1 top+3 bottom-3 5"); }

Finding finding(std::vector<std::string> holes, std::vector<std::string> parts = {"D1"}) {
    Finding made;
    made.rule = "reversed";
    made.severity = Severity::Fault;
    made.parts = std::move(parts);
    for (const std::string& hole : holes) made.holes.push_back(*parseHole(hole));
    made.text = "D1 is the wrong way round.";
    made.figures = {{"anode", 0}, {"cathode", 5}};
    made.mend = Mend{"Turn D1 round", {}};
    return made;
}

TEST(Reveal, EachLevelAddsToTheOneBefore) {
    const std::vector<Finding> all{finding({"A.c14", "A.c16"})};
    EXPECT_TRUE(revealed(board(), all, Reveal::Nothing).empty());

    const auto place = revealed(board(), all, Reveal::Place);
    ASSERT_EQ(place.size(), 1u);
    EXPECT_TRUE(isPlaceOnly(place[0]));
    EXPECT_EQ(place[0].text, "Look around column 14.");
    EXPECT_EQ(place[0].holes, (std::vector<Hole>{*parseHole("A.c14")}));
    EXPECT_TRUE(place[0].parts.empty());
    EXPECT_TRUE(place[0].figures.empty());
    EXPECT_FALSE(place[0].mend);

    const auto proof = revealed(board(), all, Reveal::Proof);
    ASSERT_EQ(proof.size(), 1u);
    EXPECT_EQ(proof[0].text, all[0].text);
    EXPECT_EQ(proof[0].figures, all[0].figures);
    EXPECT_FALSE(proof[0].mend);

    const auto mend = revealed(board(), all, Reveal::Mend);
    ASSERT_EQ(mend.size(), 1u);
    EXPECT_EQ(mend[0].mend->text, "Turn D1 round");
}

TEST(Reveal, PlacesAreNamedWithoutTheRule) {
    Bench two = compactBench("half; board B half 34; PS1 top+3 bottom-3 5");
    struct Case {
        const Bench& bench;
        std::vector<std::string> holes, parts;
        const char* words;
    };
    const Bench one = board();
    for (const Case& each : {Case{one, {"A.top+3", "A.c9"}, {}, "Look around column 9."},
                             Case{one, {"A.bottom-7"}, {}, "Look along the bottom minus rail."},
                             Case{two, {"B.c9"}, {}, "Look around column 9 of board B."},
                             Case{two, {"A.top+9"}, {}, "Look along the top plus rail of board A."},
                             Case{one, {}, {"R1"}, "Look at R1."}, Case{one, {}, {}, "Look at the whole bench."}}) {
        const auto told = revealed(each.bench, {finding(each.holes, each.parts)}, Reveal::Place);
        ASSERT_EQ(told.size(), 1u);
        EXPECT_EQ(told[0].text, each.words);
    }
}

TEST(Reveal, ThePlaceOfSeveralFindingsIsToldOnce) {
    const std::vector<Finding> all{finding({"A.c14"}), finding({"A.h14"}), finding({"A.c20"})};
    EXPECT_EQ(revealed(board(), all, Reveal::Place).size(), 2u);
    EXPECT_EQ(revealed(board(), all, Reveal::Proof).size(), 3u);
}

TEST(Reveal, ALockKeepsWhatTheBenchDoesNotSay) {
    Bench bench = board();
    EXPECT_EQ(revealOf(bench), Reveal::Proof);  // place and proof, unless the bench says otherwise
    EXPECT_FALSE(isLocked(bench));
    for (const Reveal own : kLevels) {
        for (const Reveal wanted : kLevels) {
            bench.disclosure = Disclosure{own, {}, {}};
            EXPECT_TRUE(mayReveal(bench, wanted));
            bench.disclosure->lock = "anything";
            EXPECT_EQ(mayReveal(bench, wanted), wanted <= own);
        }
    }
}

TEST(Reveal, FiguresAreToldWithTheirUnits) {
    Finding told = finding({});
    EXPECT_EQ(figureWords(told), "anode 0 V, cathode 5.00 V");
    told.figures = {{"current", 0.059}, {"limit", 0.03}};
    EXPECT_EQ(figureWords(told), "current 59.0 mA, limit 30.0 mA");
    told.figures = {{"current", 0.186}, {"limit", 0.03}};  // no false digits
    EXPECT_EQ(figureWords(told), "current above three times its limit of 30.0 mA");
    told.figures = {{"power", 0.5}, {"limit", 0.25}};
    EXPECT_EQ(figureWords(told), "power 500 mW, limit 250 mW");
    told.figures = {{"D1", 0.012}, {"leads alone", 2}};  // a current by its part; what counts things has no unit
    EXPECT_EQ(figureWords(told), "D1 12.0 mA");
}

// --- in the file ---

std::string fileWith(const std::string& reveal) {
    return R"({"format": "tiepoint-bench", "version": 1, "title": "Beacon", "reveal": )" + reveal +
           R"(, "boards": [], "parts": [], "jumpers": []})";
}

TEST(Reveal, IsKeptInTheFileAsItIs) {
    for (const char* text : {R"({"level": 0})", R"({"level": 1})", R"({"level": 2})", R"({"level": 3})",
                             R"({"level": 1, "lock": "sha256:aa:bb"})", R"({"level": 2, "since": [1, 2]})"}) {
        const auto read = readBench(fileWith(text));
        ASSERT_TRUE(read.ok()) << text << read.error().message;
        ASSERT_TRUE(read->bench.disclosure);
        EXPECT_EQ(disclosureLine(*read->bench.disclosure), text);
        EXPECT_EQ(read->warnings.size(), std::string_view(text).find("since") == std::string_view::npos ? 0u : 1u);
        const std::string written = writeBench(read->bench);
        EXPECT_EQ(writeBench(readBench(written)->bench), written);
    }
    EXPECT_EQ(writeBench(board()).find("reveal"), std::string::npos);  // nothing is said where nothing was
}

TEST(Reveal, IsReadStrictly) {
    struct Case {
        const char *text, *pointer, *words;
    };
    for (const Case& each : {Case{"2", "/reveal", "an object"}, Case{"{}", "/reveal", "\"level\" is missing"},
                             Case{R"({"level": "2"})", "/reveal/level", "a number"},
                             Case{R"({"level": 4})", "/reveal/level", "no level 4"},
                             Case{R"({"level": 1.5})", "/reveal/level", "no level 1.5"},
                             Case{R"({"level": -1})", "/reveal/level", "no level"},
                             Case{R"({"level": 1, "lock": true})", "/reveal/lock", "text"},
                             Case{R"({"level": 1, "level": 1})", "/reveal", ""}}) {
        const auto read = readBench(fileWith(each.text));
        ASSERT_FALSE(read.ok()) << each.text;
        EXPECT_TRUE(read.error().place.pointer.starts_with(each.pointer)) << read.error().oneLine();
        EXPECT_NE(read.error().message.find(each.words), std::string::npos) << read.error().oneLine();
        EXPECT_GT(read.error().place.column, 1);
    }
    const auto endless = readBench(fileWith(R"({"level": 1, "lock": ")" + std::string(kLongestLock + 1, 'a') + "\"}"));
    ASSERT_FALSE(endless.ok());
    EXPECT_EQ(endless.error().place.pointer, "/reveal/lock");
}

TEST(Reveal, IsEditedAndTakenBack) {
    const Bench before = board();
    const auto done = apply(before, {"Reveal", {SetDisclosure{Disclosure{Reveal::Place, "lock", {}}}}});
    ASSERT_TRUE(done.ok());
    EXPECT_EQ(revealOf(done->bench), Reveal::Place);
    EXPECT_TRUE(isLocked(done->bench));
    EXPECT_EQ(apply(done->bench, done->inverse)->bench, before);
}

}  // namespace
}  // namespace tiepoint::test
