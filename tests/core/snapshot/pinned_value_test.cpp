// Pinned readings against the laws of the circuit they stand in, worked by hand.

#include "core/snapshot/pinned_value.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

/// 6 V over 100 and 200 ohm in a row: 20 mA, 4 V at the middle (Ohm's law; the supply's own 10 mOhm takes 0.2 mV).
Bench dividerOn(double on = 1) {
    Bench bench =
        BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 6}}, {{"on", on}})
            .part("R1", "resistor", {{"1", "A.a5"}, {"2", "A.a10"}}, {{"resistance", 100}})
            .part("R2", "resistor", {{"1", "A.b10"}, {"2", "A.b15"}}, {{"resistance", 200}})
            .jumper("W1", "A.top+5", "A.c5")
            .jumper("W2", "A.e15", "A.bottom-15")
            .build();
    bench.pinned = {{"M1", VoltsAt{holeAt("A.e10")}, {}},
                    {"M2", VoltsBetween{holeAt("A.c15"), holeAt("A.c10")}, {}},
                    {"M3", AmperesIn{"W1", {}}, {}},
                    {"M4", AmperesIn{"R2", "2"}, {}},
                    {"M5", WattsOf{"R2"}, {}},
                    {"M6", WattsOf{"PS1"}, {}},
                    {"M7", VoltsAt{holeAt("A.e20")}, {}}};
    return bench;
}

TEST(PinnedValue, FollowsOhmsLaw) {
    const auto snapshot = evaluate(std::make_shared<const Bench>(dividerOn()));
    const struct {
        double value, tolerance;
        const char *unit, *text;
    } table[] = {{4, 1e-3, "V", "4.00 V"},      {-4, 1e-3, "V", "\u22124.00 V"}, {0.02, 1e-5, "A", "20.0 mA"},
                 {-0.02, 1e-5, "A", "20.0 mA"}, {0.08, 1e-4, "W", "80.0 mW"},    {-0.12, 1e-4, "W", "gives 120.0 mW"}};
    const auto& pinned = snapshot->layout->bench->pinned;
    for (std::size_t i = 0; i < std::size(table); ++i) {
        const PinnedValue read = pinnedValue(*snapshot, pinned[i]);
        EXPECT_NEAR(read.value, table[i].value, table[i].tolerance) << pinned[i].id;
        EXPECT_EQ(read.unit, table[i].unit);
        EXPECT_EQ(pinnedText(*snapshot, pinned[i]), table[i].text);
    }
    EXPECT_TRUE(std::isnan(pinnedValue(*snapshot, pinned[6]).value));
    EXPECT_EQ(pinnedText(*snapshot, pinned[6]), "floating");
}

TEST(PinnedValue, SaysWhenThereIsNothingToRead) {
    const auto off = evaluate(std::make_shared<const Bench>(dividerOn(0)));
    for (const PinnedReading& reading : off->layout->bench->pinned) {
        EXPECT_TRUE(std::isnan(pinnedValue(*off, reading).value));
        EXPECT_EQ(pinnedText(*off, reading), "off");
    }
}

}  // namespace
}  // namespace tiepoint
