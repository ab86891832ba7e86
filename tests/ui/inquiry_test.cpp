// Asking the bench in a real window: the truth table whose rows set the switches, and "why?" whose remedies are carried out.

#include "core/snapshot/lit.h"
#include "support/build_bench.h"
#include "support/troubled_boards.h"
#include "window_bench.h"

#include <QElapsedTimer>
#include <QSignalSpy>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

class InquiryTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    Inquiry& inquiry() { return window().inquiry(); }
    TruthCard& table() { return inquiry().table(); }
    AnswerCard& answer() { return inquiry().answer(); }

    void open(const char* name) {
        window().files().openEmbedded(QStringLiteral("benches/%1.bench.json").arg(QString::fromLatin1(name)));
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void openTable() {
        inquiry().tableAction()->trigger();
        ASSERT_TRUE(WindowBench::waitFor([this] { return table().table() && !table().isStale(); }));
    }
    void ask(const char* id) {
        window().view().setSelection({QString::fromLatin1(id)});
        inquiry().whyAction()->trigger();
        ASSERT_TRUE(WindowBench::waitFor([this, id] { return answer().answer() && answer().answer()->part == id; }));
    }
    void clickRow(int row) {
        const QRectF box = table().rows().rowBox(row);
        ASSERT_FALSE(box.isEmpty()) << row;
        QTest::mouseClick(table().rows().viewport(), Qt::LeftButton, {}, box.center().toPoint());
        ASSERT_TRUE(desk.waitForAnswer());
        ASSERT_TRUE(WindowBench::waitFor([this] { return !table().isStale(); }));
    }
    bool lit(const char* id) {
        const auto snapshot = window().live().snapshot();
        return isLit(*snapshot, snapshot->layout->bench->partIndex(id));
    }

    WindowBench desk;
};

TEST_F(InquiryTest, TheTableStandsInTheLegendsPlaceAndGoesAgain) {
    open("lock-gate");
    EXPECT_TRUE(window().cards().legend().isVisible());
    openTable();
    EXPECT_TRUE(table().isVisible());
    EXPECT_FALSE(window().cards().legend().isVisible());
    EXPECT_EQ(table().geometry(), window().cards().legend().geometry());
    EXPECT_EQ(table().sentences(), QStringList{QStringLiteral("D1 = S1 AND S2")});
    WindowBench::click(table().closeButton());
    EXPECT_FALSE(table().isVisible());
    EXPECT_TRUE(window().cards().legend().isVisible());
    EXPECT_FALSE(inquiry().tableAction()->isChecked());
}

TEST_F(InquiryTest, ClickedRowsPressTheButtons) {
    open("lock-gate");
    openTable();
    EXPECT_EQ(table().presentRow(), 0);
    for (const int row : {3, 1, 2, 0}) {
        clickRow(row);
        EXPECT_EQ(table().presentRow(), row);
        EXPECT_EQ(window().live().isHeld("S1"), row >= 2);
        EXPECT_EQ(window().live().isHeld("S2"), row % 2 == 1);
        EXPECT_EQ(lit("D1"), row == 3);
    }
    EXPECT_FALSE(window().document().isModified());  // presses are no document
    clickRow(3);
    WindowBench::click(table().closeButton());
    EXPECT_TRUE(window().live().inputs().held.empty());
}

TEST_F(InquiryTest, ClickedRowsThrowTheSlidesAsOneUndoStep) {
    open("two-way-stair-lamp");
    openTable();
    EXPECT_EQ(table().presentRow(), 1);
    clickRow(2);
    EXPECT_EQ(table().presentRow(), 2);
    EXPECT_TRUE(lit("D1"));
    EXPECT_EQ(window().document().undoStack().count(), 1);
    window().document().undoStack().undo();
    ASSERT_TRUE(desk.waitForAnswer());
    ASSERT_TRUE(WindowBench::waitFor([this] { return !table().isStale() && table().presentRow() == 1; }));
    clickRow(0);
    EXPECT_FALSE(lit("D1"));
}

TEST_F(InquiryTest, ArrowKeysWalkThroughTheRows) {
    open("quay-bell-lamp");
    openTable();
    table().setFocus();
    ASSERT_TRUE(table().rows().hasFocus());
    QTest::keyClick(&table().rows(), Qt::Key_Down);
    ASSERT_TRUE(WindowBench::waitFor([this] { return table().presentRow() == 1; }));
    EXPECT_TRUE(window().live().isHeld("S2"));
    QTest::keyClick(&table().rows(), Qt::Key_Escape);
    EXPECT_FALSE(table().isVisible());
}

