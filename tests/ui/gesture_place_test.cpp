// From the tray into holes, by dragging and by clicking.

#include "core/edit/placement.h"
#include "desk.h"

#include <QPushButton>

namespace tiepoint::ui {
namespace {

class PlaceGestureTest : public Desk {
protected:
    QPoint global(QPoint inView) const { return view.viewport()->mapToGlobal(inView); }
    /// Takes a part out of the tray and lets it go over a place of the bench.
    void place(const char* kind, const char* preset, QPoint where) {
        view.beginPlacing(kind, preset, global(QPoint(5, 5)));
        moveTo(where, Qt::LeftButton);
        release(where);
    }
    QPoint between(std::string_view a, std::string_view b) const { return (at(a) + at(b)) / 2; }
};

TEST_F(PlaceGestureTest, ALeadGoesWhereItIsShown) {
    view.beginPlacing("resistor", "resistance=220", global(QPoint(5, 5)));
    moveTo(between("A.c10", "A.c15"), Qt::LeftButton);
    ASSERT_TRUE(marks().carried);
    EXPECT_FALSE(marks().refused) << said().toStdString();
    EXPECT_EQ(marks().targets, (std::vector<Hole>{test::holeAt("A.c10"), test::holeAt("A.c15")}));
    const auto shown = marks().carried->leads;
    release(between("A.c10", "A.c15"));
    EXPECT_EQ(part("R1").leads, shown);
    EXPECT_EQ(part("R1").value(part("R1").kind->valueIndex("resistance")), 220);
    EXPECT_EQ(view.selection(), QStringList{"R1"});
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_FALSE(bench().findPart("R1"));
}

TEST_F(PlaceGestureTest, APresetChoosesTheColour) {
    place("led", "colour=green", between("A.h16", "A.h17"));
    const Part& led = part("D1");
    const int index = led.kind->valueIndex("colour");
    EXPECT_EQ(
        led.kind->values[static_cast<std::size_t>(index)].choices[static_cast<std::size_t>(led.value(index))].name,
        "green");
}

TEST_F(PlaceGestureTest, ButtonsGetTheNextFreeLetter) {
    for (const char* column : {"4", "10", "16"}) {
        const std::string first = std::string("A.e") + column;
        place("push-button", "",
              at(Point{holeMm(bench(), test::holeAt(first))->x + kPitchMm,
                       holeMm(bench(), test::holeAt(first))->y + 1.5 * kPitchMm}));
    }
    EXPECT_EQ(part("S1").cap, "A");
    EXPECT_EQ(part("S2").cap, "S");
    EXPECT_EQ(part("S3").cap, "D");
    EXPECT_EQ(part("S1").leads[0], test::holeAt("A.e4"));
}

TEST_F(PlaceGestureTest, ARefusalIsSaidBesideThePointer) {
    open(beacon());
    const QPoint where = bodyOf("R1");
    const auto before = document.bench();
    view.beginPlacing("resistor", "resistance=100", global(QPoint(5, 5)));
    moveTo(where, Qt::LeftButton);
    EXPECT_TRUE(marks().refused);
    ASSERT_TRUE(marks().carried);
    const auto why = refusal(bench(), *marks().carried);
    ASSERT_TRUE(why);
    EXPECT_EQ(said().toStdString(), *why);
    EXPECT_NEAR(view.fromMm(marks().sayAt).x(), where.x(), 1);
    release(where);
    EXPECT_EQ(document.bench(), before);
    EXPECT_EQ(said().toStdString(), *why) << "the words stay for a moment";
}

TEST_F(PlaceGestureTest, TurnsWithBracketsOnTheWay) {
    view.beginPlacing("led", "", global(QPoint(5, 5)));
    moveTo(between("A.h16", "A.h17"), Qt::LeftButton);
    ASSERT_TRUE(marks().carried);
    const auto unturned = marks().carried->leads;
    key(Qt::Key_BracketRight);
    key(Qt::Key_BracketRight);
    ASSERT_TRUE(marks().carried);
    EXPECT_EQ(marks().carried->leads[0], unturned[1]);
    EXPECT_EQ(marks().carried->leads[1], unturned[0]);
    release(between("A.h16", "A.h17"));
    EXPECT_EQ(part("D1").leads[0], unturned[1]);
}

TEST_F(PlaceGestureTest, EscapeAndLettingGoOffTheBoardLeaveNothing) {
    view.beginPlacing("led", "", global(QPoint(5, 5)));
    moveTo(at("A.h16"), Qt::LeftButton);
    key(Qt::Key_Escape);
    EXPECT_FALSE(view.isGesturing());
    EXPECT_FALSE(marks().carried);
    const Rect boards = view.picture().table->boardsMm;
    place("led", "", at(Point{boards.right() + 10, boards.top + 10}));
    EXPECT_FALSE(bench().findPart("D1"));
    EXPECT_FALSE(document.undoStack().canUndo());
}

TEST_F(PlaceGestureTest, AClickOnTheTrayThenAClickInAHole) {
    view.beginPlacing("diode", "", global(QPoint(5, 5)));
    const QPoint where = between("A.c10", "A.c14");
    moveTo(where);
    ASSERT_TRUE(marks().carried);
    click(where);
    EXPECT_FALSE(view.isGesturing());
    EXPECT_EQ(bench().parts.size(), 2U);
}

TEST_F(PlaceGestureTest, TheMouseMayBelongToAnotherWidget) {
    // The tray's button has the mouse while it is dragged: its moves and its release carry the part.
    QPushButton held;
    held.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&held));
    const QPoint where = between("A.c10", "A.c15");
    QTest::mousePress(&held, Qt::LeftButton, {}, QPoint(2, 2));
    view.beginPlacing("resistor", "", held.mapToGlobal(QPoint(2, 2)));
    const auto send = [&](QEvent::Type type, Qt::MouseButton button, Qt::MouseButtons buttons) {
        const QPointF onScreen = global(where);
        QMouseEvent event(type, held.mapFromGlobal(onScreen), onScreen, button, buttons, Qt::NoModifier);
        QApplication::sendEvent(&held, &event);
    };
    send(QEvent::MouseMove, Qt::NoButton, Qt::LeftButton);
    EXPECT_TRUE(marks().carried);
    send(QEvent::MouseButtonRelease, Qt::LeftButton, Qt::NoButton);
    EXPECT_TRUE(bench().findPart("R1"));
    EXPECT_FALSE(view.isGesturing());
}

TEST_F(PlaceGestureTest, ASupplyStandsOnTheTable) {
    place("cells", "", at("A.c10"));
    ASSERT_EQ(bench().parts.size(), 2U);
    EXPECT_FALSE(bench().parts.back().leads[0]) << "its leads hang until they are plugged in";
}

}  // namespace
}  // namespace tiepoint::ui
