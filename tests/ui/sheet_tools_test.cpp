// Sheets, comparison, readings and shared pictures in a real window.

#include "ui/window/sheet_tools.h"

#include "core/bench/bench_file.h"
#include "core/bench/bench_in_picture.h"
#include "printed.h"
#include "window_bench.h"

#include <QClipboard>
#include <QDropEvent>
#include <QFile>
#include <QMimeData>
#include <QPrinter>

namespace tiepoint::ui {
namespace {

class SheetToolsTest : public testing::Test {
protected:
    SheetToolsTest() {
        window().files().openEmbedded(QStringLiteral("benches/lock-gate.bench.json"));
        EXPECT_TRUE(bench_.waitForAnswer());
    }
    MainWindow& window() { return bench_.window(); }
    SheetTools& sheets() { return window().tools().sheets(); }
    /// The path that the next question for a file is answered with.
    void answer(const QString& path) {
        sheets().setAskPath([this, path](const QString& suggestion, const SheetTools::GivePath& give) {
            suggested_ = suggestion;
            give(path);
        });
    }
    QString write(const char* name, const Bench& bench) {
        const QString path = bench_.file(name);
        EXPECT_TRUE(writeBenchFile(bench, path.toStdString()).ok());
        return path;
    }

    WindowBench bench_;
    QString suggested_;
};

TEST_F(SheetToolsTest, SheetsAreSavedForWhomTheyAre) {
    for (const auto& [reader, name, words] : {std::tuple(SheetFor::Learner, "lock-gate-build.pdf", "I predict"),
                                              std::tuple(SheetFor::Teacher, "lock-gate-key.pdf", "Expected"),
                                              std::tuple(SheetFor::Planner, "lock-gate-planning.pdf", "My plan")}) {
        answer(bench_.file(name));
        sheets().saveFor(reader)->trigger();
        EXPECT_EQ(suggested_, QString::fromLatin1(name));
        EXPECT_TRUE(printedText(bench_.file(name)).contains(QString::fromLatin1(words)));
        EXPECT_EQ(window().bar().line(), QStringLiteral("%1 is saved.").arg(QString::fromLatin1(name)));
    }
    answer(bench_.file("symptoms.pdf"));
    sheets().symptoms()->trigger();
    EXPECT_TRUE(printedText(bench_.file("symptoms.pdf")).contains(QStringLiteral("Symptom sheet")));
    answer(QStringLiteral("/nowhere/plan.pdf"));
    sheets().saveFor(SheetFor::Learner)->trigger();
    EXPECT_TRUE(window().bar().line().startsWith(QStringLiteral("/nowhere/plan.pdf: ")))
        << window().bar().line().toStdString();
}

TEST_F(SheetToolsTest, PrintingIsTheSameSheetInTrueSize) {
    const QString path = bench_.file("printed.pdf");
    sheets().setAskPrinter([&](const std::function<void(QPrinter&)>& go) {
        QPrinter printer(QPrinter::HighResolution);
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(path);
        printer.setPageSize(QPageSize(QPageSize::A4));
        go(printer);
    });
    sheets().print()->trigger();
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("100 %")));
    const QString text = printedText(path);
    EXPECT_TRUE(text.contains(QStringLiteral("My teacher has seen my board.")));
    // The head's rule is as long as A4 less both margins, wherever the printer's own margins are.
    const QImage page = printedPage(path, 1, 5);
    EXPECT_NEAR(page.width() / 5.0, 210, 0.5);
    int longest = 0;
    for (int y = 0; y < 40 * 5; ++y) {
        int dark = 0;
        for (int x = 0; x < page.width(); ++x) dark += qGray(page.pixel(x, y)) < 140 ? 1 : 0;
        longest = std::max(longest, dark);
    }
    EXPECT_NEAR(longest / 5.0, 182, 1);
}

