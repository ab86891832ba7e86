// Plans for a class: on its boards, with its parts, and what it lacks is said.

#include "core/netlist/bench_netlist.h"
#include "core/netlist/circuit_file.h"
#include "core/netlist/equality.h"
#include "core/planner/kit_wish.h"
#include "support/random_circuits.h"

#include <gtest/gtest.h>

#include <map>

namespace tiepoint::test {
namespace {

Kit smallKit() {
    return readKit(R"({"format": "tiepoint-kit", "version": 1, "title": "Small",
        "board": {"kind": "mini", "labels": "a-bottom", "rails": "split"},
        "supply": {"kind": "bench-supply"},
        "parts": [{"kind": "resistor", "values": {"resistance": 330}, "count": 1},
                  {"kind": "led", "values": {"colour": "red"}, "count": 2}],
        "jumpers": 2, "meters": 0})")
        .value()
        .kit;
}

Netlist kitCircuitOf(const char* parts) {
    return readNetlist(std::string(R"({"format": "tiepoint-circuit", "version": 1, "title": "Quay", "parts": [)") +
                       parts + "]}")
        .value()
        .netlist;
}

constexpr const char* kLitQuay = R"(
    {"id": "PS1", "kind": "bench-supply", "leads": {"+": "plus", "-": "minus"}},
    {"id": "R1", "kind": "resistor", "values": {"resistance": 330}, "leads": {"1": "plus", "2": "lit"}},
    {"id": "D1", "kind": "led", "values": {"colour": "red"}, "leads": {"anode": "lit", "cathode": "minus"}})";

TEST(PlannerKit, PlansOnTheBoardsOfTheClass) {
    const Kit kit = smallKit();
    const Plan plan = planBench(kitCircuitOf(kLitQuay), wishFor(kit));
    ASSERT_TRUE(plan.isWhole()) << plan.unplaced.front().why;
    const Board& board = plan.bench.boards.front();
    EXPECT_EQ(board.kind, findBoardKind("mini"));
    EXPECT_EQ(board.labels, Labels::ABottom);
    EXPECT_EQ(board.rails, Rails::Split);
    EXPECT_EQ(plan.jumpersOver, 0);
}

TEST(PlannerKit, SaysWhatTheClassLacksAndPlansTheRest) {
    const Kit kit = smallKit();
    const Netlist circuit = kitCircuitOf((std::string(kLitQuay) + R"(,
        {"id": "R2", "kind": "resistor", "values": {"resistance": 330}, "leads": {"1": "plus", "2": "lit"}},
        {"id": "R10", "kind": "resistor", "values": {"resistance": 100}, "leads": {"1": "plus", "2": "lit"}},
        {"id": "S1", "kind": "push-button", "leads": {"1a": "plus", "2a": "lit"}},
        {"id": "XM1", "kind": "multimeter", "leads": {"+": "plus", "com": "minus"}})")
                                             .c_str());
    const Plan plan = planBench(circuit, wishFor(kit));
    std::map<std::string, std::string> why;
    for (const Unplaced& each : plan.unplaced) why[each.part] = each.why;
    ASSERT_EQ(why.size(), 4u);
    EXPECT_NE(why["R2"].find("has only 1"), std::string::npos) << why["R2"];
    EXPECT_NE(why["R10"].find("no 100 \u03a9 resistor"), std::string::npos) << why["R10"];
    EXPECT_NE(why["S1"].find("the kit has no"), std::string::npos) << why["S1"];
    EXPECT_NE(why["XM1"].find("the kit has no"), std::string::npos) << why["XM1"];
    for (const char* id : {"PS1", "R1", "D1"}) EXPECT_TRUE(plan.bench.findPart(id)) << id;
    for (const char* id : {"R2", "R10", "S1", "XM1"}) EXPECT_FALSE(plan.bench.findPart(id)) << id;
}

TEST(PlannerKit, CountsJumpersThatLack) {
    Kit kit = smallKit();
    kit.jumpers = 0;
    kit.board = findBoardKind("half");
    const Plan plan = planBench(kitCircuitOf(kLitQuay), wishFor(kit));
    ASSERT_TRUE(plan.isWhole());
    EXPECT_GT(plan.bench.jumpers.size(), 0u);
    EXPECT_EQ(plan.jumpersOver, static_cast<int>(plan.bench.jumpers.size()));
}

/// Every form of a learner's board: as its labels stand, with rails that end in the middle, of each size that the circuit fits on.
class PlannerForms : public testing::TestWithParam<int> {};

TEST_P(PlannerForms, BuildsTheSameCircuitOnEachFormOfBoard) {
    RandomCircuits random(static_cast<unsigned>(900 + GetParam()));
    struct Form {
        const char* board;
        Rails rails;
        Labels labels;
        int parts;
    };
    for (const Form& form :
         {Form{"half", Rails::Split, Labels::ABottom, 9}, Form{"mini", Rails::Through, Labels::ATop, 5},
          Form{"full", Rails::Split, Labels::ATop, 14}}) {
        const Netlist circuit = random.tame(form.parts);
        PlanWish wish;
        wish.board = findBoardKind(form.board);
        wish.rails = form.rails;
        wish.labels = form.labels;
        const Plan plan = planBench(circuit, wish);
        ASSERT_TRUE(plan.isWhole()) << form.board << ": " << plan.unplaced.front().part << ", "
                                    << plan.unplaced.front().why;
        EXPECT_EQ(plan.bench.boards.front().rails, form.rails);
        EXPECT_EQ(plan.bench.boards.front().labels, form.labels);
        const Netlist built = netlistOf(*buildLayout(std::make_shared<const Bench>(plan.bench)));
        EXPECT_EQ(compareCircuits(circuit, built).verdict, Verdict::Equal) << form.board << writeNetlist(circuit);
    }
}

INSTANTIATE_TEST_SUITE_P(Boards, PlannerForms, testing::Range(0, 4));

}  // namespace
}  // namespace tiepoint::test
