// The first build: judged by the circuit, in whatever order and place it is made.

#include "core/lesson/first_build.h"

#include "core/edit/placement.h"
#include "support/build_bench.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using test::BenchBuilder;

FirstBuildAdvice adviceFor(const Bench& bench, int reached = 0) {
    return firstBuildAdvice(*evaluate(std::make_shared<const Bench>(bench)), reached);
}

TEST(FirstBuild, GoesOnWithTheCircuit) {
    BenchBuilder builder(makeNewBench());
    EXPECT_EQ(adviceFor(builder.build()).step, 0);
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c13"}}, {{"resistance", 330}});
    EXPECT_EQ(adviceFor(builder.build()).step, 1);
    builder.part("D1", "led", {{"anode", "A.e13"}, {"cathode", "A.e14"}});
    EXPECT_EQ(adviceFor(builder.build()).step, 2);
    builder.jumper("A.a8", "A.top+8");
    EXPECT_EQ(adviceFor(builder.build()).step, 3);
    builder.jumper("A.a14", "A.bottom-12");
    EXPECT_EQ(adviceFor(builder.build()).step, 4);
    Bench off = builder.build();
    off.parts[0].state[0] = 0;
    EXPECT_EQ(adviceFor(off, 4).step, 5);
    EXPECT_EQ(adviceFor(builder.build(), 5).step, 5) << "done stays done";
}

TEST(FirstBuild, ItsWordsAndItsStagesAreThoseOfItsLesson) {
    const Lesson& lesson = firstBuildLesson();
    ASSERT_EQ(lesson.stepCount(), kFirstBuildSteps + 1) << "the last is said when all is done";
    for (int step = 0; step < lesson.stepCount(); ++step) {
        const Situation there = situationOf(lesson, step - 1);
        const FirstBuildAdvice advice = firstBuildAdvice(*evaluate(there.bench, there.inputs), step);
        EXPECT_EQ(advice.step, step);
        EXPECT_EQ(advice.title, lesson.steps[static_cast<std::size_t>(step)].caption);
        EXPECT_EQ(advice.text, lesson.steps[static_cast<std::size_t>(step)].note);
        EXPECT_TRUE(advice.action.empty()) << "who follows the lesson makes no slip";
    }
}

TEST(FirstBuild, AClickThatJoinsNothingDoesNotCount) {
    const Bench same = BenchBuilder(makeNewBench()).part("R1", "resistor", {{"1", "A.a8"}, {"2", "A.e8"}}).build();
    EXPECT_EQ(adviceFor(same).step, 0) << "both leads in one column";
    const Bench apart = BenchBuilder(makeNewBench())
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c13"}})
                            .part("D1", "led", {{"anode", "A.e20"}, {"cathode", "A.e21"}})
                            .build();
    EXPECT_EQ(adviceFor(apart).step, 1) << "they don't meet";
}

TEST(FirstBuild, TheOtherOrderIsRightToo) {
    const Bench bench = BenchBuilder(makeNewBench())
                            .part("D1", "led", {{"anode", "A.c8"}, {"cathode", "A.c9"}})
                            .part("R1", "resistor", {{"1", "A.d9"}, {"2", "A.d14"}}, {{"resistance", 330}})
                            .jumper("A.a8", "A.top+8")
                            .build();
    EXPECT_EQ(adviceFor(bench).step, 3);
    EXPECT_NE(adviceFor(bench).text.find("resistor's free end"), std::string::npos);
    EXPECT_EQ(adviceFor(BenchBuilder(bench).jumper("A.a14", "A.bottom-12").build()).step, 4);
}

/// What a beginner does wrong, what is said of it, and what mends it.
struct SlipCase {
    const char *bench, *headline, *reason, *action;
};

