// Findings in a real window: marks at their places, one card, mends seen before they are carried out, calm while someone builds, and as
// much as the bench reveals.

#include "core/findings/reveal.h"
#include "core/snapshot/lit.h"
#include "support/compact_bench.h"
#include "ui/document/pass_phrase.h"
#include "ui/paint/live_layers.h"
#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

const char* const kShort =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; W9 top+20 "
    "bottom-20 red";
const char* const kReversed =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 f14 e14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";
const char* const kBlackInPlus =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 black; W2 j14 bottom-13 black";
const char* const kSound =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";

class FindingsTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    FindingsDesk& findings() { return window().findings(); }
    FindingCard& card() { return findings().card(); }
    BenchView& view() { return window().view(); }

    void open(Bench bench) {
        window().document().reset(std::move(bench), {});
        window().view().fitBench();
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void open(const char* text, Reveal level = Reveal::Mend) {
        Bench bench = test::compactBench(text);
        bench.disclosure = Disclosure{level, {}, {}};
        open(std::move(bench));
    }
    bool waitForCard() {
        return WindowBench::waitFor([this] { return card().finding() && card().isVisible(); });
    }
    bool waitForMark(int finding) {
        return WindowBench::waitFor([this, finding] { return !view().findingMark(finding).isEmpty(); });
    }
    bool lit(const char* id) {
        const auto snapshot = window().live().snapshot();
        return isLit(*snapshot, snapshot->layout->bench->partIndex(id));
    }

    WindowBench desk;
};

TEST_F(FindingsTest, ABenchWithoutFindingsShowsNoCard) {
    open(kSound);
    QTest::qWait(FindingsDesk::kCalmMs + 300);
    EXPECT_FALSE(card().isVisible());
    EXPECT_EQ(findings().shown(), nullptr);
    EXPECT_TRUE(window().cards().legend().isVisible());
}

TEST_F(FindingsTest, AFaultIsMarkedAndToldAtOnce) {
    open(kReversed);
    ASSERT_TRUE(waitForCard());
    EXPECT_EQ(card().finding()->rule, "reversed");
    EXPECT_EQ(card().heading(), QStringLiteral("Fault"));
    EXPECT_TRUE(card().accessibleDescription().contains(QString::fromStdString(card().finding()->text)));
    EXPECT_FALSE(window().cards().legend().isVisible());
    EXPECT_EQ(card().geometry(), window().cards().legend().geometry());
    ASSERT_TRUE(waitForMark(0));
    EXPECT_NE(QApplication::focusWidget(), &card());  // it doesn't take the keyboard away
}

TEST_F(FindingsTest, AppliedMendIsOneUndoStepNamedAfterIt) {
    open(kReversed);
    ASSERT_TRUE(waitForCard());
    const QString mend = QString::fromStdString(card().finding()->mend->text);
    WindowBench::click(card().applyButton());
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(lit("D1"));
    EXPECT_EQ(window().document().undoStack().count(), 1);
    EXPECT_EQ(window().document().undoStack().text(0), mend);
    ASSERT_TRUE(WindowBench::waitFor([this] { return !card().isVisible(); }));
    EXPECT_TRUE(window().cards().legend().isVisible());
    EXPECT_TRUE(view().hasFocus());
    EXPECT_FALSE(view().picture().marks.cursor) << "nobody asked for the keyboard's cursor";
    window().document().undoStack().undo();
    EXPECT_TRUE(waitForCard());
}

TEST_F(FindingsTest, PointingAtTheMendShowsItOnTheBench) {
    open(kReversed);
    ASSERT_TRUE(waitForCard());
    const auto mended = [this] { return view().picture().marks.mended; };
    EXPECT_EQ(mended(), nullptr);
    card().applyButton()->setFocus();
    ASSERT_TRUE(WindowBench::waitFor([&] { return mended() != nullptr; }));
    EXPECT_EQ(mended()->findPart("D1")->leads[0], parseHole("A.e14"));
    EXPECT_EQ(window().document().undoStack().count(), 0);  // it is only seen
    view().setFocus();
    ASSERT_TRUE(WindowBench::waitFor([&] { return mended() == nullptr; }));
    WindowBench::click(card().previewButton());
    EXPECT_NE(mended(), nullptr);
    WindowBench::click(card().applyButton());
    EXPECT_EQ(mended(), nullptr);
}

