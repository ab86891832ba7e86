// What is printed of random circuits, read back: round every loop the volts add up to the supply's, at every hole and in every part the
// currents add up to nothing, what supplies give is what the parts take, and no figure is further from the true one than its rounding.

#include "core/snapshot/shown_figures.h"

#include "core/snapshot/readings.h"
#include "core/why/explain.h"
#include "core/why/potential_walk.h"
#include "support/printed.h"
#include "support/solved_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

using test::printed;
using test::PrintedSum;
using test::solveCompact;

constexpr double kGrain = 1e-3;  ///< of a step, for what rounding in the solver may move

/// Within so many steps of the true value; a bare zero stands for what the solver leaks.
void checkFigure(const Figure& figure, double exact, double steps) {
    EXPECT_EQ(figure.isKnown(), !std::isnan(exact));
    if (!figure.isKnown()) return;
    const test::Printed read = printed(figure.text());
    const double step = figure.scale().step();
    EXPECT_LE(std::abs(read.value() - exact), (steps + kGrain) * step) << figure.text() << " for " << exact;
}

void checkVolts(const Snapshot& s) {
    for (int net = 0; net < s.layout->netCount; ++net)
        checkFigure(s.shown().volt(net), s.solution.netVoltage[net], 0.5);
}

void checkCurrents(const Snapshot& s) {
    const Layout& layout = *s.layout;
    std::vector<PrintedSum> atJoint(layout.joints.size()), inPart(layout.bench->parts.size());
    for (int piece = 0; piece < static_cast<int>(layout.pieces.size()); ++piece) {
        const Figure figure = s.shown().pieceCurrent(piece);
        checkFigure(figure, s.pieceCurrent[piece], 1);
        atJoint[layout.pieces[piece].from].add(figure.text(), -1);
        atJoint[layout.pieces[piece].to].add(figure.text());
    }
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        const Figure figure = s.shown().leadCurrent(lead);
        checkFigure(figure, s.leadCurrent[lead], 1);
        inPart[layout.partOfLead(lead)].add(figure.text());
        if (layout.hubOfLead[lead] < 0) atJoint[layout.jointOfLead[lead]].add(figure.text(), -1);
    }
    for (std::size_t joint = 0; joint < layout.joints.size(); ++joint) {
        if (!layout.joints[joint].hub) {
            EXPECT_EQ(atJoint[joint].digits(), 0) << joint;
        }
    }
    for (int part = 0; part < static_cast<int>(inPart.size()); ++part) {
        EXPECT_EQ(inPart[part].digits(), 0) << layout.bench->parts[part].id;
        EXPECT_EQ(s.shown().through(part).in.text(), s.shown().through(part).out.text());
    }
}

void checkPowers(const Snapshot& s) {
    PrintedSum all;
    for (int part = 0; part < static_cast<int>(s.layout->bench->parts.size()); ++part) {
        checkFigure(s.shown().power(part), s.partPower[part], 1);
        all.add(s.shown().power(part).text());
    }
    EXPECT_EQ(all.digits(), 0) << "what supplies give is what parts take";
}

/// Round the loop of every part.
int checkWalks(const Snapshot& s) {
    int walked = 0;
    for (int part = 0; part < static_cast<int>(s.layout->bench->parts.size()); ++part) {
        const PotentialWalk walk = walkPotential(s, part);
        if (walk.end != WalkEnd::Closed) continue;
        PrintedSum round, falls;
        std::int64_t rises = 0;
        for (std::size_t i = 0; i < walk.steps.size(); ++i) {
            const WalkStep& step = walk.steps[i];
            if (step.part < 0) continue;
            round.add(step.shown.text());
            if (printed(step.shown.text()).digits > 0) rises += printed(step.shown.text()).digits;
            // From place to place the printed potentials differ by just the printed step.
            PrintedSum there;
            there.add(walk.points[i].shown.text());
            there.add(step.shown.text());
            there.add(walk.points[i + 1].shown.text(), -1);
            EXPECT_EQ(there.digits(), 0);
        }
        EXPECT_EQ(round.digits(), 0);
        ++walked;
    }
    return walked;
}

int checkSnapshot(const Snapshot& s) {
    checkVolts(s);
    checkCurrents(s);
    checkPowers(s);
    return checkWalks(s);
}

TEST(ShownFigures, AddUpOnRandomCircuits) {
    std::mt19937 random(64);
    int walked = 0;
    for (int round = 0; round < 200; ++round) {
        SCOPED_TRACE(round);
        const auto s = test::solveAtRandom(random);
        ASSERT_EQ(s->status(), Status::Solved);
        walked += checkSnapshot(*s);
    }
    EXPECT_GT(walked, 800);
}

TEST(ShownFigures, ManyEqualBranchesKeepTheirSum) {
    std::vector<test::Piece2> pieces{{"PS1", "bench-supply", "n0", "n1", {{"voltage", 5}}}};
    for (int k = 1; k <= 23; ++k)
        pieces.push_back({fmt::format("R{}", k), "resistor", "n0", "n1", {{"resistance", 470.0 + k}}});
    EXPECT_EQ(checkSnapshot(*evaluate(std::make_shared<const Bench>(test::layOut(pieces, {})))), 24);
}

