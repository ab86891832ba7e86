// The potential walk: Kirchhoff's voltage law round every loop, of the benches of the harbour and of random ones; and each step against
// the law of its own element, which knows nothing of the walk.

#include "core/why/potential_walk.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/circuit/element.h"
#include "support/solved_bench.h"
#include "support/sound_benches.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace tiepoint {
namespace {

using test::solveCompact;

constexpr double kVolt = 1e-9;

int partAt(const Snapshot& s, std::string_view id) { return s.layout->bench->partIndex(id); }

/// Ids of the parts in the order of the walk.
std::vector<std::string> partsOf(const Snapshot& s, const PotentialWalk& walk) {
    std::vector<std::string> ids;
    for (const WalkStep& step : walk.steps)
        if (step.part >= 0) ids.push_back(s.layout->bench->parts[step.part].id);
    return ids;
}

/// Ohm's law (G. S. Ohm 1827) for a resistor: the potential falls by R I along the current.
void checkResistor(const Snapshot& s, const WalkStep& step) {
    const Part& part = s.layout->bench->parts[step.part];
    if (part.kind->name != "resistor") return;
    const double ampere = std::abs(s.leadCurrent[s.layout->leadIndex(step.part, 0)]);
    const double fall = part.value(part.kind->valueIndex("resistance")) * ampere;
    EXPECT_NEAR(-step.volt, fall, kVolt + 1e-9 * fall) << part.id;
    EXPECT_NEAR(step.ampere, ampere, 1e-9) << part.id;
}

/// Whatever the walk: it closes, metal is flat, and the steps add up to nothing (G. Kirchhoff 1845).
void checkWalk(const Snapshot& s, const PotentialWalk& walk) {
    ASSERT_EQ(walk.end, WalkEnd::Closed);
    ASSERT_EQ(walk.steps.size() + 1, walk.points.size());
    EXPECT_EQ(walk.points.front().joint, walk.points.back().joint);
    double sum = 0;
    std::vector<int> met;
    for (std::size_t i = 0; i < walk.steps.size(); ++i) {
        const WalkStep& step = walk.steps[i];
        const WalkPoint &from = walk.points[i], &to = walk.points[i + 1];
        sum += step.volt;
        EXPECT_NEAR(to.volt - from.volt, step.volt, kVolt);
        EXPECT_NE(step.part >= 0, step.piece >= 0);
        if (step.piece >= 0) {
            const Piece& piece = s.layout->pieces[step.piece];
            EXPECT_EQ(step.volt, 0) << "metal is flat";
            EXPECT_TRUE((piece.from == from.joint && piece.to == to.joint) ||
                        (piece.to == from.joint && piece.from == to.joint));
            continue;
        }
        EXPECT_GT(step.ampere, 0);
        met.push_back(step.part);
        checkResistor(s, step);
        // What has stored something gives it back; and in means over a period a part may carry its current uphill.
        const bool rises = s.layout->bench->parts[step.part].kind->isSupply || movesByItself(*s.layout->bench);
        EXPECT_TRUE(rises || step.volt <= kVolt) << "current falls through parts";
    }
    EXPECT_LE(std::abs(sum), kVolt);
    std::ranges::sort(met);
    EXPECT_TRUE(std::ranges::adjacent_find(met) == met.end()) << "no part is walked twice";
    for (const WalkDivision& division : walk.divisions) {
        EXPECT_GT(division.share(), 0);
        EXPECT_LT(division.share(), 1);
    }
}

TEST(PotentialWalk, GoesRoundASimpleLoop) {
    // Worked by hand: 9 V over 100 and 200 ohm in a row is 30 mA, so it falls by 3 V and by 6 V.
    const auto s = solveCompact(
        "half; PS1 top+3 bottom-3 9; R1 c5 c10 100; R2 d10 d15 200; W1 top+5 a5 red; W2 a15 top-13 black; W3 top-1 "
        "bottom-1 black");
    for (const char* id : {"PS1", "R1", "R2"}) {
        SCOPED_TRACE(id);
        const PotentialWalk walk = walkPotential(*s, partAt(*s, id));
        checkWalk(*s, walk);
        EXPECT_EQ(partsOf(*s, walk), (std::vector<std::string>{"PS1", "R1", "R2"}));
        EXPECT_TRUE(walk.divisions.empty());
        EXPECT_NEAR(walk.points.front().volt, 0, kVolt);
        std::vector<double> volts;
        for (const WalkStep& step : walk.steps)
            if (step.part >= 0) volts.push_back(step.volt);
        EXPECT_NEAR(volts[0], 9, 1e-3);
        EXPECT_NEAR(volts[1], -3, 1e-3);
        EXPECT_NEAR(volts[2], -6, 1e-3);
        // bottom-3, top+3, top+5, a5, c5, c10, d10, d15, a15, top-13, top-1, bottom-1, bottom-3
        std::vector<std::string> holes;
        for (const WalkPoint& point : walk.points)
            holes.push_back(shortName(s->layout->holeAt(s->layout->joints[point.joint].hole)));
        EXPECT_EQ(holes, (std::vector<std::string>{"bottom-3", "top+3", "top+5", "a5", "c5", "c10", "d10", "d15", "a15",
                                                   "top-13", "top-1", "bottom-1", "bottom-3"}));
    }
}

TEST(PotentialWalk, FollowsTheLargestShareAndSaysSo) {
    // Side by side 100 and 300 ohm behind 75 ohm: the currents are as 3 to 1.
    const auto s = solveCompact(
        "half; PS1 top+3 bottom-3 6; R1 c4 c8 75; R2 a8 a14 100; R3 e8 e14 300; W1 top+4 a4 red; W2 b14 top-12 black; "
        "W3 top-1 bottom-1 black");
    const PotentialWalk walk = walkPotential(*s, partAt(*s, "R1"));
    checkWalk(*s, walk);
    EXPECT_EQ(partsOf(*s, walk), (std::vector<std::string>{"PS1", "R1", "R2"}));
    ASSERT_EQ(walk.divisions.size(), 1u);
    EXPECT_NEAR(walk.divisions[0].share(), 0.75, 1e-6);
    EXPECT_TRUE(walk.divisions[0].largest);
    EXPECT_NEAR(walk.divisions[0].wholeAmpere, 6.0 / 150, 1e-4);
    // Through the smaller branch when that one is asked for.
    const PotentialWalk other = walkPotential(*s, partAt(*s, "R3"));
    checkWalk(*s, other);
    EXPECT_EQ(partsOf(*s, other), (std::vector<std::string>{"PS1", "R1", "R3"}));
    ASSERT_EQ(other.divisions.size(), 1u);
    EXPECT_NEAR(other.divisions[0].share(), 0.25, 1e-6);
    EXPECT_FALSE(other.divisions[0].largest);
}

TEST(PotentialWalk, GoesThroughSuppliesInARow) {
    const auto s = solveCompact(
        "half; PS1 top+3 a20 5; PS2 b20 bottom-3 3; R1 c5 c12 100; W1 top+5 a5 red; W2 a12 top-10 black; W3 top-1 "
        "bottom-1 black");
    for (const char* id : {"PS1", "PS2", "R1"}) {
        const PotentialWalk walk = walkPotential(*s, partAt(*s, id));
        checkWalk(*s, walk);
        EXPECT_EQ(partsOf(*s, walk).size(), 3u) << id;
    }
}

TEST(PotentialWalk, SaysWhyThereIsNone) {
    const char* const kBeacon =
        "half; PS1 top+3 bottom-3 5; R1 c5 c10 330; S1 e10; D1 g12 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black";
    const auto open = solveCompact(kBeacon);
    EXPECT_EQ(walkPotential(*open, partAt(*open, "D1")).end, WalkEnd::NoCurrent);
    Inputs held;
    held.held.insert("S1");
    const auto closed = solveCompact(kBeacon, held);
    checkWalk(*closed, walkPotential(*closed, partAt(*closed, "D1")));
    const auto off = solveCompact("half; PS1 top+3 bottom-3 5 0.5 off; R1 top+5 bottom-5 330");
    EXPECT_EQ(walkPotential(*off, 0).end, WalkEnd::Off);
    EXPECT_TRUE(walkPotential(*off, 0).points.empty());
}

/// Every part that carries current is on a loop.
int checkAll(const Snapshot& s) {
    int walked = 0;
    for (int part = 0; part < static_cast<int>(s.layout->bench->parts.size()); ++part) {
        SCOPED_TRACE(s.layout->bench->parts[part].id);
        const PotentialWalk walk = walkPotential(s, part);
        if (walk.end == WalkEnd::NoCurrent || walk.end == WalkEnd::Off) continue;
        if (walk.end == WalkEnd::Floating) {  // a second supply that nothing ties to the first
            EXPECT_TRUE(std::isnan(s.leadVoltage(s.layout->firstLead[part])));
            continue;
        }
        checkWalk(s, walk);
        const auto ids = partsOf(s, walk);
        EXPECT_TRUE(std::ranges::find(ids, s.layout->bench->parts[part].id) != ids.end());
        ++walked;
    }
    return walked;
}

TEST(PotentialWalk, KirchhoffHoldsOnTheDemoBenchesInEveryPressing) {
    int walked = 0;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.ends_with(".bench.json")) continue;
        SCOPED_TRACE(file.name);
        const auto read = readBench(file.text);
        ASSERT_TRUE(read.ok());
        const auto bench = std::make_shared<const Bench>(read->bench);
        Inputs inputs;
        walked += checkAll(*evaluate(bench, inputs));
        for (const Part& part : bench->parts)
            if (part.kind->hasCap) inputs.held.insert(part.id);
        walked += checkAll(*evaluate(bench, inputs));
    }
    EXPECT_GT(walked, 30);
    for (const test::SoundBench& sound : test::soundBenches()) {
        SCOPED_TRACE(sound.name);
        walked += checkAll(*solveCompact(sound.text));
    }
    EXPECT_GT(walked, 60);
}

TEST(PotentialWalk, KirchhoffHoldsOnRandomBenches) {
    std::mt19937 random(63);
    int walked = 0;
    for (int round = 0; round < 200; ++round) {
        SCOPED_TRACE(round);
        const auto s = test::solveAtRandom(random);
        ASSERT_EQ(s->status(), Status::Solved);
        walked += checkAll(*s);
    }
    EXPECT_GT(walked, 600);
}

}  // namespace
}  // namespace tiepoint
