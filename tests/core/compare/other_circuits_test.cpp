#include "core/compare/other_circuits.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"
#include "support/graph_oracle.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

Netlist circuitOf(const std::shared_ptr<const Bench>& bench) { return netlistOf(*buildLayout(bench)); }

std::vector<std::shared_ptr<const Bench>> benchesThatShip() {
    std::vector<std::shared_ptr<const Bench>> benches;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name.starts_with("benches/"))
            benches.push_back(std::make_shared<const Bench>(readBench(file.text).value().bench));
    }
    return benches;
}

/// Judged by a general graph library: the answers are different circuits, and none of the wrong ones is the board's.
TEST(OtherCircuits, AreNoneOfThemTheBoards) {
    for (const auto& bench : benchesThatShip()) {
        const CircuitChoice choice = circuitChoice(bench, 3, 1, 7);
        ASSERT_EQ(choice.benches.size(), 3u) << bench->title;
        ASSERT_EQ(choice.right, 1);
        EXPECT_EQ(*choice.benches[1], *bench);
        for (std::size_t a = 0; a < 3; ++a) {
            for (std::size_t b = 0; b < a; ++b)
                EXPECT_FALSE(oracleEqual(circuitOf(choice.benches[a]), circuitOf(choice.benches[b])))
                    << bench->title << ' ' << a << ' ' << b;
        }
    }
}

TEST(OtherCircuits, ShowTheSamePartsJoinedOtherwise) {
    for (const auto& bench : benchesThatShip()) {
        for (const auto& wrong : otherCircuits(bench, 2, 11)) {
            ASSERT_EQ(wrong->parts.size(), bench->parts.size()) << bench->title;
            for (std::size_t i = 0; i < bench->parts.size(); ++i) {
                EXPECT_EQ(wrong->parts[i].id, bench->parts[i].id);
                EXPECT_EQ(wrong->parts[i].values, bench->parts[i].values) << bench->title;
                EXPECT_EQ(wrong->parts[i].state, bench->parts[i].state) << bench->title;
            }
        }
    }
}

TEST(OtherCircuits, AreTheSameForTheSameNumber) {
    const auto bench = benchesThatShip().front();
    const auto first = otherCircuits(bench, 2, 5), second = otherCircuits(bench, 2, 5);
    ASSERT_EQ(first.size(), second.size());
    for (std::size_t i = 0; i < first.size(); ++i) EXPECT_EQ(*first[i], *second[i]);
}

/// A resistor turned round and parts of one chain in another order are the same circuit: on such a bench they are no answers.
TEST(OtherCircuits, LeaveOutWhatIsElectricallyTheSame) {
    for (const auto& bench : benchesThatShip()) {
        const Netlist right = circuitOf(bench);
        Likeness likeness;
        likeness.seriesOrder = false;
        for (std::uint64_t seed = 0; seed < 3; ++seed) {
            for (const auto& wrong : otherCircuits(bench, 3, seed))
                EXPECT_EQ(compareCircuits(circuitOf(wrong), right, likeness).verdict, Verdict::Different)
                    << bench->title;
        }
    }
}

}  // namespace
}  // namespace tiepoint::test
