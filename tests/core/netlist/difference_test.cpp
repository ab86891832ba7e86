// Differences of circuits that are nearly equal: planted ones are found, and every account is true.

#include "core/netlist/difference.h"

#include "core/base/embedded.h"
#include "core/netlist/assignment.h"
#include "core/netlist/circuit_file.h"
#include "core/netlist/equality.h"
#include "core/netlist/matching.h"
#include "support/netlists.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>
#include <string>

namespace tiepoint {
namespace {

using namespace test;

/// The first circuit with all differences made good after the second.
Netlist mended(const Netlist& first, const Netlist& second, const CircuitDifference& difference) {
    const Terminals ours = terminalsOf(first), theirs = terminalsOf(second);
    std::map<std::string, int> nets;
    Netlist made;
    const auto net = [&](const std::string& name) {
        const auto [known, isNew] = nets.emplace(name, static_cast<int>(made.nets.size()));
        if (isNew) made.nets.push_back(name);
        return known->second;
    };
    const auto ourNet = [&](int x) { return x < 0 ? -1 : net("a" + std::to_string(ours.rootOfNet[x])); };
    const auto theirNet = [&](int y) {
        if (y < 0) return -1;
        y = theirs.rootOfNet[y];
        for (int x = 0; x < std::ssize(difference.netOf); ++x) {
            if (difference.netOf[x] == y) return ourNet(x);
        }
        return net("b" + std::to_string(y));
    };
    // A terminal that has nobody else of those that have partners is on the net of its partner's, with nobody or with parts that are new.
    const auto isAlone = [&](const Terminals& terminals, const std::vector<char>& matched, int terminal) {
        int others = 0;
        for (int part = 0; part < std::ssize(matched); ++part) {
            for (int t = terminals.firstOfPart[part]; matched[part] && t < terminals.firstOfPart[part + 1]; ++t)
                others +=
                    t != terminal && terminals.netOf[t] >= 0 && terminals.netOf[t] == terminals.netOf[terminal] ? 1 : 0;
        }
        return others == 0;
    };
    std::vector<char> oursMatched(first.parts.size(), 0), theirsMatched(second.parts.size(), 0);
    for (std::size_t p = 0; p < first.parts.size(); ++p) {
        if (difference.partOf[p] >= 0) oursMatched[p] = theirsMatched[difference.partOf[p]] = 1;
    }
    std::map<int, int> indexOf;
    std::map<int, int> aloneOn;  // by net of the second: the net made for the one terminal of a partner that is on it
    for (int p = 0; p < std::ssize(first.parts); ++p) {
        if (difference.partOf[p] < 0) continue;
        const int index = indexOf[p] = addPart(made, first.parts[p]), q = difference.partOf[p];
        for (std::size_t lead = 0; lead < first.leads[p].size(); ++lead) {
            made.leads[index][lead] = ourNet(first.leads[p][lead]);
            if (difference.leadOf.empty()) continue;
            const int terminal = ours.ofLead[p][lead], other = theirs.ofLead[q][difference.leadOf[p][lead]];
            if (!isAlone(ours, oursMatched, terminal) || !isAlone(theirs, theirsMatched, other)) continue;
            made.leads[index][lead] = net("t" + std::to_string(terminal));
            if (theirs.netOf[other] >= 0) aloneOn[theirs.netOf[other]] = made.leads[index][lead];
        }
    }
    for (const auto& moved : difference.movedLeads) {
        const std::vector<int>& terminal = ours.ofLead[moved.part];
        for (std::size_t lead = 0; lead < terminal.size(); ++lead) {
            if (terminal[lead] == terminal[moved.lead])
                made.leads[indexOf.at(moved.part)][lead] = theirNet(moved.otherNet);
        }
    }
    for (const auto& other : difference.otherSettings) {
        Part& part = made.parts[indexOf.at(other.part)];
        const Part& partner = second.parts[other.partner];
        if (other.state) {
            part.state[other.index] = partner.stateValue(other.index);
        } else {
            part.values[other.index] = partner.value(other.index);
        }
    }
    for (const int q : difference.onlyInSecond) {
        const int index = addPart(made, second.parts[q]);
        for (std::size_t lead = 0; lead < second.leads[q].size(); ++lead) {
            const int y = second.leads[q][lead];
            const auto alone = y < 0 ? aloneOn.end() : aloneOn.find(theirs.rootOfNet[y]);
            made.leads[index][lead] = alone == aloneOn.end() ? theirNet(y) : alone->second;
        }
    }
    renumberNets(made);
    return made;
}

void expectTrue(const Netlist& first, const Netlist& second, const CircuitDifference& difference) {
    EXPECT_EQ(compareCircuits(mended(first, second, difference), second).verdict, Verdict::Equal);
    std::vector<char> taken(second.parts.size(), 0);
    for (const int q : difference.partOf) {
        const bool twice = q >= 0 && std::exchange(taken[q], 1) != 0;
        EXPECT_FALSE(twice);
    }
    EXPECT_EQ(std::ranges::count(taken, 0), std::ssize(difference.onlyInSecond));
    EXPECT_EQ(std::ranges::count(difference.partOf, -1), std::ssize(difference.onlyInFirst));
}

Netlist beaconOf(double ohm, bool turned) {
    return NetlistBuilder()
        .part("bench-supply", {"plus", "minus"})
        .resistor("plus", "fed", ohm)
        .part("push-button", {"fed", "", "lit", ""})
        .part("led", {turned ? "minus" : "lit", turned ? "lit" : "minus"})
        .build();
}

TEST(CircuitDifference, EqualCircuitsHaveNone) {
    std::mt19937 random(1);
    const Netlist one = beaconOf(330, false), other = disguised(one, random);
    const CircuitDifference none = differenceOf(one, other);
    EXPECT_EQ(none.count(), 0);
    EXPECT_EQ(none.partOf.size(), 4u);
    expectTrue(one, other, none);
}

TEST(CircuitDifference, SaysWhichValueDiffers) {
    std::mt19937 random(2);
    const Netlist one = beaconOf(330, false), other = disguised(beaconOf(470, false), random);
    const CircuitDifference found = differenceOf(one, other);
    ASSERT_EQ(found.count(), 1);
    ASSERT_EQ(found.otherSettings.size(), 1u);
    EXPECT_EQ(found.otherSettings[0].part, 1);
    EXPECT_FALSE(found.otherSettings[0].state);
    EXPECT_EQ(other.parts[found.otherSettings[0].partner].value(found.otherSettings[0].index), 470);
    expectTrue(one, other, found);
    EXPECT_EQ(differenceOf(one, other, {.tolerance = 0.5}).count(), 0);
}

TEST(CircuitDifference, SaysThatAPartIsTurned) {
    std::mt19937 random(3);
    const Netlist one = beaconOf(330, false), other = disguised(beaconOf(330, true), random);
    const CircuitDifference found = differenceOf(one, other);
    ASSERT_EQ(found.movedLeads.size(), 2u);
    EXPECT_EQ(found.count(), 2);
    for (const auto& moved : found.movedLeads) EXPECT_EQ(moved.part, 3);
    EXPECT_EQ(one.nets[found.movedLeads[0].net], "lit");
    expectTrue(one, other, found);
}

TEST(CircuitDifference, SaysWhichPartIsMissing) {
    std::mt19937 random(4);
    const Netlist one = beaconOf(330, false);
    NetlistBuilder more;
    more.part("bench-supply", {"plus", "minus"})
        .resistor("plus", "fed")
        .part("push-button", {"fed", "", "lit", ""})
        .part("led", {"lit", "minus"});
    more.part("lamp", {"plus", "minus"});
    const Netlist other = disguised(more.build(), random);
    const CircuitDifference found = differenceOf(one, other);
    ASSERT_EQ(found.count(), 1);
    ASSERT_EQ(found.onlyInSecond.size(), 1u);
    EXPECT_EQ(other.parts[found.onlyInSecond[0]].kind, findKind("lamp"));
    EXPECT_EQ(differenceOf(other, one).onlyInFirst, found.onlyInSecond);
}

TEST(CircuitDifference, NothingInCommonIsAnAccountToo) {
    const Netlist one = NetlistBuilder().part("led", {"a", "b"}).resistor("a", "b").build();
    const Netlist other = NetlistBuilder().part("lamp", {"a", "b"}).part("lamp", {"b", "a"}).build();
    const CircuitDifference found = differenceOf(one, other);
    EXPECT_EQ(found.count(), 4);
    expectTrue(one, other, found);
    EXPECT_EQ(differenceOf({}, one).count(), 2);
    EXPECT_EQ(differenceOf(one, {}).count(), 2);
}

/// A slip and how many differences it makes at most.
int plant(Netlist& netlist, std::mt19937& random) {
    const auto below = [&](std::size_t n) { return static_cast<int>(random() % n); };
    const std::size_t part = static_cast<std::size_t>(below(netlist.parts.size()));
    std::vector<int>& leads = netlist.leads[part];
    int planted = 1;
    switch (below(5)) {
        case 0: {  // another value
            const ValueSpec& spec = netlist.parts[part].kind->values[0];
            const double most = spec.choices.empty() ? spec.maximum : static_cast<double>(spec.choices.size()) - 1;
            const double value = netlist.parts[part].value(0);
            netlist.parts[part].values[0] = value + 1 <= most ? value + 1 : value - 1;
            break;
        }
        case 1:  // a lead elsewhere
            leads[below(leads.size())] = below(netlist.nets.size());
            break;
        case 2:  // a lead hangs
            leads[below(leads.size())] = -1;
            break;
        case 3:  // turned round
            planted = 2;
            std::reverse(leads.begin(), leads.end());
            break;
        default:  // a part is missing
            netlist.parts.erase(netlist.parts.begin() + static_cast<std::ptrdiff_t>(part));
            netlist.leads.erase(netlist.leads.begin() + static_cast<std::ptrdiff_t>(part));
    }
    renumberNets(netlist);
    return planted;
}

/// Harbour circuits: branches, dividers and meshes of some twenty parts.
Netlist harbourCircuit(std::mt19937& random) {
    const auto below = [&](std::size_t n) { return static_cast<int>(random() % n); };
    NetlistBuilder builder;
    builder.part("bench-supply", {"plus", "minus"});
    const int branches = 2 + below(4);
    for (int i = 0; i < branches; ++i) {
        const std::string n = std::to_string(i);
        builder.resistor("plus", "f" + n, 330).part("led", {"f" + n, "g" + n}, {{"colour", below(2)}});
        if (below(2) == 0) {
            builder.part("push-button", {"g" + n, "", "minus", ""});
        } else {
            builder.part("slide-switch", {"minus", "g" + n, "h"});
        }
    }
    builder.resistor("h", "minus", 1000).part("lamp", {"h", "minus"});
    for (int i = below(6); i > 0; --i)
        builder.resistor("m" + std::to_string(below(4)), i % 2 ? "h" : "m" + std::to_string(below(4)));
    return builder.build();
}

TEST(CircuitDifference, FindsPlantedSlips) {
    std::mt19937 random(77);
    int tries = 0, small = 0;
    for (int i = 0; i < 400; ++i) {
        SCOPED_TRACE(i);
        const Netlist first = harbourCircuit(random);
        Netlist second = disguised(first, random);
        int planted = 0;
        for (int slips = 1 + static_cast<int>(random() % 2); slips > 0; --slips) planted += plant(second, random);
        const CircuitDifference found = differenceOf(first, second);
        expectTrue(first, second, found);
        // A lead that leaves its only company alone takes both off their net: the account may count the other one too.
        ++tries;
        small += found.count() <= planted + 2 ? 1 : 0;
    }
    EXPECT_GE(small, tries * 99 / 100) << small << " of " << tries;
}

TEST(CircuitDifference, FindsOneSlipInEveryShippedBench) {
    std::mt19937 random(8);
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/")) continue;
        const Netlist bench = readCircuitText(file.text)->netlist;
        for (int i = 0; i < 30; ++i) {
            SCOPED_TRACE(std::string(file.name) + " " + std::to_string(i));
            Netlist second = disguised(bench, random);
            const int planted = plant(second, random);
            const CircuitDifference found = differenceOf(bench, second);
            expectTrue(bench, second, found);
            EXPECT_LE(found.count(), planted + 2);
        }
    }
}

TEST(CircuitDifference, UnusedPartsCountWhereAsked) {
    const Netlist one = beaconOf(330, false);
    NetlistBuilder littered;
    littered.part("bench-supply", {"plus", "minus"})
        .resistor("plus", "fed")
        .part("push-button", {"fed", "", "lit", ""})
        .part("led", {"lit", "minus"});
    littered.part("lamp", {"plus", ""}).resistor("", "", 470);
    EXPECT_EQ(differenceOf(one, littered.build()).count(), 2);
    EXPECT_EQ(differenceOf(one, littered.build(), {.unusedParts = false}).count(), 0);
}

/// The best sum of gains, by trying all.
double bestByTrial(const Grid<double>& gains, std::size_t row, unsigned taken) {
    if (row == gains.rows()) return 0;
    double best = bestByTrial(gains, row + 1, taken);
    for (std::size_t column = 0; column < gains.columns(); ++column) {
        if (taken & (1u << column)) continue;
        best = std::max(best, gains.row(row)[column] + bestByTrial(gains, row + 1, taken | (1u << column)));
    }
    return best;
}

TEST(Assignment, GainsTheMost) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> gain(-1, 3);
    for (int i = 0; i < 300; ++i) {
        const std::size_t rows = random() % 6, columns = random() % 6;
        Grid<double> gains(rows, columns);
        for (double& each : gains.all()) each = i % 3 == 0 ? std::floor(gain(random)) : gain(random);
        const std::vector<int> found = bestAssignment(gains);
        double sum = 0;
        std::vector<char> taken(columns, 0);
        for (std::size_t row = 0; row < rows; ++row) {
            if (found[row] < 0) continue;
            EXPECT_FALSE(std::exchange(taken[found[row]], 1));
            sum += gains.row(row)[found[row]];
        }
        EXPECT_NEAR(sum, bestByTrial(gains, 0, 0), 1e-12);
    }
}

TEST(Matching, FindsAPairingWhereThereIsOne) {
    std::mt19937 random(6);
    int found = 0;
    for (int i = 0; i < 500; ++i) {
        const int count = 1 + static_cast<int>(random() % 6);
        std::vector<std::vector<char>> suits(count, std::vector<char>(count));
        for (auto& row : suits) {
            for (char& each : row) each = random() % 3 == 0;
        }
        const auto partners = perfectMatching(count, [&](int left, int right) { return suits[left][right] != 0; });
        std::vector<int> order(count);
        for (int k = 0; k < count; ++k) order[k] = k;
        bool exists = false;
        do {
            bool all = true;
            for (int k = 0; k < count; ++k) all = all && suits[k][order[k]];
            exists = exists || all;
        } while (!exists && std::ranges::next_permutation(order).found);
        ASSERT_EQ(!partners.empty(), exists);
        if (!exists) continue;
        ++found;
        std::vector<char> taken(count, 0);
        for (int k = 0; k < count; ++k) {
            EXPECT_TRUE(suits[k][partners[k]]);
            EXPECT_FALSE(std::exchange(taken[partners[k]], 1));
        }
    }
    EXPECT_GT(found, 50);
}

}  // namespace
}  // namespace tiepoint
