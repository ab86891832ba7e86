// The menu at a part, and the card of a jumper, in the real window.

#include "core/bench/describe.h"
#include "desk.h"
#include "ui/paint/bench_painter.h"
#include "ui/scene/bench_scene.h"
#include "ui/view/bench_marks.h"
#include "ui/view/thing_menu.h"
#include "window_bench.h"

#include <QAccessible>
#include <QContextMenuEvent>

namespace tiepoint::ui {
namespace {

class PartMenuTest : public testing::Test {
protected:
    PartMenuTest() {
        window().document().reset(test::BenchBuilder()
                                      .board("A", "half")
                                      .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
                                      .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                                      .part("D1", "led", {{"anode", "A.e16"}, {"cathode", "A.e17"}})
                                      .jumper("W1", "A.top+7", "A.a8")
                                      .jumper("W2", "A.a17", "A.a25")
                                      .build(),
                                  {});
        view().fitBench();
        bench_.waitForAnswer();
    }
    MainWindow& window() { return bench_.window(); }
    BenchView& view() { return window().view(); }
    const Bench& bench() { return *window().document().bench(); }

    QPoint bodyOf(const char* id) {
        const int part = bench().partIndex(id);
        return view().fromMm(view().picture().table->parts[static_cast<std::size_t>(part)].pose.centre).toPoint();
    }
    QPoint at(const char* hole) { return view().fromMm(*holeMm(bench(), test::holeAt(hole))).toPoint(); }

    ThingMenu* menuAt(QPoint place, QContextMenuEvent::Reason reason = QContextMenuEvent::Mouse) {
        QContextMenuEvent event(reason, place, view().viewport()->mapToGlobal(place));
        if (reason == QContextMenuEvent::Mouse)
            QApplication::sendEvent(view().viewport(), &event);
        else
            QApplication::sendEvent(&view(), &event);
        auto* menu = qobject_cast<ThingMenu*>(QApplication::activePopupWidget());
        EXPECT_TRUE(menu && menu->isVisible());
        return menu;
    }
    static QStringList wordsOf(const ThingMenu& menu) {
        QStringList words;
        for (const QAction* action : menu.actions()) words << action->text();
        return words;
    }

