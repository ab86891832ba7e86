// Unfinished is no fault: a bench that isn't done yet is told calmly, until it has worked once or someone asks.

#include "core/edit/edit.h"
#include "support/compact_bench.h"
#include "ui/paint/guide_marks.h"
#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

const char* const kOneLegOpen = "half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red";

class UnfinishedTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    FindingsDesk& findings() { return window().findings(); }
    OpenCard& calm() { return findings().openCard(); }
    FindingCard& card() { return findings().card(); }

    void open(const char* text, std::optional<Reveal> level = std::nullopt) {
        Bench bench = test::compactBench(text);
        if (level) bench.disclosure = Disclosure{*level, {}, {}};
        window().document().reset(std::move(bench), {});
        window().view().fitBench();
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void join(const char* id, const char* from, const char* to) {
        Jumper jumper;
        jumper.id = id;
        jumper.ends = {test::holeAt(from), test::holeAt(to)};
        ASSERT_FALSE(window().document().push({std::string("Lay ") + id, {AddJumper{jumper}}}));
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void away(const char* id) {
        ASSERT_FALSE(window().document().push(removeEdit(*window().document().bench(), {id})));
        ASSERT_TRUE(desk.waitForAnswer());
    }
    bool waitForCalm() {
        return QTest::qWaitFor([this] { return calm().isVisible(); }, FindingsDesk::kCalmMs + 2000);
    }
    bool waitForFault() {
        return QTest::qWaitFor([this] { return card().isVisible() && card().finding(); }, 3000);
    }
    /// Lets everything be told that is going to be.
    static void rest() { QTest::qWait(FindingsDesk::kCalmMs + 400); }
    QString places() { return calm().accessibleDescription(); }

    WindowBench desk;
};

TEST_F(UnfinishedTest, WhatIsOpenIsToldCalmlyWithItsPlace) {
    open(kOneLegOpen);
    ASSERT_TRUE(waitForCalm());
    EXPECT_EQ(findings().shown(), nullptr) << "no flag and no mark on the board";
    EXPECT_FALSE(card().isVisible());
    EXPECT_EQ(calm().geometry(), window().cards().legend().geometry());
    EXPECT_EQ(calm().accessibleName(), QStringLiteral("Still open"));
    EXPECT_EQ(places(),
              QStringLiteral("Not wrong, only not done yet. D1, shorter leg, to minus: e14, alone in its column."));
    EXPECT_EQ(window().view().picture().marks.open, (std::vector<Hole>{test::holeAt("A.a14")}))
        << "where something can be pushed in";
    rest();
    EXPECT_FALSE(card().isVisible()) << "it stays so";
}

TEST_F(UnfinishedTest, NothingOnTheCardIsRed) {
    open(kOneLegOpen);
    ASSERT_TRUE(waitForCalm());
    const QImage image = calm().grab().toImage();
    const Theme& day = theme(ThemeName::Day);
    int reddish = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor colour = image.pixelColor(x, y);
            reddish += colour.red() > colour.green() + 60 && colour.red() > colour.blue() + 60;
        }
    }
    EXPECT_EQ(reddish, 0);
    const QColor ground = image.pixelColor(image.width() / 2, image.height() - 14);
    EXPECT_GE(ground.red(), std::min(day.benchTop.red(), day.benchBottom.red()) - 2);
    EXPECT_LE(ground.red(), std::max(day.benchTop.red(), day.benchBottom.red()) + 2) << "the bench's own colour";
}

TEST_F(UnfinishedTest, ARightBuildMeetsNoFaultAndBreakingItDoes) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red");
    ASSERT_TRUE(waitForCalm());
    join("W1", "A.top+7", "A.a8");
    rest();
    EXPECT_TRUE(calm().isVisible());
    EXPECT_EQ(findings().shown(), nullptr);
    join("W2", "A.a14", "A.bottom-13");
    ASSERT_TRUE(WindowBench::waitFor([this] { return !calm().isVisible(); }));
    EXPECT_TRUE(window().view().picture().marks.open.empty());
    EXPECT_TRUE(window().cards().legend().isVisible());
    away("W2");
    ASSERT_TRUE(waitForFault()) << "it has worked, so this is a fault";
    EXPECT_EQ(card().finding()->severity, Severity::Fault);
    EXPECT_FALSE(calm().isVisible());
}

