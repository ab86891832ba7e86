// Cards for the room: while projecting one large card at a time stands below the circuit, by the same keys as at the desk; the scale of the
// arrows is locked and printed; the tray comes on a key.

#include "core/bench/bench_file.h"
#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

class RoomCardTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    void project(const char* bench) {
        desk.restart({1920, 1080});
        window().files().openEmbedded(QString::fromLatin1(bench));
        ASSERT_TRUE(desk.waitForAnswer());
        window().actions().project->setChecked(true);
        QApplication::processEvents();
    }
    /// The card stands below all of the circuit, as broad as the window.
    void expectBelow(const QWidget* card) {
        ASSERT_TRUE(card->isVisible());
        const QRect place(card->mapTo(&window(), QPoint()), card->size());
        const QRect view(window().view().mapTo(&window(), QPoint()), window().view().size());
        EXPECT_GE(place.top(), view.bottom()) << "never over the circuit";
        EXPECT_GT(place.width(), 0.9 * window().width());
    }
    WindowBench desk;
};

TEST_F(RoomCardTest, TheSumStandsInDigitsOfATwelfthOfTheHeight) {
    project("benches/fairway-dimmer.bench.json");
    QTest::keyClick(&window().view(), Qt::Key_M, Qt::ControlModifier);
    QApplication::processEvents();
    const SumCard& card = window().sum().card();
    expectBelow(&card);
    ASSERT_GE(card.terms().size(), 3u);
    double shares = 0;
    double bars = 0;
    for (std::size_t i = 0; i + 1 < card.terms().size(); ++i) {
        shares += card.terms()[i].share;
        bars += card.bar(i).width();
    }
    EXPECT_NEAR(shares, 1, 1e-6) << "the drops are the supply's volts";
    EXPECT_NEAR(bars, card.bar(card.terms().size() - 1).width(), 2) << "and their bars together as long as its own";
    EXPECT_EQ(card.terms().back().number, QStringLiteral("5.00 V"));
    WordsWatch watch;
    window().sum().card().repaint();
    double largest = 0;
    for (const DrawnWords& words : watch.drawn()) {
        EXPECT_TRUE(words.whole) << words.words.toStdString();
        largest = std::max(largest, words.pixels);
    }
    EXPECT_GT(largest, window().height() / 22.0);
    QTest::keyClick(&window().view(), Qt::Key_M, Qt::ControlModifier);
    QApplication::processEvents();
    EXPECT_FALSE(card.isVisible()) << "put away by the same key";
}

TEST_F(RoomCardTest, AJunctionIsASumToo) {
    project("benches/three-buoys.bench.json");
    window().view().setSelection({QStringLiteral("W3")});
    QTest::keyClick(&window().view(), Qt::Key_M, Qt::ControlModifier);
    QApplication::processEvents();
    const SumCard& card = window().sum().card();
    expectBelow(&card);
    ASSERT_EQ(card.terms().size(), 3u) << card.heading().toStdString();
    EXPECT_NEAR(card.terms()[0].share + card.terms()[1].share, card.terms()[2].share, 0.01);
    EXPECT_TRUE(card.terms()[2].number.endsWith(QStringLiteral("mA")));
}

TEST_F(RoomCardTest, EachCardComesAndGoesByItsKey) {
    project("benches/lock-gate.bench.json");
    const auto press = [&](Qt::Key key, Qt::KeyboardModifiers with) {
        QTest::keyClick(&window().view(), key, with);
        QApplication::processEvents();
    };
    press(Qt::Key_T, Qt::ControlModifier);
    expectBelow(&window().inquiry().table());
    press(Qt::Key_L, Qt::ControlModifier);
    EXPECT_FALSE(window().inquiry().table().isVisible()) << "one at a time";
    expectBelow(&window().walk().card());
    press(Qt::Key_L, Qt::ControlModifier);
    EXPECT_FALSE(window().cards().isVisible());
    press(Qt::Key_G, Qt::ControlModifier);
    expectBelow(&window().cards().legend());
    press(Qt::Key_G, Qt::ControlModifier);
    EXPECT_FALSE(window().cards().legend().isVisible());
    window().view().setSelection({QStringLiteral("D1")});
    press(Qt::Key_F1, Qt::ShiftModifier);
    EXPECT_TRUE(WindowBench::waitFor([this] { return window().inquiry().answer().isVisible(); }));
    expectBelow(&window().inquiry().answer());
    press(Qt::Key_R, Qt::ControlModifier);
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().inquiry().answer().isVisible(); }))
        << "the helper reckons first";
    EXPECT_TRUE(window().cards().roomCard() && window().cards().roomCard()->isVisible());
}

TEST_F(RoomCardTest, TheScaleOfTheArrowsIsLockedAndPrinted) {
    project("benches/three-buoys.bench.json");
    ASSERT_TRUE(window().view().views().lockedFullScaleAmpere);
    const double scale = *window().view().views().lockedFullScaleAmpere;
    EXPECT_DOUBLE_EQ(scale, 0.02);
    ArrowScale& printed = window().arrowScale();
    ASSERT_TRUE(printed.isVisible());
    EXPECT_EQ(printed.words(), QStringLiteral("20 mA"));
    const QPointF corner = window().view().fromMm(
        {window().view().picture().table->boardsMm.left + window().view().picture().table->boardsMm.width,
         window().view().picture().table->boardsMm.top + window().view().picture().table->boardsMm.height});
    EXPECT_NEAR(printed.geometry().right(), window().view().x() + corner.x(), 3) << "at the lower right outer edge";
    EXPECT_GE(printed.geometry().top(), window().view().y() + corner.y());
    ASSERT_FALSE(window().document().push(setValueEdit(*window().document().bench(), "R1", "resistance", 4700)));
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_EQ(window().view().views().lockedFullScaleAmpere, scale) << "after an edit too";
    window().actions().project->setChecked(false);
    QApplication::processEvents();
    EXPECT_FALSE(window().view().views().lockedFullScaleAmpere);
    EXPECT_FALSE(printed.isVisible());
}

TEST_F(RoomCardTest, TheTrayComesOnItsKeyAndTheDeskStaysAsItWas) {
    project("benches/three-buoys.bench.json");
    EXPECT_FALSE(window().tray().isVisible());
    QTest::keyClick(&window().view(), Qt::Key_F9);
    QApplication::processEvents();
    EXPECT_TRUE(window().tray().isVisible());
    EXPECT_FALSE(window().cards().isVisible());
    EXPECT_GE(window().tray().geometry().top(), window().view().geometry().bottom());
    QTest::keyClick(&window().view(), Qt::Key_F9);
    EXPECT_FALSE(window().tray().isVisible());
    window().actions().project->setChecked(false);
    QApplication::processEvents();
    EXPECT_TRUE(window().tray().isVisible());
    EXPECT_TRUE(window().cards().isVisible());
}

TEST_F(RoomCardTest, OffersTheProjectorTheme) {
    project("benches/three-buoys.bench.json");
    EXPECT_TRUE(window().bar().isVisible());
}

}  // namespace
}  // namespace tiepoint::ui
