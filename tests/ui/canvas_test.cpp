// The canvas keeps pixels from frame to frame. Whatever was pressed, pointed at, edited, panned or zoomed on the way, the picture must be
// exactly the one that a canvas without a past draws, and the one that a painter draws from nothing.

#include "canvas_changes.h"
#include "ui/view/cell_grid.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

using Painting = BenchCanvas::Painting;

constexpr double kRatios[] = {1, 1.25, 1.5, 1.75, 2};

/// A screen on which only what a canvas says has changed is painted, after moving what it says has slid.
class Screen {
public:
    explicit Screen(const CanvasStage& stage) : pixels_(stage.screen()) {}
    const QImage& follow(BenchCanvas& canvas, const CanvasStage& stage) {
        const QPoint slide = canvas.takeSlide();
        QImage moved = stage.screen();
        for (int y = 0; y < moved.height(); ++y) {
            for (int x = 0; x < moved.width(); ++x) {
                const QPoint from = QPoint(x, y) - slide;
                if (pixels_.rect().contains(from)) moved.setPixel(x, y, pixels_.pixel(from));
            }
        }
        pixels_ = shownOn(moved, canvas, canvas.takeStale());
        return pixels_;
    }

private:
    QImage pixels_;
};

class CanvasPaths : public testing::TestWithParam<std::tuple<Painting, double>> {
protected:
    Painting painting() const { return std::get<0>(GetParam()); }
    double ratio() const { return std::get<1>(GetParam()); }
};

INSTANTIATE_TEST_SUITE_P(Canvas, CanvasPaths,
                         testing::Combine(testing::Values(Painting::Kept, Painting::Plain), testing::ValuesIn(kRatios)),
                         [](const auto& each) {
                             return std::string(std::get<0>(each.param) == Painting::Kept ? "Kept" : "Plain") +
                                    std::to_string(static_cast<int>(std::get<1>(each.param) * 100));
                         });

TEST_P(CanvasPaths, WhatIsKeptIsExactlyWhatWouldBeDrawn) {
    constexpr int kSteps = 70;
    const auto& changes = pictureChanges();
    Chance chance(static_cast<unsigned>(ratio() * 100));
    CanvasStage stage(ratio());
    stage.inputs.held = {"S1"};
    stage.solve();
    BenchCanvas canvas(painting());
    Screen screen(stage);
    for (int step = 0; step < kSteps; ++step) {
        // Each kind in its turn, and others between.
        const std::size_t kind = step % 2 == 0
                                     ? static_cast<std::size_t>(step / 2) % changes.size()
                                     : static_cast<std::size_t>(chance.upTo(static_cast<int>(changes.size())));
        changes[kind].change(stage, chance);
        SCOPED_TRACE(testing::Message() << "step " << step << ": " << changes[kind].name);
        const QImage kept = stage.shown(canvas);
        BenchCanvas fresh(painting());
        fresh.goOnFrom(canvas);
        ASSERT_EQ(differing(kept, stage.shown(fresh)), 0) << "a canvas without a past";
        ASSERT_EQ(differing(screen.follow(canvas, stage), kept), 0) << "what is said to have changed";
        stage.picture.phaseMm += 0.7;
    }
}

TEST(Canvas, WhatIsKeptIsWhatAPainterDraws) {
    for (const double ratio : kRatios) {
        Chance chance(static_cast<unsigned>(ratio * 100) + 1);
        CanvasStage stage(ratio);
        stage.inputs.held = {"S1"};
        stage.solve();
        BenchCanvas kept, plain(Painting::Plain);
        for (const PictureChange& each : pictureChanges()) {
            each.change(stage, chance);
            stage.follow(kept);
            plain.goOnFrom(kept);
            SCOPED_TRACE(testing::Message() << each.name << " at " << ratio);
            // What is translucent is rounded on the frame, or on a sprite and once more where this is laid: by up to half a step for each
            // stroke, both ways. The most that lie over each other are the twelve rings of a soft shadow.
            constexpr int kRoundings = 12;
            // Wires are cut where they go behind turned boards: the raster engine smooths that edge or not, by what else of it is on the image.
            const int cut = stage.picture.views.turned ? stage.frame.viewport.width() / 2 : 0;
            ASSERT_LE(differing(stage.shown(kept), stage.shown(plain), kRoundings), cut);
            stage.picture.phaseMm += 0.7;
        }
    }
}

