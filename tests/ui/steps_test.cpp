// The steps so far: small pictures in the tray's top, by real events on a real window.

#include "support/compact_bench.h"
#include "ui/document/edit_command.h"
#include "ui/tray/steps_row.h"
#include "window_bench.h"

#include <QAccessible>
#include <QElapsedTimer>
#include <QScrollBar>

namespace tiepoint::ui {
namespace {

class StepsTest : public testing::Test {
protected:
    StepsTest() : desk(QSize(1600, 900)) {}

    MainWindow& window() { return desk.window(); }
    StepsRow& row() { return window().tools().steps(); }
    QUndoStack& history() { return window().document().undoStack(); }
    const Bench& bench() { return *window().document().bench(); }

    void push(const char* id, const char* from, const char* to) {
        Part part = makePart(*findKind("resistor"), id);
        part.leads = {test::holeAt(from), test::holeAt(to)};
        ASSERT_FALSE(window().document().push({std::string("Place ") + id, {AddPart{part}}}));
    }
    /// Three resistors one after the other.
    void build() {
        push("R1", "A.c3", "A.c8");
        push("R2", "A.c12", "A.c17");
        push("R3", "A.h3", "A.h8");
    }
    void show() {
        QTest::keyClick(&window(), Qt::Key_H, Qt::ControlModifier);
        QApplication::processEvents();
    }
    void click(int step) { QTest::mouseClick(row().viewport(), Qt::LeftButton, {}, row().pictureFrame(step).center()); }
    /// Waits until the pictures in sight are drawn.
    bool drawn(int count) {
        return WindowBench::waitFor([&] {
            row().viewport()->grab();
            return row().pictures().kept() >= count;
        });
    }
    /// A part of the row as it is seen, on its ground.
    QImage imageOf(const QRect& part) {
        const QRect inWindow(row().viewport()->mapTo(&window(), part.topLeft()), part.size());
        return window().grab(inWindow).toImage();
    }
    /// Pixels of the accent colour in the picture of a step, its inside alone.
    int accents(int step) {
        const QRect inside = row().pictureFrame(step).adjusted(3, 3, -3, -3);
        const QImage image = imageOf(inside);
        const QColor accent = theme(ThemeName::Day).accent;
        int count = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x) count += image.pixelColor(x, y) == accent;
        return count;
    }

    WindowBench desk;
};

TEST_F(StepsTest, LieInTheTrayAndFoldAway) {
    EXPECT_FALSE(row().isVisible());
    const int low = window().tray().height(), bench = window().view().height();
    show();
    ASSERT_TRUE(row().isVisible());
    EXPECT_TRUE(row().hasFocus());
    EXPECT_GT(window().tray().height(), low);
    EXPECT_LT(window().view().height(), bench);
    for (TrayButton* button : window().tray().compartments())
        EXPECT_GE(button->y(), row().geometry().bottom()) << "the compartments stand below";
    QTest::keyClick(&row(), Qt::Key_Escape);
    EXPECT_FALSE(row().isVisible());
    EXPECT_EQ(window().tray().height(), low);
    EXPECT_TRUE(window().view().hasFocus());
    EXPECT_FALSE(window().actions().steps->isChecked());
    show();
    desk.restart(QSize(1600, 900));
    EXPECT_TRUE(row().isVisible()) << "the next window begins as this one ended";
    show();
    EXPECT_FALSE(row().isVisible());
}

TEST_F(StepsTest, UnfoldsATrayThatIsFolded) {
    window().actions().fold->trigger();
    ASSERT_FALSE(window().tray().isVisible());
    show();
    EXPECT_TRUE(row().isVisible());
}

TEST_F(StepsTest, AClickOrAKeyGoesThere) {
    show();
    build();
    ASSERT_EQ(row().model()->rowCount(), 3);
    EXPECT_EQ(row().model()->index(1, 0).data().toString(), QStringLiteral("R2 in"));
    click(0);
    EXPECT_EQ(history().index(), 1);
    EXPECT_TRUE(bench().findPart("R1"));
    EXPECT_FALSE(bench().findPart("R2"));
    QTest::keyClick(&row(), Qt::Key_Right);
    EXPECT_EQ(history().index(), 2);
    QTest::keyClick(&row(), Qt::Key_End);
    EXPECT_EQ(history().index(), 3);
    QTest::keyClick(&row(), Qt::Key_Home);
    EXPECT_EQ(history().index(), 1);
    QTest::keyClick(&row(), Qt::Key_Left);
    EXPECT_EQ(history().index(), 0) << "the bench as it was opened";
    QTest::keyClick(&row(), Qt::Key_Right);
    EXPECT_EQ(history().index(), 1);
    history().setIndex(3);
    EXPECT_EQ(row().currentIndex().row(), 2) << "undo and redo by other ways are followed";
}

TEST_F(StepsTest, WhatWasUndoneGoesWithTheNextEdit) {
    show();
    build();
    click(0);
    push("R9", "A.h20", "A.h25");
    ASSERT_EQ(row().model()->rowCount(), 2);
    EXPECT_EQ(row().model()->index(1, 0).data().toString(), QStringLiteral("R9 in"));
    window().document().reset(makeNewBench(), {});
    EXPECT_EQ(row().model()->rowCount(), 0);
}

TEST_F(StepsTest, CornersHoldWhatChangedAndLaterOnesAreFaint) {
    show();
    build();
    ASSERT_TRUE(drawn(3));
    for (int step = 0; step < 3; ++step) EXPECT_GT(accents(step), 8) << step;
    const auto contrast = [&] {
        const QImage image = imageOf(row().pictureFrame(2).adjusted(6, 6, -6, -6));
        int darkest = 255;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x) darkest = std::min(darkest, qGray(image.pixel(x, y)));
        return 255 - darkest;
    };
    const int before = contrast();
    click(0);
    EXPECT_LT(contrast(), 0.7 * before);
    EXPECT_EQ(accents(2), 0) << "faint too";
}

