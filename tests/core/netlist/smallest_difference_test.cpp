// Differences of small circuits against a search through everything: each way of pairing parts of one kind, each way round of those that
// have none, and each way of pairing nets. The search knows of the circuits only what is written down here.

#include "core/netlist/difference.h"
#include "core/netlist/difference_bound.h"
#include "support/netlists.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <random>
#include <vector>

namespace tiepoint {
namespace {

using namespace test;

/// A part of two ends.
struct Ends {
    std::string_view kind;
    double ohm = 0;
    bool eitherWay = false;
    int nets[2] = {-1, -1};  ///< -1: nothing else is there
};

std::vector<Ends> endsOf(const Netlist& netlist) {
    std::vector<int> uses(netlist.nets.size(), 0);
    for (const auto& leads : netlist.leads)
        for (const int net : leads) uses[static_cast<std::size_t>(net)] += net >= 0;
    std::vector<Ends> all;
    for (std::size_t p = 0; p < netlist.parts.size(); ++p) {
        const Part& part = netlist.parts[p];
        Ends ends;
        ends.kind = part.kind->name;
        const int ohm = part.kind->valueIndex("resistance");
        if (ohm >= 0) ends.ohm = part.value(ohm);
        ends.eitherWay = ends.kind == "resistor" || ends.kind == "lamp";
        for (std::size_t e = 0; e < 2; ++e) {
            const int net = netlist.leads[p][e];
            ends.nets[e] = net >= 0 && uses[static_cast<std::size_t>(net)] > 1 ? net : -1;
        }
        all.push_back(ends);
    }
    return all;
}

class ExhaustiveSearch {
public:
    ExhaustiveSearch(const Netlist& first, const Netlist& second)
        : a_(endsOf(first)),
          b_(endsOf(second)),
          netsOfB_(second.nets.size()),
          netTo_(first.nets.size(), -1),
          partner_(a_.size(), -1),
          turned_(a_.size(), 0),
          best_(static_cast<int>(a_.size() + b_.size())) {}

    int run() {
        pairPart(0, 0);
        return best_;
    }

private:
    void pairPart(std::size_t p, unsigned taken) {
        if (p == a_.size()) return pairNet(0, 0);
        partner_[p] = -1;
        pairPart(p + 1, taken);
        for (std::size_t q = 0; q < b_.size(); ++q) {
            if ((taken >> q & 1) || a_[p].kind != b_[q].kind) continue;
            partner_[p] = static_cast<int>(q);
            for (turned_[p] = 0; turned_[p] <= (a_[p].eitherWay ? 1 : 0); ++turned_[p])
                pairPart(p + 1, taken | 1u << q);
        }
        partner_[p] = -1;
    }

    void pairNet(std::size_t net, unsigned taken) {
        if (net == netTo_.size()) {
            best_ = std::min(best_, count());
            return;
        }
        netTo_[net] = -1;
        pairNet(net + 1, taken);
        for (std::size_t other = 0; other < netsOfB_; ++other) {
            if (taken >> other & 1) continue;
            netTo_[net] = static_cast<int>(other);
            pairNet(net + 1, taken | 1u << other);
        }
    }

    int count() const {
        int sum = static_cast<int>(b_.size()), onA[16] = {}, onB[16] = {};
        for (std::size_t p = 0; p < a_.size(); ++p) {
            if (partner_[p] < 0) continue;
            for (const int net : a_[p].nets)
                if (net >= 0) ++onA[net];
            for (const int net : b_[static_cast<std::size_t>(partner_[p])].nets)
                if (net >= 0) ++onB[net];
        }
        for (std::size_t p = 0; p < a_.size(); ++p) {
            if (partner_[p] < 0) {
                ++sum;
                continue;
            }
            const Ends& other = b_[static_cast<std::size_t>(partner_[p])];
            --sum;
            sum += a_[p].ohm != other.ohm;
            for (int e = 0; e < 2; ++e) {
                const int x = a_[p].nets[e], y = other.nets[turned_[p] ? 1 - e : e];
                const bool bothAlone = (x < 0 || onA[x] < 2) && (y < 0 || onB[y] < 2);
                const bool agree = x < 0 ? y < 0 : y >= 0 && netTo_[static_cast<std::size_t>(x)] == y;
                sum += !bothAlone && !agree;
            }
        }
        return sum;
    }

    std::vector<Ends> a_, b_;
    std::size_t netsOfB_;
    std::vector<int> netTo_, partner_, turned_;
    int best_;
};

/// Four or five parts on three or four nets, at random.
Netlist smallCircuit(std::mt19937& random) {
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    const auto net = [&] { return "n" + std::to_string(below(4)); };
    NetlistBuilder builder;
    builder.part("bench-supply", {"n0", "n1"});
    for (int parts = 3 + below(2); parts > 0; --parts) {
        switch (below(4)) {
            case 0:
                builder.part("led", {net(), net()});
                break;
            case 1:
                builder.part("lamp", {net(), net()});
                break;
            default:
                builder.resistor(net(), net(), below(3) == 0 ? 470 : 330);
        }
    }
    return builder.build();
}

/// One thing otherwise: a value, a lead, a part turned, a part gone.
void alter(Netlist& netlist, std::mt19937& random) {
    const auto part = static_cast<std::size_t>(1 + random() % (netlist.parts.size() - 1));
    std::vector<int>& leads = netlist.leads[part];
    const int ohm = netlist.parts[part].kind->valueIndex("resistance");
    switch (random() % 4) {
        case 0:
            if (ohm >= 0) netlist.parts[part].values[static_cast<std::size_t>(ohm)] = 1000;
            break;
        case 1:
            leads[random() % 2] = static_cast<int>(random() % netlist.nets.size());
            break;
        case 2:
            std::swap(leads[0], leads[1]);
            break;
        default:
            netlist.parts.erase(netlist.parts.begin() + static_cast<std::ptrdiff_t>(part));
            netlist.leads.erase(netlist.leads.begin() + static_cast<std::ptrdiff_t>(part));
    }
    renumberNets(netlist);
}

int boundFor(const Netlist& first, const Netlist& second) {
    const Likeness likeness;
    const CircuitSide a(first, likeness), b(second, likeness);
    return fewestDifferences(a, b, resemblanceOf(a, b, likeness).apart);
}

/// Found from a few starts, the smallest isn't promised (difference.h): of these circuits, some with three changes among five parts, it is missed in
/// one of a hundred. The bound from below never is above it.
TEST(SmallestDifference, IsNearlyAlwaysTheSmallestOfAll) {
    std::mt19937 random(2024);
    int tries = 0, more = 0, tight = 0;
    for (int i = 0; i < 300; ++i) {
        SCOPED_TRACE(i);
        const Netlist first = smallCircuit(random);
        Netlist second = disguised(first, random);
        for (int changes = static_cast<int>(random() % 3); changes >= 0; --changes) alter(second, random);
        const int smallest = ExhaustiveSearch(first, second).run(), found = differenceOf(first, second).count();
        ASSERT_GE(found, smallest);
        ++tries;
        more += found > smallest;
        if (smallest == 0) continue;
        const int bound = boundFor(first, second);
        ASSERT_LE(bound, smallest);
        tight += bound == smallest;
    }
    std::printf("%d of %d pairs have a smaller account than was found; the bound is met in %d\n", more, tries, tight);
    EXPECT_LE(more, tries / 100);
}

}  // namespace
}  // namespace tiepoint
