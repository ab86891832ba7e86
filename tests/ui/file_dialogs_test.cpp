// The real dialogues of File: what they ask before a file goes, and what they answer when they are put away.

#include "ui/document/file_dialogs.h"

#include "core/bench/bench_file.h"
#include "window_bench.h"

#include <QFile>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

namespace tiepoint::ui {
namespace {

/// A window that asks by its own dialogues.
class RealDialogs : public testing::Test {
protected:
    RealDialogs() {
        QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
        window().files().setAsker(fileDialogs(&window()));
    }
    ~RealDialogs() override { QApplication::setAttribute(Qt::AA_DontUseNativeDialogs, false); }

    MainWindow& window() { return bench.window(); }
    QString write(const char* name, const char* title) {
        Bench made = makeNewBench();
        made.title = title;
        EXPECT_TRUE(writeBenchFile(made, bench.file(name).toStdString()).ok());
        return bench.file(name);
    }
    std::string titleIn(const QString& path) { return readBenchFile(path.toStdString())->bench.title; }
    void edit(const char* title) { ASSERT_FALSE(window().document().push({"Rename", {SetTitle{title}}})); }

    /// The dialogue of that kind that stands in the window, or null.
    template <class Dialog>
    Dialog* standing() {
        Dialog* found = nullptr;
        WindowBench::waitFor([&] {
            for (Dialog* each : window().findChildren<Dialog*>()) {
                if (each->isVisible()) found = each;
            }
            return found != nullptr;
        });
        return found;
    }
    void saveAs(const QString& typed) {
        QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
        auto* dialog = standing<QFileDialog>();
        ASSERT_TRUE(dialog);
        auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
        ASSERT_TRUE(name);
        name->setText(typed);
        QTest::keyClick(name, Qt::Key_Return);
    }
    void pressIn(QMessageBox* box, const QString& words) {
        ASSERT_TRUE(box);
        for (QAbstractButton* button : box->buttons()) {
            if (button->text().remove(QLatin1Char('&')) == words) return WindowBench::click(button);
        }
        FAIL() << "no such key: " << words.toStdString();
    }

    WindowBench bench;
};

TEST_F(RealDialogs, SaveAsWithoutTheEndingAsksBeforeItReplaces) {
    const QString there = write("foo.bench.json", "There already");
    edit("Mine");
    saveAs(bench.file("foo"));
    pressIn(standing<QMessageBox>(), QStringLiteral("Cancel"));
    EXPECT_EQ(titleIn(there), "There already");
    EXPECT_TRUE(window().document().isModified());
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().files().isAsking(); }));

    saveAs(bench.file("foo"));
    pressIn(standing<QMessageBox>(), QStringLiteral("Replace it"));
    EXPECT_EQ(titleIn(there), "Mine");
    EXPECT_FALSE(window().document().isModified());
}

TEST_F(RealDialogs, ADialogueThatIsPutAwayLeavesRoomForTheNext) {
    for (int i = 0; i < 2; ++i) {
        QTest::keyClick(&window(), Qt::Key_O, Qt::ControlModifier);
        auto* dialog = standing<QFileDialog>();
        ASSERT_TRUE(dialog) << i;
        EXPECT_TRUE(window().files().isAsking());
        QTest::keyClick(dialog, Qt::Key_Escape);
        EXPECT_TRUE(WindowBench::waitFor([this] { return !window().files().isAsking(); }));
    }
    edit("Mine");
    window().close();
    auto* box = standing<QMessageBox>();
    ASSERT_TRUE(box);
    QTest::keyClick(box, Qt::Key_Escape);
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().files().isAsking(); }));
    EXPECT_TRUE(window().isVisible());
}

TEST_F(RealDialogs, ClosingGoesOnWhenTheKeyIsPressed) {
    edit("Mine");
    window().close();
    EXPECT_TRUE(window().isVisible());
    auto* box = standing<QMessageBox>();
    ASSERT_TRUE(box);
    WindowBench::click(box->button(QMessageBox::Discard));
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().isVisible(); }));
}

TEST_F(RealDialogs, TakingTheOneOnTheDiskIsAskedInTheWindow) {
    const QString path = write("mole.bench.json", "As read");
    window().openFile(path);
    edit("Mine");
    write("mole.bench.json", "Someone else's");
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().bar().isVisible(); }));
    WindowBench::click(window().bar().keys()[0]);
    auto* box = standing<QMessageBox>();
    ASSERT_TRUE(box);
    EXPECT_TRUE(box->informativeText().contains(QStringLiteral("gives up the unsaved changes")));
    EXPECT_EQ(window().document().bench()->title, "Mine");
    pressIn(box, QStringLiteral("Take the one on the disk"));
    EXPECT_EQ(window().document().bench()->title, "Someone else's");
}

TEST_F(RealDialogs, APictureWithoutAnEndingAsksBeforeItReplaces) {
    QFile there(bench.file("lamp.svg"));
    ASSERT_TRUE(there.open(QIODevice::WriteOnly));
    there.write("kept");
    there.close();
    QTest::keyClick(&window(), Qt::Key_E, Qt::ControlModifier);
    auto* dialog = standing<QFileDialog>();
    ASSERT_TRUE(dialog);
    auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    ASSERT_TRUE(name);
    name->setText(bench.file("lamp"));
    QTest::keyClick(name, Qt::Key_Return);
    pressIn(standing<QMessageBox>(), QStringLiteral("Cancel"));
    ASSERT_TRUE(there.open(QIODevice::ReadOnly));
    EXPECT_EQ(there.readAll(), QByteArray("kept"));
}

}  // namespace
}  // namespace tiepoint::ui
