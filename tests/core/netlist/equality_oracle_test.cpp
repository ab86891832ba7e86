// Equality and digest against a general graph library on thousands of random pairs: in disguise, and changed in one place. The library says
// what is equal; a change may well leave a circuit equal to what it was.

#include "core/netlist/equality.h"
#include "support/graph_oracle.h"
#include "support/netlists.h"

#include <gtest/gtest.h>

#include <string>

namespace tiepoint {
namespace {

using namespace test;

class RandomCircuits {
public:
    explicit RandomCircuits(unsigned seed) : random_(seed) {}

    int below(std::size_t n) { return static_cast<int>(random_() % n); }
    std::mt19937& random() { return random_; }

    Netlist next() {
        switch (below(6)) {
            case 0:
                return ring(3 + below(6));
            case 1:
                return ladder(2 + below(3));
            case 2:
                return mesh(3 + below(3));
            case 3:
                return branches(2 + below(5));
            default:
                return mixedUp();
        }
    }

    /// One thing about it changed, as a hand would.
    void change(Netlist& netlist) {
        const std::size_t part = static_cast<std::size_t>(below(netlist.parts.size()));
        std::vector<int>& leads = netlist.leads[part];
        switch (below(8)) {
            case 0:  // a value
                netlist.parts[part].values[0] =
                    netlist.parts[part].value(0) + (netlist.parts[part].kind->values[0].choices.empty() ? 1 : 0);
                break;
            case 1:  // a lead elsewhere
                leads[below(leads.size())] = below(netlist.nets.size());
                break;
            case 2:  // turned round
                std::reverse(leads.begin(), leads.end());
                break;
            case 3:  // a jumper gone: one net falls in two
                split(netlist, below(netlist.nets.size()));
                break;
            case 4:  // a jumper too many: two nets are one
                unite(netlist, below(netlist.nets.size()), below(netlist.nets.size()));
                break;
            case 6:  // it is broken
                netlist.parts[part].condition = static_cast<Condition>(1 + below(3));
                break;
            default:  // a lead hangs
                leads[below(leads.size())] = -1;
        }
        renumberNets(netlist);
    }

private:
    static std::string net(int number) { return "n" + std::to_string(number); }
    double ohm() { return below(3) == 0 ? 470 : 330; }

    Netlist ring(int count) {
        NetlistBuilder builder;
        for (int i = 0; i < count; ++i) builder.resistor(net(i), net((i + 1) % count), ohm());
        return builder.build();
    }
    Netlist ladder(int rungs) {
        NetlistBuilder builder;
        for (int i = 0; i < rungs; ++i) {
            builder.resistor(net(i), net(100 + i));
            if (i + 1 < rungs) builder.resistor(net(i), net(i + 1)).resistor(net(100 + i), net(101 + i), ohm());
        }
        return builder.build();
    }
    Netlist mesh(int count) {
        NetlistBuilder builder;
        for (int i = 0; i < count; ++i) {
            for (int j = 0; j < i; ++j) builder.resistor(net(i), net(j));
        }
        return builder.build();
    }
    Netlist branches(int count) {
        NetlistBuilder builder;
        builder.part("bench-supply", {"plus", "minus"});
        for (int i = 0; i < count; ++i)
            builder.part("led", {net(i), "minus"}, {{"colour", below(2)}}).resistor("plus", net(i), ohm());
        return builder.build();
    }
    Netlist mixedUp() {
        static const std::vector<std::pair<std::string, int>> kinds = {
            {"resistor", 2},   {"resistor", 2},    {"lamp", 2},          {"toggle", 2},       {"led", 2},
            {"diode", 2},      {"push-button", 4}, {"potentiometer", 3}, {"slide-switch", 3}, {"usb-supply", 3},
            {"multimeter", 2}, {"test-npn", 3},    {"test-star", 3},     {"test-pair", 6}};
        NetlistBuilder builder;
        const int nets = 2 + below(4), parts = 1 + below(7);
        for (int i = 0; i < parts; ++i) {
            const auto& [kind, leads] = kinds[below(kinds.size())];
            std::vector<std::string> to;
            for (int lead = 0; lead < leads; ++lead) to.push_back(below(8) == 0 ? "" : net(below(nets)));
            builder.part(kind, to);
        }
        Netlist netlist = builder.build();
        if (netlist.nets.empty()) return ring(3);
        for (Part& part : netlist.parts) {
            if (const int position = part.kind->stateIndex("position"); position >= 0) part.state[position] = below(2);
        }
        return netlist;
    }

