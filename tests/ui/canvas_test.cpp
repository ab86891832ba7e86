// The canvas keeps pixels from frame to frame. Whatever was pressed, pointed at, edited, panned or zoomed on the way, the picture must be
// the one that a canvas without a past draws.

#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"
#include "ui/view/bench_canvas.h"
#include "ui/view/cell_grid.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <random>

namespace tiepoint::ui {
namespace {

using test::BenchBuilder;

constexpr QSize kViewport(900, 520);

std::shared_ptr<const Bench> bench(int column) {
    return std::make_shared<const Bench>(
        BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h19"}}, {{"colour", "red"}})
            .part("R2", "resistor", {{"1", "A.top+10"}, {"2", "A.d22"}}, {{"resistance", 1000}})
            .part("S2", "push-button", {{"1a", "A.e22"}, {"1b", "A.f22"}, {"2a", "A.e24"}, {"2b", "A.f24"}})
            .jumper("A.top+7", "A.a8")
            .jumper("A.j19", "A.bottom-18")
            .jumper("A.j24", "A.bottom-" + std::to_string(column))
            .build());
}

/// A picture that follows a bench and its inputs, with the scene and the frame that a view would have.
struct Stage {
    Picture picture;
    std::unique_ptr<BenchScene> scene;
    Frame frame;
    std::vector<int> litNets;
    Inputs inputs;

    explicit Stage(int column) {
        picture.theme = &theme(ThemeName::Day);
        frame.viewport = kViewport;
        zoom(6, {220, 60});
        open(column);
    }
    void open(int column) {
        solve(bench(column));
        if (!scene) scene = std::make_unique<BenchScene>(picture);
        scene->follow();
    }
    void solve(std::shared_ptr<const Bench> of) {
        picture.snapshot = evaluate(of, inputs);
        picture.layout = picture.snapshot->layout;
        picture.table = std::make_shared<const Table>(arrange(*of));
        const Rect all = picture.table->allMm;
        frame.contentMm = QRectF(all.left, all.top, all.width, all.height).adjusted(-25, -25, 25, 25);
    }
    void press(const std::string& part, bool held) {
        if (held) {
            inputs.held.insert(part);
        } else {
            inputs.held.erase(part);
        }
        const auto layout = picture.layout;
        picture.snapshot = evaluate(layout->bench, inputs);
        picture.layout = picture.snapshot->layout;
        scene->follow();
    }
    void zoom(double pixelsPerMm, QPoint origin) {
        frame.pixelsPerMm = picture.pixelsPerMm = pixelsPerMm;
        frame.origin = origin;
    }
};

QImage shown(BenchCanvas& canvas, const Stage& stage) {
    canvas.setTableArea(QRect(QPoint(0, 0), kViewport));
    canvas.update(stage.picture, stage.frame, *stage.scene, stage.litNets);
    QImage screen(kViewport, QImage::Format_RGB32);
    QPainter painter(&screen);
    canvas.show(painter, QRect(QPoint(0, 0), kViewport));
    return screen;
}

/// How many pixels of two pictures differ by more than `tolerance` in a channel.
int differing(const QImage& a, const QImage& b, int tolerance) {
    int count = 0;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            const QRgb p = a.pixel(x, y), q = b.pixel(x, y);
            if (std::abs(qRed(p) - qRed(q)) > tolerance || std::abs(qGreen(p) - qGreen(q)) > tolerance ||
                std::abs(qBlue(p) - qBlue(q)) > tolerance)
                ++count;
        }
    }
    return count;
}

