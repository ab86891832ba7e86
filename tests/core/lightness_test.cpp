// Light: CIE 1976 lightness and the brightness made of it.
// Source of the law: CIE e-ILV 17-23-076 (IEC 60050-845, entry 845-23-076). The anchors are computed from it with more digits;
// the pair 12.19722535 -> 41.5278758 is printed in the documentation of a colour-science library.

#include "core/light/lightness.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

struct Anchor {
    double luminance, lightness;
};

constexpr Anchor kAnchors[] = {
    {0, 0},
    {0.001, 0.903296},
    {0.01, 8.991442},
    {0.02, 15.487244},
    {0.05, 26.734765},
    {0.10, 37.842431},
    {0.18, 49.496108},
    {0.25, 57.075421},
    {0.50, 76.069261},
    {0.75, 89.392994},
    {1, 100},
    {0.1219722535, 41.5278758},
    {0.184186519, 50},
};

TEST(Lightness, MeetsTheAnchors) {
    for (const Anchor& anchor : kAnchors)
        EXPECT_NEAR(lightness(anchor.luminance), anchor.lightness, 6e-7) << anchor.luminance;
}

TEST(Lightness, IsContinuousWhereItsTwoBranchesMeet) {
    constexpr double kMeeting = 216.0 / 24389.0;
    EXPECT_NEAR(lightness(kMeeting * (1 - 1e-12)), 8, 1e-9);
    EXPECT_NEAR(lightness(kMeeting * (1 + 1e-12)), 8, 1e-9);
}

TEST(Brightness, IsLightnessOfTheShareOfTheRatedCurrent) {
    constexpr double kRated = 0.020;
    EXPECT_EQ(brightness(0, kRated), 0);
    EXPECT_EQ(brightness(-0.01, kRated), 0);
    EXPECT_NEAR(brightness(0.005, kRated), 0.57075421, 1e-8);
    EXPECT_NEAR(brightness(0.010, kRated), 0.76069261, 1e-8);
    EXPECT_DOUBLE_EQ(brightness(0.020, kRated), 1);
    EXPECT_DOUBLE_EQ(brightness(0.2, kRated), 1);
}

TEST(Brightness, RisesWithCurrent) {
    double last = -1;
    for (double current = 0; current < 0.02; current += 1e-4) {
        EXPECT_GT(brightness(current, 0.02), last) << current;
        last = brightness(current, 0.02);
    }
}

}  // namespace
}  // namespace tiepoint
