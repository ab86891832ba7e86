#include "core/course/exercise.h"

#include "core/base/capital.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

std::string numberWords(int count) { return say("count.number", {{"count", count}}); }

void addPassed(std::vector<std::string>& passed, std::string_view id, int used, int allowed) {
    if (allowed == 0 || used <= allowed) return;
    const int over = used - allowed;
    passed.push_back(
        capitalised(say(id, {{"over", over}, {"overWords", numberWords(over)}, {"allowed", numberWords(allowed)}})));
}

}  // namespace

int partsCounted(const Bench& bench) {
    return static_cast<int>(std::ranges::count_if(bench.parts, [](const Part& part) { return !standsOnTable(part); }));
}

int jumpersCounted(const Bench& bench) { return static_cast<int>(bench.jumpers.size()); }

std::vector<std::string> limitsPassed(const Bench& bench, const LessonLimits& limits) {
    std::vector<std::string> passed;
    addPassed(passed, "exercise.partsOver", partsCounted(bench), limits.parts);
    addPassed(passed, "exercise.jumpersOver", jumpersCounted(bench), limits.jumpers);
    return passed;
}

std::string limitsUsed(const Bench& bench, const LessonLimits& limits) {
    std::vector<std::string> used;
    if (limits.parts > 0)
        used.push_back(say("exercise.partsUsed", {{"used", partsCounted(bench)}, {"allowed", limits.parts}}));
    if (limits.jumpers > 0)
        used.push_back(say("exercise.jumpersUsed", {{"used", jumpersCounted(bench)}, {"allowed", limits.jumpers}}));
    return sayList(used, "list.comma");
}

bool hasLock(const Lesson& lesson, std::string_view lock) {
    return isExercise(lesson) && std::ranges::find(lesson.limits.locks, lock) != lesson.limits.locks.end();
}

void lockMends(Bench& bench) {
    Disclosure disclosure = bench.disclosure.value_or(Disclosure{});
    disclosure.level = std::min(disclosure.level, Reveal::Proof);
    if (disclosure.lock.empty()) disclosure.lock = kExerciseLock;
    bench.disclosure = std::move(disclosure);
}

}  // namespace tiepoint
