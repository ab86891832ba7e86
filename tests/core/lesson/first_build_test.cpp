// The first build: judged by the circuit, in whatever order and place it is made.

#include "core/lesson/first_build.h"

#include "core/edit/placement.h"
#include "support/build_bench.h"

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

TEST(FirstBuild, AReversedLedIsNamed) {
    const Bench bench = BenchBuilder(makeNewBench())
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c13"}}, {{"resistance", 330}})
                            .part("D1", "led", {{"cathode", "A.e13"}, {"anode", "A.e14"}})
                            .jumper("A.a8", "A.top+8")
                            .jumper("A.a14", "A.bottom-12")
                            .build();
    EXPECT_EQ(adviceFor(bench).step, 3);
    EXPECT_NE(adviceFor(bench).text.find("wrong way round"), std::string::npos);
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