TEST_F(FindingsTest, ARemarkWaitsUntilTheHandRestsAndOpensNoCard) {
    open(kSound);
    Jumper black = *window().document().bench()->findJumper("W1");
    black.colour = findJumperColour("black");
    ASSERT_FALSE(window().document().push({"Colour W1", {ReplaceJumper{black}}}));
    ASSERT_TRUE(desk.waitForAnswer());
    QTest::qWait(FindingsDesk::kCalmMs / 2);
    EXPECT_EQ(findings().shown(), nullptr);
    ASSERT_TRUE(waitForMark(0));
    EXPECT_EQ(findings().shown()->front().rule, "colour-misleads");
    EXPECT_FALSE(card().isVisible());
    // What was told already needn't wait when something else changes.
    ASSERT_FALSE(window().document().push({"Rename", {SetTitle{"Lamp"}}}));
    ASSERT_TRUE(desk.waitForAnswer());
    QTest::qWait(FindingsDesk::kPatienceMs + 50);
    ASSERT_NE(findings().shown(), nullptr);
}

TEST_F(FindingsTest, AClickOnAMarkOpensItsFinding) {
    open(kBlackInPlus);
    ASSERT_TRUE(waitForMark(0));
    QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, view().findingMark(0).center().toPoint());
    ASSERT_TRUE(waitForCard());
    EXPECT_EQ(card().finding()->rule, "colour-misleads");
    EXPECT_EQ(card().heading(), QStringLiteral("Remark"));
    EXPECT_TRUE(view().selection().isEmpty());
}

TEST_F(FindingsTest, FindingsAreWalkedThroughByKeys) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 f14 e14 red; W1 top+7 a8 black; W2 j14 bottom-13 red");
    ASSERT_TRUE(WindowBench::waitFor([this] { return findings().shown() && findings().shown()->size() == 3; }));
    ASSERT_TRUE(waitForCard());
    EXPECT_EQ(card().heading(), QStringLiteral("Fault, 1 of 3"));
    findings().nextAction()->trigger();
    EXPECT_EQ(card().heading(), QStringLiteral("Remark, 2 of 3"));
    QTest::keyClick(&card(), Qt::Key_Right);
    EXPECT_EQ(card().heading(), QStringLiteral("Remark, 3 of 3"));
    WindowBench::click(card().nextButton());
    EXPECT_EQ(card().current(), 0);
    WindowBench::click(card().previousButton());
    EXPECT_EQ(card().current(), 2);
    EXPECT_EQ(view().picture().marks.finding, 2);
    QTest::keyClick(&card(), Qt::Key_Escape);
    EXPECT_FALSE(card().isVisible());
    EXPECT_TRUE(window().cards().legend().isVisible());
    EXPECT_EQ(view().picture().marks.finding, -1);
    EXPECT_TRUE(waitForMark(0));  // the marks stay
    findings().nextAction()->trigger();
    EXPECT_TRUE(card().isVisible());
}

TEST_F(FindingsTest, PutAwayItStaysSoUntilSomethingNewIsWrong) {
    open(kReversed);
    ASSERT_TRUE(waitForCard());
    WindowBench::click(card().closeButton());
    ASSERT_FALSE(window().document().push({"Rename", {SetTitle{"Lamp"}}}));
    ASSERT_TRUE(desk.waitForAnswer());
    QTest::qWait(FindingsDesk::kPatienceMs + 50);
    EXPECT_FALSE(card().isVisible());
    ASSERT_FALSE(window().document().push({"Short", {AddJumper{[] {
                                               Jumper jumper;
                                               jumper.id = "W9";
                                               jumper.ends = {*parseHole("A.top+20"), *parseHole("A.bottom-20")};
                                               return jumper;
                                           }()}}}));
    EXPECT_TRUE(waitForCard());
    EXPECT_EQ(card().finding()->rule, "short-circuit");
}

