// Help with a real board in a real window: whole cases, clicked through. The real board is another bench, which only the answers look at.

#include "core/doctor/suspect.h"
#include "core/edit/holes.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/snapshot.h"
#include "core/snapshot/throws.h"
#include "support/compact_bench.h"
#include "window_bench.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kDoctorPatienceMs = 20000;  ///< what is worked out beside has the lowest priority
constexpr int kMostQuestions = 14;

constexpr const char* kFarLight =
    "half; PS1 top+3 bottom-3 5; S1 e14; R1 c8 c14 330; D1 h22 h25 red; W1 top+7 a8 red; W2 i16 i22 blue; "
    "W3 j25 bottom-20 black";

class DoctorWindow : public testing::Test {
protected:
    DoctorWindow() {
        open(kFarLight);
        window().doctor().action()->trigger();
        EXPECT_TRUE(waitForQuestion());
    }

    MainWindow& window() { return desk.window(); }
    DoctorDesk& doctor() { return window().doctor(); }
    DoctorCard& card() { return doctor().card(); }
    DoctorAskCard& asking() { return card().asking(); }
    const Bench& plan() { return *window().document().bench(); }
    void open(const char* text) {
        window().document().reset(test::compactBench(text), {});
        EXPECT_TRUE(desk.waitForAnswer());
    }
    bool waitForQuestion() {
        return QTest::qWaitFor([&] { return card().answer() != nullptr; }, kDoctorPatienceMs);
    }

    /// The real board while the switches stand so.
    std::shared_ptr<const Snapshot> seenAt(const Bench& real, const Digits& digits) {
        Inputs inputs;
        const auto throws = throwsOf(plan());
        for (std::size_t i = 0; i < throws.size(); ++i)
            if (throws[i].isCap() && digits[i] == 1)
                inputs.held.insert(plan().parts[static_cast<std::size_t>(throws[i].part)].id);
        return evaluate(std::make_shared<const Bench>(real), inputs);
    }
    static int netAt(const Snapshot& at, const Hole& hole) { return at.layout->netOfHole(at.layout->holeIndex(hole)); }

    /// Clicks what somebody sees who has that board; false: there is no such answer.
    bool answerFrom(const Bench& real) {
        const DoctorAnswer& asked = *card().answer();
        const Question& question = *asked.question;
        const auto at = seenAt(real, question.digits);
        if (question.asking == Asking::Light) {
            const Shine shine = [&] {
                const double bright = at->brightness(real.partIndex(question.id));
                return bright < kVisibleBrightness ? Shine::Dark : bright < kDimBrightness ? Shine::Dim : Shine::Lit;
            }();
            WindowBench::click(card().lights().buttons()[static_cast<std::size_t>(shine)]);
            return waitForQuestion();
        }
        if (question.asking == Asking::Volts) {
            const int red = netAt(*at, question.one), black = netAt(*at, *plan().findPart("PS1")->leads[1]);
            const double volts = at->solution.netVoltage[static_cast<std::size_t>(red)] -
                                 at->solution.netVoltage[static_cast<std::size_t>(black)];
            QTest::keyClicks(asking().field(), QString::number(std::isnan(volts) ? 0 : volts, 'f', 2));
            QTest::keyClick(asking().field(), Qt::Key_Return);
            return waitForQuestion();
        }
        for (std::size_t i = 0; i < asking().answerButtons().size(); ++i) {
            const auto& seen = asked.choices[i].seen;
            if (!std::ranges::all_of(seen, [&](const Observation& each) { return isTrue(real, *at, each); })) continue;
            WindowBench::click(asking().answerButtons()[i]);
            return waitForQuestion();
        }
        return false;
    }
    bool isTrue(const Bench& real, const Snapshot& at, const Observation& seen) {
        if (const auto* built = std::get_if<SawBuilt>(&seen.what)) {
            const bool whole = plan().findBoard(built->id) != nullptr;
            const bool same = whole ? real == plan() : looksAlike(real, built->id);
            return same == built->asPlanned;
        }
        if (const auto* tip = std::get_if<SawTip>(&seen.what)) {
            const Jumper* jumper = real.findJumper(tip->id);
            const std::optional<Hole> hole =
                jumper ? std::optional(std::get<Hole>(jumper->ends[static_cast<std::size_t>(tip->tip)]))
                       : real.findPart(tip->id)->leads[static_cast<std::size_t>(tip->tip)];
            return hole && at.layout->stripOfHole[static_cast<std::size_t>(at.layout->holeIndex(*hole))] ==
                               at.layout->stripOfHole[static_cast<std::size_t>(at.layout->holeIndex(tip->in))];
        }
        if (const auto* beep = std::get_if<HeardBeep>(&seen.what))
            return (netAt(at, beep->one) == netAt(at, beep->other)) == beep->beeps;
        if (const auto* extra = std::get_if<SawExtra>(&seen.what)) return !extra->jumper;
        return false;
    }
    bool looksAlike(const Bench& real, const std::string& id) {
        const Part* part = real.findPart(id);
        if (part) return part->leads == plan().findPart(id)->leads && part->values == plan().findPart(id)->values;
        return real.findJumper(id) && real.findJumper(id)->ends == plan().findJumper(id)->ends;
    }
    void followCase(const Bench& real) {
        for (int i = 0; i < kMostQuestions && card().answer()->question; ++i)
            ASSERT_TRUE(answerFrom(real)) << card().answer()->next;
    }

