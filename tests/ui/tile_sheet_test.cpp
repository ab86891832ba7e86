// Pixels kept in tiles: what is put comes back wherever the kept area wanders, empty tiles take no memory, and laying blends as a painter does.

#include "ui/view/tile_sheet.h"

#include <QPainter>

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace tiepoint::ui {
namespace {

constexpr QRect kBefore(-128, -64, 384, 256);

/// A pixel that tells its place on the plane.
QRgb pixelOf(int x, int y) { return qRgba(x & 0xff, y & 0xff, (x * 7 + y * 13) & 0xff, 255); }

QImage planeOf(const QRect& rect) {
    QImage image(rect.size(), QImage::Format_ARGB32_Premultiplied);
    for (int y = 0; y < rect.height(); ++y) {
        for (int x = 0; x < rect.width(); ++x) image.setPixel(x, y, pixelOf(rect.left() + x, rect.top() + y));
    }
    return image;
}

QImage laid(const TileSheet& sheet, const QRect& rect) {
    QImage image(rect.size(), QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    sheet.lay(rowsOf(image), rect, -rect.topLeft());
    return image;
}

class Wander : public testing::TestWithParam<QRect> {};

TEST_P(Wander, KeepsWhatIsShared) {
    TileStore store;
    TileSheet sheet(store);
    sheet.reach(kBefore);
    sheet.put(planeOf(kBefore), kBefore.topLeft());
    sheet.reach(GetParam());
    EXPECT_EQ(sheet.area(), GetParam());
    const QRect shared = GetParam() & kBefore;
    if (!shared.isEmpty()) {
        EXPECT_EQ(laid(sheet, shared), planeOf(shared));
    }
    const QImage all = laid(sheet, GetParam());
    for (int y = 0; y < all.height(); ++y) {
        for (int x = 0; x < all.width(); ++x) {
            if (shared.contains(GetParam().topLeft() + QPoint(x, y))) continue;
            ASSERT_EQ(all.pixel(x, y), 0U) << x << ' ' << y;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(EachWay, Wander,
                         testing::Values(kBefore, kBefore.translated(64, 0), kBefore.translated(-64, 0),
                                         kBefore.translated(0, 64), kBefore.translated(0, -64),
                                         kBefore.translated(128, -64), QRect(0, 0, 64, 64),
                                         kBefore.adjusted(-64, -64, 64, 64), QRect(-64, 0, 320, 64),
                                         kBefore.translated(2048, 0)));

TEST(TileSheet, TakesWholeTilesBeforeTheOriginToo) {
    EXPECT_EQ(TileSheet::tilesOf({-1, -1, 2, 2}), QRect(-1, -1, 2, 2));
    EXPECT_EQ(TileSheet::tilesOf({-64, 0, 64, 64}), QRect(-1, 0, 1, 1));
    EXPECT_EQ(TileSheet::wholeTiles({-65, 63, 1, 2}), QRect(-128, 0, 64, 128));
    EXPECT_TRUE(TileSheet::wholeTiles({}).isEmpty());
}

TEST(TileSheet, LaysAsAPainterDoes) {
    std::mt19937 random(7);
    TileStore store;
    TileSheet sheet(store);
    sheet.reach(kBefore);
    QImage plane(kBefore.size(), QImage::Format_ARGB32_Premultiplied);
    plane.fill(Qt::transparent);
    QPainter painter(&plane);
    for (int i = 0; i < 40; ++i) {
        const auto below = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
        painter.fillRect(QRect(below(plane.width()), below(plane.height()), 1 + below(60), 1 + below(30)),
                         QColor(below(256), below(256), below(256), below(256)));
    }
    painter.end();
    sheet.put(plane, kBefore.topLeft());
    for (const QRect& rect : {kBefore, QRect(-100, -50, 63, 17), QRect(5, 5, 1, 1), QRect(-1, 15, 130, 66)}) {
        QImage tiles(rect.size(), QImage::Format_RGB32), painted = tiles;
        tiles.fill(qRgb(200, 150, 90));
        painted.fill(qRgb(200, 150, 90));
        sheet.lay(rowsOf(tiles), rect, -rect.topLeft());
        QPainter over(&painted);
        over.drawImage(kBefore.topLeft() - rect.topLeft(), plane);
        over.end();
        EXPECT_EQ(tiles, painted);
    }
}

TEST(TileSheet, CopiesWhatIsOpaque) {
    TileStore store;
    TileSheet sheet(store);
    sheet.reach(kBefore);
    sheet.put(planeOf(kBefore), kBefore.topLeft());
    const QRect rect(-70, -10, 150, 100);
    QImage image(rect.size(), QImage::Format_ARGB32_Premultiplied);
    sheet.copy(rowsOf(image), rect, -rect.topLeft());
    EXPECT_EQ(image, planeOf(rect));
}

TEST(TileSheet, WhatIsWipedIsEmptyAgain) {
    TileStore store;
    TileSheet sheet(store);
    sheet.reach(kBefore);
    sheet.put(planeOf({0, 0, 100, 100}), {0, 0});
    QImage nothing(100, 100, QImage::Format_ARGB32_Premultiplied);
    nothing.fill(Qt::transparent);
    sheet.put(nothing.copy(0, 0, 50, 100), {0, 0});
    EXPECT_EQ(qAlpha(laid(sheet, kBefore).pixel(128 + 49, 64)), 0);
    EXPECT_EQ(qAlpha(laid(sheet, kBefore).pixel(128 + 50, 64)), 255);
    sheet.put(nothing, {0, 0});
    QImage empty(kBefore.size(), QImage::Format_ARGB32_Premultiplied);
    empty.fill(Qt::transparent);
    EXPECT_EQ(laid(sheet, kBefore), empty);
}

TEST(TileStore, GivesWhatCameBackFirst) {
    TileStore store;
    std::set<QRgb*> first;
    for (int i = 0; i < 100; ++i) first.insert(store.take());
    EXPECT_EQ(first.size(), 100U);
    for (QRgb* tile : first) {
        *tile = 1;
        store.giveBack(tile);
    }
    for (int i = 0; i < 100; ++i) {
        QRgb* tile = store.take();
        EXPECT_TRUE(first.contains(tile));
        EXPECT_EQ(*tile, 0U);
    }
}

}  // namespace
}  // namespace tiepoint::ui