TEST_F(InquiryTest, TheTableFollowsTheBench) {
    open("lock-gate");
    openTable();
    const auto refused = window().document().push(removeEdit(*window().document().bench(), {"S2"}));
    EXPECT_FALSE(refused);
    EXPECT_TRUE(table().isStale());
    ASSERT_TRUE(WindowBench::waitFor([this] { return !table().isStale(); }));
    EXPECT_EQ(table().table()->rows.size(), 2u);
    EXPECT_TRUE(table().sentences().contains(QStringLiteral("D1 is never lit")))
        << table().sentences().join('/').toStdString();
    EXPECT_TRUE(table().sentences().contains(QStringLiteral("S1 changes nothing")));
}

TEST_F(InquiryTest, TooManySwitchesAreSaidOnTheCard) {
    Bench bench = tiepoint::test::BenchBuilder().board("A", "full").build();
    for (int i = 1; i <= 11; ++i) bench.parts.push_back(makePart(*findKind("push-button"), "S" + std::to_string(i)));
    window().document().reset(bench, {});
    ASSERT_TRUE(desk.waitForAnswer());
    inquiry().tableAction()->trigger();
    ASSERT_TRUE(WindowBench::waitFor([this] { return !table().isStale(); }));
    EXPECT_EQ(table().table(), nullptr);
    EXPECT_EQ(table().sentences(),
              QStringList{QStringLiteral("No table: the bench has 11 switches; a truth table has at most 10.")});
}

TEST_F(InquiryTest, WhyIsAnsweredAndItsRemedyPressesTheButton) {
    open("beacon-lamp");
    ask("D1");
    EXPECT_TRUE(answer().isVisible());
    EXPECT_FALSE(window().cards().legend().isVisible());
    EXPECT_EQ(answer().answer()->question, "Why is D1 dark?");
    ASSERT_EQ(answer().remedyButtons().size(), 1u);
    EXPECT_EQ(answer().remedyButtons()[0]->text(), QStringLiteral("Press S1"));
    WindowBench::click(answer().remedyButtons()[0]);
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(lit("D1"));
    ASSERT_TRUE(WindowBench::waitFor(
        [this] { return answer().answer() && answer().answer()->question == "Why is D1 lit as it is?"; }));
    WindowBench::click(answer().closeButton());
    EXPECT_TRUE(window().live().inputs().held.empty());
    EXPECT_TRUE(window().cards().legend().isVisible());
}

TEST_F(InquiryTest, TheReadingCardAsksAboutThePartThatItShows) {
    open("beacon-lamp");
    const ReadingCard& card = window().cards().reading();
    window().view().setSelection({QStringLiteral("R1")});
    ASSERT_TRUE(WindowBench::waitFor([&] { return card.text().part == "R1"; }));
    ASSERT_TRUE(card.whyButton()->isVisible());
    WindowBench::click(card.whyButton());
    ASSERT_TRUE(WindowBench::waitFor([this] { return answer().answer() && answer().answer()->part == "R1"; }));
    EXPECT_TRUE(answer().isVisible());
    EXPECT_TRUE(window().cards().isVisible());
}

TEST_F(InquiryTest, NothingIsAskedWhereNothingIsAnswered) {
    open("beacon-lamp");
    const ReadingCard& card = window().cards().reading();
    EXPECT_TRUE(card.whyButton()->isVisible());
    window().view().setSelection({QStringLiteral("W1")});
    ASSERT_TRUE(WindowBench::waitFor([&] { return card.text().part.empty(); }));
    EXPECT_FALSE(card.whyButton()->isVisible()) << "a jumper does nothing that needs a reason";
    window().view().setSelection({QStringLiteral("R1")});
    EXPECT_FALSE(window().document().push({"Say nothing", {SetDisclosure{Disclosure{Reveal::Nothing, {}, {}}}}}));
    ASSERT_TRUE(WindowBench::waitFor([&] { return card.text().part == "R1"; }));
    EXPECT_FALSE(card.whyButton()->isVisible()) << "this bench says nothing of what is found";
}

