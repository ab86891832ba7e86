// Views are remembered: with the bench they were chosen for, and between starts for a bench that nobody has looked at.

#include "core/bench/bench_file.h"
#include "window_bench.h"

namespace tiepoint::ui {
namespace {

void choose(MainWindow& window, Qt::Key key) {
    window.view().setFocus();
    QTest::keyClick(&window.view(), key);
}

TEST(ViewMemory, LookingIsNoEditAndGoesIntoTheFileWithTheNextSave) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    EXPECT_FALSE(window.document().bench()->views);
    const quint64 revision = window.document().revision();
    choose(window, Qt::Key_2);
    choose(window, Qt::Key_4);
    EXPECT_TRUE(window.view().views().voltage);
    EXPECT_FALSE(window.document().isModified());
    EXPECT_EQ(window.document().undoStack().count(), 0);
    EXPECT_EQ(window.document().revision(), revision);

    bench.saveAnswer = bench.file("looked.bench.json");
    window.files().saveAs();
    const auto saved = readBenchFile(bench.saveAnswer.toStdString());
    ASSERT_TRUE(saved.ok());
    ASSERT_TRUE(saved->bench.views);
    EXPECT_EQ(saved->bench.views->shown, window.view().views());

    choose(window, Qt::Key_3);
    window.files().newBench();
    EXPECT_EQ(bench.unsavedAsked, 0) << "nobody is asked because of a look";
    window.openFile(bench.saveAnswer);
    EXPECT_EQ(window.view().views(), saved->bench.views->shown) << "it opens as it was left";
    EXPECT_TRUE(window.actions().voltage->isChecked());
    EXPECT_FALSE(window.actions().readings->isChecked());
}

TEST(ViewMemory, ViewsOutliveUndo) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Beacon at the mole"}}}));
    choose(window, Qt::Key_2);
    window.document().undoStack().undo();
    ASSERT_TRUE(window.document().bench()->views);
    EXPECT_TRUE(window.document().bench()->views->shown.voltage);
    EXPECT_EQ(window.document().bench()->title, "Beacon lamp");
}

TEST(ViewMemory, ANewBenchIsSeenAsThePersonLikesIt) {
    WindowBench bench;
    choose(bench.window(), Qt::Key_2);
    choose(bench.window(), Qt::Key_3);
    choose(bench.window(), Qt::Key_5);
    ASSERT_TRUE(bench.window().view().views().turned);
    bench.restart();
    const Views& views = bench.window().view().views();
    EXPECT_TRUE(views.voltage);
    EXPECT_TRUE(views.strips);
    EXPECT_TRUE(views.readings);
    EXPECT_FALSE(views.turned) << "a new bench lies face up, or nothing could be put in";
    EXPECT_TRUE(bench.window().actions().voltage->isChecked());
}

TEST(ViewMemory, AFilesViewsAreNotThePersons) {
    WindowBench bench;
    Bench left = makeNewBench();
    left.views = SavedViews{{Arrows::Electrons, true, true, false, true, 0.02}, {}};
    const QString path = bench.file("left.bench.json");
    ASSERT_TRUE(writeBenchFile(left, path.toStdString()).ok());
    bench.window().openFile(path);
    EXPECT_EQ(bench.window().view().views(), left.views->shown);
    bench.window().files().newBench();
    EXPECT_EQ(bench.window().view().views(), Views{});
}

}  // namespace
}  // namespace tiepoint::ui
