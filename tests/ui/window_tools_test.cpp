// What the window offers beside the bench: boards, recent files, drops, pictures, notes, flat jumpers and the search, by real
// events on a real window.

#include "core/bench/bench_file.h"
#include "support/build_bench.h"
#include "ui/paint/note_painter.h"
#include "window_bench.h"

#include <QClipboard>
#include <QDropEvent>
#include <QFile>
#include <QMimeData>

namespace tiepoint::ui {
namespace {

void openBeacon(MainWindow& window) {
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    QApplication::processEvents();
}

QAction* lineOf(QMenu& menu, const QString& beginning) {
    for (QAction* action : menu.actions())
        if (action->text().startsWith(beginning)) return action;
    return nullptr;
}

TEST(BoardMenuTest, AddsLettersAndRemoves) {
    WindowBench bench;
    MainWindow& window = bench.window();
    openBeacon(window);
    BoardMenu& menu = window.tools().boards();
    const auto trigger = [&](const char* beginning) {
        Q_EMIT menu.aboutToShow();
        QAction* line = lineOf(menu, QString::fromLatin1(beginning));
        ASSERT_TRUE(line) << beginning;
        line->trigger();
    };
    trigger("Add: mini");
    ASSERT_EQ(window.document().bench()->boards.size(), 2u);
    trigger("Letter board B from the bottom");
    EXPECT_EQ(window.document().bench()->boards[1].labels, Labels::ABottom);
    trigger("Remove board A");
    EXPECT_EQ(window.document().bench()->boards.size(), 2u);
    ASSERT_TRUE(window.bar().isVisible());
    EXPECT_TRUE(window.bar().line().contains(QStringLiteral("plugged into it"))) << window.bar().line().toStdString();
    EXPECT_TRUE(window.bar().line().contains(QStringLiteral("R1")) ||
                window.bar().line().contains(QStringLiteral("PS1")));
    trigger("Remove board B");
    EXPECT_EQ(window.document().bench()->boards.size(), 1u);
    EXPECT_EQ(window.document().undoStack().count(), 3);
}

TEST(Recent, FilesAreRememberedNewestFirst) {
    WindowBench bench;
    for (const char* name : {"one.bench.json", "two.bench.json"}) {
        ASSERT_TRUE(writeBenchFile(makeNewBench(), bench.file(name).toStdString()).ok());
        bench.window().openFile(bench.file(name));
    }
    bench.restart();
    RecentFiles& recent = bench.window().tools().recent();
    EXPECT_EQ(recent.paths(), (QStringList{bench.file("two.bench.json"), bench.file("one.bench.json")}));
    recent.actions().at(1)->trigger();
    EXPECT_EQ(bench.window().document().filePath(), bench.file("one.bench.json"));
    QFile::remove(bench.file("two.bench.json"));
    EXPECT_EQ(recent.paths(), QStringList{bench.file("one.bench.json")}) << "files that are gone are left out";
}

TEST(Drop, ABenchFileIsOpened) {
    WindowBench bench;
    Bench dropped = makeNewBench();
    dropped.title = "Dropped";
    const QString path = bench.file("dropped.bench.json");
    ASSERT_TRUE(writeBenchFile(dropped, path.toStdString()).ok());
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(path)});
    for (QWidget* target : {static_cast<QWidget*>(&bench.window()), bench.window().view().viewport()}) {
        bench.window().files().newBench();
        QDragEnterEvent enter(QPoint(40, 40), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(target, &enter);
        EXPECT_TRUE(enter.isAccepted());
        QDropEvent drop(QPointF(40, 40), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(target, &drop);
        EXPECT_EQ(bench.window().document().bench()->title, "Dropped");
    }
    QMimeData words;
    words.setText(QStringLiteral("no file"));
    QDragEnterEvent enter(QPoint(40, 40), Qt::CopyAction, &words, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&bench.window(), &enter);
    EXPECT_FALSE(enter.isAccepted());
}

TEST(Pictures, GoToTheClipboardAndIntoFiles) {
    WindowBench bench;
    MainWindow& window = bench.window();
    openBeacon(window);
    window.view().setSelection({QStringLiteral("R1")});
    QTest::keyClick(&window, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    const QImage copied = QGuiApplication::clipboard()->image();
    ASSERT_EQ(copied.width(), 2400);
    window.view().setSelection({});
    QTest::keyClick(&window, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(QGuiApplication::clipboard()->image(), copied) << "the brackets of a selection aren't in it";
    for (const auto& [name, magic] :
         {std::pair{"bench.svg", "<?xml"}, {"bench.pdf", "%PDF"}, {"bench.png", "\x89PNG"}}) {
        window.tools().pictures().setAskPath(
            [&](const QString&, const PictureActions::GivePath& give) { give(bench.file(name), Paper::A4); });
        QTest::keyClick(&window, Qt::Key_E, Qt::ControlModifier);
        QFile file(bench.file(name));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << name;
        EXPECT_TRUE(file.readAll().startsWith(magic)) << name;
    }
}

TEST(Notes, ArePinnedWrittenMovedAndSaved) {
    WindowBench bench;
    MainWindow& window = bench.window();
    BenchView& view = window.view();
    openBeacon(window);
    view.setFocus();
    view.setCursorHole(Hole{"A", Line::A, 20});
    QTest::keyClick(&view, Qt::Key_F4);
    auto* box = view.findChild<QLineEdit*>(QString(), Qt::FindDirectChildrenOnly);
    for (QLineEdit* edit : view.findChildren<QLineEdit*>())
        if (edit->accessibleName() == QStringLiteral("Note")) box = edit;
    ASSERT_TRUE(box && box->isVisible());
    QTest::keyClicks(box, QStringLiteral("High water at ten"));
    QTest::keyClick(box, Qt::Key_Return);
    const auto notes = [&] { return window.document().bench()->notes; };
    ASSERT_EQ(notes().size(), 1u);
    EXPECT_EQ(notes()[0].text, "High water at ten");
    EXPECT_EQ(toString(notes()[0].at), "A.a20");
    EXPECT_EQ(view.selection(), QStringList{QStringLiteral("N1")});
    QTest::keyClick(&view, Qt::Key_Right);
    EXPECT_EQ(toString(notes()[0].at), "A.a21") << "arrows move it";
    const QRectF slip = noteFrame(view.picture(), 0);
    QTest::mouseDClick(view.viewport(), Qt::LeftButton, {},
                       view.fromMm({slip.center().x(), slip.center().y()}).toPoint());
    EXPECT_TRUE(box->isVisible()) << "a double click opens it";
    box->clear();
    QTest::keyClick(box, Qt::Key_Return);
    EXPECT_TRUE(notes().empty()) << "an empty one is taken away";
    window.document().undoStack().undo();
    bench.saveAnswer = bench.file("noted.bench.json");
    window.files().save();
    const auto read = readBenchFile(bench.saveAnswer.toStdString());
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->bench.notes, notes());
    window.view().setSelection({QStringLiteral("N1")});
    QTest::keyClick(&window, Qt::Key_Delete);
    EXPECT_TRUE(notes().empty());
}

/// Writes a note in the field that F4 opens.
std::string writeNote(BenchView& view, const char* text) {
    QTest::keyClick(&view, Qt::Key_F4);
    for (QLineEdit* box : view.findChildren<QLineEdit*>()) {
        if (box->accessibleName() != QStringLiteral("Note") || !box->isVisible()) continue;
        const std::string before = box->text().toStdString();
        QTest::keyClicks(box, QString::fromLatin1(text));
        QTest::keyClick(box, Qt::Key_Return);
        return before;
    }
    return "no field";
}

TEST(Notes, OnAnotherHoleF4WritesANewOne) {
    WindowBench bench;
    BenchView& view = bench.window().view();
    openBeacon(bench.window());
    const auto notes = [&] { return bench.window().document().bench()->notes; };
    view.setFocus();
    view.setCursorHole(Hole{"A", Line::A, 20});
    EXPECT_EQ(writeNote(view, "High water"), "");
    for (int i = 0; i < 2;
         ++i)  // the first shows where the cursor is; then it goes some holes on, with the note selected
        QTest::keyClick(&view, Qt::Key_Right, Qt::ControlModifier);
    const auto there = view.cursor();
    ASSERT_TRUE(there && toString(*there) != "A.a20");
    ASSERT_EQ(view.selection(), QStringList{QStringLiteral("N1")});
    EXPECT_EQ(writeNote(view, "Low water"), "");
    ASSERT_EQ(notes().size(), 2u);
    EXPECT_EQ(notes()[0].text, "High water");
    EXPECT_EQ(toString(notes()[0].at), "A.a20");
    EXPECT_EQ(notes()[1].text, "Low water");
    EXPECT_EQ(notes()[1].at, *there);
    EXPECT_EQ(writeNote(view, "Slack water"), "Low water") << "where the cursor still is it is written anew";
    view.setSelection({});
    view.setCursorHole(Hole{"A", Line::A, 20});
    EXPECT_EQ(writeNote(view, "Spring tide"), "High water") << "and the note in the cursor's hole";
    EXPECT_EQ(notes().size(), 2u);
}

TEST(Notes, ByTheMouseToo) {
    WindowBench bench;
    BenchView& view = bench.window().view();
    openBeacon(bench.window());
    const auto notes = [&] { return bench.window().document().bench()->notes; };
    const auto pointAt = [&](const Hole& hole) {
        const QPointF to = view.fromMm(*holeMm(*bench.window().document().bench(), hole));
        QMouseEvent event(QEvent::MouseMove, to, view.viewport()->mapToGlobal(to), Qt::NoButton, Qt::NoButton, {});
        QApplication::sendEvent(view.viewport(), &event);
    };
    view.setFocus();
    pointAt({"A", Line::A, 20});
    EXPECT_EQ(writeNote(view, "High water"), "");
    pointAt({"A", Line::J, 28});
    EXPECT_EQ(writeNote(view, "Low water"), "");
    ASSERT_EQ(notes().size(), 2u);
    EXPECT_EQ(notes()[0].text, "High water");
    EXPECT_EQ(toString(notes()[1].at), "A.j28");
    view.setSelection({QStringLiteral("N1")});
    QTest::keyClick(&view, Qt::Key_Return);
    EXPECT_TRUE(view.findChild<QLineEdit*>()) << "Enter writes the selected one";
}

TEST(FlatJumpers, AreRefusedWhereSomethingStands) {
    WindowBench bench;
    MainWindow& window = bench.window();
    openBeacon(window);
    // W3 bows round D1; straight it would run through it.
    const Jumper wire{"W3", {test::holeAt("A.g15"), test::holeAt("A.g21")}, 0, false, {}};
    Part led = *window.document().bench()->findPart("D1");
    led.leads = {test::holeAt("A.g17"), test::holeAt("A.g18")};
    ASSERT_FALSE(window.document().push({"Arrange", {ReplacePart{led}, AddJumper{wire}}}));
    window.view().setSelection({QStringLiteral("W3")});
    QTest::keyClick(&window, Qt::Key_F6);
    EXPECT_FALSE(window.document().bench()->findJumper("W3")->flat);
    EXPECT_EQ(window.view().picture().marks.say, "lying flat from g15 to g21 it would run through D1");
}

TEST(FlatJumpers, LieFlatAndStandUpAgain) {
    WindowBench bench;
    MainWindow& window = bench.window();
    openBeacon(window);
    window.view().setSelection({QStringLiteral("W1")});
    QTest::keyClick(&window, Qt::Key_F6);
    EXPECT_TRUE(window.document().bench()->findJumper("W1")->flat);
    EXPECT_EQ(window.view().picture().table->jumperArcs[0], Arc{});
    QTest::keyClick(&window, Qt::Key_F6);
    EXPECT_FALSE(window.document().bench()->findJumper("W1")->flat);
}

TEST(TraySearch, TypedWordsOpenWhatSuits) {
    WindowBench bench;
    MainWindow& window = bench.window();
    QTest::keyClick(&window, Qt::Key_F, Qt::ControlModifier);
    QLineEdit& search = window.tray().search();
    ASSERT_TRUE(search.hasFocus());
    struct Case {
        const char *typed, *kind, *preset;
    };
    for (const Case& given : {Case{"green", "led", "colour=green"},
                              {"4k7", "resistor", "resistance=4700"},
                              {"2k2 resistor", "resistor", "resistance=2200"},
                              {"337", "resistor", "resistance=337"},
                              {"bulb", "lamp", ""},
                              {"toggle", "toggle", ""},
                              {"blue wire", "jumper", "blue"},
                              {"battery", "cells", ""}}) {
        search.clear();
        QTest::keyClicks(&search, QString::fromLatin1(given.typed));
        ASSERT_TRUE(window.tray().drawer().isVisible()) << given.typed;
        const TrayItem& first = window.tray().drawer().buttons().front()->item();
        EXPECT_EQ(first.kind, QString::fromLatin1(given.kind)) << given.typed;
        if (*given.preset) {
            EXPECT_EQ(first.preset, QString::fromLatin1(given.preset)) << given.typed;
        }
    }
    search.clear();
    QTest::keyClicks(&search, QStringLiteral("green"));
    QTest::keyClick(&search, Qt::Key_Return);
    EXPECT_TRUE(window.view().isGesturing()) << "Enter takes the first";
    EXPECT_FALSE(window.tray().drawer().isVisible());
    EXPECT_TRUE(search.text().isEmpty());
}

TEST(TraySearch, TypingOnACompartmentSearches) {
    WindowBench bench;
    TrayButton* button = bench.window().tray().compartments().front();
    button->setFocus(Qt::TabFocusReason);
    QTest::keyClick(button, Qt::Key_G);
    EXPECT_EQ(bench.window().tray().search().text(), QStringLiteral("g"));
    EXPECT_TRUE(bench.window().tray().search().hasFocus());
}

TEST(TrayByKeyboard, EnterOpensADrawerAndTakesWhatIsInIt) {
    WindowBench bench;
    MainWindow& window = bench.window();
    for (TrayButton* button : window.tray().compartments()) {
        if (button->text() != QStringLiteral("LED")) continue;
        button->setFocus(Qt::TabFocusReason);
        QTest::keyClick(button, Qt::Key_Return);
    }
    ASSERT_TRUE(window.tray().drawer().isVisible());
    TrayButton* first = window.tray().drawer().buttons().front();
    EXPECT_TRUE(first->hasFocus());
    QTest::keyClick(first, Qt::Key_Return);
    EXPECT_TRUE(window.view().isGesturing());
    EXPECT_TRUE(window.view().hasFocus());
}

TEST(Clipboard, WholeCircuitsWithTheirJumpersOntoAnotherBoard) {
    WindowBench bench;
    MainWindow& window = bench.window();
    openBeacon(window);
    window.view().setSelection(
        {QStringLiteral("R1"), QStringLiteral("S1"), QStringLiteral("D1"), QStringLiteral("W2")});
    QTest::keyClick(&window, Qt::Key_C, Qt::ControlModifier);
    const Bench other = [] {
        Bench made = makeNewBench();
        made.parts.clear();
        made.boards.front().id = "Q";
        return made;
    }();
    window.document().reset(other, {});
    QTest::keyClick(&window, Qt::Key_V, Qt::ControlModifier);
    const Bench& now = *window.document().bench();
    ASSERT_EQ(now.parts.size(), 3u) << window.bar().line().toStdString();
    EXPECT_EQ(now.jumpers.size(), 1u);
    EXPECT_EQ(now.parts[0].leads[0]->board, "Q");
    EXPECT_EQ(window.view().selection().size(), 4);
}

TEST(Clipboard, WhatFitsNowhereSaysWhyAndChangesNothing) {
    WindowBench bench;
    MainWindow& window = bench.window();
    openBeacon(window);
    QTest::keyClick(&window, Qt::Key_A, Qt::ControlModifier);
    auto before = window.document().bench();
    for (int i = 0; i < 20 && !window.bar().isVisible(); ++i) {
        before = window.document().bench();
        QTest::keyClick(&window, Qt::Key_D, Qt::ControlModifier);
    }
    ASSERT_TRUE(window.bar().isVisible());
    EXPECT_EQ(window.document().bench(), before);
    EXPECT_TRUE(
        window.bar().line().startsWith(QStringLiteral("Nothing is copied: there is no room to the right for all")))
        << window.bar().line().toStdString();
    EXPECT_TRUE(window.bar().line().contains(QStringLiteral("taken by")) ||
                window.bar().line().contains(QStringLiteral("overlap")) ||
                window.bar().line().contains(QStringLiteral("share a strip")) ||
                window.bar().line().contains(QStringLiteral("leave the board")))
        << window.bar().line().toStdString();
}

}  // namespace
}  // namespace tiepoint::ui