TEST_F(FindingsTest, WhatIsCalledForStandsBeforeTheFindings) {
    open(kReversed);
    ASSERT_TRUE(waitForCard());
    view().setSelection({QStringLiteral("D1")});
    window().inquiry().whyAction()->trigger();
    ASSERT_TRUE(WindowBench::waitFor([this] { return window().inquiry().answer().isVisible(); }));
    EXPECT_FALSE(card().isVisible());
    WindowBench::click(window().inquiry().answer().closeButton());
    EXPECT_TRUE(card().isVisible());
    EXPECT_FALSE(window().cards().legend().isVisible());
}

TEST_F(FindingsTest, AShortIsLitAlongItsMetal) {
    open(kShort);
    ASSERT_TRUE(waitForCard());
    EXPECT_EQ(card().finding()->rule, "short-circuit");
    Patches patches;
    addFindingPlaces(patches, findingsSeen(view().picture()), *wordGround(view().picture()));
    // The path runs from the top rail to the bottom rail, and along both.
    const QPointF top(holeMm(view().picture().bench(), *parseHole("A.top+7"))->x,
                      holeMm(view().picture().bench(), *parseHole("A.top+7"))->y);
    const QPointF bottom(holeMm(view().picture().bench(), *parseHole("A.bottom-18"))->x,
                         holeMm(view().picture().bench(), *parseHole("A.bottom-18"))->y);
    EXPECT_TRUE(std::ranges::any_of(
        patches, [&](const Patch& patch) { return patch.mm().contains(top) && patch.mm().contains(bottom); }));
}

TEST_F(FindingsTest, MarksStandOverNoLabelAndNotOverEachOther) {
    for (const char* text : {kShort, kReversed, kBlackInPlus}) {
        open(text);
        ASSERT_TRUE(waitForMark(0)) << text;
        const Picture& picture = view().picture();
        Clearance clearance(picture);
        const auto ids = placeIds(picture, clearance);
        auto labels = ids;
        if (picture.netTags)
            for (const NetTag& tag : *picture.netTags) labels.push_back({toQt(tag.frame), tag.text});
        for (int i = 0; i < static_cast<int>(picture.findings->size()); ++i) {
            const QRectF mark = view().viewportTransform().inverted().mapRect(view().findingMark(i));
            for (const Label& label : labels)
                EXPECT_FALSE(label.frame.intersects(mark)) << text << label.text.toStdString();
        }
    }
}

// --- how much is revealed ---

TEST_F(FindingsTest, EachLevelShowsItsPart) {
    open(kReversed, Reveal::Nothing);
    QTest::qWait(FindingsDesk::kCalmMs + 300);
    EXPECT_EQ(findings().shown(), nullptr);
    EXPECT_FALSE(window().inquiry().whyAction()->isEnabled());

    findings().reveal().level(Reveal::Place)->trigger();
    ASSERT_TRUE(waitForCard());
    EXPECT_EQ(card().heading(), QStringLiteral("A place to look at"));
    EXPECT_EQ(card().finding()->text, "Look around column 14.");
    EXPECT_FALSE(card().applyButton()->isVisible());
    EXPECT_FALSE(window().inquiry().whyAction()->isEnabled());

    findings().reveal().level(Reveal::Proof)->trigger();
    ASSERT_TRUE(WindowBench::waitFor([this] { return card().finding() && card().finding()->rule == "reversed"; }));
    EXPECT_FALSE(card().applyButton()->isVisible());
    EXPECT_TRUE(window().inquiry().whyAction()->isEnabled());

    findings().reveal().level(Reveal::Mend)->trigger();
    ASSERT_TRUE(WindowBench::waitFor([this] { return card().applyButton()->isVisible(); }));
    EXPECT_EQ(window().document().undoStack().count(), 3);
    window().document().undoStack().undo();
    EXPECT_EQ(revealOf(*window().document().bench()), Reveal::Proof);
    EXPECT_TRUE(findings().reveal().level(Reveal::Proof)->isChecked());
}

