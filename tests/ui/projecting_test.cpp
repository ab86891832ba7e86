// Projecting: what fills the window, how large words stand, ink, the blank screen, and the keys that presenters press.

#include "ui/paint/projecting.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "desk.h"
#include "ui/paint/ink.h"
#include "ui/paint/label_places.h"
#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/used_numbers.h"
#include "ui/view/room_mode.h"
#include "window_bench.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

class Projecting : public Desk {};

TEST_F(Projecting, CapitalsAreAThirtiethAndAFortiethOfTheScreen) {
    open(beacon());
    view.room().setProjecting(true);
    const double height = view.viewport()->height(), scale = view.pixelsPerMm();
    const WordSizes& sizes = view.picture().sizes;
    const auto capShare = [&](double em) { return em * kCapHeight * scale / height; };
    EXPECT_GE(capShare(sizes.readingMm), 1.0 / 30 - 1e-9);
    EXPECT_GE(capShare(sizes.idMm), 1.0 / 40 - 1e-9);
    EXPECT_GE(capShare(sizes.flagMm), 1.0 / 40 - 1e-9);
    EXPECT_GE(capShare(sizes.wordsMm), 1.0 / 40 - 1e-9);
    EXPECT_GE(capShare(sizes.numberMm), 1.0 / 40 - 1e-9);
    view.zoomAt({600, 300}, 2);
    EXPECT_GE(view.picture().sizes.idMm * kCapHeight * view.pixelsPerMm() / height, 1.0 / 40 - 1e-9) << "at every zoom";
    view.room().setProjecting(false);
    EXPECT_EQ(view.picture().sizes, WordSizes{});
}

/// The height in pixels of what is as bright as the figures in a part of a display, mm.
int figureHeight(BenchView& view, const QRectF& mm) {
    const double ratio = view.devicePixelRatioF();
    const QRectF rect(view.fromMm({mm.left(), mm.top()}) * ratio, mm.size() * view.pixelsPerMm() * ratio);
    const QImage seen = view.viewport()->grab().toImage().copy(rect.toAlignedRect());
    int top = seen.height(), bottom = -1;
    for (int y = 0; y < seen.height(); ++y) {
        for (int x = 0; x < seen.width(); ++x) {
            if (qGray(seen.pixel(x, y)) < 200) continue;
            top = std::min(top, y);
            bottom = y;
        }
    }
    return bottom - top + 1;
}

TEST_F(Projecting, TheSuppliesFiguresAreReadAtTheBackToo) {
    open(beacon());
    const int supply = bench().partIndex("PS1");
    const auto lowerHalf = [&] {
        const PartScene scene = sceneOf(view.picture(), supply);
        const QRectF display = findPackagePainter(scene.part.kind->package->name)->figures(scene);
        return QRectF(display.left() + display.width() / 3, display.center().y() + 1.5, display.width() * 0.6,
                      display.height() / 2 - 2);
    };
    const double least = view.viewport()->height() / 30.0;
    ASSERT_FALSE(lowerHalf().isEmpty());
    EXPECT_LT(figureHeight(view, lowerHalf()), least);
    view.room().setProjecting(true);
    EXPECT_GE(figureHeight(view, lowerHalf()), least);
}

TEST_F(Projecting, TheCircuitFillsTheViewNotTheEmptyBoard) {
    open(beacon());
    const double before = view.pixelsPerMm();
    view.room().setProjecting(true);
    EXPECT_GT(view.pixelsPerMm(), before);
    const QRectF area = circuitArea(view.picture());
    const double inUseRight = holeMm(bench(), test::holeAt("A.bottom-18"))->x;
    EXPECT_NEAR(area.right(), inUseRight + 3 * kPitchMm, 2 * kPitchMm) << "three columns beyond the last one in use";
    EXPECT_TRUE(view.viewport()->rect().contains(view.fromMm({area.right(), area.bottom()}).toPoint()));
}

TEST_F(Projecting, AMeterThatLiesByDoesNotMakeTheCircuitSmall) {
    open(beacon());
    view.room().setProjecting(true);
    const QRectF area = circuitArea(view.picture());
    open(test::BenchBuilder(beacon()).part("M1", "multimeter", {}).build());
    EXPECT_EQ(circuitArea(view.picture()), area);
    open(test::BenchBuilder(beacon()).part("M1", "multimeter", {{"+", "A.d8"}, {"com", "A.d14"}}).build());
    EXPECT_GT(circuitArea(view.picture()).width(), area.width());
}

TEST_F(Projecting, NumbersOfColumnsInUseStandClearOfEachOther) {
    open(beacon());
    view.room().setProjecting(true);
    const auto numbers = placeUsedNumbers(view.picture());
    std::vector<QString> texts;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        texts.push_back(numbers[i].text);
        for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(numbers[i].frame.intersects(numbers[j].frame));
    }
    for (const char* used : {"8", "14", "16", "19"})
        EXPECT_NE(std::find(texts.begin(), texts.end(), QString::fromLatin1(used)), texts.end()) << used;
}

