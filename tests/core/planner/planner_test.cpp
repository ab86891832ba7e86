#include "core/planner/planner.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "core/edit/clashes.h"
#include "core/findings/finding.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/circuit_file.h"
#include "core/netlist/equality.h"
#include "support/graph_oracle.h"
#include "support/random_circuits.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <ctime>
#include <random>

namespace tiepoint::test {
namespace {

/// The same circuit under other names, in another order.
Netlist shuffled(const Netlist& netlist, unsigned seed) {
    std::mt19937 random(seed);
    std::vector<std::size_t> order(netlist.parts.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::shuffle(order.begin(), order.end(), random);
    Netlist other;
    other.title = netlist.title;
    for (std::size_t net = 0; net < netlist.nets.size(); ++net)
        other.nets.push_back(fmt::format("w{}", netlist.nets.size() - net));
    for (const std::size_t part : order) {
        Part copy = netlist.parts[part];
        copy.id = fmt::format("Q{}", other.parts.size() + 1);
        const int index = addPart(other, std::move(copy));
        other.leads[static_cast<std::size_t>(index)] = netlist.leads[part];
    }
    renumberNets(other);
    return other;
}

void checkPlan(const Netlist& circuit, const Plan& plan, unsigned seed) {
    ASSERT_TRUE(plan.isWhole()) << plan.unplaced.front().part << ": " << plan.unplaced.front().why << "\n"
                                << writeNetlist(circuit);
    ASSERT_TRUE(validate(plan.bench).ok());
    ASSERT_TRUE(Occupancy(plan.bench).all().empty()) << writeBench(plan.bench);
    const Netlist built = netlistOf(*buildLayout(std::make_shared<const Bench>(plan.bench)));
    ASSERT_EQ(compareCircuits(shuffled(circuit, seed), built).verdict, Verdict::Equal)
        << writeNetlist(circuit) << writeBench(plan.bench);
}

TEST(Planner, HarbourBenchesTakeNoMoreJumpersThanByHand) {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/")) continue;
        const Bench byHand = readBench(file.text).value().bench;
        const auto layout = buildLayout(std::make_shared<const Bench>(byHand));
        const Netlist circuit = netlistOf(*layout);
        PlanWish wish;
        wish.board = byHand.boards.front().kind;
        const std::clock_t begin = std::clock();
        const Plan plan = planBench(circuit, wish);
        const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
        checkPlan(circuit, plan, 3);
        if (HasFatalFailure()) return;
        const JumperBill mine = jumperBill(plan.bench), hand = jumperBill(byHand);
        printf("%s: %d jumpers, %.0f mm; by hand %d, %.0f mm; %.2f s\n", byHand.title.c_str(), mine.count,
               mine.lengthMm, hand.count, hand.lengthMm, seconds);
        EXPECT_LE(mine.count, hand.count) << byHand.title;
        EXPECT_LE(mine.lengthMm, hand.lengthMm + 0.5) << byHand.title;
        EXPECT_LE(seconds, 1) << byHand.title;
        EXPECT_TRUE(oracleEqual(circuit, netlistOf(*buildLayout(std::make_shared<const Bench>(plan.bench)))))
            << byHand.title;
        // A circuit says nothing of light and warmth: they stay those of the bench.
        Bench planned = plan.bench;
        planned.surroundings = byHand.surroundings;
        const Report before = inspect(*evaluate(layout->bench)),
                     after = inspect(*evaluate(std::make_shared<const Bench>(planned)));
        if (before.findings.empty()) {
            EXPECT_TRUE(after.findings.empty()) << byHand.title << ": " << after.findings.front().text;
        }
    }
}

/// Forty circuits of one generator in eight tests, so that they can run beside each other.
class PlannerOfRandom : public testing::TestWithParam<int> {};

TEST_P(PlannerOfRandom, BuildsRandomCircuits) {
    constexpr int kCircuits = 40, kTests = 8;
    RandomCircuits random(4242);
    for (int round = 0; round < kCircuits; ++round) {
        const Netlist circuit = random.tame(2 + random.below(19));
        if (round % kTests != GetParam()) continue;
        PlanWish wish;
        wish.board = findBoardKind(circuit.parts.size() > 12 ? "full" : "half");
        checkPlan(circuit, planBench(circuit, wish), static_cast<unsigned>(round));
        if (HasFatalFailure()) return;
    }
}

INSTANTIATE_TEST_SUITE_P(Circuits, PlannerOfRandom, testing::Range(0, 8));

TEST(Planner, PlacesFortyPartsWithinTenSeconds) {
    RandomCircuits random(8);
    const Netlist circuit = random.tame(40);
    PlanWish wish;
    wish.board = findBoardKind("full");
    const std::clock_t begin = std::clock();
    const Plan plan = planBench(circuit, wish);
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    printf("40 parts: %.1f s, %d jumpers\n", seconds, jumperBill(plan.bench).count);
    checkPlan(circuit, plan, 1);
    EXPECT_LE(seconds, 10);
}

TEST(Planner, GivesTheSameBenchEachTime) {
    RandomCircuits random(6);
    const Netlist circuit = random.tame(6);
    PlanWish wish;
    wish.board = findBoardKind("half");
    EXPECT_EQ(planBench(circuit, wish).bench, planBench(circuit, wish).bench);
}

TEST(Planner, KeepsChosenPartsWhereTheyAre) {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/lock-gate")) continue;
        const Bench byHand = readBench(file.text).value().bench;
        const Netlist circuit = netlistOf(*buildLayout(std::make_shared<const Bench>(byHand)));
        PlanWish wish;
        wish.board = byHand.boards.front().kind;
        wish.kept = {*byHand.findPart("S2"), *byHand.findPart("R1")};
        const Plan plan = planBench(circuit, wish);
        checkPlan(circuit, plan, 9);
        EXPECT_EQ(plan.bench.findPart("S2")->leads, byHand.findPart("S2")->leads);
        EXPECT_EQ(plan.bench.findPart("R1")->leads, byHand.findPart("R1")->leads);
    }
}

TEST(Planner, SaysWhatFindsNoPlace) {
    RandomCircuits random(12);
    const Netlist circuit = random.tame(40);
    PlanWish wish;
    wish.board = findBoardKind("mini");
    wish.mostSeconds = 3;
    const Plan plan = planBench(circuit, wish);
    ASSERT_FALSE(plan.isWhole());
    for (const Unplaced& part : plan.unplaced) {
        EXPECT_GE(circuit.partIndex(part.part), 0);
        EXPECT_NE(part.why.find("mini board"), std::string::npos) << part.why;
    }
    EXPECT_EQ(plan.bench.parts.size() + plan.unplaced.size(), circuit.parts.size());
}

}  // namespace
}  // namespace tiepoint::test
