// Hunts: what is planted changes what the bench does, is found by whoever measures, and stays secret in the file. Benches are those of the
// examiner, which knows nothing of slips or hunts, and the harbour's.

#include "core/hunt/hunt.h"

#include "core/bench/bench_file.h"
#include "core/bench/seal.h"
#include "core/findings/reveal.h"
#include "core/hunt/hidden_slip.h"
#include "core/hunt/hints.h"
#include "core/hunt/hunter.h"
#include "examiner/sound_bench.h"
#include "support/compact_bench.h"
#include "support/sound_benches.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>

namespace tiepoint {
namespace {

constexpr int kWorkBenches = 8;
constexpr std::uint64_t kWorkSeed = 7000;  // final figures come from other seeds
constexpr const char* kPier =
    "half; PS1 top+3 bottom-3 5; S1 e5; R1 c16 c21 330; D1 h21 h24 red; W1 top+4 a5 red; W2 d7 d16 blue; "
    "W4 d21 g21 green; W3 j24 bottom-20 black";

std::shared_ptr<const Bench> pier() { return std::make_shared<const Bench>(test::compactBench(kPier)); }

std::shared_ptr<const Bench> harbourTarget(const std::string& name) {
    auto read =
        readBenchFile(std::filesystem::path(TIEPOINT_SOURCE_DIR) / "resources/benches" / (name + ".bench.json"));
    return std::make_shared<const Bench>(std::move(read).value().bench);
}

/// Sound benches that something can be hunted on.
std::vector<std::shared_ptr<const Bench>> workBenches() {
    std::vector<std::shared_ptr<const Bench>> benches;
    for (const char* name : {"beacon-lamp", "lock-gate", "quay-bell-lamp", "two-way-stair-lamp", "three-buoys"})
        benches.push_back(harbourTarget(name));
    for (int n = 0; n < kWorkBenches; ++n) {
        auto bench = std::make_shared<const Bench>(
            examiner::soundBench(kWorkSeed + static_cast<std::uint64_t>(n), 3 + n % 8).bench);
        if (!plantsOf(HuntGround(bench)).empty()) benches.push_back(std::move(bench));
    }
    return benches;
}

Plant plantOf(const HuntGround& ground, std::string_view kind, std::string_view thing) {
    for (const Plant& plant : plantsOf(ground))
        if (plant.slip.kind->name == kind && plant.things.front() == thing) return plant;
    throw std::invalid_argument("no plant");
}

TEST(Hunt, EveryPlantChangesWhatTheBenchDoes) {
    int planted = 0;
    for (const auto& target : workBenches()) {
        const auto positions = examiner::positionsOf(*target);
        const auto wanted = examiner::behave(*target, positions);
        for (const Plant& plant : plantsOf(HuntGround(target))) {
            const auto behaviour = examiner::behave(plant.bench, positions);
            EXPECT_FALSE(examiner::asWanted(behaviour, wanted)) << slipInWords(*target, plant.slip);
            EXPECT_FALSE(plant.seen.empty());
            ++planted;
        }
    }
    EXPECT_GT(planted, 150);
}

TEST(Hunt, WhoMeasuresEverywhereProvesTheThing) {
    int hunted = 0;
    for (const auto& target : workBenches()) {
        const HuntGround ground(target);
        const auto set = makeHunts(target, 2, 5);
        ASSERT_TRUE(set.ok());
        for (const Plant& plant : set->hunts) {
            const Bench bench = huntBench(ground, plant);
            const auto hidden = hiddenSlipOf(bench);
            ASSERT_TRUE(hidden) << slipInWords(*target, plant.slip);
            const HuntVerdict verdict =
                judge(bench, *hidden, {plant.things.front(), plant.fault, test::readEverywhere(bench)});
            EXPECT_TRUE(verdict.solved()) << slipInWords(*target, plant.slip) << ": " << verdict.text;
            ++hunted;
        }
    }
    EXPECT_GT(hunted, 16);
}

TEST(Hunt, NoOtherThingIsEverProved) {
    for (const auto& target : {pier(), harbourTarget("lock-gate"), harbourTarget("two-way-stair-lamp")}) {
        const HuntGround ground(target);
        const auto set = makeHunts(target, 2, 2);
        for (const Plant& plant : set->hunts) {
            const Bench bench = huntBench(ground, plant);
            const auto hidden = hiddenSlipOf(bench);
            ASSERT_TRUE(hidden);
            const auto evidence = test::readEverywhere(bench);
            const auto tryThing = [&](const std::string& id) {
                if (std::ranges::find(plant.things, id) != plant.things.end()) return;
                EXPECT_FALSE(judge(bench, *hidden, {id, plant.fault, evidence}).proved) << id;
            };
            for (const Part& part : bench.parts) tryThing(part.id);
            for (const Jumper& jumper : bench.jumpers) tryThing(jumper.id);
        }
    }
}

TEST(Hunt, ReadingsBeforeAndAfterProveABrokenJumper) {
    const HuntGround ground(pier());
    const Plant plant = plantOf(ground, "broken-jumper", "W2");
    const Bench bench = huntBench(ground, plant);
    const auto hidden = hiddenSlipOf(bench);
    ASSERT_TRUE(hidden);
    EXPECT_EQ(hidden->seen, "D1 stays dark while S1 is pressed.");
    const examiner::Position pressed{{{"S1", 1}}, -1};
    const HuntReading before = test::readAt(bench, test::holeAt("A.a7"), pressed);
    const HuntReading after = test::readAt(bench, test::holeAt("A.b16"), pressed);
    const HuntReading far = test::readAt(bench, test::holeAt("A.j21"), pressed);
    EXPECT_EQ(meterReading(*before.at, before.at->layout->bench->partIndex(before.meter))->text(), "5.00 V");
    const Fault* broken = findFault("broken-inside");
    EXPECT_TRUE(judge(bench, *hidden, {"W2", broken, {before, after}}).solved());
    EXPECT_TRUE(judge(bench, *hidden, {"W2", findFault("no-contact"), {before, after}}).solved());
    // One of them leaves other things, and none proves nothing.
    const HuntVerdict half = judge(bench, *hidden, {"W2", broken, {after}});
    EXPECT_TRUE(half.thing && half.fault);
    EXPECT_FALSE(half.proved);
    EXPECT_FALSE(half.others.empty());
    EXPECT_FALSE(judge(bench, *hidden, {"W2", broken, {before, far}}).proved) << "R1 would read the same";
    EXPECT_EQ(judge(bench, *hidden, {"W2", broken, {}}).text, "Choose the readings that show it.");
    EXPECT_FALSE(judge(bench, *hidden, {"W2", findFault("turned-round"), {before, after}}).solved());
    // A right guess isn't told where it isn't proved.
    EXPECT_EQ(half.text.find("W2"), std::string::npos) << half.text;
    const HuntVerdict wrong = judge(bench, *hidden, {"R1", broken, {before, after}});
    EXPECT_FALSE(wrong.thing);
}

TEST(Hunt, TheSameNumberGivesTheSameHuntsAndAnotherOneOthers) {
    const auto kinds = [](std::uint64_t seed) {
        std::string all;
        const auto target = pier();
        const auto set = makeHunts(target, 12, seed);
        for (const Plant& plant : set->hunts) all += slipInWords(*target, plant.slip) + '\n';
        return all;
    };
    EXPECT_EQ(kinds(1), kinds(1));
    EXPECT_NE(kinds(1), kinds(2));
    EXPECT_NE(kinds(2), kinds(3));
}

TEST(Hunt, AClassSetIsEquallyHardAndTakesTurnsAmongFaults) {
    const auto set = makeHunts(pier(), 30, 4);
    ASSERT_TRUE(set.ok());
    ASSERT_EQ(set->hunts.size(), 30u);
    std::map<const Fault*, int> counts;
    for (const Plant& plant : set->hunts) {
        EXPECT_EQ(plant.readings, set->readings);
        ++counts[plant.fault];
    }
    EXPECT_GE(counts.size(), 2u);
}

TEST(Hunt, TheFileKeepsTheSecretAndTheTableHasIt) {
    const HuntGround ground(pier());
    const Bench bench = huntBench(ground, plantOf(ground, "broken-jumper", "W2"));
    const std::string text = writeBench(bench);
    for (const char* telling : {"open inside", "\"condition\"", "broken", "dead", "Take another"})
        EXPECT_EQ(text.find(telling), std::string::npos) << telling;
    const auto read = readBench(text);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_TRUE(read->warnings.empty());
    EXPECT_EQ(read->bench, bench);
    EXPECT_EQ(read->bench.findJumper("W2")->condition, Condition::OpenInside);
    EXPECT_EQ(writeBench(read->bench), text);
}

TEST(Hunt, ADamagedSecretIsAnErrorWithItsPlace) {
    const HuntGround ground(pier());
    std::string text = writeBench(huntBench(ground, plantOf(ground, "broken-jumper", "W2")));
    const std::size_t at = text.find("\"slip\": \"") + 30;
    text[at] = text[at] == 'A' ? 'B' : 'A';
    const auto read = readBench(text);
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(read.error().place.pointer, "/hunt");
    EXPECT_EQ(read.error().message, "what this bench hides is damaged: take a fresh copy of the file");
}

TEST(Hunt, ItIsOverOnceTheThingIsSwapped) {
    const HuntGround ground(pier());
    Bench bench = huntBench(ground, plantOf(ground, "broken-jumper", "W2"));
    EXPECT_TRUE(isHunting(bench));
    EXPECT_EQ(revealOf(bench), Reveal::Nothing);
    EXPECT_FALSE(mayReveal(bench, Reveal::Mend));
    const auto hidden = hiddenSlipOf(bench);
    const auto mend = apply(bench, hidden->mend);
    ASSERT_TRUE(mend.ok());
    EXPECT_FALSE(isHunting(mend->bench));
    EXPECT_TRUE(isSound(mend->bench));
    // Pulled out is not mended.
    const auto pulled = apply(bench, removeEdit(bench, {"W2"}));
    ASSERT_TRUE(pulled.ok());
    EXPECT_TRUE(isHunting(pulled->bench));
}

TEST(Hunt, ABenchWithoutLightOrSupplyHasNoHunt) {
    for (const char* text : {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330", "half; R1 c8 c14 330; D1 e14 f14 red"}) {
        const auto set = makeHunts(std::make_shared<const Bench>(test::compactBench(text)), 3, 1);
        ASSERT_FALSE(set.ok());
        EXPECT_EQ(set.error().message.find("nothing can be hunted here"), 0u);
    }
}

TEST(Hunt, EveryKindOfSlipHasAFaultOrNoThingToBlame) {
    for (const SlipKind* kind : slipKinds()) {
        const bool none = kind->name == "jumper-missing" || kind->name == "jumper-extra" ||
                          kind->name == "rails-apart" || kind->name == "rail-halves" || kind->name == "meter-dial";
        EXPECT_EQ(faultOf(*kind) == nullptr, none) << kind->name;
    }
}

TEST(Hunt, ThreeHintsTellMoreAndMore) {
    const HuntGround ground(pier());
    const Bench bench = huntBench(ground, plantOf(ground, "broken-jumper", "W2"));
    const auto hints = hintsFor(bench, *hiddenSlipOf(bench));
    ASSERT_EQ(hints.size(), 3u);
    EXPECT_EQ(hints[0], "Plus comes as far as a7 while S1 is pressed.");
    EXPECT_EQ(hints[1], "What lies between a7 and a16?");
    EXPECT_EQ(hints[2], "Look at W2 and what it is plugged into.");
}

}  // namespace
}  // namespace tiepoint
