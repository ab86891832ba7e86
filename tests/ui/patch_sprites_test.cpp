// Each patch is painted once, as a whole, and then only laid: wherever it lies, in whatever layer, and as pale as it is wanted.

#include "ui/paint/pixel_sheet.h"
#include "ui/view/patch_layer.h"

#include <QPainterPath>

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kSpriteScale = 8;
constexpr QRect kSight(0, 0, 400, 200);
constexpr QRectF kDisc(0, 0, 4, 4);

/// A blue disc that counts how often it is painted.
struct CountedDisc {
    int* painted;
    QColor colour = QColor(20, 60, 200, 150);
    void paint(QPainter& painter, const Theme&) const {
        ++*painted;
        painter.setPen(Qt::NoPen);
        painter.setBrush(colour);
        painter.drawEllipse(kDisc);
    }
    friend bool operator==(const CountedDisc&, const CountedDisc&) = default;
};

/// One that says itself where it lies.
struct FixedDisc {
    Point corner;
    void paint(QPainter& painter, const Theme&) const {
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor(20, 60, 200, 150));
        painter.drawEllipse(kDisc.translated(corner.x, corner.y));
    }
    friend bool operator==(const FixedDisc&, const FixedDisc&) = default;
};

struct Layers {
    TileStore store;
    PatchSprites sprites{store};
    PatchLayer here{store, sprites}, there{store, sprites};
    Layers() { sprites.begin(theme(ThemeName::Day), kSpriteScale); }
};

QImage pixelsOf(const PatchLayer& layer, const QRect& sight = kSight) {
    QImage image(sight.size(), QImage::Format_RGB32);
    image.fill(Qt::white);
    layer.lay(rowsOf(image), sight, -sight.topLeft());
    return image;
}

QImage drawnLayer(PatchLayer& layer, const Patches& patches, const QRect& sight = kSight) {
    layer.take(patches, sight, sight.adjusted(-5, -5, 5, 5));
    layer.layAll();
    return pixelsOf(layer, sight);
}

Patches discs(std::initializer_list<Point> corners, int& painted) {
    Patches patches;
    for (const Point corner : corners) patches.push_back(movablePatch(corner, kDisc, CountedDisc{&painted}));
    return patches;
}

Patches fixedDiscs(std::initializer_list<Point> corners) {
    Patches patches;
    for (const Point corner : corners)
        patches.push_back(fixedPatch(kDisc.translated(corner.x, corner.y), FixedDisc{corner}));
    return patches;
}

TEST(PatchSprites, AreMadeOnceAndMoved) {
    Layers layers;
    int painted = 0;
    drawnLayer(layers.here, discs({{1, 1}, {11, 1}, {21, 1}}, painted));
    EXPECT_EQ(painted, 1);
    drawnLayer(layers.here, discs({{6, 5}, {16, 5}, {26, 5}}, painted));
    EXPECT_EQ(painted, 1);
    layers.here.clear();
    layers.sprites.begin(theme(ThemeName::Day), kSpriteScale);
    drawnLayer(layers.here, discs({{1, 1}}, painted));
    EXPECT_EQ(painted, 2);
}

TEST(PatchSprites, ShowWhatPaintingShows) {
    // In the middle of pixels and on their edges; two that overlap; one that reaches out of sight.
    const auto corners = {Point{1, 1}, Point{3, 2}, Point{20.0625, 8.0625}, Point{48, 3}};
    Layers layers;
    int painted = 0;
    const QImage moved = drawnLayer(layers.here, discs(corners, painted));
    EXPECT_EQ(moved, drawnLayer(layers.there, fixedDiscs(corners)));
    QImage straight(kSight.size(), QImage::Format_RGB32);
    straight.fill(Qt::white);
    {
        PixelSheet sheet(straight);
        QPainter painter(&sheet);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(kSpriteScale, kSpriteScale);
        paintPatches(painter, theme(ThemeName::Day), fixedDiscs(corners));
    }
    int far = 0;
    for (int y = 0; y < moved.height(); ++y) {
        for (int x = 0; x < moved.width(); ++x)
            far = std::max(far, std::abs(qRed(moved.pixel(x, y)) - qRed(straight.pixel(x, y))));
    }
    EXPECT_LE(far, 2) << "each of two discs over a pixel is rounded once more";
}

TEST(PatchSprites, ServeOtherLayersAndPalerPatches) {
    Layers layers;
    int painted = 0;
    drawnLayer(layers.here, discs({{1, 1}}, painted));
    Patches pale = discs({{10, 5}}, painted);
    pale[0].opacity = 0.5;
    // Half of the disc's 150 of 255 of (20, 60, 200) over white.
    const QRgb middle = drawnLayer(layers.there, pale).pixel(96, 56);
    EXPECT_EQ(painted, 1);
    EXPECT_NEAR(qRed(middle), 255 - (255 - 20) * 0.5 * 150 / 255, 1.5);
    EXPECT_NEAR(qBlue(middle), 255 - (255 - 200) * 0.5 * 150 / 255, 1.5);
    pale[0].opacity = 1;
    layers.there.take(pale, kSight, kSight);
    EXPECT_FALSE(layers.there.changed().isEmpty());
    layers.there.layAll();
    EXPECT_NEAR(qRed(pixelsOf(layers.there).pixel(96, 56)), 255 - (255 - 20) * 150 / 255.0, 1.5);
}

