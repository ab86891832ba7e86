// Which leads may be exchanged, asked of the solver: every kind, with its leads on nodes that resistors of different values hold at different
// voltages, in every order. What counts as equal must behave alike, and what behaves alike must count as equal.

#include "core/netlist/symmetry.h"

#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"
#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace tiepoint {
namespace {

using namespace test;

int columnOf(int node) { return 5 + 6 * node; }

/// The kind's leads on nodes in this order, between resistors to plus and minus. Nobody minds here whether the part's legs reach so far.
std::shared_ptr<const Bench> probed(const PartKind& kind, const std::vector<int>& nodes, double volt, bool turned,
                                    Setting state = {}) {
    BenchBuilder builder;
    builder.board("A", "full")
        .part("PS9", "bench-supply", {{turned ? "-" : "+", "A.top+1"}, {turned ? "+" : "-", "A.bottom-1"}},
              {{"voltage", volt}});
    for (int node = 0; node < std::ssize(nodes); ++node) {
        const int column = columnOf(node);
        builder.part(fmt::format("RU{}", node), "resistor",
                     {{"1", fmt::format("A.top+{}", 3 + node)}, {"2", fmt::format("A.b{}", column)}},
                     {{"resistance", 470 * (node + 1)}});
        builder.part(fmt::format("RD{}", node), "resistor",
                     {{"1", fmt::format("A.c{}", column)}, {"2", fmt::format("A.bottom-{}", 3 + node)}},
                     {{"resistance", 1000 + 330 * node * node}});
    }
    Bench bench = builder.build();
    Part part = makePart(kind, "X1");
    if (state) part.state[0] = state;
    for (std::size_t lead = 0; lead < nodes.size(); ++lead)
        part.leads[lead] = holeAt(fmt::format("A.a{}", columnOf(nodes[lead])));
    bench.parts.push_back(std::move(part));
    return std::make_shared<const Bench>(std::move(bench));
}

/// Volts of the nodes above the lower rail, with the part pressed and not.
std::vector<double> voltsOf(const std::shared_ptr<const Bench>& bench, int nodes) {
    std::vector<double> volts;
    for (const bool held : {false, true}) {
        Inputs inputs;
        if (held) inputs.held.insert("X1");
        const auto snapshot = evaluate(bench, inputs);
        const auto voltsAt = [&](const Hole& hole) {
            return snapshot->solution.netVoltage[snapshot->layout->netOfHole(snapshot->layout->holeIndex(hole))];
        };
        for (int node = 0; node < nodes; ++node)
            volts.push_back(voltsAt(holeAt(fmt::format("A.a{}", columnOf(node)))) - voltsAt(holeAt("A.bottom-1")));
    }
    return volts;
}

/// The positions of a part's switch or slide; at least where it stands.
std::vector<Setting> positionsOf(const PartKind& kind) {
    std::vector<Setting> positions{std::nullopt};
    if (kind.state.empty() || kind.state[0].type == ValueType::Number) return positions;
    const std::size_t count = kind.state[0].type == ValueType::Switch ? 2 : kind.state[0].choices.size();
    for (std::size_t i = 0; i < count; ++i) positions.emplace_back(static_cast<double>(i));
    return positions;
}

/// In all its positions: a part that works the same now needn't when its slide is moved.
bool behaveAlike(const PartKind& kind, const std::vector<int>& one, const std::vector<int>& other) {
    const int nodes = static_cast<int>(one.size());
    for (const Setting& state : positionsOf(kind)) {
        for (const double volt : {0.5, 3.0, 12.0}) {
            for (const bool turned : {false, true}) {
                const auto a = voltsOf(probed(kind, one, volt, turned, state), nodes);
                const auto b = voltsOf(probed(kind, other, volt, turned, state), nodes);
                const auto same = [](double x, double y) { return std::abs(x - y) < 1e-6; };
                if (!std::ranges::equal(a, b, same)) return false;
            }
        }
    }
    return true;
}

/// Whether the part shows something, or minds its polarity, beyond what voltages say. A swing about nothing has no mean, and a relay's
/// coil is kept to its names although it pulls either way round.
bool hasSigns(const PartKind& kind) {
    constexpr std::array<std::string_view, 2> kBeyondVolts = {"wave", "armature"};
    const auto isBeyond = [&](const ElementSpec& spec) {
        return std::ranges::find(kBeyondVolts, spec.element) != kBeyondVolts.end();
    };
    if (std::ranges::any_of(kind.model, isBeyond)) return true;
    return std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return !spec.reads.empty(); }) ||
           std::ranges::any_of(kind.ratings, [](const Rating& rating) { return rating.quantity == "reverseVoltage"; });
}

/// Every other order of a few leads; of many, each pair of neighbours exchanged.
std::vector<std::vector<int>> ordersOf(const std::vector<int>& inOrder) {
    constexpr std::size_t kFew = 4;
    std::vector<std::vector<int>> orders;
    if (inOrder.size() <= kFew) {
        for (std::vector<int> order = inOrder; std::ranges::next_permutation(order).found;) orders.push_back(order);
        return orders;
    }
    for (std::size_t lead = 1; lead < inOrder.size(); ++lead) {
        orders.push_back(inOrder);
        std::swap(orders.back()[lead - 1], orders.back()[lead]);
    }
    return orders;
}

TEST(CircuitSymmetry, IsWhatTheSolverFinds) {
    int exchanged = 0, kept = 0;
    for (const PartKind& kind : catalogue()) {
        std::vector<int> inOrder(kind.leads.size());
        std::iota(inOrder.begin(), inOrder.end(), 0);
        const Netlist first = netlistOf(*buildLayout(probed(kind, inOrder, 3, false)));
        for (const std::vector<int>& order : ordersOf(inOrder)) {
            SCOPED_TRACE(fmt::format("{} {}", kind.name, fmt::join(order, " ")));
            const Netlist second = netlistOf(*buildLayout(probed(kind, order, 3, false)));
            const bool equal = compareCircuits(first, second).verdict == Verdict::Equal;
            const bool alike = behaveAlike(kind, inOrder, order);
            if (hasSigns(kind)) {
                EXPECT_LE(equal, alike);
            } else {
                EXPECT_EQ(equal, alike);
            }
            EXPECT_EQ(canonicalHash(first) == canonicalHash(second), equal);
            ++(equal ? exchanged : kept);
        }
    }
    EXPECT_GT(exchanged, 10);
    EXPECT_GT(kept, 20);
}

TEST(CircuitSymmetry, ReadsTheKindsData) {
    const PartKind& knob = *findKind("potentiometer");
    EXPECT_TRUE(isReckonedWith("resistance", knob));
    EXPECT_TRUE(followsState(knob.model[0].parameters[0].second, knob));
    EXPECT_TRUE(showsInModel(knob.state[0], knob));
    const PartKind& resistor = *findKind("resistor");
    EXPECT_FALSE(isReckonedWith("rating", resistor));
    EXPECT_FALSE(followsState(resistor.model[0].parameters[0].second, resistor));
    EXPECT_TRUE(isReckonedWith("current", *findKind("lamp")));
    EXPECT_TRUE(showsInModel(findKind("multimeter")->state[0], *findKind("multimeter")));
    EXPECT_FALSE(worksEitherWay("junction"));
    EXPECT_FALSE(worksEitherWay("supply"));
    EXPECT_FALSE(worksEitherWay("no such element"));
}

}  // namespace
}  // namespace tiepoint
