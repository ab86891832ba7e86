// Pinned readings on the bench: pinned and unpinned by mouse and keyboard, placed beside what they measure, drawn in pictures.

#include "core/snapshot/pinned_value.h"
#include "desk.h"
#include "ui/access/bench_access.h"
#include "ui/access/bench_words.h"
#include "ui/gesture/measurands.h"
#include "ui/paint/label_places.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/projecting.h"
#include "ui/scene/bench_scene.h"
#include "ui/view/room_mode.h"
#include "window_bench.h"

#include <QAccessible>
#include <QMenu>

namespace tiepoint::ui {
namespace {

class PinnedTest : public Desk {
protected:
    static void SetUpTestSuite() { installBenchAccess(); }
    PinnedTest() {
        open(beacon());
        live.setHeld("S1", true);
        waitForAnswer();
    }
    const Measurand& last() const { return bench().pinned.back().of; }
    const PinnedTag& tag(const std::string& id) const {
        const PinnedTag* found = view.picture().pinnedTag(id);
        if (!found) test::slip("the tag", id);
        return *found;
    }
    QPoint middleOf(const PinnedTag& tag) const { return at({tag.frame.center().x(), tag.frame.center().y()}); }
    void pinAll() {
        for (const Measurand& of :
             {Measurand(VoltsAt{test::holeAt("A.b16")}),
              Measurand(VoltsBetween{test::holeAt("A.a8"), test::holeAt("A.a14")}), Measurand(AmperesIn{"W1", {}}),
              Measurand(AmperesIn{"R1", "2"}), Measurand(WattsOf{"D1"})})
            ASSERT_FALSE(document.push(pinEdit(bench(), of)));
        ASSERT_TRUE(waitForAnswer());
    }
};

TEST_F(PinnedTest, TheCursorPinsAndUnpinsVolts) {
    view.setCursorHole(test::holeAt("A.b16"));
    view.pinReading();
    ASSERT_EQ(bench().pinned.size(), 1u);
    EXPECT_EQ(last(), Measurand(VoltsAt{test::holeAt("A.b16")}));
    EXPECT_EQ(document.undoStack().undoText(), "Pin volts at b16");
    ASSERT_TRUE(waitForAnswer());
    EXPECT_TRUE(tag("M1").text.endsWith(" V")) << tag("M1").text.toStdString();
    view.pinReading();
    EXPECT_TRUE(bench().pinned.empty());
    document.undoStack().undo();
    EXPECT_EQ(bench().pinned.size(), 1u);
}

TEST_F(PinnedTest, WhatIsSelectedIsPinned) {
    const struct {
        const char* id;
        Measurand of;
    } table[] = {{"D1", WattsOf{"D1"}}, {"W1", AmperesIn{"W1", {}}}};
    for (const auto& [id, of] : table) {
        view.setSelection({QString::fromLatin1(id)});
        view.setCursorHole(test::holeAt("A.a1"));
        view.pinReading();
        EXPECT_EQ(last(), of) << id;
    }
}

TEST_F(PinnedTest, OffersWhatLiesUnderThePointer) {
    const auto offered = [&](QPoint where) {
        return measurandsOf(view.picture(), view.benchScene().under(view.toMm(where)));
    };
    EXPECT_EQ(offered(at("A.a25")), (std::vector<Measurand>{VoltsAt{test::holeAt("A.a25")}}));
    EXPECT_EQ(offered(at("A.c8")), (std::vector<Measurand>{VoltsAt{test::holeAt("A.c8")}, AmperesIn{"R1", "1"}}));
    EXPECT_EQ(offered(bodyOf("D1")), (std::vector<Measurand>{WattsOf{"D1"}}));
}

TEST_F(PinnedTest, TheMenuOfTheRightButtonPins) {
    QContextMenuEvent event(QContextMenuEvent::Mouse, at("A.b16"), view.viewport()->mapToGlobal(at("A.b16")));
    QApplication::sendEvent(view.viewport(), &event);
    auto* menu = view.findChild<QMenu*>();
    ASSERT_TRUE(menu);
    ASSERT_EQ(menu->actions().size(), 2);
    EXPECT_EQ(menu->actions()[0]->text(), "Pin volts at b16");
    menu->actions()[0]->trigger();
    menu->close();
    EXPECT_EQ(last(), Measurand(VoltsAt{test::holeAt("A.b16")}));
}

TEST_F(PinnedTest, TwoHolesAreProbedByKeysAndByMouse) {
    view.setCursorHole(test::holeAt("A.a8"));
    view.probe();
    ASSERT_TRUE(view.isGesturing());
    key(Qt::Key_Right);
    EXPECT_TRUE(said().startsWith("volts of a8 above a9: ")) << said().toStdString();
    EXPECT_TRUE(marks().probe);
    key(Qt::Key_Return);
    EXPECT_FALSE(view.isGesturing());
    EXPECT_EQ(last(), Measurand(VoltsBetween{test::holeAt("A.a8"), test::holeAt("A.a9")}));

    view.setCursorHole(test::holeAt("A.a8"));
    view.probe();
    moveTo(at("A.a14"));
    click(at("A.a14"));
    EXPECT_EQ(last(), Measurand(VoltsBetween{test::holeAt("A.a8"), test::holeAt("A.a14")}));
    EXPECT_FALSE(marks().probe);

    view.setCursorHole(test::holeAt("A.a8"));
    view.probe();
    key(Qt::Key_Escape);
    EXPECT_FALSE(view.isGesturing());
    EXPECT_EQ(bench().pinned.size(), 2u);
}

TEST_F(PinnedTest, ATagIsSelectedByAClickAndDeleted) {
    pinAll();
    click(middleOf(tag("M1")));
    ASSERT_EQ(view.selection(), QStringList{"M1"});
    drag(middleOf(tag("M1")), at("A.a25"));
    EXPECT_EQ(bench().pinned.size(), 5u);
    ASSERT_FALSE(document.push(removeEdit(bench(), {"M1"})));
    EXPECT_EQ(bench().pinned.size(), 4u);
    EXPECT_TRUE(view.selection().isEmpty());
}

TEST_F(PinnedTest, TagsKeepClearOfIdsNotesBodiesAndEachOther) {
    ASSERT_FALSE(document.push({"Note", {AddNote{{"N1", test::holeAt("A.a20"), "the mole", {}}}}}));
    pinAll();
    const Picture& picture = view.picture();
    Clearance clearance(picture);
    takePinned(picture, clearance);
    std::vector<QRectF> taken{noteFrame(picture, 0)};
    for (const Label& id : placeIds(picture, clearance)) taken.push_back(id.frame);
    if (picture.netTags)
        for (const NetTag& reading : *picture.netTags) taken.push_back(toQt(reading.frame));
    for (const PinnedTag& one : *picture.pinned) {
        for (const QRectF& other : taken) EXPECT_FALSE(one.frame.intersects(other)) << one.id;
        for (const PinnedTag& another : *picture.pinned)
            EXPECT_TRUE(one.id == another.id || !one.frame.intersects(another.frame)) << one.id << another.id;
    }
}

TEST_F(PinnedTest, ATagStaysWhileItsReadingChanges) {
    pinAll();
    const QRectF before = tag("M1").frame;
    const QString text = tag("M1").text;
    live.setHeld("S1", false);
    ASSERT_TRUE(waitForAnswer());
    EXPECT_NE(tag("M1").text, text);
    EXPECT_EQ(tag("M1").frame.topLeft(), before.topLeft());
}

TEST_F(PinnedTest, TagsGrowForARoom) {
    pinAll();
    const double before = tag("M1").frame.height() * view.pixelsPerMm();
    view.room().setProjecting(true);
    QApplication::processEvents();
    const double after = tag("M1").frame.height() * view.pixelsPerMm();
    EXPECT_GT(after, 1.3 * before);
    EXPECT_GE(after, view.viewport()->height() * kReadingCapShare);
}

TEST_F(PinnedTest, OffIsSaid) {
    pinAll();
    ASSERT_FALSE(document.push(setStateEdit(bench(), "PS1", "on", 0)));
    ASSERT_TRUE(waitForAnswer());
    for (const PinnedTag& one : *view.picture().pinned) EXPECT_EQ(one.text, "off") << one.id;
}

TEST_F(PinnedTest, AScreenReaderHearsThem) {
    pinAll();
    EXPECT_EQ(pinnedWords(view.picture(), "M2"), "Pinned reading, volts of a8 above a14");
    EXPECT_EQ(pinnedFigure(view.picture(), "M2"), tag("M2").text);
    QAccessibleInterface* root = QAccessible::queryAccessibleInterface(&view);
    ASSERT_TRUE(root);
    QAccessibleInterface* last = root->child(root->childCount() - 1);
    EXPECT_EQ(last->text(QAccessible::Name), "Pinned reading, watts of D1");
    EXPECT_EQ(last->text(QAccessible::Value), tag("M5").text);
    EXPECT_TRUE(last->rect().contains(view.viewport()->mapToGlobal(middleOf(tag("M5")))));
}

TEST(PinnedInTheWindow, KeysPin) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    window.view().setFocus();
    window.view().setSelection({QStringLiteral("D1")});
    window.view().setCursorHole(test::holeAt("A.a1"));
    QTest::keyClick(&window.view(), Qt::Key_F5);
    ASSERT_EQ(window.document().bench()->pinned.size(), 1u);
    EXPECT_EQ(window.document().bench()->pinned[0].of, Measurand(WattsOf{"D1"}));
    window.view().setSelection({QStringLiteral("M1")});
    QTest::keyClick(&window.view(), Qt::Key_Delete);
    EXPECT_TRUE(window.document().bench()->pinned.empty());
}

}  // namespace
}  // namespace tiepoint::ui
