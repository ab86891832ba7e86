#include "core/course/lesson_check.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

std::shared_ptr<const Snapshot> solvedIn(const Situation& situation) {
    return evaluate(situation.bench, situation.inputs);
}

/// The instants in which a step's claims must not all hold as well.
std::vector<std::shared_ptr<const Snapshot>> opposites(const Lesson& lesson, int step) {
    std::vector<std::shared_ptr<const Snapshot>> others{solvedIn(situationOf(lesson, step - 1))};
    const LessonStep& here = lesson.steps[step];
    if (here.opposite) others.push_back(solvedIn(*here.opposite));
    if (!here.tried.isNothing()) others.push_back(solvedIn({here.bench, {}}));
    return others;
}

}  // namespace

bool CheckedStep::good() const { return std::ranges::all_of(claims, &CheckedClaim::good); }
bool CheckedLesson::good() const { return std::ranges::all_of(steps, &CheckedStep::good); }

CheckedLesson checkLesson(const Lesson& lesson) {
    CheckedLesson checked;
    for (int step = 0; step < lesson.stepCount(); ++step) {
        CheckedStep& result = checked.steps.emplace_back();
        const std::vector<Predicate>& claims = lesson.steps[step].then;
        if (claims.empty()) continue;
        const auto here = solvedIn(situationOf(lesson, step));
        const auto others = opposites(lesson, step);
        for (const Predicate& claim : claims) {
            const bool thin =
                std::ranges::all_of(others, [&](const auto& other) { return judge(claim, *other).holds; });
            result.claims.push_back({claim, judge(claim, *here), thin});
        }
    }
    return checked;
}

std::string complaintAbout(const CheckedClaim& claim) {
    const std::string words = predicateWords(claim.claim);
    if (!claim.here.holds) return fmt::format("\"{}\" doesn't hold: {}", words, claim.here.figure);
    if (claim.thin)
        return fmt::format("\"{}\" says nothing: it holds one step earlier and in the opposite too ({})", words,
                           claim.here.figure);
    return {};
}

}  // namespace tiepoint