TEST(PatchSprites, LieWithinHalfAPixelOfTheirPlaces) {
    Layers layers;
    int painted = 0;
    const QImage moved = drawnLayer(layers.here, discs({{10.03, 10.05}}, painted)),
                 exact = drawnLayer(layers.there, fixedDiscs({{10.03, 10.05}}));
    int far = 0;
    for (int y = 0; y < moved.height(); ++y) {
        for (int x = 0; x < moved.width(); ++x)
            far = std::max(far, std::abs(qRed(moved.pixel(x, y)) - qRed(exact.pixel(x, y))));
    }
    // A quarter of a pixel at an edge is a quarter of the disc's contrast there, 0.59 of 235 against white,
    // in each direction.
    EXPECT_GT(far, 0);
    EXPECT_LT(far, 235 * 0.59 / 2);
}

/// Large ones are painted in blocks, as far as they are wanted, and show no seams.
TEST(PatchSprites, LargeOnesArePaintedInBlocks) {
    struct Counted {
        int* painted;
        void paint(QPainter& painter, const Theme&) const {
            ++*painted;
            painter.fillRect(QRectF(0, 0, 300, 200), QColor(20, 60, 200, 150));
        }
        bool operator==(const Counted&) const = default;
    };
    Layers layers;
    int painted = 0;
    const Patches large{movablePatch({0, 0}, QRectF(0, 0, 300, 200), Counted{&painted})};
    const QImage here = drawnLayer(layers.here, large);
    const int first = painted;
    EXPECT_LT(first, 6);
    for (int x = 1; x < here.width(); ++x) EXPECT_EQ(here.pixel(x, 100), here.pixel(0, 100));
    drawnLayer(layers.here, large, kSight.translated(900, 0));
    EXPECT_GT(painted, first);
}

/// A dashed line is the same line whatever of it is painted at a time.
TEST(PatchSprites, DashesGoOnFromBlockToBlock) {
    struct Dashed {
        void paint(QPainter& painter, const Theme&) const {
            QPainterPath path(QPointF(5, 5));
            path.cubicTo(300, -20, 60, 230, 290, 190);
            painter.strokePath(path, QPen(Qt::black, 0.6, Qt::DashLine, Qt::FlatCap));
        }
        bool operator==(const Dashed&) const = default;
    };
    struct Small {
        Dashed dashed;
        void paint(QPainter& painter, const Theme& theme) const { dashed.paint(painter, theme); }
        bool operator==(const Small&) const = default;
    };
    Layers layers;
    const QRect sight(1290, 760, 180, 120);
    const Patches large{fixedPatch(QRectF(0, 0, 300, 200), Dashed{})};
    // The same as a patch that shows no more than a piece of it, painted as a whole.
    const Patches piece{fixedPatch(QRectF(158, 92, 30, 20), Small{})};
    const QImage whole = drawnLayer(layers.here, large, sight);
    EXPECT_EQ(whole, drawnLayer(layers.there, piece, sight));
    EXPECT_NE(whole, whole.copy().scaled(1, 1).scaled(sight.size())) << "the line runs through it";
}

TEST(PatchLayer, TwoThatChangePlacesInTheListChangeWhatLiesOnTop) {
    Layers layers;
    int painted = 0;
    Patches patches;
    for (const QColor& colour : {QColor(Qt::red), QColor(Qt::blue)})
        patches.push_back(movablePatch({5, 5}, kDisc, CountedDisc{&painted, colour}));
    drawnLayer(layers.here, patches);
    std::swap(patches[0], patches[1]);
    const QImage swapped = drawnLayer(layers.here, patches);
    EXPECT_EQ(swapped, drawnLayer(layers.there, patches));
    EXPECT_EQ(swapped.pixel(56, 56), QColor(Qt::red).rgb());
}

TEST(PatchLayer, WhatChangedOutOfSightIsNewWhenItComesBack) {
    constexpr QRect kHere(0, 0, 100, 100), kRight(20, 0, 100, 100);
    Layers layers;
    int painted = 0;
    const auto show = [&](PatchLayer& layer, const QColor& colour, const QRect& sight) {
        return drawnLayer(layer, {movablePatch({0, 0}, kDisc, CountedDisc{&painted, colour})}, sight);
    };
    show(layers.here, Qt::red, kHere);
    show(layers.here, Qt::red, kRight);  // nothing lies farther to the right: the pixels stay where they are
    show(layers.here, Qt::blue, kRight);
    show(layers.here, Qt::blue, kHere);
    show(layers.there, Qt::blue, kHere);
    EXPECT_EQ(pixelsOf(layers.here, kHere), pixelsOf(layers.there, kHere));
}

}  // namespace
}  // namespace tiepoint::ui
