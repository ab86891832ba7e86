// What equality means: what may be exchanged, what counts, and the symmetric cases that are hard for a search.

#include "core/netlist/equality.h"

#include "core/netlist/symmetry.h"
#include "support/netlists.h"

#include <gtest/gtest.h>

#include <string>

namespace tiepoint {
namespace {

using namespace test;

Verdict verdictOf(const Netlist& a, const Netlist& b, const Likeness& likeness = {}) {
    return compareCircuits(a, b, likeness).verdict;
}

Netlist one(const char* kind, const std::vector<std::string>& nets,
            std::initializer_list<std::pair<std::string_view, double>> settings = {}) {
    // Two resistors of different values tell the nets apart.
    return NetlistBuilder()
        .part(kind, nets, settings)
        .part("bench-supply", {"plus", "minus"})
        .resistor("plus", "x", 100)
        .resistor("minus", "y", 200)
        .resistor("y", "z", 300)
        .build();
}

TEST(CircuitEquality, ExchangesEndsAsTheModelAllows) {
    struct Row {
        const char* kind;
        std::vector<std::string> one, other;
        bool equal;
    };
    const Row rows[] = {
        {"resistor", {"x", "y"}, {"y", "x"}, true},
        {"lamp", {"x", "y"}, {"y", "x"}, true},
        {"toggle", {"x", "y"}, {"y", "x"}, true},
        {"led", {"x", "y"}, {"y", "x"}, false},
        {"diode", {"x", "y"}, {"y", "x"}, false},
        {"cells", {"x", "y"}, {"y", "x"}, false},
        {"multimeter", {"x", "y"}, {"y", "x"}, false},  // its reading would have the other sign
        {"push-button", {"x", "", "y", ""}, {"", "x", "", "y"}, true},
        {"push-button", {"x", "x", "y", "y"}, {"y", "", "x", "x"}, true},
        {"push-button", {"x", "y", "z", "z"}, {"x", "z", "y", "y"}, false},
        {"potentiometer", {"x", "y", "z"}, {"z", "y", "x"}, true},  // its knob stands in the middle
        {"potentiometer", {"x", "y", "z"}, {"y", "x", "z"}, false},
        {"slide-switch", {"x", "y", "z"}, {"z", "y", "x"}, false},  // closed on the other side
        {"slide-switch", {"x", "y", "z"}, {"x", "z", "y"}, false},
        {"usb-supply", {"x", "y", ""}, {"x", "", "y"}, true},
        {"usb-supply", {"x", "y", ""}, {"y", "x", ""}, false},
        {"test-npn", {"x", "y", "z"}, {"x", "z", "y"}, false},
        {"test-npn", {"x", "y", "z"}, {"z", "y", "x"}, false},
        {"test-pair", {"x", "y", "", "z", "plus", ""}, {"z", "plus", "", "x", "y", ""}, true},  // half for half
        {"test-pair", {"x", "y", "", "z", "plus", ""}, {"z", "y", "", "x", "plus", ""}, false},
        {"test-pair", {"x", "y", "", "z", "plus", ""}, {"y", "x", "", "z", "plus", ""}, false},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.kind);
        const Netlist a = one(row.kind, row.one), b = one(row.kind, row.other);
        EXPECT_EQ(verdictOf(a, b), row.equal ? Verdict::Equal : Verdict::Different);
        EXPECT_EQ(canonicalHash(a) == canonicalHash(b), row.equal);
    }
}

TEST(CircuitEquality, ABrokenPartIsNoSoundOne) {
    const Netlist sound = one("led", {"x", "y"});
    for (const Condition condition : {Condition::Dead, Condition::OpenInside, Condition::DryContact}) {
        Netlist broken = sound;
        broken.parts.front().condition = condition;
        EXPECT_EQ(verdictOf(sound, broken), Verdict::Different);
        EXPECT_EQ(verdictOf(broken, broken), Verdict::Equal);
        EXPECT_NE(canonicalHash(sound), canonicalHash(broken));
    }
}

TEST(CircuitEquality, ATurnedPartMaySetItsStateTheOtherWay) {
    const Netlist slide = one("slide-switch", {"x", "y", "z"});
    EXPECT_EQ(verdictOf(slide, one("slide-switch", {"z", "y", "x"}, {{"position", 1}})), Verdict::Equal);
    const Netlist knob = one("potentiometer", {"x", "y", "z"}, {{"turn", 0.3}});
    EXPECT_EQ(verdictOf(knob, one("potentiometer", {"z", "y", "x"}, {{"turn", 0.7}})), Verdict::Equal);
    EXPECT_EQ(verdictOf(knob, one("potentiometer", {"z", "y", "x"}, {{"turn", 0.3}})), Verdict::Different);
    EXPECT_EQ(canonicalHash(knob), canonicalHash(one("potentiometer", {"z", "y", "x"}, {{"turn", 0.7}})));
}

TEST(CircuitEquality, StatesCountWhereAsked) {
    const Likeness still{.states = false};
    const struct {
        const char *kind, *state;
        double value;
    } rows[] = {{"slide-switch", "position", 1},
                {"toggle", "closed", 1},
                {"potentiometer", "turn", 0.25},
                {"cells", "on", 0},
                {"multimeter", "dial", 0}};
    for (const auto& row : rows) {
        SCOPED_TRACE(row.kind);
        const std::vector<std::string> nets = findKind(row.kind)->leads.size() == 3
                                                  ? std::vector<std::string>{"x", "y", "z"}
                                                  : std::vector<std::string>{"x", "y"};
        const Netlist a = one(row.kind, nets), b = one(row.kind, nets, {{row.state, row.value}});
        EXPECT_EQ(verdictOf(a, b), Verdict::Different);
        EXPECT_NE(canonicalHash(a), canonicalHash(b));
        EXPECT_EQ(verdictOf(a, b, still), Verdict::Equal);
        EXPECT_EQ(canonicalHash(a, still), canonicalHash(b, still));
    }
    EXPECT_EQ(verdictOf(one("slide-switch", {"x", "y", "z"}), one("slide-switch", {"z", "y", "x"}), still),
              Verdict::Equal);
}

TEST(CircuitEquality, ValuesCountAsAsked) {
    const auto with = [](double ohm, double watt) {
        return NetlistBuilder()
            .part("resistor", {"a", "b"}, {{"resistance", ohm}, {"rating", watt}})
            .resistor("a", "b")
            .build();
    };
    EXPECT_EQ(verdictOf(with(330, 0.25), NetlistBuilder().resistor("a", "b").part("resistor", {"b", "a"}).build()),
              Verdict::Equal)
        << "a default is the value that it stands for";
    EXPECT_EQ(verdictOf(with(330, 0.25), with(330, 0.5)), Verdict::Different);
    const Likeness electrical{.values = ValuesCounted::Electrical}, none{.values = ValuesCounted::None};
    EXPECT_EQ(verdictOf(with(330, 0.25), with(330, 0.5), electrical), Verdict::Equal);
    EXPECT_EQ(canonicalHash(with(330, 0.25), electrical), canonicalHash(with(330, 0.5), electrical));
    EXPECT_EQ(verdictOf(with(330, 0.25), with(331, 0.25), electrical), Verdict::Different);
    EXPECT_EQ(verdictOf(with(330, 0.25), with(331, 0.25), none), Verdict::Equal);
    EXPECT_EQ(canonicalHash(with(330, 0.25), none), canonicalHash(with(9, 0.25), none));
    // White and blue differ in their light alone.
    const auto led = [](double colour) { return one("led", {"x", "y"}, {{"colour", colour}}); };
    EXPECT_EQ(verdictOf(led(5), led(6), electrical), Verdict::Different);
}

TEST(CircuitEquality, PairsValuesWithinATolerance) {
    const auto parallel = [](std::vector<double> ohms) {
        NetlistBuilder builder;
        for (const double ohm : ohms) builder.resistor("a", "b", ohm);
        return builder.build();
    };
    const Likeness loose{.tolerance = 0.05};
    EXPECT_EQ(verdictOf(parallel({100, 200}), parallel({203, 99}), loose), Verdict::Equal);
    EXPECT_EQ(canonicalHash(parallel({100, 200}), loose), canonicalHash(parallel({203, 99}), loose));
    EXPECT_EQ(verdictOf(parallel({100, 200}), parallel({203, 99})), Verdict::Different);
    EXPECT_EQ(verdictOf(parallel({100, 200}), parallel({211, 99}), loose), Verdict::Different);
    // Each is within 5 % of its neighbour, the ends aren't of each other.
    EXPECT_EQ(verdictOf(parallel({100, 104, 108}), parallel({104, 108, 112}), loose), Verdict::Equal);
    EXPECT_EQ(verdictOf(parallel({100, 100, 108}), parallel({104, 108, 108}), loose), Verdict::Different);
    EXPECT_EQ(verdictOf(parallel({104, 100, 104}), parallel({108, 104, 100}), loose), Verdict::Equal)
        << "104 must give way to 100";
    const Correspondence found = compareCircuits(parallel({104, 100, 104}), parallel({108, 104, 100}), loose);
    EXPECT_NE(found.partOf[1], 0);
}

TEST(CircuitEquality, ChainsMayBeReorderedWhereAsked) {
    const auto chain = [](const std::vector<std::string>& order) {
        NetlistBuilder builder;
        builder.part("bench-supply", {"plus", "minus"}).resistor("plus", "minus", 1000);
        for (std::size_t i = 0; i < order.size(); ++i) {
            const std::string from = i == 0 ? "plus" : "m" + std::to_string(i);
            const std::string to = i + 1 == order.size() ? "minus" : "m" + std::to_string(i + 1);
            if (order[i] == "R") builder.resistor(from, to);
            if (order[i] == "D") builder.part("led", {from, to});
            if (order[i] == "d") builder.part("led", {to, from});
            if (order[i] == "S") builder.part("push-button", {from, "", "", to});
        }
        return builder.build();
    };
    const Likeness free{.seriesOrder = false};
    EXPECT_EQ(verdictOf(chain({"R", "D"}), chain({"D", "R"})), Verdict::Different);
    EXPECT_EQ(verdictOf(chain({"R", "D"}), chain({"D", "R"}), free), Verdict::Equal);
    EXPECT_EQ(canonicalHash(chain({"R", "D"}), free), canonicalHash(chain({"D", "R"}), free));
    EXPECT_EQ(verdictOf(chain({"R", "D"}), chain({"d", "R"}), free), Verdict::Different);
    EXPECT_EQ(verdictOf(chain({"R", "D", "S", "d"}), chain({"S", "d", "R", "D"}), free), Verdict::Equal);
    EXPECT_EQ(verdictOf(chain({"R", "D", "S", "D"}), chain({"S", "d", "R", "D"}), free), Verdict::Different);
    EXPECT_EQ(verdictOf(chain({"R", "R", "D"}), chain({"R", "D", "D"}), free), Verdict::Different);
}

TEST(CircuitEquality, ChainsEndWhereSomethingElseMeets) {
    const auto tapped = [](bool resistorFirst) {
        return NetlistBuilder()
            .part("bench-supply", {"plus", "minus"})
            .resistor("plus", "minus", 1000)
            .resistor(resistorFirst ? "plus" : "m", resistorFirst ? "m" : "minus")
            .part("led", {resistorFirst ? "m" : "plus", resistorFirst ? "minus" : "m"})
            .part("lamp", {"m", "minus"})
            .build();
    };
    EXPECT_EQ(verdictOf(tapped(true), tapped(false), {.seriesOrder = false}), Verdict::Different);
}

TEST(CircuitEquality, RingsAreChainsWithoutEnds) {
    const auto ring = [](const std::string& order) {
        NetlistBuilder builder;
        for (std::size_t i = 0; i < order.size(); ++i) {
            const std::string from = "n" + std::to_string(i), to = "n" + std::to_string((i + 1) % order.size());
            if (order[i] == 'P') builder.part("cells", {from, to});
            if (order[i] == 'p') builder.part("cells", {to, from});
            if (order[i] == 'R') builder.resistor(from, to);
            if (order[i] == 'D') builder.part("led", {from, to});
            if (order[i] == 'd') builder.part("led", {to, from});
        }
        return builder.build();
    };
    const Likeness free{.seriesOrder = false};
    EXPECT_EQ(verdictOf(ring("PRD"), ring("PDR")), Verdict::Different);
    EXPECT_EQ(verdictOf(ring("PRD"), ring("PDR"), free), Verdict::Equal);
    EXPECT_EQ(verdictOf(ring("PRD"), ring("dpR"), free), Verdict::Equal) << "the same ring seen from behind";
    EXPECT_EQ(canonicalHash(ring("PRD"), free), canonicalHash(ring("dpR"), free));
    EXPECT_EQ(verdictOf(ring("PRD"), ring("PRd"), free), Verdict::Different);
    EXPECT_NE(canonicalHash(ring("PRD"), free), canonicalHash(ring("PRd"), free));
}

TEST(CircuitEquality, UnusedPartsCountWhereAsked) {
    NetlistBuilder bare;
    bare.part("bench-supply", {"plus", "minus"}).resistor("plus", "minus");
    NetlistBuilder littered = bare;
    littered.part("led", {"", ""})
        .resistor("plus", "dead")
        .part("lamp", {"dead", "deader"})
        .part("push-button", {"", "", "plus", ""});
    const Likeness used{.unusedParts = false};
    EXPECT_EQ(verdictOf(bare.build(), littered.build()), Verdict::Different);
    EXPECT_EQ(verdictOf(bare.build(), littered.build(), used), Verdict::Equal);
    EXPECT_EQ(canonicalHash(bare.build(), used), canonicalHash(littered.build(), used));
    const Correspondence found = compareCircuits(littered.build(), bare.build(), used);
    EXPECT_EQ(found.partOf, (std::vector<int>{0, 1, -1, -1, -1, -1}));
    EXPECT_EQ(found.netOf, (std::vector<int>{0, 1, -1, -1}));
}

TEST(CircuitEquality, NamesThePartners) {
    const Netlist a = NetlistBuilder()
                          .part("bench-supply", {"plus", "minus"})
                          .resistor("plus", "lit")
                          .part("led", {"lit", "minus"})
                          .build();
    const Netlist b =
        NetlistBuilder().part("led", {"q", "r"}).part("bench-supply", {"p", "r"}).resistor("q", "p").build();
    const Correspondence found = compareCircuits(a, b);
    ASSERT_EQ(found.verdict, Verdict::Equal);
    EXPECT_EQ(found.partOf, (std::vector<int>{1, 2, 0}));
    std::vector<std::string> nets;
    for (const int net : found.netOf) nets.push_back(b.nets[net]);
    EXPECT_EQ(nets, (std::vector<std::string>{"p", "r", "q"}));
}

std::string numbered(const char* prefix, int number) { return prefix + std::to_string(number); }

Netlist meshOf(int count) {
    NetlistBuilder builder;
    for (int i = 0; i < count; ++i) {
        for (int j = 0; j < i; ++j) builder.resistor(numbered("n", i), numbered("n", j));
    }
    return builder.build();
}

/// Sixteen nets, each joined to six: those of its row and column on a square (`rook`), or the other graph with the same figures, on a torus.
/// S. S. Shrikhande, "The uniqueness of the L2 association scheme", Ann. Math. Statist. 30 (1959); from memory.
Netlist stronglyRegular(bool rook) {
    NetlistBuilder builder;
    const auto joined = [&](int a, int b) {
        const int x = (a / 4 - b / 4 + 4) % 4, y = (a % 4 - b % 4 + 4) % 4;
        if (rook) return x == 0 || y == 0;
        return (x == 0 && (y == 1 || y == 3)) || (y == 0 && (x == 1 || x == 3)) || (x == 1 && y == 1) ||
               (x == 3 && y == 3);
    };
    for (int a = 0; a < 16; ++a) {
        for (int b = 0; b < a; ++b) {
            if (joined(a, b)) builder.resistor(numbered("n", a), numbered("n", b));
        }
    }
    return builder.build();
}

Netlist rings(const std::vector<int>& sizes) {
    NetlistBuilder builder;
    for (std::size_t r = 0; r < sizes.size(); ++r) {
        for (int i = 0; i < sizes[r]; ++i)
            builder.resistor(numbered("r", static_cast<int>(r)) + numbered("n", i),
                             numbered("r", static_cast<int>(r)) + numbered("n", (i + 1) % sizes[r]));
    }
    return builder.build();
}

Netlist branchesOf(int count, double lastOhm) {
    NetlistBuilder builder;
    builder.part("bench-supply", {"plus", "minus"});
    for (int i = 0; i < count; ++i) {
        builder.resistor("plus", numbered("n", i), i + 1 == count ? lastOhm : 330);
        builder.part("led", {numbered("n", i), "minus"});
    }
    return builder.build();
}

Netlist gridOf(int side, bool twisted) {
    NetlistBuilder builder;
    for (int x = 0; x < side; ++x) {
        for (int y = 0; y < side; ++y) {
            const int shift = twisted && x + 1 == side ? 1 : 0;
            builder.resistor(numbered("x", x) + numbered("y", y),
                             numbered("x", (x + 1) % side) + numbered("y", (y + shift) % side));
            builder.resistor(numbered("x", x) + numbered("y", y), numbered("x", x) + numbered("y", (y + 1) % side));
        }
    }
    return builder.build();
}

TEST(CircuitEquality, SymmetricCircuitsAreDecidedWithLittleEffort) {
    std::mt19937 random(7);
    struct Row {
        const char* name;
        Netlist one, other;
        bool equal;
    };
    const Row rows[] = {
        {"a mesh of 24", meshOf(24), meshOf(24), true},
        {"300 branches", branchesOf(300, 330), branchesOf(300, 330), true},
        {"300 branches, one differs", branchesOf(300, 330), branchesOf(300, 331), false},
        {"a ring of 300", rings({300}), rings({300}), true},
        {"twelve rings", rings({6, 6, 6, 3, 3, 3, 3, 3, 3, 6, 6, 6}), rings({3, 3, 3, 3, 3, 3, 6, 6, 6, 6, 6, 6}),
         true},
        {"rings of other sizes", rings({5, 7, 5, 7, 6}), rings({6, 6, 7, 6, 5}), false},
        {"strongly regular", stronglyRegular(true), stronglyRegular(false), false},
        {"a square and itself", stronglyRegular(true), stronglyRegular(true), true},
        {"a torus and itself", stronglyRegular(false), stronglyRegular(false), true},
        {"grids on a torus", gridOf(9, false), gridOf(9, false), true},
        {"one of them twisted", gridOf(9, false), gridOf(9, true), false},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.name);
        const Netlist other = disguised(row.other, random);
        EXPECT_EQ(verdictOf(row.one, other, {.effort = 20'000'000}), row.equal ? Verdict::Equal : Verdict::Different);
        EXPECT_EQ(canonicalHash(row.one) == canonicalHash(other), row.equal);
        if (row.equal) {
            EXPECT_EQ(verdictOf(row.one, other, {.tolerance = 0.01, .effort = 100'000'000}), Verdict::Equal);
        }
    }
}

TEST(CircuitEquality, GivesUpOnlyBeyondItsEffort) {
    EXPECT_EQ(verdictOf(meshOf(24), meshOf(24), {.effort = 1000}), Verdict::Undecided);
    EXPECT_TRUE(compareCircuits(meshOf(24), meshOf(24), {.effort = 1000}).partOf.empty());
    EXPECT_EQ(verdictOf(meshOf(24), meshOf(23), {.effort = 1000}), Verdict::Different) << "sizes need no effort";
}

TEST(CircuitEquality, NothingEqualsNothing) {
    EXPECT_EQ(verdictOf({}, {}), Verdict::Equal);
    EXPECT_EQ(verdictOf({}, meshOf(2)), Verdict::Different);
    EXPECT_EQ(canonicalHash({}), canonicalHash({}));
}

}  // namespace
}  // namespace tiepoint
