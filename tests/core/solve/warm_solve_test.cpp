// A bench that was solved once is solved again without asking the heap for anything.

#include "core/allocations.h"
#include "core/solve/operating_point.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

TEST(WarmSolve, AsksForNoMemory) {
    if (!countsAllocations()) return;
    for (const char* text :
         {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
          "half; CE1 top+3 bottom-3 3; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black"}) {
        OperatingPoint point;
        point.setLayout(buildLayout(std::make_shared<const Bench>(compactBench(text))));
        const Inputs inputs;
        const State state;
        for (int i = 0; i < 3; ++i) ASSERT_EQ(point.solve(inputs, state).status, Status::Solved);
        const auto before = allocations();
        const Status status = point.solve(inputs, state).status;
        EXPECT_EQ(allocations() - before, 0) << text;
        EXPECT_EQ(status, Status::Solved);
    }
}

}  // namespace
}  // namespace tiepoint::test