    WindowBench desk{{1920, 1080}};
};

TEST_F(DoctorWindow, ThreeCardsTakeThePlaceOfTheOthersAndTheBoardIsAPlan) {
    EXPECT_TRUE(card().isVisible());
    EXPECT_FALSE(window().tray().isVisible());
    EXPECT_FALSE(window().cards().reading().isVisible());
    EXPECT_EQ(card().answer()->question->asking, Asking::Built);
    window().live().setHeld("S1", true);
    ASSERT_TRUE(WindowBench::waitFor([&] { return card().lights().light().position == "with S1 pressed"; }))
        << card().lights().light().position.toStdString();
    EXPECT_EQ(window().view().picture().snapshot, nullptr) << "nothing that flows is shown";
    const auto isHeld = [&] {
        const Inputs* hands = window().view().picture().held();
        return hands && hands->held.contains("S1");
    };
    EXPECT_TRUE(QTest::qWaitFor(isHeld, kDoctorPatienceMs)) << "what is pressed is shown";
    for (int button = 0; button < DoctorSeenCard::Hot; ++button)
        EXPECT_FALSE(card().lights().buttons()[static_cast<std::size_t>(button)]->icon().isNull()) << button;
    doctor().action()->trigger();
    EXPECT_FALSE(card().isVisible());
    EXPECT_TRUE(window().tray().isVisible());
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().view().picture().live() != nullptr; }));
}

TEST_F(DoctorWindow, ABrokenJumperIsFoundByLookingAndMeasuring) {
    Bench real = plan();
    for (Jumper& jumper : real.jumpers)
        if (jumper.id == "W2") jumper.condition = Condition::OpenInside;
    // Its looks are as planned.
    WindowBench::click(asking().answerButtons()[card().answer()->choices.front().words == "yes" ? 0 : 1]);
    ASSERT_TRUE(waitForQuestion());
    followCase(real);
    ASSERT_TRUE(card().answer()->isFound()) << card().answer()->next;
    EXPECT_EQ(card().answer()->fits.front().ids, std::vector<std::string>{"W2"}) << card().answer()->fits.front().text;
    EXPECT_EQ(window().view().picture().marks.lit, "W2") << "what is to be changed is pointed at";
    EXPECT_FALSE(window().document().isModified()) << "the plan stays";
}

TEST_F(DoctorWindow, WhatStandsOneHoleOffIsDrawnWithTheWayBack) {
    Bench real = plan();
    for (Jumper& jumper : real.jumpers)
        if (jumper.id == "W2") jumper.ends[1] = Hole{"A", Line::I, 23};
    followCase(real);
    ASSERT_TRUE(card().answer()->isFound()) << card().answer()->next;
    const auto built = window().view().picture().marks.built;
    ASSERT_NE(built, nullptr);
    EXPECT_EQ(std::get<Hole>(built->findJumper("W2")->ends[1]).number, 23);
    EXPECT_EQ(card().answer()->fits.front().ids, std::vector<std::string>{"W2"});
}