void change(Stage& stage, std::mt19937& random) {
    const auto upTo = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    switch (upTo(8)) {
        case 0:
            stage.press(upTo(2) ? "S1" : "S2", upTo(2) != 0);
            break;
        case 1:
            stage.picture.marks.hoverNet = upTo(stage.picture.layout->netCount + 1) - 1;
            stage.picture.marks.hoverAt = {30, 20};
            break;
        case 2:
            stage.picture.marks.selected = {upTo(2) ? "R1" : "D1"};
            break;
        case 3:
            stage.picture.views.voltage = upTo(2) != 0;
            break;
        case 4:
            stage.picture.views.strips = upTo(2) != 0;
            break;
        case 5:
            stage.zoom(stage.frame.pixelsPerMm, {upTo(500), upTo(200) - 50});
            break;
        case 6:
            if (upTo(3) == 0) stage.zoom(upTo(2) ? 6 : 9, {100, 40});
            break;
        default:
            stage.picture.marks.hoverNet = -1;
            stage.picture.marks.band = upTo(2) ? std::optional(QRectF(10, 10, 5 + upTo(40), 20)) : std::nullopt;
            stage.open(15 + upTo(8));
    }
}

TEST(Canvas, WhatIsKeptIsWhatWouldBeDrawn) {
    for (const ThemeName name : {ThemeName::Day, ThemeName::Dark, ThemeName::Projector}) {
        std::mt19937 random(7);
        Stage stage(20);
        stage.picture.theme = &theme(name);
        stage.scene->follow(true);
        stage.picture.views.arrows = Arrows::Conventional;
        BenchCanvas canvas;
        QImage screen(kViewport, QImage::Format_RGB32);
        for (int step = 0; step < 40; ++step) {
            change(stage, random);
            BenchCanvas fresh;
            const QImage kept = shown(canvas, stage), anew = shown(fresh, stage);
            // An arrow or a bed may be an eighth of a pixel narrower than it was when it was drawn.
            constexpr int kEighthOfAPixel = 40;
            ASSERT_EQ(differing(kept, anew, kEighthOfAPixel), 0) << "after step " << step;
            // A screen that shows only what the canvas says has changed shows the same.
            const QPoint slide = canvas.takeSlide();
            const QImage slid = screen.copy(QRect(-slide, screen.size()));
            QPainter painter(&screen);
            painter.drawImage(0, 0, slid);
            canvas.show(painter, canvas.takeStale());
            painter.end();
            ASSERT_EQ(screen, kept) << "after step " << step;
            stage.picture.phaseMm += 0.7;
        }
    }
}

TEST(Canvas, APressPaintsLittleAndAMovingArrowNothing) {
    Stage stage(20);
    BenchCanvas canvas;
    (void)shown(canvas, stage);
    const long long whole = canvas.paintedPixels();
    stage.press("S1", true);
    (void)shown(canvas, stage);
    const long long pressed = canvas.paintedPixels() - whole;
    EXPECT_GT(pressed, 0);
    EXPECT_LT(pressed, whole / 4);
    const QImage before = shown(canvas, stage);
    (void)canvas.takeStale();
    stage.picture.phaseMm += 1;
    const QImage after = shown(canvas, stage);
    const QRegion moved = canvas.takeStale();
    ASSERT_FALSE(moved.isEmpty());
    EXPECT_NE(before, after);
    EXPECT_EQ(canvas.paintedPixels() - whole - pressed, 0);
    QImage outside = before;
    QPainter painter(&outside);
    for (const QRect& rect : moved) painter.drawImage(rect.topLeft(), after, rect);
    painter.end();
    EXPECT_EQ(outside, after) << "arrows stay within what is said to move";
}

TEST(Canvas, CellsThatTouchBecomeFewRectangles) {
    CellGrid grid(QRect(-64, -64, 256, 256));
    grid.add(QRectF(-40, -40, 60, 10));
    grid.add(QRectF(-40, -10, 60, 50));
    EXPECT_EQ(grid.region(), QRegion(QRect(-64, -64, 96, 128)));
    EXPECT_EQ(grid.region().rectCount(), 1);
    grid.ask(QRect(-64, -64, 32, 32), [](const QRect&) { return false; });
    EXPECT_FALSE(grid.region().contains(QPoint(-40, -40)));
    EXPECT_TRUE(grid.region().contains(QPoint(0, 0)));
}

}  // namespace
}  // namespace tiepoint::ui
