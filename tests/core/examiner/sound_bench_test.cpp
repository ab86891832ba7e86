// The examiner's own benches: the same for the same seed, buildable, and electrically sound by what is solved, not by how they were drawn.
#include "examiner/sound_bench.h"

#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "core/circuit/element.h"
#include "core/edit/clashes.h"
#include "core/snapshot/readings.h"

#include <gtest/gtest.h>

namespace tiepoint::examiner {
namespace {

constexpr std::uint64_t kFirstOfSound = 500;  // neither work nor final seeds
constexpr int kBenches = 12;

SoundBench benchOf(int number) { return soundBench(kFirstOfSound + number, 3 + number); }

TEST(SoundBench, SameSeedSameBench) {
    for (int i = 0; i < 3; ++i) {
        EXPECT_EQ(writeBench(soundBench(kFirstOfSound + i).bench), writeBench(soundBench(kFirstOfSound + i).bench));
        EXPECT_NE(writeBench(soundBench(kFirstOfSound + i).bench), writeBench(soundBench(kFirstOfSound + i + 1).bench));
    }
}

TEST(SoundBench, CanBeBuilt) {
    for (int i = 0; i < kBenches; ++i) {
        const SoundBench sound = benchOf(i);
        EXPECT_TRUE(validate(sound.bench).ok());
        EXPECT_TRUE(Occupancy(sound.bench).all().empty()) << writeBench(sound.bench);
        EXPECT_TRUE(readBench(writeBench(sound.bench)).ok());
    }
}

TEST(SoundBench, KeepsEveryLimitInEveryPosition) {
    for (int i = 0; i < kBenches; ++i) {
        const SoundBench sound = benchOf(i);
        for (const Position& position : positionsOf(sound.bench)) {
            // Solved here from scratch, without what the examiner keeps between positions.
            Bench bench = sound.bench;
            Inputs inputs;
            for (Part& part : bench.parts) {
                const auto thrown = position.throws.find(part.id);
                if (const int knob = part.kind->stateIndex("turn"); knob >= 0 && position.knobs >= 0)
                    part.state[knob] = position.knobs;
                if (thrown == position.throws.end()) continue;
                if (part.kind->hasCap && thrown->second == 1) inputs.held.insert(part.id);
                if (!part.kind->hasCap) part.state[0] = thrown->second;
            }
            const auto snapshot = evaluate(std::make_shared<Bench>(bench), inputs);
            ASSERT_EQ(snapshot->status(), Status::Solved);
            for (int part = 0; part < std::ssize(bench.parts); ++part) {
                for (const RatingShare& share : ratingShares(*snapshot, part)) {
                    EXPECT_TRUE(!share.rating->maximum || share.share() <= 1) << bench.parts[part].id << "\n"
                                                                              << writeBench(bench);
                }
            }
        }
    }
}

TEST(SoundBench, EveryLightIsMeantToShineAndEverySwitchToMatter) {
    for (int i = 0; i < kBenches; ++i) {
        const SoundBench sound = benchOf(i);
        const Behaviour behaviour = behave(sound.bench, positionsOf(sound.bench));
        for (const auto& [light, brightness] : behaviour.moments[0].lights) {
            EXPECT_TRUE(sound.parked.contains(light) || behaviour.brightest(light) >= kBrightEnough) << light;
        }
        EXPECT_TRUE(idleSwitches(sound.bench, sound.parked).empty());
        EXPECT_TRUE(behaviour.misprinted.empty());
    }
}

TEST(SoundBench, SaysWhyABenchIsNotSound) {
    Bench bench = soundBench(kFirstOfSound).bench;
    for (Part& part : bench.parts) {
        if (part.kind->isSupply) part.state[part.kind->stateIndex("on")] = 0;
    }
    EXPECT_NE(whyNotSound(bench, {}), "");
}

TEST(SoundBench, ComesOnEveryKindOfBoardWithEveryKindOfPart) {
    std::set<std::string> kinds, boards;
    for (int i = 0; i < 60; ++i) {
        const Bench bench = soundBench(kFirstOfSound + i, 3 + i % 11).bench;
        for (const Part& part : bench.parts) kinds.insert(part.kind->name);
        for (const Board& board : bench.boards) boards.insert(std::string(board.kind->name));
        if (bench.boards.size() > 1) boards.insert("docked");
    }
    // What follows light and warmth, diodes of a special sort, and what sounds or shows a trace aren't drawn yet: the numbers of its seeds stay those of the rest.
    const std::set<std::string> later = {"solar-cell",    "rgb-led",    "zener",         "schottky",
                                         "photoresistor", "thermistor", "buzzer-active", "oscilloscope"};
    for (const PartKind& kind : catalogue()) {
        if (later.contains(kind.name)) continue;
        // It judges by states of rest: what time changes isn't drawn yet.
        Bench alone;
        alone.parts.push_back(makePart(kind, "X1"));
        EXPECT_TRUE(movesByItself(alone) || kinds.contains(kind.name)) << kind.name;
    }
    EXPECT_EQ(boards, (std::set<std::string>{"docked", "full", "half", "mini"}));
}

TEST(SoundBench, ComesLarge) {
    const Bench bench = soundBench(kFirstOfSound, 62).bench;
    EXPECT_GE(bench.parts.size(), 55u);
}

}  // namespace
}  // namespace tiepoint::examiner
