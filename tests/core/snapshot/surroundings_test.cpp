// What a bench says of its surroundings holds wherever it is solved; what it leaves to the inputs is theirs.

#include "core/bench/bench_file.h"
#include "core/bench/table.h"
#include "core/snapshot/runner.h"
#include "support/build_bench.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

#include <cmath>

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

/// Two photoresistors alike, each above its own resistor, eight columns apart, under a torch over the first.
std::shared_ptr<const Bench> torchBench(std::optional<HeldOver> torch) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}}, {{"voltage", 5}})
        .part("LDR1", "photoresistor", {{"1", "A.top+5"}, {"2", "A.a5"}})
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.bottom-5"}}, {{"resistance", 10e3}})
        .part("LDR2", "photoresistor", {{"1", "A.top+20"}, {"2", "A.a20"}})
        .part("R2", "resistor", {{"1", "A.c20"}, {"2", "A.bottom-20"}}, {{"resistance", 10e3}});
    Bench bench = builder.build();
    bench.surroundings = SaidSurroundings{{10, 25, torch, {}}, {}};
    return std::make_shared<const Bench>(std::move(bench));
}

double amperesOf(const Bench& bench, const Snapshot& snapshot, const char* part) {
    const Layout& layout = *snapshot.layout;
    return snapshot.solution.leadInjection[layout.leadIndex(bench.partIndex(part), 0)];
}

TEST(BenchSurroundings, ATorchLightsWhatItIsOver) {
    const auto dark = torchBench({});
    const auto unlit = evaluate(dark);
    ASSERT_EQ(unlit->status(), Status::Solved);
    EXPECT_NEAR(amperesOf(*dark, *unlit, "LDR1"), amperesOf(*dark, *unlit, "LDR2"), 1e-9);
    const auto over = middleOfHolesMm(*dark, dark->parts[1]), aside = middleOfHolesMm(*dark, dark->parts[3]);
    ASSERT_TRUE(over && aside);
    const HeldOver torch{*over * (1 / kPitchMm), 1000};
    const auto lit = torchBench(torch);
    for (const auto& snapshot : {evaluate(lit), [&] {
                                     const auto runner = makeRunner();
                                     runner->setBench(1, lit);
                                     runner->advanceTo(0.1);
                                     return runner->snapshot();
                                 }()}) {
        ASSERT_EQ(snapshot->status(), Status::Solved);
        // R = R10 (E/10)^-gamma at the light of its own place, in series with 10 kilohm.
        const PartKind& kind = *lit->parts[1].kind;
        const double at10 = lit->parts[1].value(kind.valueIndex("resistanceAt10Lux"));
        const double gamma = lit->parts[1].value(kind.valueIndex("gamma"));
        for (const auto& [part, place] : {std::pair("LDR1", *over), std::pair("LDR2", *aside)}) {
            const double away = distance(place, *over) / kTorchHeightMm;
            const double lux = 10 + 1000 * std::pow(1 + away * away, -1.5);
            const double ohm = at10 * std::pow(lux / 10, -gamma);
            EXPECT_NEAR(amperesOf(*lit, *snapshot, part), 5 / (ohm + 10e3), 1e-3 * 5 / (ohm + 10e3)) << part;
        }
    }
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