TEST(FirstBuild, EverySlipIsNamedWithItsReasonAndOneThingToDo) {
    for (const SlipCase& each : std::initializer_list<SlipCase>{
             {"R1 c8 d8 330", "Both legs of R1 are in column 8.", "one piece of metal", "Move one leg of R1"},
             {"R1 c8 c13 330; D1 d13 e13 red", "Both legs of D1 are in column 13.", "one piece", "Move one leg of D1"},
             {"R1 c8 c13 330; D1 e14 e15 red", "Nearly. It sits one hole too far right.",
              "R1 ends in column 13. The LED's longer leg is in column 14.",
              "one hole left: 14 to 13, or select it and press ←"},
             {"R1 c8 c13 330; D1 e10 e11 red", "Nearly. It sits two holes too far right.",
              "R1 ends in column 8. The LED's longer leg is in column 10.", ""},
             {"R1 c8 c13 330; D1 e20 e21 red", "They don't touch yet.", "R1 ends in column 13.",
              "Put the LED's longer leg into column 13"},
             {"R1 c8 c13 330; D1 f13 f14 red", "Nearly. The gap lies between them.", "no metal crosses the gap",
              "other side"},
             {"R1 c8 c13 330; D1 e8 e13 red", "They lie side by side.", "one after the other", "Move one leg of D1"},
             {"R1 c8 c13 330; D1 e13 e14 red; W1 a14 top+12 red", "Nearly. The LED is the wrong way round.",
              "Plus comes to the side of its shorter leg", "Select the LED and press ]"},
             {"R1 c8 c13 330; D1 e14 e13 red; W1 a8 top+8 red; W2 a14 bottom-12 black",
              "Nearly. The LED is the wrong way round.", "it blocks", "Select the LED and press ]"},
             {"R1 c8 c13 330; D1 e13 e14 red; W1 a8 top-8 red", "Nearly. Nothing feeds that rail.",
              "W1 ends in the rail top-", "Move that end of W1 to the rail top+"},
             {"R1 c8 c13 330; D1 e13 e14 red; W1 a9 top+8 red", "Nearly. It ends beside the leg.",
              "W1 ends in column 9. The leg of R1 is in column 8", "a9 to column 8, rows a to e"},
             {"R1 c8 c13 330; D1 e13 e14 red; W1 a8 top+8 red; W2 a14 top-12 black", "Nearly. Nothing feeds that rail.",
              "W2 ends in the rail top-", "Move that end of W2 to the rail bottom-"},
             {"R1 c8 c13 330; D1 e13 e14 red; W1 a8 top+8 red; W2 a14 top+12 black", "Both ends lead to plus.",
              "nothing drives it", "to a minus rail"},
             {"R1 c8 c13 10000; D1 e13 e14 red; W1 a8 top+8 red; W2 a14 bottom-12 black",
              "The loop is closed, but hardly any current flows.", "R1 holds back too much", "type 330"},
             {"D1 e13 e14 red; W1 a13 top+8 red; W2 a14 bottom-12 black", "Stop: nothing holds the current back.",
              "straight between plus and minus", "lever down"}}) {
        const auto advice = adviceFor(test::compactBench("half; PS1 top+3 bottom-3 5; " + std::string(each.bench)));
        EXPECT_EQ(advice.title, each.headline) << each.bench;
        EXPECT_NE(advice.text.find(each.reason), std::string::npos) << each.bench << ": " << advice.text;
        EXPECT_NE(advice.action.find(each.action), std::string::npos) << each.bench << ": " << advice.action;
        EXPECT_FALSE(advice.action.empty()) << each.bench;
    }
}

TEST(FirstBuild, ASupplyThatIsOffOrUnpluggedIsNamed) {
    const std::string chain = "R1 c8 c13 330; D1 e13 e14 red; W1 a8 top+8 red; W2 a14 bottom-12 black";
    EXPECT_EQ(adviceFor(test::compactBench("half; PS1 top+3 bottom-3 5 off; " + chain)).title,
              "All is joined. Now switch it on.");
    EXPECT_EQ(adviceFor(test::compactBench("half; PS1 - bottom-3 5; " + chain)).title,
              "The supply's red lead isn't plugged in.");
    EXPECT_EQ(adviceFor(test::compactBench("half; PS1 top+3 bottom-3 1; " + chain)).title,
              "The loop is closed, but the push is weak.");
}

