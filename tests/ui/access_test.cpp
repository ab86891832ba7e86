// What a screen reader finds on the bench, asked through QAccessible as it asks.

#include "desk.h"
#include "ui/access/bench_access.h"

#include <QAccessible>

namespace tiepoint::ui {
namespace {

class AccessTest : public Desk {
protected:
    static void SetUpTestSuite() { installBenchAccess(); }
    AccessTest() {
        announceBench(view, live);
        open(beacon());
    }
    QAccessibleInterface* root() { return QAccessible::queryAccessibleInterface(&view); }
    QAccessibleInterface* named(QAccessibleInterface* under, const QString& beginning) {
        for (int i = 0; i < under->childCount(); ++i)
            if (under->child(i)->text(QAccessible::Name).startsWith(beginning)) return under->child(i);
        return nullptr;
    }
    QString nameOf(QAccessibleInterface* node) { return node ? node->text(QAccessible::Name) : QString(); }
};

TEST_F(AccessTest, TheTreeHoldsBoardPartsJumpersAndNets) {
    ASSERT_TRUE(root());
    for (const char* beginning : {"Board A", "R1", "S1", "D1", "PS1", "W1", "W2", "Net of"})
        EXPECT_TRUE(named(root(), beginning)) << beginning;
    for (int i = 0; i < root()->childCount(); ++i) {
        QAccessibleInterface* node = root()->child(i);
        EXPECT_FALSE(nameOf(node).isEmpty()) << i;
        EXPECT_EQ(root()->indexOfChild(node), i);
        EXPECT_EQ(node->parent(), root());
        EXPECT_TRUE(node->isValid());
        EXPECT_EQ(node, root()->child(i)) << "the same node each time";
    }
}

TEST_F(AccessTest, EveryHoleIsThere) {
    QAccessibleInterface* board = named(root(), "Board A");
    ASSERT_TRUE(board);
    EXPECT_EQ(nameOf(board), "Board A, half board, 400 tie points");
    EXPECT_EQ(board->childCount(), 400);
    for (int i = 0; i < board->childCount(); i += 37) {
        EXPECT_EQ(board->indexOfChild(board->child(i)), i);
        EXPECT_EQ(board->child(i)->parent(), board);
    }
    live.setHeld("S1", true);
    ASSERT_TRUE(waitForAnswer());
    EXPECT_EQ(nameOf(named(board, "c14,")),
              QString("c14, R1 leg 2, %1").arg(nameOf(named(board, "c14,")).section(", ", 2)));
    EXPECT_TRUE(nameOf(named(board, "c14,")).endsWith(" V")) << nameOf(named(board, "c14,")).toStdString();
    EXPECT_EQ(nameOf(named(board, "a20,")), "a20, free");
}

TEST_F(AccessTest, PartsSayWhatTheyAreAndReadTheirFigures) {
    live.setHeld("S1", true);
    ASSERT_TRUE(waitForAnswer());
    QAccessibleInterface* led = named(root(), "D1");
    EXPECT_EQ(nameOf(led), "D1, red LED");
    EXPECT_EQ(led->text(QAccessible::Description), "anode in h16, cathode in h19");
    // Common practice: a red LED with 330 ohm on 5 V takes about 9.4 mA.
    EXPECT_TRUE(led->text(QAccessible::Value).startsWith("9.3") || led->text(QAccessible::Value).startsWith("9.4"))
        << led->text(QAccessible::Value).toStdString();
    EXPECT_TRUE(nameOf(named(root(), "W1")).contains("jumper from top+7 to a8"));
    bool volts = false;
    for (int i = 0; i < root()->childCount(); ++i) {
        QAccessibleInterface* node = root()->child(i);
        volts = volts || (nameOf(node).contains("a8") && nameOf(node).startsWith("Net") &&
                          node->text(QAccessible::Value) == "5.00 V");
    }
    EXPECT_TRUE(volts) << "the net of plus reads its volts";
    EXPECT_TRUE(root()->text(QAccessible::Description).contains("current flows"));
}

TEST_F(AccessTest, TheCursorIsTheFocus) {
    view.setCursorHole(test::holeAt("A.e14"));
    QAccessibleInterface* focus = root()->focusChild();
    ASSERT_TRUE(focus);
    EXPECT_TRUE(nameOf(focus).startsWith("e14, S1 leg 1a")) << nameOf(focus).toStdString();
    EXPECT_TRUE(focus->state().focused);
    key(Qt::Key_Right);
    EXPECT_FALSE(focus->state().focused);
    EXPECT_TRUE(nameOf(root()->focusChild()).startsWith("e15"));
}

TEST_F(AccessTest, NodesLieWhereTheirThingsAre) {
    QAccessibleInterface* led = named(root(), "D1");
    EXPECT_TRUE(led->rect().contains(view.viewport()->mapToGlobal(bodyOf("D1"))));
    const QPoint hole = view.viewport()->mapToGlobal(at("A.a25"));
    EXPECT_TRUE(nameOf(root()->childAt(hole.x(), hole.y())).startsWith("a25"));
}

TEST_F(AccessTest, PartsCanBeSelectedAndSwitched) {
    auto* led =
        static_cast<QAccessibleActionInterface*>(named(root(), "D1")->interface_cast(QAccessible::ActionInterface));
    led->doAction(QAccessibleActionInterface::setFocusAction());
    EXPECT_EQ(view.selection(), QStringList{"D1"});
    EXPECT_TRUE(named(root(), "D1")->state().selected);
    auto* supply =
        static_cast<QAccessibleActionInterface*>(named(root(), "PS1")->interface_cast(QAccessible::ActionInterface));
    ASSERT_TRUE(supply->actionNames().contains(QAccessibleActionInterface::pressAction()));
    supply->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(part("PS1").stateValue(0), 0);
}

TEST_F(AccessTest, WhatIsGoneIsInvalid) {
    QAccessibleInterface* led = named(root(), "D1");
    const int before = root()->childCount();
    ASSERT_FALSE(document.push(removeEdit(bench(), {"D1"})));
    EXPECT_FALSE(led->isValid());
    EXPECT_LT(root()->childCount(), before);
    EXPECT_FALSE(named(root(), "D1"));
    document.undoStack().undo();
    EXPECT_TRUE(led->isValid());
}

}  // namespace
}  // namespace tiepoint::ui