TEST_F(StepsTest, APictureIsAThirteenthOfTheHeight) {
    show();
    build();
    const double scale = 1600.0 / 1920;
    EXPECT_NEAR(row().pictureFrame(0).height(), 1080 * scale / 13, 1);
    EXPECT_LE(row().pictureFrame(0).bottom(), row().viewport()->height());
}

TEST_F(StepsTest, HundredsScrollAndKeepFewPictures) {
    show();
    for (int i = 0; i < 400; ++i)
        ASSERT_FALSE(window().document().push({"Rename", {SetTitle{"Bench " + std::to_string(i)}}}));
    ASSERT_TRUE(drawn(1));
    EXPECT_FALSE(row().pictureFrame(399).isEmpty()) << "the present one is in sight";
    EXPECT_TRUE(row().pictureFrame(0).isEmpty());
    row().horizontalScrollBar()->setValue(0);
    EXPECT_FALSE(row().pictureFrame(0).isEmpty());
    const int before = row().pictures().kept();
    ASSERT_TRUE(drawn(before + 3));
    EXPECT_LE(row().pictures().kept(), StepPictures::kMostKept);
    click(1);
    EXPECT_EQ(bench().title, "Bench 1");
    // The wheel turns the row.
    const int at = row().horizontalScrollBar()->value();
    QWheelEvent turn(QPointF(50, 50), row().viewport()->mapToGlobal(QPointF(50, 50)), {}, {0, -240}, Qt::NoButton,
                     Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(row().viewport(), &turn);
    EXPECT_GT(row().horizontalScrollBar()->value(), at);
}

TEST_F(StepsTest, ScreenReadersHearEachStepAndWhereOneIs) {
    show();
    build();
    click(1);
    QAccessibleInterface* list = QAccessible::queryAccessibleInterface(&row());
    ASSERT_TRUE(list);
    EXPECT_EQ(list->text(QAccessible::Name), QStringLiteral("Steps so far"));
    QStringList heard;
    for (int i = 0; i < list->childCount(); ++i)
        if (QAccessibleInterface* child = list->child(i); child && child->role() == QAccessible::ListItem)
            heard << child->text(QAccessible::Name);
    EXPECT_EQ(heard, (QStringList{"Place R1, done", "Place R2, where you are", "Place R3, undone"}));
}

/// The picture of an edit is drawn beside: pushing and showing it waits for none.
TEST_F(StepsTest, AnEditWaitsForNoPicture) {
    show();
    push("R1", "A.c3", "A.c8");
    row().viewport()->repaint();
    EXPECT_EQ(row().pictures().kept(), 0);
    EXPECT_TRUE(drawn(1));
}

}  // namespace
}  // namespace tiepoint::ui