TEST_F(InquiryTest, AMendIsOneUndoStepAndLights) {
    open("dark-beacon");
    window().findings().reveal().level(Reveal::Proof)->trigger();
    ASSERT_TRUE(desk.waitForAnswer());
    ask("D1");
    ASSERT_EQ(answer().remedyButtons().size(), 1u);
    WindowBench::click(answer().remedyButtons()[0]);
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(lit("D1"));
    EXPECT_EQ(window().document().undoStack().count(), 2);
    ASSERT_TRUE(WindowBench::waitFor([this] { return answer().answer() != nullptr; }));
    window().document().undoStack().undo();
    EXPECT_EQ(answer().answer(), nullptr);  // nothing of the old answer is offered
    ASSERT_TRUE(WindowBench::waitFor([this] { return answer().answer() != nullptr; }));
    EXPECT_EQ(answer().answer()->question, "Why is D1 dark?");
}

TEST_F(InquiryTest, TheAnswerGoesWithItsPart) {
    open("beacon-lamp");
    ask("R1");
    EXPECT_FALSE(window().document().push(removeEdit(*window().document().bench(), {"R1"})));
    EXPECT_FALSE(answer().isVisible());
    EXPECT_TRUE(window().cards().legend().isVisible());
}

TEST_F(InquiryTest, AskingUnfoldsTheCards) {
    open("beacon-lamp");
    window().actions().fold->trigger();
    EXPECT_FALSE(window().cards().isVisible());
    openTable();
    EXPECT_TRUE(table().isVisible());
}

// --- what is reckoned beside ---

/// A bench whose findings take minutes, with its report under way.
class MuchToReckon : public InquiryTest {
protected:
    void SetUp() override {
        window().document().reset(test::troubledBoards(), {});
        ASSERT_TRUE(QTest::qWaitFor(
            [this] {
                const auto snapshot = window().live().snapshot();
                return snapshot && snapshot->revision == window().document().revision();
            },
            10000));
        QTest::qWait(kUnderWayMs);
        clock.start();
    }

    static constexpr int kUnderWayMs = 500;
    static constexpr qint64 kSoonMs =
        3000;  // of a machine that others keep busy too; all of it takes a minute and more
    QElapsedTimer clock;
};

TEST_F(MuchToReckon, TheWindowGoesAtOnce) {
    window().close();
    desk.drop();
    EXPECT_LT(clock.elapsed(), kSoonMs);
}

TEST_F(MuchToReckon, TheWindowGoesAtOnceWhateverWasAsked) {
    window().view().setSelection({QStringLiteral("D1")});
    inquiry().whyAction()->trigger();
    inquiry().tableAction()->trigger();
    QTest::qWait(kUnderWayMs);
    clock.start();
    desk.drop();
    EXPECT_LT(clock.elapsed(), kSoonMs);
}

TEST_F(MuchToReckon, ANewerBenchIsReportedOnAtOnce) {
    QSignalSpy reports(&inquiry().questions(), &Questions::reportReady);
    window().document().reset(makeNewBench(), {});
    ASSERT_TRUE(QTest::qWaitFor([&] { return !reports.isEmpty(); }, 2 * kSoonMs));
    EXPECT_LT(clock.elapsed(), kSoonMs);
    const auto report = reports.front().front().value<std::shared_ptr<const Report>>();
    EXPECT_EQ(report->revision, window().document().revision());
}

TEST_F(MuchToReckon, AnotherQuestionOfTheKindIsNotKeptWaiting) {
    Questions& questions = inquiry().questions();
    QSignalSpy answers(&questions, &Questions::whyReady);
    questions.askWhy(window().live().snapshot(), "D1");
    QTest::qWait(kUnderWayMs);
    ASSERT_TRUE(answers.isEmpty());
    const auto lone = std::make_shared<const Bench>(
        test::BenchBuilder().board("A", "half").part("D9", "led", {{"anode", "A.a1"}, {"cathode", "A.a2"}}).build());
    clock.start();
    questions.askWhy(evaluate(lone), "D9");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !answers.isEmpty(); }, 2 * kSoonMs));
    EXPECT_LT(clock.elapsed(), kSoonMs);
    EXPECT_EQ(answers.front().front().value<std::shared_ptr<const WhyAnswer>>()->answer.part, "D9");
}

}  // namespace
}  // namespace tiepoint::ui