TEST_F(Projecting, ReadingsKeepOffNumbersAndNames) {
    const auto file =
        std::ranges::find(embeddedFiles(), std::string_view("benches/three-buoys.bench.json"), &EmbeddedFile::name);
    ASSERT_NE(file, embeddedFiles().end());
    open(std::move(readBench(file->text)).value().bench);
    view.room().setProjecting(true);
    const Picture& picture = view.picture();
    Clearance clearance(picture);
    const std::vector<Label> ids = placeIds(picture, clearance);
    ASSERT_TRUE(picture.netTags);
    ASSERT_EQ(picture.netTags->size(), 5u) << "plus, minus and one at each buoy";
    const QRectF sight = view.viewportTransform().inverted().mapRect(QRectF(view.viewport()->rect()));
    for (const NetTag& reading : *picture.netTags) {
        const QRectF frame = toQt(reading.frame);
        EXPECT_TRUE(sight.contains(frame)) << reading.text.toStdString();
        EXPECT_FALSE(frame.intersects(toQt(picture.table->boardsMm))) << reading.text.toStdString();
        for (const UsedNumber& number : placeUsedNumbers(picture))
            EXPECT_FALSE(frame.intersects(number.frame))
                << reading.text.toStdString() << " over " << number.text.toStdString();
        for (const Label& id : ids)
            EXPECT_FALSE(frame.intersects(id.frame)) << reading.text.toStdString() << " over " << id.text.toStdString();
    }
}

TEST_F(Projecting, InkStaysOnItsHolesAndOneCallWipesIt) {
    open(beacon());
    view.room().setInking(true);
    const auto before = document.bench();
    const QImage clean = view.viewport()->grab().toImage();
    drag(at("A.b10"), at("A.b20"));
    ASSERT_EQ(view.room().ink().strokes().size(), 1u);
    const Point first = view.room().ink().strokes()[0].front();
    EXPECT_NEAR(first.x, holeMm(bench(), test::holeAt("A.b10"))->x, 0.3);
    EXPECT_EQ(document.bench(), before) << "ink is no part of the bench";
    EXPECT_NE(view.viewport()->grab().toImage(), clean);
    view.zoomAt({400, 300}, 1.5);
    EXPECT_EQ(view.room().ink().strokes()[0].front(), first);
    view.room().wipeInk();
    EXPECT_TRUE(view.room().ink().isEmpty());
}

TEST_F(Projecting, TheRightButtonDrawsWhileProjectingOnly) {
    open(beacon());
    drag(at("A.b10"), at("A.b20"), Qt::RightButton);
    EXPECT_TRUE(view.room().ink().isEmpty());
    view.room().setProjecting(true);
    drag(at("A.b10"), at("A.b20"), Qt::RightButton);
    EXPECT_EQ(view.room().ink().strokes().size(), 1u);
}

TEST_F(Projecting, PageKeysAreLeftForSteps) {
    open(beacon());
    view.room().setProjecting(true);
    const QPointF before = view.fromMm({0, 0});
    for (const Qt::Key page : {Qt::Key_PageUp, Qt::Key_PageDown}) {
        QKeyEvent event(QEvent::KeyPress, page, Qt::NoModifier);
        event.accept();
        QApplication::sendEvent(&view, &event);
        EXPECT_FALSE(event.isAccepted());
    }
    EXPECT_EQ(view.fromMm({0, 0}), before);
}

TEST(ProjectingWindow, F11FoldsTheFurnitureAwayAndBlanksAndComesBack) {
    WindowBench bench;
    MainWindow& window = bench.window();
    QTest::keyClick(&window.view(), Qt::Key_B);
    EXPECT_FALSE(window.projection().isBlank()) << "nothing to blank at a desk";
    QTest::keyClick(&window.view(), Qt::Key_F11);
    ASSERT_TRUE(WindowBench::waitFor([&] { return window.isFullScreen(); }));
    EXPECT_TRUE(window.view().room().isProjecting());
    EXPECT_FALSE(window.cards().isVisible());
    EXPECT_FALSE(window.tray().isVisible());
    EXPECT_FALSE(window.titleLine().isVisible());
    for (const Qt::Key key : {Qt::Key_B, Qt::Key_Period}) {
        QTest::keyClick(&window.view(), key);
        EXPECT_TRUE(window.projection().isBlank());
        QTest::keyClick(&window.view(), key);
        EXPECT_FALSE(window.projection().isBlank());
    }
    WindowBench::click(&window.projection().endButton());
    ASSERT_TRUE(WindowBench::waitFor([&] { return !window.isFullScreen(); }));
    EXPECT_FALSE(window.view().room().isProjecting());
    EXPECT_TRUE(window.cards().isVisible());
    EXPECT_TRUE(window.titleLine().isVisible());
}

}  // namespace
}  // namespace tiepoint::ui
