#include "core/compare/exercise_target.h"

#include "core/bench/read_named.h"
#include "core/course/exercise.h"
#include "core/course/lesson_file.h"
#include "core/netlist/circuit_file.h"
#include "core/words/words.h"

#include <utility>

namespace tiepoint {
namespace {

Result<ReadTarget> ofLesson(std::string_view text) {
    auto read = readLesson(text);
    if (!read) return read.error();
    if (!isExercise(read->lesson))
        return Error{
            ErrorKind::Format, "this lesson has no goal to compare with: only an exercise has one", {"/goal"}, {}};
    return ReadTarget{std::make_shared<const ComparisonTarget>(exerciseTarget(read->lesson)),
                      std::move(read.value().warnings)};
}

Result<ReadTarget> ofCircuit(std::string_view text) {
    auto read = readCircuitText(text);
    if (!read) return read.error();
    auto target = read->bench ? std::make_shared<const ComparisonTarget>(read->bench)
                              : std::make_shared<const ComparisonTarget>(read->netlist);
    return ReadTarget{std::move(target), std::move(read.value().warnings)};
}

}  // namespace

ComparisonTarget exerciseTarget(const Lesson& lesson) {
    ComparisonTarget target(lesson.goal);
    target.limits = lesson.limits;
    target.exercise = lesson.title;
    return target;
}

Result<ReadTarget> readTarget(const std::filesystem::path& path) {
    return readNamed(path, [](std::string_view text) {
        return formatOfText(text) == kLessonFormat ? ofLesson(text) : ofCircuit(text);
    });
}

std::vector<std::string> complaintsAbout(const Lesson& exercise) {
    std::vector<std::string> complaints;
    if (!isExercise(exercise)) return complaints;
    for (const std::string& passed : limitsPassed(*exercise.goal, exercise.limits))
        complaints.push_back(say("exercise.goalOver", {{"passed", passed}}));
    const auto goal = evaluate(exercise.goal, {});
    if (goal->status() == Status::None) complaints.push_back(say("exercise.goalUnsolved"));
    const auto compared = compareBenches(exercise.start, exerciseTarget(exercise));
    if (compared && compared->isReached()) complaints.push_back(say("exercise.startIsGoal"));
    return complaints;
}

}  // namespace tiepoint
