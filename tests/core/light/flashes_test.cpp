// Flashes as Web Content Accessibility Guidelines 2.2, success criterion 2.3.1, count them: pairs of opposing changes of a tenth of the
// greatest luminance or more, where the darker one is below 0.80; more than three in a second are too many.

#include "core/light/flashes.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

/// So many seconds of a light between two luminances, at 60 frames a second.
void blink(Flashes& flashes, double hertz, double low, double high, double seconds) {
    for (int i = 0; i < static_cast<int>(seconds * 60); ++i) {
        const double turn = i / 60.0 * hertz;
        flashes.take({turn - std::floor(turn) < 0.5 ? high : low}, 1.0 / 60);
    }
}

TEST(Flashes, CountsThemAsTheyAreSeen) {
    for (const double hertz : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0}) {
        Flashes flashes;
        blink(flashes, hertz, 0, 1, 4);
        EXPECT_NEAR(flashes.perSecond(), hertz, 0.51) << hertz;
        EXPECT_EQ(flashes.perSecond() > kMostFlashes, hertz > 3) << hertz;
        EXPECT_NEAR(flashes.meanLight(0), 0.5, 0.04) << hertz;
    }
}

TEST(Flashes, SmallChangesAndThoseOfBrightThingsAreNone) {
    Flashes faint;
    blink(faint, 10, 0.3, 0.39, 2);
    EXPECT_EQ(faint.perSecond(), 0);
    Flashes bright;
    blink(bright, 10, 0.82, 1, 2);
    EXPECT_EQ(bright.perSecond(), 0);
    Flashes enough;
    blink(enough, 10, 0.3, 0.42, 2);
    EXPECT_GT(enough.perSecond(), 9);
}

TEST(Flashes, TheyEndWithTheSecondAfter) {
    Flashes flashes;
    blink(flashes, 10, 0, 1, 2);
    EXPECT_GT(flashes.perSecond(), 9);
    for (int i = 0; i < 62; ++i) flashes.take({1}, 1.0 / 60);
    EXPECT_EQ(flashes.perSecond(), 0);
    EXPECT_NEAR(flashes.meanLight(0), 1, 1e-9);
}

}  // namespace
}  // namespace tiepoint