TEST_F(UnfinishedTest, APressThatLightsItCounts) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c14 330; S1 e14; D1 h16 h19 red; W1 top+7 a8 red; W2 j19 bottom-13 black");
    window().live().setHeld("S1", true);
    ASSERT_TRUE(desk.waitForAnswer());
    window().live().setHeld("S1", false);
    ASSERT_TRUE(desk.waitForAnswer());
    away("W2");
    EXPECT_TRUE(waitForFault());
}

TEST_F(UnfinishedTest, AnotherBenchBeginsAnew) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red; W2 a14 bottom-13 black");
    rest();
    open(kOneLegOpen);
    ASSERT_TRUE(waitForCalm());
    EXPECT_EQ(findings().shown(), nullptr);
}

TEST_F(UnfinishedTest, WhoAsksIsTold) {
    open(kOneLegOpen);
    ASSERT_TRUE(waitForCalm());
    WindowBench::click(calm().askButton());
    ASSERT_TRUE(waitForFault());
    EXPECT_FALSE(calm().isVisible());
    QTest::keyClick(&card(), Qt::Key_Escape);
    EXPECT_FALSE(card().isVisible());
    EXPECT_TRUE(calm().isVisible()) << "answered; the calm comes back";
    EXPECT_EQ(findings().shown(), nullptr);
    QTest::keyClick(&window(), Qt::Key_F3);
    EXPECT_TRUE(waitForFault());
}

TEST_F(UnfinishedTest, WhoAsksBeforeTheReportIsThereIsToldToo) {
    open("half; PS1 top+3 bottom-3 5");
    rest();
    Part led = makePart(*findKind("led"), "D1");
    led.leads = {test::holeAt("A.e13"), test::holeAt("A.e14")};
    ASSERT_FALSE(window().document().push({"Place D1", {AddPart{led}}}));
    findings().nextAction()->trigger();
    EXPECT_TRUE(waitForFault());
}

TEST_F(UnfinishedTest, ClosedItStaysAwayForThisBench) {
    open(kOneLegOpen);
    ASSERT_TRUE(waitForCalm());
    WindowBench::click(calm().closeButton());
    EXPECT_FALSE(calm().isVisible());
    EXPECT_TRUE(window().cards().legend().isVisible());
    EXPECT_TRUE(window().view().picture().marks.open.empty());
    join("W9", "A.a20", "A.a22");
    rest();
    EXPECT_FALSE(calm().isVisible());
}

TEST_F(UnfinishedTest, AShortCircuitSpeaksAtOnce) {
    open(kOneLegOpen);
    ASSERT_TRUE(waitForCalm());
    join("W9", "A.top+20", "A.bottom-20");
    ASSERT_TRUE(waitForFault());
    EXPECT_EQ(card().finding()->rule, "short-circuit");
    away("W9");
    ASSERT_TRUE(WindowBench::waitFor([this] { return !card().isVisible(); }));
    EXPECT_TRUE(waitForCalm());
}

TEST_F(UnfinishedTest, AFileThatIsDarkOpensCalmly) {
    window().files().openEmbedded(QStringLiteral("benches/dark-beacon.bench.json"));
    ASSERT_TRUE(desk.waitForAnswer());
    rest();
    EXPECT_FALSE(card().isVisible());
    EXPECT_FALSE(calm().isVisible()) << "what is open would give it away: this bench is a hunt";
    EXPECT_TRUE(window().view().picture().marks.open.empty());
    EXPECT_EQ(findings().shown(), nullptr);
    findings().nextAction()->trigger();
    rest();
    EXPECT_FALSE(card().isVisible());
    findings().reveal().level(Reveal::Proof)->trigger();
    EXPECT_TRUE(waitForCalm());
    findings().nextAction()->trigger();
    EXPECT_TRUE(waitForFault());
    EXPECT_EQ(card().finding()->rule, "one-hole-off");
}

TEST_F(UnfinishedTest, WhereOnlyPlacesAreRevealedItNamesNone) {
    open(kOneLegOpen, Reveal::Place);
    ASSERT_TRUE(waitForCalm());
    EXPECT_EQ(places(), QStringLiteral("Not wrong, only not done yet."));
    EXPECT_TRUE(window().view().picture().marks.open.empty());
}

TEST(BrokenRing, IsBrokenInFour) {
    const QPainterPath ring = brokenRing({0, 0}, 10);
    int pieces = 0;
    for (int i = 0; i < ring.elementCount(); ++i) pieces += ring.elementAt(i).isMoveTo();
    EXPECT_EQ(pieces, 4);
}

}  // namespace
}  // namespace tiepoint::ui