TEST(Canvas, AClockBelowTheLastDigitPlacesNoWordsAndPaintsNothing) {
    CanvasStage stage;
    stage.inputs.held = {"S1"};
    stage.solve();
    BenchCanvas canvas(Painting::Kept);
    (void)stage.shown(canvas);
    const auto words = canvas.wordPlacings();
    const auto laid = canvas.laidPixels();
    for (int tick = 0; tick < 20; ++tick) {
        auto next = std::make_shared<Snapshot>(*stage.picture.snapshot);
        next->inputSequence += 1;
        // Noise of a clock that runs: a millionth of what flows and lies across, less than the last digit of any figure shown.
        const auto noise = [tick](double& figure) { figure *= 1 + 1e-7 * (tick % 3 - 1); };
        for (double& volt : next->solution.netVoltage) noise(volt);
        for (double& ampere : next->leadCurrent) noise(ampere);
        for (double& ampere : next->pieceCurrent) noise(ampere);
        stage.picture.snapshot = next;
        stage.picture.arrangeTags();
        stage.follow(canvas);
    }
    EXPECT_EQ(canvas.wordPlacings(), words);
    EXPECT_EQ(canvas.laidPixels(), laid);
    // What is seen to change is placed.
    stage.inputs.held = {};
    stage.solve();
    stage.follow(canvas);
    EXPECT_EQ(canvas.wordPlacings(), words + 1);
    EXPECT_GT(canvas.laidPixels(), laid);
}

TEST(Canvas, EachLayerFollowsOnlyWhatItShows) {
    CanvasStage stage;
    stage.inputs.held = {"S1"};
    stage.solve();
    BenchCanvas canvas(Painting::Kept);
    (void)stage.shown(canvas);
    const auto changed = [&] {
        std::vector<PictureLayer> layers;
        static std::array<int, kPictureLayers> before{};
        for (std::size_t i = 0; i < kPictureLayers; ++i) {
            const int now = canvas.changesOf(static_cast<PictureLayer>(i));
            if (std::exchange(before[i], now) != now) layers.push_back(static_cast<PictureLayer>(i));
        }
        return layers;
    };
    (void)changed();
    using enum PictureLayer;
    stage.picture.marks.selected = {"R1"};
    stage.follow(canvas);
    EXPECT_EQ(changed(), std::vector{Hand});
    stage.scene->setPale({"R1"});
    stage.follow(canvas);
    EXPECT_EQ(changed(), std::vector{Items});
    stage.inputs.held = {"S1", "S2"};
    stage.solve();
    stage.follow(canvas);
    EXPECT_EQ(changed(), (std::vector{Under, OnParts, Words}));
    stage.picture.phaseMm += 3;
    stage.follow(canvas);
    EXPECT_EQ(changed(), std::vector<PictureLayer>{});
    stage.picture.views.strips = true;
    stage.follow(canvas);
    EXPECT_EQ(changed(), (std::vector{Boards, Under, OnParts, Words}));
}

TEST(Canvas, APressLaysLittleAndAMovingArrowNothing) {
    CanvasStage stage;
    BenchCanvas canvas(Painting::Kept);
    (void)stage.shown(canvas);
    const long long whole = canvas.laidPixels();
    stage.inputs.held = {"S1"};
    stage.solve();
    (void)stage.shown(canvas);
    const long long pressed = canvas.laidPixels() - whole;
    EXPECT_GT(pressed, 0);
    EXPECT_LT(pressed, whole / 4);
    const QImage before = stage.shown(canvas);
    (void)canvas.takeStale();
    stage.picture.phaseMm += 1;
    const QImage after = stage.shown(canvas);
    const QRegion moved = canvas.takeStale();
    ASSERT_FALSE(moved.isEmpty());
    EXPECT_NE(before, after);
    EXPECT_EQ(canvas.laidPixels() - whole - pressed, 0);
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