TEST_F(DoctorWindow, TheNextPlaceHangsOnTheBoardAndAClickedHoleTakesAReading) {
    const auto pinned = [&] { return window().view().picture().pinned; };
    window().view().setCursorHole(Hole{"A", Line::A, 14});
    const QPointF at = window().view().fromMm(*holeMm(plan(), Hole{"A", Line::A, 14}));
    QTest::mouseMove(window().view().viewport(), at.toPoint());
    QTest::mouseClick(window().view().viewport(), Qt::LeftButton, {}, at.toPoint());
    ASSERT_TRUE(doctor().redTip());
    ASSERT_TRUE(asking().field()->isVisible());
    ASSERT_TRUE(WindowBench::waitFor([&] { return pinned() != nullptr; }));
    EXPECT_EQ(pinned()->front().text, QStringLiteral("a14 next"));
    EXPECT_TRUE(pinned()->front().isNext);
    QTest::keyClicks(asking().field(), QStringLiteral("lots"));
    QTest::keyClick(asking().field(), Qt::Key_Return);
    EXPECT_TRUE(doctor().seen().empty()) << "that is no reading";
    QTest::keyClicks(asking().field(), QStringLiteral("5"));
    QTest::keyClick(asking().field(), Qt::Key_Return);
    ASSERT_EQ(doctor().seen().size(), 1u);
    ASSERT_TRUE(waitForQuestion());
    EXPECT_EQ(asking().seen().front().place, QStringLiteral("a14"));
    ASSERT_TRUE(WindowBench::waitFor([&] {
        return pinned() &&
               std::ranges::any_of(*pinned(), [](const PinnedTag& tag) { return tag.text == "a14  5.00 V"; });
    }));
    WindowBench::click(asking().backButton());
    EXPECT_TRUE(doctor().seen().empty());
}

TEST_F(DoctorWindow, ItAndTheDiagramTakeTurns) {
    window().sheetDesk().diagramAction()->setChecked(true);
    EXPECT_FALSE(doctor().isOpen());
    EXPECT_TRUE(window().sheetDesk().sheet().isVisible());
    doctor().action()->trigger();
    EXPECT_TRUE(card().isVisible());
    EXPECT_FALSE(window().sheetDesk().sheet().isVisible());
}

TEST_F(DoctorWindow, AnotherBenchEndsIt) {
    open(kFarLight);
    EXPECT_FALSE(doctor().isOpen());
    EXPECT_TRUE(window().tray().isVisible());
    EXPECT_TRUE(WindowBench::waitFor([&] { return window().view().picture().live() != nullptr; }));
}

TEST_F(DoctorWindow, WhatIsRuledOutStaysOnItsCard) {
    WindowBench::click(asking().answerButtons()[card().answer()->choices.front().words == "yes" ? 0 : 1]);
    ASSERT_TRUE(waitForQuestion());
    const std::size_t before = card().answer()->things.size();
    while (card().answer()->question) ASSERT_TRUE(answerFrom(plan()));
    EXPECT_EQ(card().answer()->things.size(), before) << "causes never vanish";
    EXPECT_TRUE(std::ranges::any_of(card().answer()->things, [](const auto& thing) { return thing.fits == 0; }));
}

TEST_F(DoctorWindow, ACaseIsKeptForEachTableAndHotEndsIt) {
    WindowBench::click(asking().answerButtons().front());
    ASSERT_TRUE(waitForQuestion());
    const auto first = doctor().seen();
    QTest::keyClicks(asking().table(), QStringLiteral("2"));
    QTest::keyClick(asking().table(), Qt::Key_Return);
    EXPECT_TRUE(doctor().seen().empty());
    ASSERT_TRUE(waitForQuestion());
    WindowBench::click(card().lights().buttons()[DoctorSeenCard::Hot]);
    EXPECT_TRUE(asking().accessibleDescription().startsWith(QStringLiteral("Switch the supply off now"))) << "at once";
    ASSERT_TRUE(waitForQuestion());
    EXPECT_TRUE(card().answer()->switchOff);
    EXPECT_FALSE(card().answer()->question);
    EXPECT_TRUE(card().answer()->next.starts_with("Switch the supply off now"));
    asking().table()->selectAll();
    QTest::keyClicks(asking().table(), QStringLiteral("1"));
    QTest::keyClick(asking().table(), Qt::Key_Return);
    EXPECT_EQ(doctor().seen(), first);
}

}  // namespace
}  // namespace tiepoint::ui
