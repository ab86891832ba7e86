// No text of the cards that help with a real board is cut, nor of those of a hunt.

#include "core/hunt/hunt.h"
#include "fitting_desk.h"

namespace tiepoint::ui {
namespace {

constexpr int kFittingDoctorMs = 20000;  ///< what is worked out beside has the lowest priority
constexpr const char* kLongIds =
    "half; PS1 top+3 bottom-3 5; S1 e14; R1 c8 c14 330; D1 h22 h25 red; W1 top+7 a8 red; W2 i16 i22 blue; "
    "W3 j25 bottom-20 black";

TEST_P(FittingTest, HelpWithARealBoardFromTheFirstQuestionOn) {
    open(kLongIds);
    DoctorDesk& doctor = window().doctor();
    doctor.action()->trigger();
    const auto wait = [&] {
        ASSERT_TRUE(QTest::qWaitFor([&] { return doctor.card().answer() != nullptr; }, kFittingDoctorMs));
    };
    wait();
    fits(QStringLiteral("as planned?"));
    const auto& answers = doctor.card().asking().answerButtons();
    WindowBench::click(answers[answers[0]->text() == QStringLiteral("yes") ? 0 : 1]);
    wait();
    fits(QStringLiteral("the second question"));
    WindowBench::click(doctor.card().lights().buttons()[DoctorSeenCard::Dark]);
    wait();
    fits(QStringLiteral("after a look"));
    WindowBench::click(doctor.card().lights().buttons()[DoctorSeenCard::Hot]);
    fits(QStringLiteral("hot"));
}

TEST_P(FittingTest, TheCardsOfAHunt) {
    const auto target = std::make_shared<const Bench>(test::compactBench(kLongIds));
    const auto set = makeHunts(target, 1, 7);
    ASSERT_TRUE(set);
    open(huntBench(HuntGround(target), set->hunts.front()));
    ASSERT_TRUE(window().hunt().isActive());
    fits(QStringLiteral("a hunt begins"));
    HuntCauseCard& cause = window().hunt().cause();
    WindowBench::click(cause.thingButton("W2"));
    WindowBench::click(cause.faultButton(faults().front()));
    fits(QStringLiteral("a guess"));
}

}  // namespace
}  // namespace tiepoint::ui
