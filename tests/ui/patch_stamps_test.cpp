// Patches that look the same wherever they lie are painted once and then moved.

#include "ui/view/patch_layer.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kStampPixelsPerMm = 8;
constexpr QRect kSight(0, 0, 400, 200);

/// A blue disc of 4 mm that counts how often it is painted.
Patch disc(QPointF corner, int& painted, bool movable) {
    const QRectF mm(corner, QSizeF(4, 4));
    Patch patch{mm, PatchLook() << "disc", [mm, &painted](QPainter& painter) {
                    ++painted;
                    painter.setPen(Qt::NoPen);
                    painter.setBrush(QColor(20, 60, 200, 150));
                    painter.drawEllipse(mm);
                }};
    patch.movable = movable;
    return patch;
}

QImage pixelsOf(const PatchLayer& layer) {
    QImage image(kSight.size(), QImage::Format_RGB32);
    image.fill(Qt::white);
    layer.lay(rowsOf(image), kSight, {});
    return image;
}

QImage drawnLayer(PatchLayer& layer, std::initializer_list<QPointF> corners, int& painted, bool movable) {
    Patches patches;
    for (const QPointF corner : corners) patches.push_back(disc(corner, painted, movable));
    layer.take(std::move(patches), kSight, kSight, kStampPixelsPerMm);
    layer.paint();
    return pixelsOf(layer);
}

TEST(PatchStamps, AreMadeOnceAndMoved) {
    TileStore store;
    PatchStamps stamps(store);
    PatchLayer layer(store, stamps);
    int painted = 0;
    drawnLayer(layer, {{1, 1}, {11, 1}, {21, 1}}, painted, true);
    EXPECT_EQ(painted, 1);
    drawnLayer(layer, {{6, 5}, {16, 5}, {26, 5}}, painted, true);
    EXPECT_EQ(painted, 1);
    layer.clear();
    stamps.clear();
    drawnLayer(layer, {{1, 1}}, painted, true);
    EXPECT_EQ(painted, 2);
}

TEST(PatchStamps, ShowWhatPaintingShows) {
    // In the middle of pixels and on their edges; two that overlap; one that reaches out of sight.
    const auto corners = {QPointF(1, 1), QPointF(3, 2), QPointF(20.0625, 8.0625), QPointF(48, 3)};
    TileStore store;
    PatchStamps stamps(store);
    PatchLayer moved(store, stamps), plain(store, stamps);
    int ofMoved = 0, ofPlain = 0;
    EXPECT_EQ(drawnLayer(moved, corners, ofMoved, true), drawnLayer(plain, corners, ofPlain, false));
    EXPECT_LT(ofMoved, ofPlain);
}

TEST(PatchStamps, ServeOtherLayersAndPalerPatches) {
    TileStore store;
    PatchStamps stamps(store);
    PatchLayer here(store, stamps), there(store, stamps);
    int painted = 0;
    drawnLayer(here, {{1, 1}}, painted, true);
    Patch pale = disc({10, 5}, painted, true);
    pale.opacity = 0.5;
    there.take({pale}, kSight, kSight, kStampPixelsPerMm);
    there.paint();
    EXPECT_EQ(painted, 1);
    // Half of the disc's 150 of 255 of (20, 60, 200) over white.
    const QRgb middle = pixelsOf(there).pixel(96, 56);
    EXPECT_NEAR(qRed(middle), 255 - (255 - 20) * 0.5 * 150 / 255, 1.5);
    EXPECT_NEAR(qBlue(middle), 255 - (255 - 200) * 0.5 * 150 / 255, 1.5);
    pale.opacity = 1;
    there.take({pale}, kSight, kSight, kStampPixelsPerMm);
    EXPECT_FALSE(there.changed().isEmpty());
    there.paint();
    EXPECT_NEAR(qRed(pixelsOf(there).pixel(96, 56)), 255 - (255 - 20) * 150 / 255.0, 1.5);
}

TEST(PatchStamps, LieWithinHalfAPixelOfTheirPlaces) {
    TileStore store;
    PatchStamps stamps(store);
    PatchLayer moved(store, stamps), plain(store, stamps);
    int painted = 0;
    const QImage stamped = drawnLayer(moved, {{10.03, 10.05}}, painted, true),
                 exact = drawnLayer(plain, {{10.03, 10.05}}, painted, false);
    int far = 0;
    for (int y = 0; y < stamped.height(); ++y) {
        for (int x = 0; x < stamped.width(); ++x)
            far = std::max(far, std::abs(qRed(stamped.pixel(x, y)) - qRed(exact.pixel(x, y))));
    }
    // A quarter of a pixel at an edge is a quarter of the disc's contrast there, 0.59 of 235 against white,
    // in each direction.
    EXPECT_GT(far, 0);
    EXPECT_LT(far, 235 * 0.59 / 2);
}

TEST(PatchLayer, WhatChangedOutOfSightIsNewWhenItComesBack) {
    constexpr QRect kHere(0, 0, 100, 100), kRight(20, 0, 100, 100);
    const auto show = [](PatchLayer& layer, const QColor& colour, const QRect& sight) {
        const QRectF mm(0, 0, 4, 4);
        layer.take({{mm, PatchLook() << colour, [=](QPainter& painter) { painter.fillRect(mm, colour); }}}, sight,
                   sight.adjusted(-5, -5, 5, 5), kStampPixelsPerMm);
        layer.paint();
    };
    const auto seen = [&](const PatchLayer& layer) {
        QImage image(kHere.size(), QImage::Format_RGB32);
        image.fill(Qt::white);
        layer.lay(rowsOf(image), kHere, {});
        return image;
    };
    TileStore store;
    PatchStamps stamps(store);
    PatchLayer kept(store, stamps), fresh(store, stamps);
    show(kept, Qt::red, kHere);
    show(kept, Qt::red, kRight);  // nothing lies farther to the right: the pixels stay where they are
    show(kept, Qt::blue, kRight);
    show(kept, Qt::blue, kHere);
    show(fresh, Qt::blue, kHere);
    EXPECT_EQ(seen(kept), seen(fresh));
}

}  // namespace
}  // namespace tiepoint::ui
