// What a bench says of its surroundings holds wherever it is solved; what it leaves to the inputs is theirs.

#include "core/bench/bench_file.h"
#include "core/snapshot/runner.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

constexpr Surroundings kDusk{20, 12}, kFrost{5000, -18};

std::shared_ptr<const Bench> frostyBench() {
    Bench bench = compactBench(
        "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 "
        "bottom-13 black");
    bench.surroundings = SaidSurroundings{kFrost, {}};
    return std::make_shared<const Bench>(readBench(writeBench(bench)).value().bench);
}

TEST(BenchSurroundings, HoldThroughFileAndSolve) {
    EXPECT_EQ(evaluate(frostyBench())->inputs->surroundings, kFrost);
    Inputs inputs;
    inputs.surroundings = kDusk;
    EXPECT_EQ(evaluate(frostyBench(), inputs)->inputs->surroundings, kFrost);
    EXPECT_EQ(evaluate(std::make_shared<const Bench>(compactBench("half")), inputs)->inputs->surroundings, kDusk);
}

TEST(BenchSurroundings, HoldWhileItRunsAndAreGoneWithIt) {
    Inputs inputs;
    inputs.surroundings = kDusk;
    for (const auto& make : {makeRestingRunner, makeRunner}) {
        const auto runner = make();
        runner->setInputs(inputs);
        runner->setBench(1, frostyBench());
        EXPECT_EQ(runner->snapshot()->inputs->surroundings, kFrost);
        runner->advanceTo(1);
        EXPECT_EQ(runner->snapshot()->inputs->surroundings, kFrost);
        runner->setBench(2, std::make_shared<const Bench>(compactBench("half")));
        EXPECT_EQ(runner->snapshot()->inputs->surroundings, kDusk);
    }
}

}  // namespace
}  // namespace tiepoint::test