TEST_F(SheetToolsTest, WhatDiffersIsMarkedOnBothBenches) {
    Bench target = *window().document().bench();
    target.title = "The teacher's";
    target.parts[1].values[0] = 1000;
    const QString path = write("target.bench.json", target);
    answer(path);
    sheets().compareWith()->trigger();
    ComparePanel& panel = sheets().panel();
    ASSERT_TRUE(panel.isVisible());
    ASSERT_TRUE(WindowBench::waitFor([&] { return !panel.isWorking(); }));
    EXPECT_FALSE(panel.comparison().sameCircuit);
    ASSERT_GE(panel.list().count(), 1);
    EXPECT_EQ(panel.list().item(0)->text(), QStringLiteral("R1 is 330 Ω and should be 1 kΩ."));
    EXPECT_TRUE(panel.verdict().text().startsWith(QStringLiteral("Another circuit")));
    const QImage before = panel.minePicture().pixmap(Qt::ReturnByValue).toImage(),
                 targetBefore = panel.targetPicture().pixmap(Qt::ReturnByValue).toImage();
    EXPECT_FALSE(before.isNull());
    EXPECT_FALSE(targetBefore.isNull());
    // The same two benches without a difference bear no marks.
    answer(write("same.bench.json", *window().document().bench()));
    sheets().compareWith()->trigger();
    ASSERT_TRUE(WindowBench::waitFor([&] { return !panel.isWorking(); }));
    EXPECT_TRUE(panel.comparison().sameBehaviour);
    EXPECT_EQ(panel.verdict().text(), QStringLiteral("The same circuit, and it does the same"));
    EXPECT_EQ(panel.list().count(), 0);
    EXPECT_NE(panel.minePicture().pixmap(Qt::ReturnByValue).toImage(), before);
    const auto bench = window().document().bench();
    QTest::keyClick(&panel, Qt::Key_Escape);
    EXPECT_FALSE(panel.isVisible());
    EXPECT_EQ(window().document().bench(), bench) << "comparing changes nothing";
    answer(bench_.file("none.bench.json"));
    sheets().compareWith()->trigger();
    EXPECT_FALSE(panel.isVisible());
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("none.bench.json")));
}

TEST_F(SheetToolsTest, ReadingsBeforeAndNowAreCopied) {
    sheets().copyReadings()->trigger();
    EXPECT_TRUE(window().bar().line().startsWith(QStringLiteral("No reading is pinned")));
    const Hole hole = *parseHole("A.c9");
    ASSERT_FALSE(window().document().push(pinEdit(*window().document().bench(), VoltsAt{hole})));
    ASSERT_TRUE(bench_.waitForAnswer());
    QTest::qWait(700);  // what follows is a step of its own
    window().live().setHeld("S1", true);
    ASSERT_TRUE(bench_.waitForAnswer());
    window().live().setHeld("S2", true);
    ASSERT_TRUE(bench_.waitForAnswer());
    sheets().copyReadings()->trigger();
    EXPECT_EQ(QGuiApplication::clipboard()->text(), QStringLiteral("Reading      Before  Now\n"
                                                                   "volts at c9  5.00 V  2.10 V\n"));
    sheets().copyReadingsAsCsv()->trigger();
    const QStringList lines = QGuiApplication::clipboard()->text().split(QStringLiteral("\r\n"));
    ASSERT_GE(lines.size(), 2);
    EXPECT_EQ(lines[0], QStringLiteral("reading,unit,before,now"));
    EXPECT_TRUE(lines[1].startsWith(QStringLiteral("volts at c9,V,"))) << lines[1].toStdString();
    EXPECT_NEAR(lines[1].split(QLatin1Char(',')).value(3).toDouble(), 2.10, 0.01);
}

TEST_F(SheetToolsTest, APictureCarriesItsBenchByClipboardFileAndDrop) {
    window().actions().copyPicture->trigger();
    const QMimeData* content = QGuiApplication::clipboard()->mimeData();
    EXPECT_TRUE(content->hasImage());
    const QByteArray png = content->data(QStringLiteral("image/png"));
    const auto inside = benchInside({png.constData(), static_cast<std::size_t>(png.size())});
    ASSERT_TRUE(inside.ok()) << inside.error().message;
    const std::string gate = writeBench(*window().document().bench());

    const auto drop = [&](QMimeData& data) {
        QDragEnterEvent entering(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(window().view().viewport(), &entering);  // without it nothing is dropped
        QDropEvent event(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(window().view().viewport(), &event);
        return event.isAccepted();
    };
    window().files().newBench();
    QMimeData bytes;
    bytes.setData(QStringLiteral("image/png"), png);
    EXPECT_TRUE(drop(bytes));
    EXPECT_EQ(window().document().bench()->title, "Lock gate");
    EXPECT_TRUE(window().document().filePath().isEmpty()) << "saving must not write over a picture";

    const QString path = bench_.file("shared.png");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(png);
    file.close();
    window().files().newBench();
    QMimeData urls;
    urls.setUrls({QUrl::fromLocalFile(path)});
    EXPECT_TRUE(drop(urls));
    EXPECT_EQ(window().document().bench()->parts.size(), 5u);
    EXPECT_TRUE(window().document().filePath().isEmpty());
    EXPECT_FALSE(gate.empty());

    QImage plain(4, 4, QImage::Format_RGB32);
    plain.fill(Qt::red);
    ASSERT_TRUE(plain.save(path));
    const auto before = window().document().bench();
    EXPECT_TRUE(drop(urls));
    EXPECT_EQ(window().document().bench(), before);
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("without a bench inside")))
        << window().bar().line().toStdString();
}

}  // namespace
}  // namespace tiepoint::ui