    WindowBench bench_{{1600, 900}};
};

TEST_F(PartMenuTest, OffersWhatCanBeDoneWithAPart) {
    ThingMenu* menu = menuAt(bodyOf("D1"));
    ASSERT_TRUE(menu);
    EXPECT_EQ(view().selection(), QStringList{"D1"}) << "the brackets say what it is about";
    EXPECT_EQ(wordsOf(*menu).mid(0, 5), (QStringList{"Turn", "Duplicate", "Remove", "Why?", "Help"}));
    EXPECT_EQ(menu->accessibleName(), "What can be done with D1");
    // Every row is one 24th of the window's layout high.
    const double scale = lookFor(theme(ThemeName::Day), window().size()).scale;
    for (QAction* action : menu->actions())
        EXPECT_NEAR(menu->actionGeometry(action).height(), 1080.0 / 24 * scale, 3) << action->text().toStdString();
    menu->close();
}

TEST_F(PartMenuTest, OpensBesideWhatItIsAboutAndIsTiedToIt) {
    for (const char* id : {"D1", "R1", "PS1"}) {
        ThingMenu* menu = menuAt(bodyOf(id) + QPoint(0, id == std::string("PS1") ? -60 : 0));
        ASSERT_TRUE(menu) << id;
        const QRectF mm = selectionFrame(view().picture(), id);
        const QRectF thing(view().fromMm({mm.left(), mm.top()}), view().fromMm({mm.right(), mm.bottom()}));
        const QRectF shown(view().viewport()->mapFromGlobal(menu->geometry().topLeft()), menu->size());
        EXPECT_FALSE(shown.intersects(thing)) << id;
        EXPECT_TRUE(window().geometry().contains(menu->geometry())) << id;
        ASSERT_TRUE(view().picture().marks.tie) << id;
        const QPointF from = view().fromMm(view().picture().marks.tie->first);
        const QPointF to = view().fromMm(view().picture().marks.tie->second);
        EXPECT_TRUE(thing.adjusted(-2, -2, 2, 2).contains(from)) << id;
        EXPECT_TRUE(shown.adjusted(-2, -2, 2, 2).contains(to)) << id;
        menu->close();
        EXPECT_FALSE(view().picture().marks.tie) << id;
    }
}

TEST_F(PartMenuTest, IsWorkedByKeysAlone) {
    view().setFocus();
    view().setSelection({QStringLiteral("D1")});
    ThingMenu* menu = menuAt({5, 5}, QContextMenuEvent::Keyboard);
    ASSERT_TRUE(menu);
    QTest::keyClick(menu, Qt::Key_Down);
    EXPECT_EQ(menu->activeAction()->text(), "Turn");
    QTest::keyClick(menu, Qt::Key_Return);
    EXPECT_EQ(bench().findPart("D1")->leads[1], test::holeAt("A.f16"));
    menu = menuAt({5, 5}, QContextMenuEvent::Keyboard);
    ASSERT_TRUE(menu);
    QTest::keyClick(menu, Qt::Key_Escape);
    EXPECT_FALSE(QApplication::activePopupWidget());
    menu = menuAt({5, 5}, QContextMenuEvent::Keyboard);
    ASSERT_TRUE(menu);
    for (int i = 0; i < 3; ++i) QTest::keyClick(menu, Qt::Key_Down);
    EXPECT_EQ(menu->activeAction()->text(), "Remove");
    QTest::keyClick(menu, Qt::Key_Return);
    EXPECT_FALSE(bench().findPart("D1"));
}

TEST_F(PartMenuTest, ScreenReadersFindItsRows) {
    ThingMenu* menu = menuAt(bodyOf("R1"));
    ASSERT_TRUE(menu);
    QAccessibleInterface* access = QAccessible::queryAccessibleInterface(menu);
    ASSERT_TRUE(access);
    EXPECT_EQ(access->role(), QAccessible::PopupMenu);
    ASSERT_EQ(access->childCount(), menu->actions().size());
    EXPECT_EQ(access->child(0)->text(QAccessible::Name), "Turn");
    EXPECT_EQ(access->child(0)->role(), QAccessible::MenuItem);
    menu->close();
}

TEST_F(PartMenuTest, SeveralSelectedThingsGoTogether) {
    view().setSelection({QStringLiteral("R1"), QStringLiteral("D1")});
    ThingMenu* menu = menuAt(bodyOf("D1"));
    ASSERT_TRUE(menu);
    EXPECT_EQ(wordsOf(*menu), (QStringList{"Turn", "Duplicate", "Remove"}));
    menu->actions()[2]->trigger();
    menu->close();
    EXPECT_TRUE(bench().findPart("PS1"));
    EXPECT_EQ(bench().parts.size(), 1U);
}

TEST_F(PartMenuTest, ASupplyIsNotTurned) {
    ThingMenu* menu = menuAt(bodyOf("PS1") - QPoint(0, 60));
    ASSERT_TRUE(menu);
    EXPECT_FALSE(wordsOf(*menu).contains("Turn"));
    EXPECT_TRUE(wordsOf(*menu).contains("Why?"));
    menu->close();
}

TEST_F(PartMenuTest, AJumpersMenuLaysItFlat) {
    ThingMenu* menu = menuAt(at("A.a17"));
    ASSERT_TRUE(menu);
    EXPECT_EQ(view().selection(), QStringList{"W2"});
    EXPECT_EQ(wordsOf(*menu).mid(0, 3), (QStringList{"Lay flat", "Duplicate", "Remove"}));
    menu->actions()[0]->trigger();
    menu->close();
    EXPECT_TRUE(bench().findJumper("W2")->flat);
}

TEST_F(PartMenuTest, AJumperHasItsCard) {
    CardRow& cards = window().cards();
    EXPECT_FALSE(cards.jumper().isVisible());
    QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, at("A.a17"));
    ASSERT_EQ(view().selection(), QStringList{"W2"});
    ASSERT_TRUE(cards.jumper().isVisible());
    EXPECT_FALSE(cards.loop().isVisible());
    // Eight columns lie 20.3 mm apart, its arc takes a little more, and 6 mm go into each hole.
    const Point a = *holeMm(bench(), test::holeAt("A.a17")), b = *holeMm(bench(), test::holeAt("A.a25"));
    const QString arched = QStringLiteral("Cut %1 mm: 6 mm bare at each end.").arg(qRound(jumperLengthMm(a, b)));
    EXPECT_EQ(cards.jumper().lengthWords(), arched);
    EXPECT_EQ(cards.jumper().currentWords(), cards.reading().text().big);

