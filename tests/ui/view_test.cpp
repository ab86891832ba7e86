// The view: hover, zoom, pan, fit, typed values, what ticks and what doesn't.

#include "desk.h"
#include "ui/view/room_mode.h"
#include "ui/view/value_box.h"

#include <QBackingStore>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>

#include <cmath>

namespace tiepoint::ui {
namespace {

class BenchViewTest : public Desk {
protected:
    QLineEdit& field() { return view.findChild<ValueBox*>()->field(); }
    double ohms(std::string_view id) const { return part(id).value(part(id).kind->valueIndex("resistance")); }
    void type(QWidget& widget, const char* text) { QTest::keyClicks(&widget, text); }
    void wheel(QPoint where, int notches, Qt::KeyboardModifiers modifiers = {}) {
        QWheelEvent event(where, view.viewport()->mapToGlobal(where), {}, QPoint(0, 120 * notches), Qt::NoButton,
                          modifiers, Qt::NoScrollPhase, false);
        QApplication::sendEvent(view.viewport(), &event);
    }
    /// What is on the screen.
    QImage screen() {
        QTest::qWait(350);  // what was asked for is painted, and tags have come into sight
        return dynamic_cast<const QImage*>(view.backingStore()->paintDevice())
            ->copy()
            .convertToFormat(QImage::Format_RGB32);
    }
    /// What would be, if all of it were painted now.
    QImage anew() {
        QImage whole = view.grab().toImage().convertToFormat(QImage::Format_RGB32);
        whole.setDevicePixelRatio(view.backingStore()->paintDevice()->devicePixelRatio());
        return whole;
    }
    /// Whether the screen is what would be painted now; the screen first, since it waits until all has moved.
    bool isFollowed() {
        const QImage seen = screen();
        return seen == anew();
    }
    void pan(QPoint by) {
        const QPoint where(400, 300);
        QTest::mousePress(view.viewport(), Qt::MiddleButton, {}, where);
        moveTo(where + by);
        QTest::mouseRelease(view.viewport(), Qt::MiddleButton, {}, where + by);
    }
};

TEST_F(BenchViewTest, HoverLightsTheNetOfAHole) {
    open(beacon());
    QSignalSpy changes(&view, &BenchView::hoverChanged);
    moveTo(at("A.d16"));
    const Layout& layout = *view.picture().layout;
    EXPECT_EQ(marks().hoverNet, layout.netOfHole(layout.holeIndex(test::holeAt("A.e16"))));
    moveTo(at("A.i16"));
    EXPECT_EQ(marks().hoverNet, layout.netOfHole(layout.holeIndex(test::holeAt("A.f16")))) << "2a and 2b are one metal";
    EXPECT_EQ(layout.netOfHole(layout.holeIndex(test::holeAt("A.d16"))), marks().hoverNet);
    moveTo(bodyOf("R1"));
    EXPECT_EQ(view.hoveredPart(), "R1");
    EXPECT_GE(changes.count(), 2);
    QEvent leave(QEvent::Leave);
    QApplication::sendEvent(view.viewport(), &leave);
    EXPECT_EQ(marks().hoverNet, -1);
    EXPECT_TRUE(view.hoveredPart().isEmpty());
}

TEST_F(BenchViewTest, TheHoverTagCarriesTheSolvedVolts) {
    open(beacon());
    press(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    release(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    moveTo(at("A.top+20"));
    const Snapshot& snapshot = *view.picture().snapshot;
    EXPECT_NEAR(snapshot.solution.netVoltage[static_cast<std::size_t>(marks().hoverNet)], 5.0, 0.01);
    const QImage with = view.viewport()->grab().toImage();
    QEvent leave(QEvent::Leave);
    QApplication::sendEvent(view.viewport(), &leave);
    EXPECT_NE(with, view.viewport()->grab().toImage()) << "a lit net is to be seen";
}

TEST_F(BenchViewTest, ZoomKeepsThePointUnderThePointer) {
    const QPoint where(400, 300);
    const Point before = view.toMm(where);
    const double scale = view.pixelsPerMm();
    wheel(where, 3);
    EXPECT_NEAR(view.pixelsPerMm(), scale * std::pow(1.25, 3), 1e-6);
    EXPECT_NEAR(view.toMm(where).x, before.x, 1.5 / view.pixelsPerMm());
    EXPECT_NEAR(view.toMm(where).y, before.y, 1.5 / view.pixelsPerMm());
    QTest::qWait(150);  // settled: the bench is drawn anew at that step
    EXPECT_NEAR(view.pixelsPerMm(), scale * std::pow(1.25, 3), 1e-6);
    wheel(where, -3, Qt::ControlModifier);
    EXPECT_NEAR(view.pixelsPerMm(), scale, 1e-6);
}

TEST_F(BenchViewTest, TheScreenFollowsWithoutBeingPaintedWhole) {
    open(beacon());
    wheel(QPoint(400, 300), 2);
    QTest::qWait(150);
    ASSERT_TRUE(isFollowed());
    const QImage before = screen();
    for (const QPoint by : {QPoint(30, 0), QPoint(0, 17), QPoint(-45, -60), QPoint(3, 120)}) {
        pan(by);
        EXPECT_TRUE(isFollowed()) << by.x() << ", " << by.y();
    }
    EXPECT_NE(screen(), before);
    moveTo(at("A.d16"));
    EXPECT_TRUE(isFollowed()) << "a lit net";
    view.setSelection({"R1"});
    EXPECT_TRUE(isFollowed()) << "a selection";
    view.setSelection({});
    moveTo(at("A.top+20"));
    EXPECT_TRUE(isFollowed()) << "a net that is lit no more";
}

TEST_F(BenchViewTest, TheScreenFollowsARoomsRingAndInkToo) {
    open(beacon());
    view.room().setProjecting(true);
    view.viewport()->setAttribute(Qt::WA_UnderMouse);
    for (const QPoint to : {QPoint(300, 300), QPoint(320, 310), QPoint(900, 500), QPoint(5, 5)}) {
        moveTo(to);
        EXPECT_TRUE(isFollowed()) << "the ring at " << to.x() << ", " << to.y();
    }
    const QImage bare = screen();
    drag(QPoint(500, 300), QPoint(700, 400), Qt::RightButton);
    EXPECT_TRUE(isFollowed()) << "ink";
    pan({-40, 25});
    EXPECT_TRUE(isFollowed()) << "ink and ring after a pan";
    view.viewport()->setAttribute(Qt::WA_UnderMouse, false);
    QEvent leave(QEvent::Leave);
    QApplication::sendEvent(view.viewport(), &leave);
    EXPECT_TRUE(isFollowed()) << "the pointer is elsewhere";
    view.room().wipeInk();
    EXPECT_TRUE(isFollowed()) << "wiped";
    EXPECT_NE(screen(), bare);
}

/// Pixels that a widget is asked to paint.
class PaintedArea : public QObject {
public:
    explicit PaintedArea(QWidget* widget) { widget->installEventFilter(this); }
    int frames = 0;
    long long pixels = 0;

protected:
    bool eventFilter(QObject*, QEvent* event) override {
        if (event->type() != QEvent::Paint) return false;
        ++frames;
        for (const QRect& rect : static_cast<QPaintEvent*>(event)->region())
            pixels += qint64{rect.width()} * rect.height();
        return false;
    }
};

TEST_F(BenchViewTest, MovingArrowsPaintLittleWhileProjecting) {
    open(beacon());
    live.setHeld("S1", true);
    ASSERT_TRUE(waitForAnswer());
    view.room().setProjecting(true);
    view.viewport()->setAttribute(Qt::WA_UnderMouse);
    moveTo({300, 300});
    drag(QPoint(500, 300), QPoint(700, 400), Qt::RightButton);
    QTest::qWait(200);
    PaintedArea area(view.viewport());
    ASSERT_TRUE(QTest::qWaitFor([&] { return area.frames >= 10; }));
    const QSize whole = view.viewport()->size();
    EXPECT_LT(area.pixels / area.frames, qint64{whole.width()} * whole.height() / 4);
}

TEST_F(BenchViewTest, ZoomHasLimits) {
    const double scale = view.pixelsPerMm();
    wheel(QPoint(400, 300), 100);
    EXPECT_LT(view.pixelsPerMm(), scale * 10);
    wheel(QPoint(400, 300), -100);
    EXPECT_GT(view.pixelsPerMm(), scale / 3);
}

TEST_F(BenchViewTest, FitShowsBoardsAndSupplies) {
    wheel(QPoint(100, 100), 5);
    view.fitBench();
    const QRectF sight(QPointF(0, 0), view.viewport()->size());
    const Rect all = view.picture().table->allMm;
    EXPECT_TRUE(sight.contains(view.fromMm({all.left, all.top})));
    EXPECT_TRUE(sight.contains(view.fromMm({all.right(), all.bottom()})));
    const double filled =
        std::max((view.fromMm({all.right(), 0}).x() - view.fromMm({all.left, 0}).x()) / sight.width(),
                 (view.fromMm({0, all.bottom()}).y() - view.fromMm({0, all.top}).y()) / sight.height());
    EXPECT_GT(filled, 0.85);
    view.resize(900, 500);
    QApplication::processEvents();
    EXPECT_TRUE(QRectF(QPointF(0, 0), view.viewport()->size()).contains(view.fromMm({all.right(), all.bottom()})));
}

TEST_F(BenchViewTest, PansWithTheMiddleButtonAndWithTheSpaceBar) {
    wheel(QPoint(400, 300), 2);
    QTest::qWait(120);
    const QPointF before = view.fromMm({0, 0});
    drag(QPoint(400, 300), QPoint(460, 280), Qt::MiddleButton);
    EXPECT_NEAR(view.fromMm({0, 0}).x() - before.x(), 60, 2);
    EXPECT_NEAR(view.fromMm({0, 0}).y() - before.y(), -20, 2);
    QTest::keyPress(&view, Qt::Key_Space);
    drag(at("A.c5"), at("A.c5") - QPoint(40, 0));
    QTest::keyRelease(&view, Qt::Key_Space);
    EXPECT_NEAR(view.fromMm({0, 0}).x() - before.x(), 20, 3);
    EXPECT_TRUE(bench().jumpers.empty()) << "a pan draws no jumper";
}

TEST_F(BenchViewTest, ValuesAreTypedAndKeepTheKeys) {
    open(beacon());
    const struct {
        const char* typed;
        double ohm;
    } kCases[] = {{"220", 220}, {"4k7", 4700}, {"4R7", 4.7}, {"1M", 1e6}};
    for (const auto& [typed, ohm] : kCases) {
        view.setSelection({"R1"});
        QTest::keyClick(&view, typed[0]);
        ASSERT_TRUE(view.isTyping());
        type(field(), typed + 1);
        EXPECT_EQ(field().text(), typed);
        QTest::keyClick(&field(), Qt::Key_Return);
        EXPECT_FALSE(view.isTyping());
        EXPECT_DOUBLE_EQ(ohms("R1"), ohm);
    }
    EXPECT_EQ(document.undoStack().count(), 4);
}

TEST_F(BenchViewTest, LettersWhileTypingPressNothing) {
    open(beacon());
    view.setSelection({"R1"});
    QTest::keyClick(&view, Qt::Key_Return);
    ASSERT_TRUE(view.isTyping());
    EXPECT_EQ(field().text(), "330 \u03A9");
    QTest::keyPress(&field(), Qt::Key_A);
    EXPECT_TRUE(live.inputs().held.empty());
    QTest::keyRelease(&field(), Qt::Key_A);
    QTest::keyClick(&field(), Qt::Key_Escape);
    EXPECT_FALSE(view.isTyping());
    EXPECT_DOUBLE_EQ(ohms("R1"), 330);
    EXPECT_FALSE(document.undoStack().canUndo());
}

TEST_F(BenchViewTest, ARefusedValueSaysWhyAndStays) {
    open(beacon());
    view.setSelection({"R1"});
    for (const char* wrong : {"12x", "1e12"}) {
        QTest::keyClick(&view, Qt::Key_1);
        field().setText({});
        type(field(), wrong);
        QTest::keyClick(&field(), Qt::Key_Return);
        EXPECT_TRUE(view.isTyping()) << wrong;
        const auto labels = view.findChildren<QLabel*>();
        EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](QLabel* label) {
            return label->isVisible() && label->text().size() > 15;
        })) << wrong;
        QTest::keyClick(&field(), Qt::Key_Escape);
    }
    EXPECT_DOUBLE_EQ(ohms("R1"), 330);
}

TEST_F(BenchViewTest, APartWithoutAFigureAsksForItsCard) {
    open(beacon());
    QSignalSpy asked(&view, &BenchView::valueTyped);
    view.setSelection({"D1"});
    QTest::keyClick(&view, Qt::Key_Return);
    EXPECT_EQ(asked.count(), 1);
    EXPECT_FALSE(view.isTyping());
}

TEST_F(BenchViewTest, AnEditNeverShowsAnOldAnswer) {
    open(beacon());
    ASSERT_EQ(document.push(setValueEdit(bench(), "R1", "resistance", 100)), std::nullopt);
    EXPECT_FALSE(view.picture().live()) << "the old snapshot is of another revision";
    EXPECT_TRUE(waitForAnswer());
    EXPECT_TRUE(view.picture().live());
    EXPECT_EQ(view.picture().snapshot->revision, document.revision());
}

TEST_F(BenchViewTest, ASelectionForgetsWhatIsGone) {
    open(beacon());
    view.setSelection({"R1", "D1"});
    ASSERT_FALSE(document.push(removeEdit(bench(), {"R1"})));
    EXPECT_EQ(view.selection(), QStringList{"D1"});
    document.undoStack().undo();
    EXPECT_EQ(view.selection(), QStringList{"D1"});
}

TEST_F(BenchViewTest, PressingIsToBeSeen) {
    open(beacon());
    const QImage dark = view.viewport()->grab().toImage();
    press(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    const QImage lit = view.viewport()->grab().toImage();
    release(bodyOf("S1"));
    EXPECT_NE(dark, lit);
    // The LED's dome is brighter in its own colour.
    const QPoint dome = bodyOf("D1") + QPoint(3, -3);
    EXPECT_GT(lit.pixelColor(dome).red(), dark.pixelColor(dome).red() + 20);
}

}  // namespace
}  // namespace tiepoint::ui
