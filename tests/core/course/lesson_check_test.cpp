// Claims of lessons: solved in their step, and false one step earlier or in the opposite.

#include "core/course/lesson_check.h"

#include "core/course/lesson_file.h"
#include "core/course/shipped.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace tiepoint {
namespace {

TEST(LessonCheck, EveryClaimOfTheCourseHolds) {
    ASSERT_EQ(shippedLessons().size(), 13u);
    for (const ShippedLesson& shipped : shippedLessons()) {
        const CheckedLesson checked = checkLesson(*shipped.lesson);
        for (std::size_t step = 0; step < checked.steps.size(); ++step) {
            EXPECT_FALSE(checked.steps[step].claims.empty())
                << shipped.name << " step " << step + 1 << " claims nothing";
            for (const CheckedClaim& claim : checked.steps[step].claims)
                EXPECT_TRUE(claim.good()) << shipped.name << " step " << step + 1 << ": " << complaintAbout(claim);
        }
    }
}

/// Claims of which none may hold where the given one does.
std::vector<Predicate> turnedRound(const Predicate& claim) {
    const auto form = [](std::string_view name) {
        for (const PredicateForm& each : predicateForms()) {
            if (each.name == name) return &each;
        }
        return static_cast<const PredicateForm*>(nullptr);
    };
    const std::string_view name = claim.form->name;
    Predicate other = claim;
    if (claim.form->ranged) {
        const double width = claim.to - claim.from + 1e-9;
        Predicate above = claim;
        above.from = claim.to + 1e-12;
        above.to = claim.to + width;
        other.to = claim.from - 1e-12;
        other.from = claim.from - width;
        return {above, other};
    }
    const std::pair<std::string_view, std::string_view> pairs[] = {
        {"lit", "dark"}, {"dark", "lit"}, {"joined", "apart"}, {"apart", "joined"}};
    for (const auto& [one, opposite] : pairs) {
        if (name == one) {
            other.form = form(opposite);
            return {other};
        }
    }
    if (name == "alike" || name == "brighter") {
        other.form = form("brighter");
        std::swap(other.names[0], other.names[1]);
        return {other};
    }
    if (name == "findings") {
        other.names[0] = "none";
        return claim.names[0] == "none" || claim.names[0] == "idle-jumper" ? std::vector<Predicate>{}
                                                                           : std::vector{other};
    }
    other.form = form("amperes");  // of "open"
    other.from = 1e-5;
    other.to = 100;
    return {other};
}

TEST(LessonCheck, EveryClaimTurnedRoundFails) {
    int tried = 0;
    for (const ShippedLesson& shipped : shippedLessons()) {
        for (int step = 0; step < shipped.lesson->stepCount(); ++step) {
            const Situation situation = situationOf(*shipped.lesson, step);
            const auto snapshot = evaluate(situation.bench, situation.inputs);
            for (const Predicate& claim : shipped.lesson->steps[step].then) {
                for (const Predicate& other : turnedRound(claim)) {
                    EXPECT_FALSE(judge(other, *snapshot).holds)
                        << shipped.name << " step " << step + 1 << ": " << predicateLine(other);
                    ++tried;
                }
            }
        }
    }
    EXPECT_GT(tried, 100);
}

TEST(LessonCheck, NamesStepAndFigureOfWhatIsWrong) {
    Lesson lesson = *findShippedLesson("lessons/05-one-loop.lesson.json")->lesson;
    Predicate& claim = lesson.steps[0].then[0];
    claim.from = 0.02;
    claim.to = 0.03;
    const CheckedLesson checked = checkLesson(lesson);
    EXPECT_FALSE(checked.good());
    EXPECT_FALSE(checked.steps[0].good());
    const std::string complaint = complaintAbout(checked.steps[0].claims[0]);
    EXPECT_NE(complaint.find("mA, not 20.0 mA to 30.0 mA"), std::string::npos) << complaint;
}

TEST(LessonCheck, ThinClaimsAreFound) {
    Lesson lesson = *findShippedLesson("lessons/02-hidden-metal.lesson.json")->lesson;
    ASSERT_TRUE(lesson.steps[1].opposite);
    EXPECT_TRUE(checkLesson(lesson).steps[1].good())
        << "moved along its column: dark in the opposite, one hole to the side";
    lesson.steps[1].opposite.reset();
    const CheckedLesson checked = checkLesson(lesson);
    EXPECT_FALSE(checked.steps[1].good()) << "lit before and after: it says nothing";
    EXPECT_NE(complaintAbout(checked.steps[1].claims[0]).find("says nothing"), std::string::npos);
}

TEST(LessonCheck, TheCourseIsInOrderAndComplete) {
    int number = 0;
    std::set<std::string> ideas;
    for (const ShippedLesson& shipped : shippedLessons()) {
        const Lesson& lesson = *shipped.lesson;
        EXPECT_EQ(shipped.number, number++) << shipped.name;
        EXPECT_FALSE(lesson.answers.empty()) << shipped.name;
        EXPECT_FALSE(lesson.surprise.empty()) << shipped.name;
        EXPECT_FALSE(lesson.summary.empty()) << shipped.name;
        EXPECT_FALSE(lesson.must.empty() || lesson.may.empty()) << shipped.name;
        EXPECT_FALSE(lesson.safety.empty()) << shipped.name;
        EXPECT_EQ(lesson.paper.size(), 2u) << shipped.name;
        EXPECT_GT(lesson.minutes, 0) << shipped.name;
        EXPECT_LE(lesson.minutes, 15) << shipped.name;
        EXPECT_TRUE(ideas.insert(lesson.answers).second) << shipped.name << " answers what another one does";
        EXPECT_FALSE(partsNeeded(lesson).empty());
        int questions = 0, stops = 0;
        for (const LessonStep& step : lesson.steps) {
            EXPECT_FALSE(step.caption.empty());
            questions += step.ask.has_value();
            stops += step.kind == StepKind::Stop;
            if (step.ask) {
                EXPECT_FALSE(step.ask->seen.empty()) << shipped.name;
            }
        }
        if (shipped.number == 0) continue;
        EXPECT_GE(questions, 1) << shipped.name;
        EXPECT_EQ(stops, 1) << shipped.name << ": each board is looked at before power";
        int supplies = 0;
        for (const Part& part : lesson.start->parts) {
            const int limit = part.kind->valueIndex("currentLimit");
            if (limit < 0) continue;
            EXPECT_LE(part.value(limit), 0.05) << shipped.name;
            ++supplies;
        }
        EXPECT_EQ(supplies > 0, shipped.number != 11) << shipped.name << ": only cells in the sun need no supply";
    }
}

}  // namespace
}  // namespace tiepoint
