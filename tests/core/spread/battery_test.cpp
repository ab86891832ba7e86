// Hours from a battery against an integral of the same laws in the test, with tables typed anew and two hundred times as many steps; and against
// what tests of cells published.

#include "core/spread/battery.h"

#include "support/solved_bench.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace tiepoint {
namespace {

using CurveTable = std::vector<std::pair<double, double>>;

double valueBetween(const CurveTable& table, double at) {
    for (std::size_t i = 1; i < table.size(); ++i) {
        if (at <= table[i].first || i + 1 == table.size()) {
            const double share =
                std::clamp((at - table[i - 1].first) / (table[i].first - table[i - 1].first), 0.0, 1.0);
            return table[i - 1].second + share * (table[i].second - table[i - 1].second);
        }
    }
    return table.back().second;
}

const CurveTable kVoltsByUse{{0, 1.6}, {0.05, 1.5}, {0.25, 1.3}, {0.5, 1.2}, {0.75, 1.1}, {0.95, 0.9}};
const CurveTable kOhmsByUse{{0, 0.2}, {0.25, 0.4}, {0.85, 1.0}, {0.95, 1.0}};
const CurveTable kHoursByCurrent{
    {std::log10(0.025), 2.9}, {-1, 2.2}, {std::log10(0.5), 1.3}, {0, 0.83}, {std::log10(2.0), 0.54}};

double hoursInto(double ohm, double count, double used) {
    constexpr int kSteps = 20'000;
    double hours = 0;
    const double step = (0.95 - used) / kSteps;
    for (int n = 0; n < kSteps; ++n) {
        const double at = used + (n + 0.5) * step;
        const double ampere = count * valueBetween(kVoltsByUse, at) / (ohm + count * valueBetween(kOhmsByUse, at));
        hours += step * valueBetween(kHoursByCurrent, std::log10(ampere)) / ampere;
    }
    return hours;
}

BatteryLife lifeOf(std::string_view text, const BatteryChoice& choice = {}) {
    const auto life = batteryLife(test::solveCompact(text), choice);
    if (!life) throw std::invalid_argument("no battery");
    return *life;
}

TEST(Battery, AResistorEmptiesCellsAsTheIntegralSays) {
    for (const double ohm : {5.0, 33.0, 220.0, 1000.0}) {
        for (const int count : {1, 2, 4}) {
            const BatteryLife life =
                lifeOf(fmt::format("half; CE1 top+3 bottom-3 {}; R1 top+8 bottom-20 {}", count, ohm));
            EXPECT_NEAR(life.hours / hoursInto(ohm, count, 0), 1, 2e-3) << count << " cells into " << ohm;
            EXPECT_EQ(life.part, "CE1");
        }
    }
}

TEST(Battery, TheHoursAreThoseThatTestsPublished) {
    // PowerStream's AA tests: 1.30 Ah at 0.5 A, down to 0.1 V a cell without a pause. Into 2.2 ohm a cell starts with 0.67 A and ends with
    // 0.28 A: about two and a half hours.
    const double hours = lifeOf("half; CE1 top+3 bottom-3 1; R1 top+8 bottom-20 2.2").hours;
    EXPECT_GT(hours, 2);
    EXPECT_LT(hours, 3.5);
}

TEST(Battery, VoltsSinkThroughoutAndHoursRise) {
    const BatteryLife life = lifeOf(
        "half; CE1 top+3 bottom-3 2; W1 top+8 a8 red; R1 b8 b14 100; D1 c14 c15 red; "
        "W2 a15 bottom-15 black");
    ASSERT_GT(life.moments.size(), 10u);
    for (std::size_t i = 1; i < life.moments.size(); ++i) {
        EXPECT_LT(life.moments[i].volt, life.moments[i - 1].volt);
        EXPECT_GT(life.moments[i].hours, life.moments[i - 1].hours);
        EXPECT_LE(life.moments[i].brightness[0], life.moments[i - 1].brightness[0] + 1e-12);
    }
    EXPECT_EQ(life.moments.back().hours, life.hours);
}

TEST(Battery, ALightThatNeedsMoreVoltsGoesDarkBeforeTheEnd) {
    const BatteryLife life = lifeOf(
        "half; CE1 top+3 bottom-3 2; W1 top+8 a8 red; R1 b8 b14 100; D1 c14 c15 red; "
        "W2 a15 bottom-15 black");
    EXPECT_EQ(life.darkFirst, "");  // 1.8 V at the end still gives a red LED a little
    const BatteryLife blue = lifeOf(
        "half; CE1 top+3 bottom-3 2; W1 top+8 a8 red; R1 b8 b14 10; D1 c14 c15 blue; "
        "W2 a15 bottom-15 black");
    EXPECT_EQ(blue.darkFirst, "D1");
    EXPECT_LT(blue.darkHours, blue.hours);
}

TEST(Battery, AChosenOneTakesTheFirstSuppliesPlace) {
    const PartKind* cells = findKind("cells");
    ASSERT_TRUE(isBattery(*cells));
    const char* text = "half; PS1 top+3 bottom-3 5; R1 top+8 bottom-20 220";
    EXPECT_FALSE(batteryLife(test::solveCompact(text)).has_value());
    EXPECT_NEAR(lifeOf(text, {cells, 3}).hours / hoursInto(220, 3, 0), 1, 2e-3);
    EXPECT_EQ(lifeOf(text, {cells, 3}).kind, "3 cells in a holder");
}

TEST(Battery, UsedCellsBeginWhereTheirConditionSays) {
    Bench bench = test::compactBench("half; CE1 top+3 bottom-3 2; R1 top+8 bottom-20 100");
    const int condition = bench.parts[0].kind->valueIndex("condition");
    bench.parts[0].values[static_cast<std::size_t>(condition)] = 1;  // used: 1.3 V a cell
    const auto life = batteryLife(evaluate(std::make_shared<const Bench>(bench)));
    ASSERT_TRUE(life);
    EXPECT_NEAR(life->moments.front().used, 0.25, 0.002);
    EXPECT_NEAR(life->hours / hoursInto(100, 2, 0.25), 1, 1e-2);
}

TEST(Battery, NothingDrawnLastsForEver) {
    EXPECT_TRUE(std::isinf(lifeOf("half; CE1 top+3 bottom-3 2; R1 b8 b14 100").hours));
    EXPECT_EQ(lifeInWords(std::numeric_limits<double>::infinity()), "for as long as it can be stored");
    EXPECT_EQ(lifeInWords(0.5), "30 minutes");
    EXPECT_EQ(lifeInWords(14.2), "14 hours");
    EXPECT_EQ(lifeInWords(100), "4 days");
}

}  // namespace
}  // namespace tiepoint
