// Walking over the holes: every hole can be reached, and a walk there and back ends where it began.

#include "core/edit/neighbour.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <deque>
#include <set>

namespace tiepoint {
namespace {

struct Step {
    const char* from;
    int columns, rows;
    const char* to;
};

TEST(Neighbour, StepsAsTheEyeDoes) {
    const Bench bench = test::BenchBuilder().board("A", "half").board("B", "half", 0, 24).build();
    const Step steps[] = {
        {"A.e12", 1, 0, "A.e13"},      {"A.e12", -1, 0, "A.e11"},       {"A.e12", 0, 1, "A.f12"},
        {"A.f12", 0, -1, "A.e12"},     {"A.top+5", 1, 0, "A.top+6"},    {"A.a1", 0, -1, "A.top-1"},
        {"A.top-1", 0, -1, "A.top+1"}, {"A.bottom-1", 0, 1, "B.top+1"},
    };
    for (const Step& step : steps) {
        const auto to = neighbourHole(bench, test::holeAt(step.from), step.columns, step.rows);
        ASSERT_TRUE(to) << step.from;
        EXPECT_EQ(toString(*to), step.to) << step.from;
    }
    EXPECT_FALSE(neighbourHole(bench, test::holeAt("A.e30"), 1, 0));
    EXPECT_FALSE(neighbourHole(bench, test::holeAt("A.top+1"), 0, -1));
}

TEST(Neighbour, ReachesEveryHole) {
    const Bench bench = test::BenchBuilder().board("A", "half").board("B", "mini", 40, 3).build();
    std::set<Hole> seen{*firstHole(bench)};
    std::deque<Hole> open(seen.begin(), seen.end());
    while (!open.empty()) {
        const Hole here = open.front();
        open.pop_front();
        for (const auto& [columns, rows] : {std::pair{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            const auto next = neighbourHole(bench, here, columns, rows);
            if (next && seen.insert(*next).second) open.push_back(*next);
        }
    }
    EXPECT_EQ(seen.size(), 400u + 170u);
}

TEST(Neighbour, StretchesOneEnd) {
    const Bench bench = test::BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                            .part("R2", "resistor", {{"1", "A.j30"}})
                            .jumper("A.a1", "A.a5")
                            .build();
    EXPECT_EQ(toString(*stretched(bench, bench.parts[0], 1, 1, 0)->leads[1]), "A.c15");
    EXPECT_EQ(stretched(bench, bench.parts[0], 1, 1, 0)->leads[0], bench.parts[0].leads[0]);
    EXPECT_FALSE(stretched(bench, bench.parts[1], 1, 1, 0)) << "a lead that hangs";
    EXPECT_FALSE(stretched(bench, bench.parts[1], 0, 1, 0)) << "the edge of the board";
    EXPECT_EQ(std::get<Hole>(stretched(bench, bench.jumpers[0], 0, 0, 1)->ends[0]), test::holeAt("A.b1"));
}

}  // namespace
}  // namespace tiepoint
