// A wandering piece of a plane keeps the pixels that it shares with the piece before.

#include "ui/view/kept_pixels.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

/// A pixel that tells its place on the plane.
QRgb pixelOf(int x, int y) { return qRgba(x & 0xff, y & 0xff, (x * 7 + y * 13) & 0xff, 255); }

void fill(KeptPixels& pixels) {
    const QRect& area = pixels.area();
    for (int y = area.top(); y <= area.bottom(); ++y) {
        for (int x = area.left(); x <= area.right(); ++x) pixels.image().setPixel(x - area.left(), y - area.top(), pixelOf(x, y));
    }
}

/// How many pixels of a rectangle of the plane aren't where they belong.
int wrong(const KeptPixels& pixels, const QRect& shared) {
    int count = 0;
    for (int y = shared.top(); y <= shared.bottom(); ++y) {
        for (int x = shared.left(); x <= shared.right(); ++x) count += pixels.image().pixel(x - pixels.area().left(), y - pixels.area().top()) != pixelOf(x, y);
    }
    return count;
}

class Wander : public testing::TestWithParam<QRect> {};

TEST_P(Wander, KeepsWhatIsShared) {
    constexpr QRect kBefore(100, 100, 60, 40);
    KeptPixels pixels;
    pixels.reach(kBefore);
    fill(pixels);
    pixels.reach(GetParam());
    EXPECT_EQ(pixels.area(), GetParam());
    EXPECT_EQ(pixels.image().size(), GetParam().size());
    EXPECT_EQ(wrong(pixels, GetParam() & kBefore), 0);
}

INSTANTIATE_TEST_SUITE_P(EachWay, Wander,
                         testing::Values(QRect(107, 100, 60, 40), QRect(93, 100, 60, 40), QRect(100, 105, 60, 40), QRect(100, 95, 60, 40), QRect(104, 103, 60, 40),
                                         QRect(95, 97, 60, 40), QRect(104, 97, 60, 40), QRect(110, 110, 20, 10), QRect(90, 90, 90, 70), QRect(90, 110, 90, 20),
                                         QRect(110, 90, 20, 90), QRect(500, 500, 60, 40)));

TEST(KeptPixels, ForgetButServeAgain) {
    KeptPixels pixels;
    pixels.reach({0, 0, 50, 50});
    const uchar* memory = pixels.image().constBits();
    pixels.clear();
    EXPECT_TRUE(pixels.area().isEmpty());
    pixels.reach({10, 10, 40, 40});
    fill(pixels);
    EXPECT_EQ(pixels.image().constBits(), memory);
    EXPECT_EQ(wrong(pixels, pixels.area()), 0);
}

}  // namespace
}  // namespace tiepoint::ui
