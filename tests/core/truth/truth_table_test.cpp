// Truth tables: against a search over the graph of random switch networks, idle switches against the same search, and benches by hand.

#include "core/truth/truth_table.h"

#include "support/inspect_bench.h"
#include "support/say_logic.h"
#include "support/switch_network.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

TruthTable tableOf(const Bench& bench) {
    auto table = makeTruthTable(std::make_shared<const Bench>(bench));
    EXPECT_TRUE(table.ok());
    return std::move(table).value();
}

void expectAsTheGraphSays(const SwitchNetwork& network) {
    const TruthTable table = tableOf(network.bench());
    ASSERT_EQ(table.rows.size(), std::size_t{1} << network.switches.size());
    ASSERT_EQ(table.lamps.size(), network.lamps.size());
    const auto names = table.switchNames();
    for (const TruthRow& row : table.rows) {
        const std::vector<bool> lit = network.lit(row.digits);
        std::map<std::string, bool> switches;
        for (std::size_t s = 0; s < names.size(); ++s) switches[names[s]] = row.digits[s] == 1;
        for (std::size_t lamp = 0; lamp < lit.size(); ++lamp) {
            ASSERT_EQ(row.lamps[lamp].lit, lit[lamp]);
            ASSERT_EQ(row.lamps[lamp].brightness > 0.5, lit[lamp]);  // 330 ohm and 5 V: some 9 mA or nothing
            ASSERT_TRUE(table.logic[lamp]);
            const std::string words = table.logic[lamp]->expression.inWords(names);
            ASSERT_EQ(SaidLogic(words).holds(switches), lit[lamp]) << words;
        }
    }
}

TEST(TruthTable, RandomNetworksOfButtonsAreAsAGraphSearchSays) {
    std::mt19937 random(11);
    for (int round = 0; round < 80; ++round) expectAsTheGraphSays(randomNetwork(random, 1 + round % 7, false));
}

TEST(TruthTable, RandomNetworksOfButtonsAndSlidesAreAsAGraphSearchSays) {
    std::mt19937 random(12);
    for (int round = 0; round < 80; ++round) expectAsTheGraphSays(randomNetwork(random, 1 + round % 7, true));
}

TEST(TruthTable, TenSwitchesAreAsAGraphSearchSays) {
    std::mt19937 random(13);
    expectAsTheGraphSays(randomNetwork(random, 10, false));
    expectAsTheGraphSays(randomNetwork(random, 10, true));
}

/// A lamp that hangs on its switches in the way that the graph says is named so; a switch that never changes a lamp isn't in it.
TEST(TruthTable, IdleSwitchesChangeNoLampOfTheGraph) {
    std::mt19937 random(14);
    int idle = 0;
    for (int round = 0; round < 60; ++round) {
        const SwitchNetwork network = randomNetwork(random, 4, round % 2 == 0);
        const TruthTable table = tableOf(network.bench());
        for (const int index : table.idle) {
            ++idle;
            for (const TruthRow& row : table.rows) {
                Digits other = row.digits;
                other[index] = 1 - other[index];
                EXPECT_EQ(network.lit(row.digits), network.lit(other));
            }
        }
    }
    EXPECT_GT(idle, 10);
}

TEST(TruthTable, MoreThanTenSwitchesAreRefused) {
    std::mt19937 random(15);
    SwitchNetwork network = randomNetwork(random, 10, false);
    EXPECT_TRUE(makeTruthTable(std::make_shared<const Bench>(network.bench())).ok());
    Bench bench = network.bench();
    bench.parts.push_back(makePart(*findKind("slide-switch"), "S11"));
    const auto table = makeTruthTable(std::make_shared<const Bench>(bench));
    ASSERT_FALSE(table.ok());
    EXPECT_EQ(table.error().message, "the bench has 11 switches; a truth table has at most 10");
}

TEST(TruthTable, ColumnsSayWhatEachPositionIs) {
    auto builder = supplied();
    builder.part("S2", "slide-switch", {{"a", "A.e7"}, {"common", "A.e8"}, {"b", "A.e9"}}, {}, {{"position", "b"}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}});
    const TruthTable table = tableOf(builder.build());
    ASSERT_EQ(table.switches.size(), 2u);
    EXPECT_EQ(table.switchNames(), (Ids{"S2", "S1"}));
    EXPECT_EQ(table.switches[0].positions, (Ids{"towards a", "towards b"}));
    EXPECT_EQ(table.switches[1].positions, (Ids{"released", "pressed"}));
    EXPECT_EQ(table.idle, (std::vector<int>{0, 1}));
    EXPECT_TRUE(table.lamps.empty());
}

TEST(TruthTable, BenchWithoutSwitchesHasOneRow) {
    const TruthTable table = tableOf(beacon().build());
    ASSERT_EQ(table.rows.size(), 1u);
    EXPECT_TRUE(table.rows[0].lamps[0].lit);
    EXPECT_EQ(table.logic[0]->expression.inWords({}), "always");
}

TEST(TruthTable, BrightnessDiffersFromRowToRow) {
    auto builder = beacon();
    builder.part("S1", "push-button", {{"1a", "A.e20"}, {"1b", "A.f20"}, {"2a", "A.e22"}, {"2b", "A.f22"}})
        .part("R2", "resistor", {{"1", "A.b8"}, {"2", "A.b20"}})
        .jumper("W3", "A.b22", "A.b14", "yellow");
    const TruthTable table = tableOf(builder.build());
    EXPECT_EQ(table.logic[0]->expression.inWords(table.switchNames()), "always");
    EXPECT_GT(table.rows[1].lamps[0].brightness, table.rows[0].lamps[0].brightness + 0.1);
    EXPECT_TRUE(table.idle.empty());
}

TEST(TruthTable, RowsWithoutASolutionSayNothing) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}, {"seriesResistance", 0}})
        .part("PS2", "bench-supply", {{"+", "A.top+9"}, {"-", "A.bottom-9"}}, {{"voltage", 3}, {"seriesResistance", 0}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("D1", "led", {{"anode", "A.c20"}, {"cathode", "A.c23"}});
    const TruthTable table = tableOf(builder.build());
    EXPECT_EQ(table.rows[0].status, Status::None);
    EXPECT_FALSE(table.logic[0]);
    EXPECT_TRUE(table.idle.empty());
}

TEST(TruthTable, SuppliesThatAreOffLightNothing) {
    auto builder = supplied();
    builder.part("D1", "led", {{"anode", "A.c20"}, {"cathode", "A.c23"}});
    Bench bench = builder.build();
    bench.parts[0].state[bench.parts[0].kind->stateIndex("on")] = 0;
    const TruthTable table = tableOf(bench);
    EXPECT_EQ(table.rows[0].status, Status::Off);
    EXPECT_FALSE(table.rows[0].lamps[0].lit);
    EXPECT_FALSE(table.logic[0]);
}

}  // namespace
}  // namespace tiepoint::test