/// Doing what is said leads on: each action of these is carried out by the keys that it names.
TEST(FirstBuild, WhatIsSaidToDoMendsTheSlip) {
    Bench off = test::compactBench("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e14 e15 red");
    off.parts[2] = *shifted(off, off.parts[2], -1, 0);
    EXPECT_EQ(adviceFor(off).step, 2);
    EXPECT_TRUE(adviceFor(off).action.empty());
    for (const auto& [wires, step] :
         {std::pair{"W1 a8 top+8 red; W2 a14 bottom-12 black", 4}, std::pair{"W1 a14 top+12 red", 2}}) {
        const bool closed = step == 4;
        Bench bench = test::compactBench(std::string("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; ") +
                                         (closed ? "D1 e14 e13 red; " : "D1 e13 e14 red; ") + wires);
        const std::string action = adviceFor(bench).action;
        Part& led = bench.parts[2];
        for (std::size_t at = action.find("press"); at < action.size(); ++at) {
            if (action.compare(at, 1, "]") == 0) led = *turnedRound(bench, led, 1).part;
            if (action.compare(at, 3, "←") == 0) led = *shifted(bench, led, -1, 0);
            if (action.compare(at, 3, "→") == 0) led = *shifted(bench, led, 1, 0);
        }
        EXPECT_EQ(adviceFor(bench).step, closed ? 4 : 3) << action << ": " << adviceFor(bench).title;
        EXPECT_TRUE(adviceFor(bench).action.empty()) << adviceFor(bench).action;
    }
}

TEST(FirstBuild, WhatIsRightIsNoSlip) {
    for (const char* right :
         {"", "D1 e13 e14 red", "R1 c8 c13 330", "R1 c8 c13 330; D1 e13 e14 red",
          "R1 c8 c13 330; D1 e13 e14 red; W1 a8 top+8 red", "R1 c8 c13 330; D1 e13 e14 red; W1 a14 bottom-12 black",
          "R1 c8 c13 330; D1 e14 e13 red", "R1 c8 c13 330; D1 e13 e14 red; W1 a8 a20 red",
          "R1 c8 c13 330; D1 e13 e14 red; W1 a8 top+8 red; W2 a14 bottom-12 black"}) {
        const auto advice = adviceFor(test::compactBench("half; PS1 top+3 bottom-3 5; " + std::string(right)));
        EXPECT_TRUE(advice.action.empty()) << right << ": " << advice.title;
    }
}

/// Whoever does exactly what the lit holes say gets light.
TEST(FirstBuild, ItsHolesLeadToLight) {
    BenchBuilder builder(makeNewBench());
    const auto holes = [&] {
        const Bench bench = builder.build();
        const auto advice = adviceFor(bench);
        EXPECT_EQ(advice.holes.size(), 2u) << advice.title;
        for (const Hole& hole : advice.holes) EXPECT_FALSE(occupantOf(bench, hole)) << toString(hole);
        return std::array{toString(advice.holes.at(0)), toString(advice.holes.at(1))};
    };
    const auto r = holes();
    builder.part("R1", "resistor", {{"1", r[0]}, {"2", r[1]}}, {{"resistance", 330}});
    const auto d = holes();
    builder.part("D1", "led", {{"anode", d[0]}, {"cathode", d[1]}});
    const auto plus = holes();
    builder.jumper(plus[0], plus[1]);
    const auto minus = holes();
    builder.jumper(minus[0], minus[1]);
    EXPECT_EQ(adviceFor(builder.build()).step, 4);
    for (const Part& part : builder.build().parts) EXPECT_EQ(refusal(builder.build(), part), std::nullopt) << part.id;
}

}  // namespace
}  // namespace tiepoint