    const int green = findJumperColour("green");
    ASSERT_NE(bench().findJumper("W2")->colour, green);
    WindowBench::click(cards.jumper().colourButtons()[static_cast<std::size_t>(green)]);
    EXPECT_EQ(bench().findJumper("W2")->colour, green);
    EXPECT_TRUE(cards.jumper().colourButtons()[static_cast<std::size_t>(green)]->isChecked());
    EXPECT_EQ(cards.jumper().colourButtons()[static_cast<std::size_t>(green)]->accessibleName(), "green");

    WindowBench::click(cards.jumper().flatButton());
    EXPECT_TRUE(bench().findJumper("W2")->flat);
    EXPECT_EQ(cards.jumper().lengthWords(), "Cut 32 mm: 6 mm bare at each end.");
    EXPECT_EQ(window().document().undoStack().count(), 2);
    WindowBench::click(cards.jumper().archedButton());
    EXPECT_FALSE(bench().findJumper("W2")->flat);
    EXPECT_EQ(cards.jumper().lengthWords(), arched);
    view().setSelection({});
    EXPECT_FALSE(cards.jumper().isVisible());
    EXPECT_TRUE(cards.loop().isVisible());
}

TEST_F(PartMenuTest, WhereAJumperCannotLieFlatTheCardSaysWhyAndStays) {
    Bench crossed = bench();
    crossed.jumpers[1].ends = {JumperEnd(test::holeAt("A.e10")), JumperEnd(test::holeAt("A.e25"))};
    window().document().reset(crossed, {});
    view().setSelection({QStringLiteral("W2")});
    JumperCard& card = window().cards().jumper();
    WindowBench::click(card.flatButton());
    EXPECT_FALSE(bench().findJumper("W2")->flat) << "D1 stands in e16 and e17";
    EXPECT_TRUE(card.archedButton()->isChecked());
    EXPECT_FALSE(view().picture().marks.say.empty());
}

TEST_F(PartMenuTest, KeysTellWhatHasHappened) {
    view().setFocus();
    const auto told = [this] { return QString::fromStdString(view().marks().told()); };
    view().setSelection({QStringLiteral("R1")});
    QTest::keyClick(&view(), Qt::Key_Down);
    EXPECT_EQ(told(), "R1 moved: 1 in d8, 2 in d14");
    QTest::keyClick(&view(), Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(told(), "R1 stretched: 1 in d8, 2 in d15");
    view().setSelection({QStringLiteral("D1")});
    QTest::keyClick(&view(), Qt::Key_BracketRight);
    EXPECT_EQ(told(), "D1 turned: anode in e16, cathode in f16");
    QTest::keyClick(&window(), Qt::Key_D, Qt::ControlModifier);
    EXPECT_TRUE(told().startsWith("D2 copied: anode in e")) << told().toStdString();
    QTest::keyClick(&window(), Qt::Key_Delete);
    EXPECT_EQ(told(), "D2 removed");
    QAccessibleInterface* access = QAccessible::queryAccessibleInterface(&view());
    ASSERT_TRUE(access);
    EXPECT_TRUE(access->text(QAccessible::Description).startsWith("D2 removed. "))
        << access->text(QAccessible::Description).toStdString();
    view().setSelection({QStringLiteral("R1")});
    for (int i = 0; i < 20; ++i) QTest::keyClick(&view(), Qt::Key_Left);
    EXPECT_TRUE(told().contains("would leave the board") || told().contains("taken")) << told().toStdString();
}

}  // namespace
}  // namespace tiepoint::ui
