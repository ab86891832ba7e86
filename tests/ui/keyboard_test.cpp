// The whole bench by keyboard alone: nothing here touches the mouse.

#include "desk.h"

namespace tiepoint::ui {
namespace {

class KeyboardTest : public Desk {
protected:
    void walk(Qt::Key direction, int times = 1, Qt::KeyboardModifiers modifiers = {}) {
        for (int i = 0; i < times; ++i) key(direction, modifiers);
    }
    void walkTo(std::string_view hole) { view.setCursorHole(test::holeAt(hole)); }
    std::string cursor() const { return view.cursor() ? toString(*view.cursor()) : std::string(); }
};

TEST_F(KeyboardTest, ArrowsShowAndMoveTheCursor) {
    EXPECT_EQ(cursor(), "");
    walk(Qt::Key_Right);
    EXPECT_NE(cursor(), "") << "the first arrow shows where it is";
    walkTo("A.e12");
    walk(Qt::Key_Down);
    EXPECT_EQ(cursor(), "A.f12") << "over the gap";
    walk(Qt::Key_Right, 3);
    EXPECT_EQ(cursor(), "A.f15");
    walk(Qt::Key_Left, 1, Qt::ControlModifier);
    EXPECT_EQ(cursor(), "A.f10") << "five with Ctrl";
    key(Qt::Key_Escape);
    EXPECT_EQ(cursor(), "");
}

TEST_F(KeyboardTest, TheFocusIsSeen) {
    walkTo("A.e12");
    const QImage with = view.viewport()->grab().toImage();
    view.clearFocus();
    EXPECT_EQ(cursor(), "") << "without the focus no cursor";
    const QImage without = view.viewport()->grab().toImage();
    EXPECT_NE(with, without);
    view.setFocus(Qt::TabFocusReason);
    EXPECT_EQ(cursor(), "A.e12") << "back where it was";
}

TEST_F(KeyboardTest, TheCursorLightsItsNet) {
    open(beacon());
    walkTo("A.e14");
    EXPECT_EQ(marks().hoverNet,
              view.picture().layout->netOfHole(view.picture().layout->holeIndex(test::holeAt("A.c14"))));
    EXPECT_EQ(marks().hoverPart, "S1");
}

TEST_F(KeyboardTest, EnterTakesWhatIsThereAndArrowsMoveIt) {
    open(beacon());
    walkTo("A.c8");
    key(Qt::Key_Return);
    EXPECT_EQ(view.selection(), QStringList{"R1"});
    walk(Qt::Key_Down);
    EXPECT_EQ(toString(*part("R1").leads[0]), "A.d8");
    key(Qt::Key_Escape);
    EXPECT_TRUE(view.selection().isEmpty());
    EXPECT_EQ(cursor(), "A.c8");
}

TEST_F(KeyboardTest, ShiftStretchesTheEndThatTheCursorHolds) {
    open(beacon());
    walkTo("A.c8");
    key(Qt::Key_Return);
    walk(Qt::Key_Left, 1, Qt::ShiftModifier);
    EXPECT_EQ(toString(*part("R1").leads[0]), "A.c7");
    EXPECT_EQ(toString(*part("R1").leads[1]), "A.c14");
    EXPECT_EQ(cursor(), "A.c7") << "the cursor stays on the end";
    view.setCursorHole({});
    walk(Qt::Key_Up, 1, Qt::ShiftModifier);
    EXPECT_EQ(toString(*part("R1").leads[1]), "A.b14") << "without a cursor the last end";
    view.setSelection({"S1"});
    const auto before = document.bench();
    walk(Qt::Key_Up, 1, Qt::ShiftModifier);
    EXPECT_EQ(document.bench(), before);
    EXPECT_FALSE(said().isEmpty()) << "stiff legs say so";
}

TEST_F(KeyboardTest, ATurnIsAKey) {
    open(beacon());
    walkTo("A.h16");
    key(Qt::Key_Return);
    key(Qt::Key_BracketRight);
    EXPECT_EQ(toString(*part("D1").leads[0]), "A.h19");
}

TEST_F(KeyboardTest, EnterOnAFreeHoleDrawsAJumper) {
    open(beacon());
    const auto before = bench().jumpers.size();
    walkTo("A.a20");
    key(Qt::Key_Return);
    EXPECT_TRUE(view.isGesturing());
    walk(Qt::Key_Right, 4);
    EXPECT_TRUE(marks().drawn);
    key(Qt::Key_Return);
    EXPECT_FALSE(view.isGesturing());
    ASSERT_EQ(bench().jumpers.size(), before + 1);
    EXPECT_EQ(std::get<Hole>(bench().jumpers.back().ends[0]), test::holeAt("A.a20"));
    EXPECT_EQ(std::get<Hole>(bench().jumpers.back().ends[1]), test::holeAt("A.a24"));
    walkTo("A.a26");
    key(Qt::Key_Return);
    key(Qt::Key_Escape);
    EXPECT_EQ(bench().jumpers.size(), before + 1) << "Escape leaves no trace";
}

TEST_F(KeyboardTest, PlacesFromTheTrayWithTheFirstLeadInTheCursorsHole) {
    walkTo("A.c10");
    view.beginPlacing("resistor", "resistance=220", QPoint(-10, -10));
    walk(Qt::Key_Right);
    walk(Qt::Key_Left);
    ASSERT_TRUE(marks().carried);
    EXPECT_EQ(toString(*marks().carried->leads[0]), "A.c10");
    key(Qt::Key_Return);
    ASSERT_TRUE(bench().findPart("R1"));
    EXPECT_EQ(toString(*part("R1").leads[0]), "A.c10");
}

TEST_F(KeyboardTest, SpacePressesAndSwitches) {
    open(beacon());
    walkTo("A.e14");
    QTest::keyPress(&view, Qt::Key_Space);
    EXPECT_TRUE(live.isHeld("S1"));
    QTest::keyRelease(&view, Qt::Key_Space);
    EXPECT_FALSE(live.isHeld("S1"));
    view.setSelection({"PS1"});
    key(Qt::Key_Space);
    EXPECT_EQ(part("PS1").stateValue(0), 0) << "the supply is off";
}

TEST_F(KeyboardTest, ASupplysLeadIsPluggedInByInsert) {
    view.beginPlacing("cells", "", QPoint(-10, -10));
    walkTo("A.a5");
    key(Qt::Key_Return);
    ASSERT_EQ(bench().parts.size(), 2u);
    const std::string id = bench().parts.back().id;
    EXPECT_EQ(view.selection(), QStringList{QString::fromStdString(id)});
    walkTo("A.a5");
    key(Qt::Key_Insert);
    EXPECT_TRUE(view.isGesturing());
    walk(Qt::Key_Right);
    key(Qt::Key_Return);
    ASSERT_TRUE(part(id).leads[0]);
    EXPECT_EQ(toString(*part(id).leads[0]), "A.a6");
    key(Qt::Key_Insert);
    walk(Qt::Key_Right, 2);
    key(Qt::Key_Return);
    ASSERT_TRUE(part(id).leads[1]) << "then the next one that hangs";
    EXPECT_EQ(toString(*part(id).leads[1]), "A.a8");
}

TEST_F(KeyboardTest, AJumperLeavesASocketOfTheSelectedSupply) {
    open(test::BenchBuilder().board("A", "half").part("PS1", "usb-supply", {}).build());
    view.setSelection({"PS1"});
    walkTo("A.top+5");
    key(Qt::Key_Insert);
    key(Qt::Key_Return);
    ASSERT_EQ(bench().jumpers.size(), 1u);
    EXPECT_EQ(std::get<Socket>(bench().jumpers[0].ends[0]), (Socket{"PS1", 0}));
}

/// A lamp lit from nothing, without a mouse: the acceptance of it all.
TEST_F(KeyboardTest, BuildsAWorkingCircuit) {
    const auto place = [&](const char* kind, const char* preset, const char* hole) {
        view.beginPlacing(kind, preset, QPoint(-10, -10));
        walkTo(hole);
        walk(Qt::Key_Right);
        walk(Qt::Key_Left);
        key(Qt::Key_Return);
        key(Qt::Key_Escape);
    };
    const auto wire = [&](const char* from, const char* to) {
        walkTo(from);
        key(Qt::Key_Return);
        walkTo(to);
        walk(Qt::Key_Right);
        walk(Qt::Key_Left);
        key(Qt::Key_Return);
        key(Qt::Key_Escape);
        if (!view.cursor()) walkTo(to);
    };
    place("resistor", "resistance=330", "A.c8");
    place("led", "colour=red", "A.e13");
    wire("A.top+7", "A.a8");
    wire("A.a14", "A.top-10");
    ASSERT_EQ(bench().jumpers.size(), 2u);
    // top- isn't joined to the supply's bottom-: one more wire.
    wire("A.top-20", "A.bottom-20");
    ASSERT_TRUE(waitForAnswer());
    EXPECT_GT(live.snapshot()->brightness(bench().partIndex("D1")), 0.4);
}

TEST_F(KeyboardTest, LettersStayWithTheCaps) {
    open(beacon());
    walkTo("A.c20");
    QTest::keyPress(&view, Qt::Key_A);
    EXPECT_TRUE(live.isHeld("S1"));
    QTest::keyRelease(&view, Qt::Key_A);
    EXPECT_EQ(cursor(), "A.c20");
}

TEST_F(KeyboardTest, EnterOnARefusedPlaceKeepsThePartInTheHand) {
    open(beacon());
    walkTo("A.c8");
    view.beginPlacing("resistor", "resistance=220", QPoint(-10, -10));
    walk(Qt::Key_Right);
    walk(Qt::Key_Left);
    const auto before = document.bench();
    key(Qt::Key_Return);
    EXPECT_TRUE(view.isGesturing()) << "it is still in the hand";
    EXPECT_EQ(document.bench(), before);
    EXPECT_TRUE(said().contains(QStringLiteral("taken"))) << said().toStdString();
    walk(Qt::Key_Right, 12);
    key(Qt::Key_Return);
    EXPECT_FALSE(view.isGesturing()) << said().toStdString();
    EXPECT_EQ(toString(*part("R2").leads[0]), "A.c20");
}

TEST_F(KeyboardTest, CtrlWalksFiveHolesWithSomethingInTheHandToo) {
    open(beacon());
    walkTo("A.i21");
    view.beginPlacing("resistor", "resistance=220", QPoint(-10, -10));
    walk(Qt::Key_Left, 1, Qt::ControlModifier);
    EXPECT_EQ(cursor(), "A.i16");
    walk(Qt::Key_Right, 1, Qt::ControlModifier);
    EXPECT_EQ(cursor(), "A.i21");
    key(Qt::Key_Escape);
    view.setSelection({"D1"});
    walk(Qt::Key_Right, 1, Qt::ControlModifier);
    EXPECT_EQ(cursor(), "A.i26") << "with something selected too";
    EXPECT_EQ(part("D1").leads[0], test::holeAt("A.h16"));
}

TEST_F(KeyboardTest, InsertBeginsWithoutAnError) {
    open(beacon());
    walkTo("A.a20");
    key(Qt::Key_Insert);
    EXPECT_TRUE(view.isGesturing());
    EXPECT_FALSE(marks().refused);
    EXPECT_EQ(said(), "arrows lead it, Enter plugs it in");
    key(Qt::Key_Escape);
    view.setSelection({"PS1"});
    walkTo("A.c8");  // where the resistor is
    key(Qt::Key_Insert);
    EXPECT_TRUE(view.isGesturing());
    EXPECT_FALSE(marks().refused);
    key(Qt::Key_Return);
    EXPECT_FALSE(view.isGesturing());
    ASSERT_TRUE(part("PS1").leads[0]);
    EXPECT_EQ(part("PS1").leads[0]->number, 8) << "in a free hole of the same metal";
}

}  // namespace
}  // namespace tiepoint::ui
