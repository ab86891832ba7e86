// The ladder of a value. E24 neighbours: IEC 60063. Usual volts: common practice.

#include "core/parts/ladder.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

const ValueSpec& specOf(const char* kind, const char* value) {
    const PartKind& found = *findKind(kind);
    return found.values[static_cast<std::size_t>(found.valueIndex(value))];
}

TEST(Ladder, ResistorsClimbTheirSeries) {
    const ValueSpec& spec = specOf("resistor", "resistance");
    EXPECT_EQ(ladderAbout(spec, 330, 2), (std::vector<double>{270, 300, 330, 360, 390}));
    EXPECT_EQ(ladderStep(spec, 91, 1), 100);
    EXPECT_EQ(ladderStep(spec, 1000, -1), 910);
    EXPECT_EQ(ladderStep(spec, 335, 1), 360) << "from between two rungs to the next one up";
    EXPECT_EQ(ladderStep(spec, 335, -1), 330);
    EXPECT_EQ(ladderAbout(spec, spec.maximum, 2).back(), spec.maximum);
}

TEST(Ladder, SuppliesClimbUsualVolts) {
    const ValueSpec& spec = specOf("bench-supply", "voltage");
    EXPECT_EQ(ladderAbout(spec, 5, 2), (std::vector<double>{3.3, 4.5, 5, 6, 7.5}));
    EXPECT_EQ(ladderStep(spec, 30, 1), 30);
    EXPECT_EQ(ladderAbout(spec, 30, 2), (std::vector<double>{18, 24, 30}));
    EXPECT_EQ(ladderStep(spec, 5.2, -1), 5);
    EXPECT_EQ(ladderStep(spec, 0.5, 1), 1.5);
}

TEST(Ladder, AllowedNumbersAreTheRungs) {
    const ValueSpec& spec = specOf("cells", "count");
    EXPECT_EQ(ladderStep(spec, 4, 1), 6) << "holders for 1, 2, 3, 4, 6 and 8 cells";
    EXPECT_EQ(ladderStep(spec, 8, 1), 8);
}

TEST(Ladder, BetweenTwoRungsTheNextOneEitherWay) {
    const ValueSpec& spec = specOf("cells", "count");
    EXPECT_EQ(ladderStep(spec, 5, 1), 6);
    EXPECT_EQ(ladderStep(spec, 5, -1), 4);
    EXPECT_EQ(ladderStep(spec, 4 * (1 + 1e-12), 1), 6) << "rounding is no rung of its own";
    EXPECT_EQ(ladderStep(spec, 4 * (1 - 1e-12), -1), 3);
    EXPECT_EQ(ladderStep(spec, 1, -1), 1);
    EXPECT_EQ(ladderStep(spec, 3, 0), 3);
    EXPECT_EQ(ladderStep(spec, 2, 3), 6);
}

TEST(Ladder, OtherNumbersGoByHundredthsOfTheirRange) {
    const ValueSpec& spec = specOf("bench-supply", "currentLimit");
    const double step = (spec.maximum - spec.minimum) / 100;
    EXPECT_NEAR(ladderStep(spec, 1, 1), 1 + step, 1e-12);
    EXPECT_NEAR(ladderStep(spec, 1, -2), 1 - 2 * step, 1e-12);
    EXPECT_EQ(ladderStep(spec, spec.maximum, 1), spec.maximum);
    EXPECT_EQ(ladderStep(spec, spec.minimum, -1), spec.minimum);
}

TEST(Ladder, EachRungIsOneStepFromTheNext) {
    for (const PartKind& kind : catalogue()) {
        for (const ValueSpec& spec : kind.values) {
            if (spec.type != ValueType::Number) continue;
            const auto rungs = ladderAbout(spec, spec.fallback, 3);
            for (std::size_t i = 0; i + 1 < rungs.size(); ++i) {
                EXPECT_LT(rungs[i], rungs[i + 1]) << kind.name << " " << spec.name;
                EXPECT_GE(rungs[i], spec.minimum) << kind.name << " " << spec.name;
                EXPECT_LE(rungs[i + 1], spec.maximum) << kind.name << " " << spec.name;
            }
        }
    }
}

}  // namespace
}  // namespace tiepoint