TEST_F(FindingsTest, PlaceAndProofIsUsual) {
    open(test::compactBench(kReversed));
    ASSERT_TRUE(waitForCard());
    EXPECT_TRUE(findings().reveal().level(Reveal::Proof)->isChecked());
    EXPECT_EQ(card().finding()->rule, "reversed");
    EXPECT_FALSE(card().applyButton()->isVisible());
}

TEST_F(FindingsTest, ALockedBenchAsksForThePassPhrase) {
    QString phrase = QStringLiteral("ferry at noon");
    int asked = 0;
    findings().reveal().setAsker([&](const QString&, const QString&, const RevealMenu::GivePhrase& give) {
        ++asked;
        give(phrase);
    });
    open(kReversed, Reveal::Place);
    findings().reveal().lockAction()->trigger();
    EXPECT_TRUE(isLocked(*window().document().bench()));
    EXPECT_EQ(asked, 1);

    phrase = QStringLiteral("ferry at one");
    findings().reveal().level(Reveal::Mend)->trigger();
    EXPECT_EQ(asked, 2);
    EXPECT_EQ(revealOf(*window().document().bench()), Reveal::Place);
    EXPECT_TRUE(findings().reveal().level(Reveal::Place)->isChecked());
    findings().reveal().lockAction()->trigger();
    EXPECT_TRUE(isLocked(*window().document().bench()));

    findings().reveal().level(Reveal::Nothing)->trigger();  // less is always allowed
    EXPECT_EQ(revealOf(*window().document().bench()), Reveal::Nothing);

    phrase = QStringLiteral("ferry at noon");
    findings().reveal().level(Reveal::Mend)->trigger();
    EXPECT_EQ(revealOf(*window().document().bench()), Reveal::Mend);
    findings().reveal().lockAction()->trigger();
    EXPECT_FALSE(isLocked(*window().document().bench()));
}

TEST_F(FindingsTest, ALockKeepsRemediesToo) {
    Bench bench = test::compactBench(kReversed);
    bench.disclosure = Disclosure{Reveal::Proof, lockWith(QStringLiteral("gate")), {}};
    open(std::move(bench));
    view().setSelection({QStringLiteral("D1")});
    window().inquiry().whyAction()->trigger();
    ASSERT_TRUE(WindowBench::waitFor([this] { return window().inquiry().answer().answer() != nullptr; }));
    EXPECT_FALSE(window().inquiry().answer().answer()->chain.empty());
    EXPECT_TRUE(window().inquiry().answer().remedyButtons().empty());
}

TEST(PassPhrase, OpensItsOwnLockAndNoOther) {
    const std::string lock = lockWith(QStringLiteral("tide gauge"));
    EXPECT_TRUE(opens(QStringLiteral("tide gauge"), lock));
    EXPECT_FALSE(opens(QStringLiteral("tide gauges"), lock));
    EXPECT_FALSE(opens(QString(), lock));
    EXPECT_NE(lockWith(QStringLiteral("tide gauge")), lock);  // salted
    EXPECT_EQ(lock.find("tide"), std::string::npos);
    EXPECT_LE(lock.size(), kLongestLock);
    for (const char* other : {"", "x", "sha256:", "sha256::", "md5:aa:bb"})
        EXPECT_FALSE(opens(QString(), other)) << other;
}

/// The digest was computed with another implementation of PBKDF2 (RFC 8018): that of the Python standard library, hashlib.pbkdf2_hmac.
TEST(PassPhrase, TakesALockMadeElsewhere) {
    EXPECT_TRUE(opens(
        QStringLiteral("harbour"),
        "sha256:00112233445566778899aabbccddeeff:a7a1559e0efda0c1faa9f30a70c377de22290af14e3cdd1d731972a0826e4d8e"));
}

}  // namespace
}  // namespace tiepoint::ui