    void split(Netlist& netlist, int net) {
        netlist.nets.push_back("new");
        for (auto& leads : netlist.leads) {
            for (int& at : leads) {
                if (at == net && below(2) == 0) at = static_cast<int>(netlist.nets.size()) - 1;
            }
        }
    }
    static void unite(Netlist& netlist, int net, int other) {
        for (auto& leads : netlist.leads) {
            for (int& at : leads) at = at == net ? other : at;
        }
    }

    std::mt19937 random_;
};

/// A mapping is checked by carrying the first circuit over to the second: parts take the ids of their partners.
void expectPartners(const Netlist& first, const Netlist& second, const Correspondence& found) {
    ASSERT_EQ(found.partOf.size(), first.parts.size());
    std::vector<char> taken(second.parts.size(), 0);
    for (std::size_t part = 0; part < first.parts.size(); ++part) {
        const int partner = found.partOf[part];
        ASSERT_GE(partner, 0);
        EXPECT_EQ(first.parts[part].kind, second.parts[partner].kind);
        EXPECT_FALSE(std::exchange(taken[partner], 1));
    }
}

TEST(CircuitEquality, AgreesWithAGraphLibraryOnThousandsOfPairs) {
    RandomCircuits circuits(19);
    int equal = 0, different = 0;
    for (int i = 0; i < 6000; ++i) {
        SCOPED_TRACE(i);
        const Netlist first = circuits.next();
        Netlist second = disguised(first, circuits.random());
        const int changes = circuits.below(3);
        for (int c = 0; c < changes && !second.nets.empty(); ++c) circuits.change(second);
        const bool expected = oracleEqual(first, second);
        const Correspondence found = compareCircuits(first, second);
        ASSERT_EQ(found.verdict, expected ? Verdict::Equal : Verdict::Different);
        EXPECT_EQ(compareCircuits(second, first).verdict, found.verdict);
        ASSERT_EQ(canonicalHash(first) == canonicalHash(second), expected);
        if (expected) expectPartners(first, second, found);
        ++(expected ? equal : different);
    }
    EXPECT_GT(equal, 2000);
    EXPECT_GT(different, 2000);
}

// Pairs that are unrelated but alike: all resistors of one value, so that only the wiring tells.
TEST(CircuitEquality, AgreesOnWiringsOfEqualResistors) {
    std::mt19937 random(42);
    int equal = 0, different = 0;
    const auto wiring = [&] {
        NetlistBuilder builder;
        for (int i = 0; i < 5; ++i) {
            const auto a = random() % 4, b = random() % 4;
            builder.resistor("n" + std::to_string(a), "n" + std::to_string(b));
        }
        return builder.build();
    };
    for (int i = 0; i < 4000; ++i) {
        SCOPED_TRACE(i);
        const Netlist first = wiring(), second = wiring();
        const bool expected = oracleEqual(first, second);
        ASSERT_EQ(compareCircuits(first, second).verdict, expected ? Verdict::Equal : Verdict::Different);
        ASSERT_EQ(canonicalHash(first) == canonicalHash(second), expected);
        ++(expected ? equal : different);
    }
    EXPECT_GT(equal, 50);
    EXPECT_GT(different, 2000);
}

}  // namespace
}  // namespace tiepoint
