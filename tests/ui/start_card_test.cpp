// The start card: the way to a first LED in front, the twelve lessons of the course, one's own below, and never in the way.

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/course/shipped.h"
#include "ui/window/course.h"
#include "window_bench.h"

#include <QMenu>

#include <gtest/gtest.h>

#include <set>

namespace tiepoint::ui {
namespace {

class StartCardTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    StartCard& card() { return *window().startCard(); }
    void show() {
        window().showStartCard();
        QApplication::processEvents();
    }
    bool isShown() { return window().startCard() && window().startCard()->isVisible(); }
    bool drawn(const std::vector<BenchButton*>& buttons) {
        return QTest::qWaitFor([&] { return std::ranges::all_of(buttons, &BenchButton::isDrawn); }, 10'000);
    }
    WindowBench desk;
};

/// Nothing that is shipped is left out, and each is told in one line.
TEST(Course, TellsOfEveryShippedBenchInOneLine) {
    std::set<std::string_view> shipped, told, topics;
    for (const EmbeddedFile& file : embeddedFiles())
        if (file.name.starts_with("benches/")) shipped.insert(file.name);
    for (const CourseBench& each : course()) {
        EXPECT_TRUE(told.insert(each.file).second) << each.file;
        EXPECT_TRUE(topics.insert(each.topic).second) << each.topic;
        EXPECT_TRUE(each.line.ends_with('.') || each.line.ends_with('?')) << each.line;
        EXPECT_LT(each.line.size(), 50u) << each.line;
    }
    EXPECT_EQ(told, shipped);
    EXPECT_NE(course().back().line.find("nothing is told"), std::string_view::npos) << "the hunt says so";
    EXPECT_EQ(course().back().file, "benches/dark-beacon.bench.json");
}

TEST_F(StartCardTest, ShowsTheTenLessonsInTheirOrderAndOpensEach) {
    show();
    ASSERT_EQ(card().benches().size(), 12u);
    for (int number = 1; number <= 10; ++number) {
        show();
        BenchButton* button = card().benches()[static_cast<std::size_t>(number - 1)];
        const ShippedLesson& shipped = shippedLessons()[static_cast<std::size_t>(number)];
        EXPECT_EQ(button->words().heading.toStdString(), shipped.lesson->title);
        EXPECT_EQ(button->words().line.toStdString(), shipped.lesson->summary);
        EXPECT_EQ(button->words().number.toInt(), number);
        EXPECT_TRUE(button->words().aside.endsWith(QStringLiteral(" min")));
        WindowBench::click(button);
        EXPECT_FALSE(window().startCard()) << "opening closes the card";
        EXPECT_EQ(window().lessons().run().lesson(), window().files().lesson());
        ASSERT_TRUE(window().files().lesson());
        EXPECT_EQ(window().files().lesson()->title, shipped.lesson->title);
        EXPECT_EQ(*window().document().bench(), *shipped.lesson->start) << "it begins with its start bench";
        EXPECT_FALSE(window().document().isModified());
        EXPECT_TRUE(window().document().filePath().isEmpty()) << "a bench is never saved over a lesson";
    }
}

TEST_F(StartCardTest, EveryHarbourBenchOpensFromTheFileMenu) {
    QMenu* benches = nullptr;
    for (QAction* each : window().titleLine().menus().actions().front()->menu()->actions()) {
        if (each->menu() && each->text().contains(QStringLiteral("Harbour"))) benches = each->menu();
    }
    ASSERT_TRUE(benches);
    ASSERT_EQ(benches->actions().size(), static_cast<qsizetype>(course().size()));
    for (std::size_t i = 0; i < course().size(); ++i) {
        benches->actions()[static_cast<qsizetype>(i)]->trigger();
        EXPECT_TRUE(window().document().filePath().isEmpty()) << "saving must ask for a name";
        ASSERT_TRUE(desk.waitForAnswer()) << course()[i].topic;
        EXPECT_EQ(window().live().snapshot()->status(), Status::Solved) << course()[i].topic;
        EXPECT_EQ(window().view().views(), course()[i].views) << course()[i].topic;
        EXPECT_FALSE(window().lessons().run().lesson());
    }
}

TEST_F(StartCardTest, DrawsAPictureOfEachBenchInItsView) {
    show();
    ASSERT_TRUE(drawn(card().benches()));
    std::set<QByteArray> different;
    for (BenchButton* button : card().benches()) {
        const QImage image = button->grab(QRect(QPoint(14, 14), button->pictureSize() - QSize(12, 12))).toImage();
        different.insert(QByteArray(reinterpret_cast<const char*>(image.constBits()), image.sizeInBytes()));
    }
    EXPECT_EQ(different.size(), card().benches().size());
}

TEST_F(StartCardTest, OnlyTheFirstBuildHasAFilledKey) {
    show();
    const auto filled = [](QWidget* button) {
        const QImage image = button->grab().toImage();
        return image.pixelColor(image.width() / 8, image.height() / 2) == theme(ThemeName::Day).accent;
    };
    EXPECT_TRUE(filled(card().firstButton()));
    for (QAbstractButton* button : card().findChildren<QAbstractButton*>())
        EXPECT_EQ(filled(button), button == card().firstButton()) << button->text().toStdString();
    EXPECT_LT(card().firstButton()->mapTo(&card(), QPoint()).x(), card().benches().front()->x())
        << "it stands in front";
}

TEST_F(StartCardTest, LiesOverTheLowerPartAndLeavesTheMenusFree) {
    for (const QSize size : {QSize(900, 600), QSize(1366, 768), QSize(1920, 1080)}) {
        desk.restart(size);
        show();
        const QRectF surface = card().surface().translated(card().mapTo(&window(), QPoint()));
        EXPECT_NEAR(surface.top(), 0.17 * size.height(), 2);
        EXPECT_GE(card().mapTo(&window(), QPoint()).y(), window().titleLine().geometry().bottom());
        QRect before;
        for (QAbstractButton* button : card().findChildren<QAbstractButton*>()) {
            if (button->isHidden()) continue;
            const QRect place(button->mapTo(&card(), QPoint()), button->size());
            EXPECT_TRUE(card().surface().toAlignedRect().contains(place))
                << size.width() << ": " << button->text().toStdString();
            EXPECT_GE(place.height(), 24) << button->text().toStdString() << ": a finger's or a pointer's least";
            for (QAbstractButton* other : card().findChildren<QAbstractButton*>()) {
                const QRect theirs(other->mapTo(&card(), QPoint()), other->size());
                if (other == button || other->isHidden()) continue;
                EXPECT_FALSE(theirs.intersects(place))
                    << size.width() << ": " << button->text().toStdString() << ", " << other->text().toStdString();
            }
        }
    }
}

TEST_F(StartCardTest, TheKeyboardReachesAllOfIt) {
    show();
    EXPECT_TRUE(card().firstButton()->hasFocus());
    std::vector<QWidget*> met;
    for (int i = 0; i < 30 && std::ranges::find(met, QApplication::focusWidget()) == met.end(); ++i) {
        met.push_back(QApplication::focusWidget());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    for (BenchButton* button : card().benches()) EXPECT_NE(std::ranges::find(met, button), met.end());
    for (QAbstractButton* button : {card().newButton(), card().openButton(), card().closeButton()})
        EXPECT_NE(std::ranges::find(met, button), met.end()) << button->text().toStdString();
    card().benches()[4]->setFocus(Qt::TabFocusReason);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_FALSE(window().startCard());
    EXPECT_EQ(window().document().bench()->title, "One loop");
}

TEST_F(StartCardTest, OnesOwnBenchesStandBelowAndOpen) {
    show();
    EXPECT_TRUE(card().ownBenches().empty());
    const QString path = desk.file("pier.bench.json");
    Bench pier = makeNewBench();
    pier.title = "Pier light";
    ASSERT_TRUE(writeBenchFile(pier, path.toStdString()).ok());
    window().openFile(path);
    QApplication::processEvents();
    window().files().newBench();
    show();
    ASSERT_EQ(card().ownBenches().size(), 1u);
    BenchButton* button = card().ownBenches().front();
    EXPECT_EQ(button->words().heading, QStringLiteral("pier"));
    EXPECT_EQ(button->words().line, QStringLiteral("today"));
    EXPECT_GT(button->y(), card().benches().back()->geometry().bottom());
    EXPECT_TRUE(drawn(card().ownBenches()));
    WindowBench::click(button);
    EXPECT_EQ(window().document().filePath(), path);
    EXPECT_FALSE(window().startCard());
}

TEST_F(StartCardTest, NewBenchGivesAHalfBoardWithItsSupply) {
    show();
    WindowBench::click(card().newButton());
    EXPECT_FALSE(window().startCard());
    EXPECT_EQ(*window().document().bench(), makeNewBench());
}

TEST_F(StartCardTest, TheFirstPressOnTheBenchClosesIt) {
    show();
    QTest::mouseClick(window().view().viewport(), Qt::LeftButton, {}, QPoint(3, 3));
    EXPECT_FALSE(window().startCard());
    show();
    QTest::mouseClick(&card(), Qt::LeftButton, {}, QPoint(card().width() / 2, 4));  // on the veil
    EXPECT_FALSE(isShown());
    EXPECT_TRUE(window().view().hasFocus());
}

TEST_F(StartCardTest, EscapeAndItsKeyCloseIt) {
    show();
    QTest::keyClick(&card(), Qt::Key_Escape);
    EXPECT_FALSE(isShown());
    EXPECT_TRUE(window().view().hasFocus());
    show();
    WindowBench::click(card().closeButton());
    EXPECT_FALSE(isShown());
}

}  // namespace
}  // namespace tiepoint::ui
