// Slips matter, and the judge can be trusted: who puts the slip right scores everything, who says nothing scores nothing, and who breaks
// something is caught.
#include "examiner/judge.h"

#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "core/edit/clashes.h"
#include "examiner/sound_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::examiner {
namespace {

constexpr std::uint64_t kFirstOfJudge = 700;  // neither work nor final seeds
constexpr int kCases = 16;

std::optional<Case> caseOf(int number, int slips) {
    const SoundBench sound = soundBench(kFirstOfJudge + number, 3 + number % 9);
    Chance chance(number);
    return drawCase(sound.bench, sound.parked, slips, chance);
}

Report reportOf(const Case& drawn, const Edit& mend) {
    Finding finding;
    finding.rule = "oracle";
    finding.parts = drawn.slips[0].things;
    finding.text = "It was so.";
    finding.mend = Mend{"Put it back", mend};
    return Report{0, {finding}};
}

TEST(Slips, ChangeWhatABenchDoesAndCanBeBuilt) {
    int found = 0;
    for (int i = 0; i < kCases; ++i) {
        const auto drawn = caseOf(i, 1);
        if (!drawn) continue;
        ++found;
        EXPECT_TRUE(validate(drawn->bench()).ok());
        EXPECT_TRUE(Occupancy(drawn->bench()).all().empty());
        EXPECT_FALSE(drawn->bench() == drawn->wanted);
        EXPECT_FALSE(asWanted(behave(drawn->bench(), drawn->positions), drawn->wantedBehaviour))
            << drawn->slips[0].words;
    }
    EXPECT_GE(found, kCases - 3);
}

TEST(Slips, AreTheSameForTheSameSeed) {
    for (int i = 0; i < 5; ++i) {
        const auto one = caseOf(i, 2), other = caseOf(i, 2);
        ASSERT_EQ(one.has_value(), other.has_value());
        EXPECT_TRUE(!one || one->bench() == other->bench());
    }
}

bool knowsConditions() {
    const auto read = readBench(R"({"format": "tiepoint-bench", "version": 1, "title": "", "boards": [],
        "parts": [{"id": "D1", "kind": "led", "condition": "dead"}], "jumpers": []})");
    return read && read.value().warnings.empty();
}

TEST(Slips, EveryKindIsDrawn) {
    const std::set<std::string_view> kindsOfCondition{"dead light", "part open inside", "broken jumper", "dry contact"};
    std::set<std::string> kinds;
    for (int i = 0; i < 40; ++i) {
        const SoundBench sound = soundBench(kFirstOfJudge + i, 4 + i % 9);
        Chance chance(i);
        const auto positions = positionsOf(sound.bench);
        const Behaviour wanted = behave(sound.bench, positions);
        for (const SlipKind& kind : slipKinds()) {
            for (int j = 0; j < 5; ++j) {
                const auto slip =
                    kinds.contains(std::string(kind.name)) ? std::nullopt : kind.draw(sound.bench, chance);
                if (slip && validate(slip->bench).ok() && !asWanted(behave(slip->bench, positions), wanted))
                    kinds.insert(std::string(kind.name));
            }
        }
    }
    for (const SlipKind& kind : slipKinds()) {
        // What can't be told from the outside takes a bench format that knows conditions of parts.
        const bool possible = kindsOfCondition.contains(kind.name) ? knowsConditions() : true;
        EXPECT_EQ(kinds.contains(std::string(kind.name)), possible) << kind.name;
    }
}

TEST(Judge, WhoPutsTheSlipRightScoresEverything) {
    for (int slips = 1; slips <= 2; ++slips) {
        for (int i = 0; i < kCases; ++i) {
            const auto drawn = caseOf(i, slips);
            if (!drawn) continue;
            const Verdict verdict = judge(*drawn, [&](const auto& snapshot) {
                return reportOf(*drawn, changesBetween(*snapshot->layout->bench, drawn->wanted));
            });
            EXPECT_TRUE(verdict.told && verdict.causeFirst && verdict.mendAsWanted && !verdict.harmful)
                << drawn->slips[0].words;
        }
    }
}

TEST(Judge, WhoSaysNothingScoresNothing) {
    for (int i = 0; i < kCases; ++i) {
        const auto drawn = caseOf(i, 1);
        if (!drawn) continue;
        const Verdict verdict = judge(*drawn, [](const auto&) { return Report{}; });
        EXPECT_FALSE(verdict.told || verdict.toldAll || verdict.causeFirst || verdict.mendAsWanted || verdict.harmful);
    }
}

TEST(Judge, WhoAccusesAnotherPartScoresNothing) {
    Bench bench = soundBench(kFirstOfJudge + 1, 14).bench;
    Chance chance(4);
    const auto drawn = drawCase(bench, {}, 1, chance);
    ASSERT_TRUE(drawn);
    // Nothing on the bench has that id.
    const Verdict verdict = judge(*drawn, [](const auto&) {
        Finding finding;
        finding.parts = {"X99"};
        return Report{0, {finding}};
    });
    EXPECT_FALSE(verdict.told || verdict.causeFirst || verdict.mendAsWanted);
}

/// The edit that pulls out the first light that shines somewhere.
Edit pullsALight(const Bench& bench) {
    const Behaviour behaviour = behave(bench, positionsOf(bench));
    for (const auto& [light, brightness] : behaviour.moments[0].lights) {
        if (behaviour.brightest(light) >= kBrightEnough) return removeEdit(bench, {light});
    }
    return {};
}

TEST(Judge, CatchesAMendThatHarms) {
    for (int i = 0; i < 10; ++i) {
        const Bench bench = soundBench(kFirstOfJudge + i, 8).bench;
        const Edit harm = pullsALight(bench);
        if (harm.operations.empty()) continue;
        const auto verdict = judgeSound(bench, [&](const auto&) {
            Finding finding;
            finding.severity = Severity::Remark;
            finding.mend = Mend{"Pull it", harm};
            return Report{0, {finding}};
        });
        EXPECT_TRUE(verdict.silent);
        EXPECT_EQ(verdict.remarks, 1);
        EXPECT_EQ(verdict.harm.size(), 1u);
    }
}

TEST(Judge, HearsAFalseAlarm) {
    const Bench bench = soundBench(kFirstOfJudge).bench;
    EXPECT_FALSE(judgeSound(bench, [](const auto&) { return Report{0, {Finding{}}}; }).silent);
    EXPECT_TRUE(judgeSound(bench, [](const auto&) { return Report{}; }).silent);
}

}  // namespace
}  // namespace tiepoint::examiner
