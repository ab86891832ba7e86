#include "core/diagram/turns.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace tiepoint::test {
namespace {

struct DrawnLine {
    int lead;
    Point from, to;
};

bool meets(const DrawnLine& one, const DrawnLine& other) {
    const auto span = [](double a, double b) { return std::pair(std::min(a, b), std::max(a, b)); };
    const auto [ax0, ax1] = span(one.from.x, one.to.x);
    const auto [ay0, ay1] = span(one.from.y, one.to.y);
    const auto [bx0, bx1] = span(other.from.x, other.to.x);
    const auto [by0, by1] = span(other.from.y, other.to.y);
    return ax0 <= bx1 && bx0 <= ax1 && ay0 <= by1 && by0 <= ay1;
}
/// Through each other's insides at a right angle: the only way in which wires that aren't joined may meet.
bool isPlainCrossing(const DrawnLine& one, const DrawnLine& other) {
    const bool level = one.from.y == one.to.y, otherLevel = other.from.y == other.to.y;
    if (level == otherLevel) return false;
    const DrawnLine &flat = level ? one : other, &plumb = level ? other : one;
    const auto [x0, x1] = std::minmax(flat.from.x, flat.to.x);
    const auto [y0, y1] = std::minmax(plumb.from.y, plumb.to.y);
    return plumb.from.x > x0 && plumb.from.x < x1 && flat.from.y > y0 && flat.from.y < y1;
}

class RandomSymbols {
public:
    explicit RandomSymbols(unsigned seed) : random_(seed) {}

    Rect body() {
        const double width = 8.0 + below(20), height = 8.0 + below(20);
        return {-width / 2, -height / 2, width, height};
    }
    /// On all sides, nowhere nearer to each other than wires may run.
    std::vector<PosedLead> leads(const Rect& body) {
        std::vector<PosedLead> leads;
        const auto addSide = [&](Point corner, Point along, double length, Point out) {
            for (double at = 2; at < length - 1; at += 3) {
                if (below(2) == 0) continue;
                const int lead = static_cast<int>(leads.size());
                leads.push_back({lead, below(6) == 0 ? -1 : lead, corner + along * at, out, below(2) == 0});
            }
        };
        addSide({body.left, body.top}, {0, 1}, body.height, {-1, 0});
        addSide({body.right(), body.top}, {0, 1}, body.height, {1, 0});
        addSide({body.left, body.top}, {1, 0}, body.width, {0, -1});
        addSide({body.left, body.bottom()}, {1, 0}, body.width, {0, 1});
        std::shuffle(leads.begin(), leads.end(), random_);
        return leads;
    }
    int below(int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(random_); }

private:
    std::mt19937 random_;
};

TEST(Turns, NoWireLiesOnAnotherOrOverTheSymbol) {
    RandomSymbols random(20261201);
    for (int round = 0; round < 3000; ++round) {
        const Rect body = random.body();
        const std::vector<PosedLead> leads = random.leads(body);
        const TurnedLeads turned = turnLeads(leads, body, random.below(2) == 0);
        std::vector<DrawnLine> lines;
        for (const InnerWire& wire : turned.wires) lines.push_back({wire.net, wire.from, wire.to});
        constexpr double kFar = 100;
        std::size_t joined = 0;
        for (const SheetPort& port : turned.ports)
            lines.push_back({port.net, {port.along, port.across}, {port.after ? kFar : -kFar, port.across}});
        for (const PosedLead& lead : leads) joined += lead.net >= 0;
        ASSERT_EQ(turned.ports.size(), joined);
        for (const SheetPort& port : turned.ports) {
            const auto lead = std::ranges::find(leads, port.lead, &PosedLead::lead);
            EXPECT_EQ(port.after, lead->after);
        }
        const Rect inside{body.left + 0.1, body.top + 0.1, body.width - 0.2, body.height - 0.2};
        for (std::size_t a = 0; a < lines.size(); ++a) {
            const DrawnLine box{-2, {inside.left, inside.top}, {inside.right(), inside.bottom()}};
            ASSERT_FALSE(meets(lines[a], box)) << "round " << round << ": lead " << lines[a].lead;
            for (std::size_t b = 0; b < a; ++b) {
                if (lines[a].lead == lines[b].lead && lines[a].lead >= 0) continue;
                if (!meets(lines[a], lines[b])) continue;
                ASSERT_TRUE(lines[a].lead >= 0 || lines[b].lead >= 0);
                ASSERT_TRUE(isPlainCrossing(lines[a], lines[b]))
                    << "round " << round << ": leads " << lines[a].lead << " and " << lines[b].lead;
            }
        }
    }
}

TEST(Turns, LeadsThatLookWhereTheyGoRunStraight) {
    const Rect body{-5, -5, 10, 10};
    const std::vector<PosedLead> leads{{0, 0, {-5, 0}, {-1, 0}, false}, {1, 1, {5, 2}, {1, 0}, true}};
    const TurnedLeads turned = turnLeads(leads, body, false);
    EXPECT_TRUE(turned.wires.empty());
    ASSERT_EQ(turned.ports.size(), 2u);
    EXPECT_EQ(turned.ports[1].across, 2);
}

/// A transistor on its side: what leaves upward goes back, what leaves downward goes on, and nothing crosses.
TEST(Turns, NestsWiresOfOneSide) {
    const Rect body{-6, -6, 12, 12};
    const std::vector<PosedLead> leads{
        {0, 0, {-3, -6}, {0, -1}, true}, {1, 1, {0, -6}, {0, -1}, true}, {2, 2, {3, -6}, {0, -1}, true}};
    const TurnedLeads turned = turnLeads(leads, body, false);
    ASSERT_EQ(turned.ports.size(), 3u);
    std::vector<double> across(3);
    for (const SheetPort& port : turned.ports) across[static_cast<std::size_t>(port.lead)] = port.across;
    EXPECT_LT(across[0], across[1]);
    EXPECT_LT(across[1], across[2]);
}

}  // namespace
}  // namespace tiepoint::test