// 5 V over 1 kohm, 330 ohm and 750 ohm: 2.404, 0.793 and 1.803 V. Rounded each for itself they make 4.99 V of 5.00 V.
TEST(ShownFigures, DropsOfALoopAreDifferencesOfItsPotentials) {
    const auto s = solveCompact(
        "half; PS1 top+3 bottom-3 5; R1 c5 c10 1000; R2 d10 d15 330; R3 c15 c20 750; W1 top+5 a5 red; W2 a20 bottom-18 "
        "black");
    const auto loop = simpleLoop(*s);
    ASSERT_TRUE(loop);
    PrintedSum drops;
    for (const Drop& drop : loop->drops) drops.add(drop.shown().text());
    EXPECT_EQ(loop->supplyShown.text(), "5.00 V");
    EXPECT_EQ(drops.digits(), 500);
}

// Two lights of 13.9 mA behind one supply: one current has one figure wherever it is told.
TEST(ShownFigures, OneCurrentIsOneFigure) {
    const auto s = solveCompact(
        "half; PS1 top+3 bottom-3 5; R1 c5 c10 220; D1 d10 d15 red; W1 top+5 a5 red; W2 a15 bottom-14 black");
    const std::string figure = s->shown().through(s->layout->bench->partIndex("D1")).in.text();
    EXPECT_EQ(figure, "13.9 mA");
    for (int part = 0; part < 3; ++part) EXPECT_EQ(s->shown().through(part).most().text(), figure);
    for (int jumper = 0; jumper < 2; ++jumper) EXPECT_EQ(s->shown().jumperCurrent(jumper).magnitude().text(), figure);
    const Answer answer = explain(*s, s->layout->bench->partIndex("D1"));
    std::string chain;
    for (const Cause& cause : answer.chain) chain += cause.text + '\n';
    EXPECT_NE(chain.find("13.9 mA flows through D1"), std::string::npos) << chain;
    EXPECT_NE(chain.find("is about 13.9 mA"), std::string::npos) << chain;
}

TEST(ShownFigures, EqualLightsShowEqualCurrents) {
    const auto s = solveCompact(
        "half; PS1 top+3 bottom-3 5; R1 c5 c10 330; D1 d10 d15 red; R2 h5 h10 330; D2 i10 i15 red; W1 top+5 a5 red; W2 "
        "top+6 f5 red; W3 a15 bottom-14 black; W4 f15 bottom-15 black");
    EXPECT_EQ(s->shown().through(s->layout->bench->partIndex("D1")).in.text(),
              s->shown().through(s->layout->bench->partIndex("D2")).in.text());
}

/// What a meter on volts shows in thousandths everything shows so, but nothing finer: millivolts with a decimal stay the meter's own.
TEST(ShownFigures, BesideAMeterVoltsHaveItsDigits) {
    const auto supplyWith = [](const std::string& lowerOhm, const char* dial) {
        const auto s = solveCompact("half; PS1 top+3 bottom-3 5; R1 c5 c10 1000; R2 d10 d15 " + lowerOhm +
                                    "; W1 top+5 a5 red; W2 a15 bottom-14 black; M1 e10 e15 " + dial);
        return s->shown().volt(s->layout->netOfLead[s->layout->leadIndex(0, 0)]).text();
    };
    EXPECT_EQ(supplyWith("430", "volts"), "5.000 V") << "the meter: 1.503 V";
    EXPECT_EQ(supplyWith("10", "volts"), "5.000 V") << "the meter: 49.5 mV";
    EXPECT_EQ(supplyWith("1000", "volts"), "5.00 V") << "the meter: 2.50 V";
    EXPECT_EQ(supplyWith("430", "off"), "5.00 V");
}

TEST(ShownFigures, AnOpenCircuitShowsNothingButItsVoltage) {
    const auto s = solveCompact(
        "half; PS1 top+3 bottom-3 5; R1 c5 c10 330; D1 d15 d10 red; W1 top+5 a5 red; W2 a15 bottom-14 black");
    EXPECT_EQ(s->shown().through(1).in.text(), "0 A") << "an LED the wrong way round leaks 5 pA in the solver";
    EXPECT_EQ(s->shown().power(1).text(), "0 W");
    EXPECT_EQ(s->shown().volt(s->layout->netOfLead[s->layout->leadIndex(1, 1)]).text(), "5.00 V");
}

TEST(ShownFigures, WithoutASolutionThereAreNone) {
    Bench bench = test::CompactBench("half; PS1 top+3 bottom-3 5; PS2 top+5 bottom-5 9; R1 top+7 bottom-7 330").take();
    for (int supply : {0, 1}) bench.parts[supply].values[bench.parts[supply].kind->valueIndex("seriesResistance")] = 0;
    const auto s = evaluate(std::make_shared<const Bench>(bench));
    ASSERT_EQ(s->status(), Status::None);
    EXPECT_FALSE(s->shown().through(2).in.isKnown());
    EXPECT_FALSE(s->shown().power(2).isKnown());
    EXPECT_FALSE(s->shown().volt(0).isKnown());
}

}  // namespace
}  // namespace tiepoint
