#pragma once
// What a bench is compared with, from a file: a bench, a circuit without places, or an exercise, whose goal and limits are judged. Pure but for
// reading the file.

#include "core/compare/comparison.h"
#include "core/course/lesson.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

/// The goal of an exercise with its limits. Requires a goal.
ComparisonTarget exerciseTarget(const Lesson& lesson);

struct ReadTarget {
    std::shared_ptr<const ComparisonTarget> target;
    std::vector<Error> warnings;
};
/// Takes a bench, a circuit, a picture with a bench inside, or a lesson that has a goal. Errors name the file.
Result<ReadTarget> readTarget(const std::filesystem::path& path);

/// What is wrong with an exercise, each in a sentence: a goal that passes its own limits or has no solution, a start that does what is asked
/// for already. Empty for a good one and for lessons without a goal.
std::vector<std::string> complaintsAbout(const Lesson& exercise);

}  // namespace tiepoint
