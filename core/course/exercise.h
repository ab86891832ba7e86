#pragma once
// Exercises: lessons with a goal. What their limits allow, counted on a bench, and the lock that keeps mends to the exercise. Pure functions.

#include "core/course/lesson.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

inline bool isExercise(const Lesson& lesson) { return lesson.goal != nullptr; }

/// What counts against the limits: parts without supplies and instruments, and jumpers.
int partsCounted(const Bench& bench);
int jumpersCounted(const Bench& bench);

/// The limits that a bench passes, each in a sentence: "Two jumpers more than the six allowed." Empty where it keeps them.
std::vector<std::string> limitsPassed(const Bench& bench, const LessonLimits& limits);
/// How much of its limits a bench has used: "3 of 4 parts, 2 of 4 jumpers"; empty where there are none.
std::string limitsUsed(const Bench& bench, const LessonLimits& limits);

bool hasLock(const Lesson& lesson, std::string_view lock);

/// The lock of a bench whose exercise keeps mends to itself; no pass phrase opens it. It stays in what a learner saves.
inline constexpr std::string_view kExerciseLock = "exercise";
/// Locks a bench at place and proof, or at less where it says so; a lock of its own stays.
void lockMends(Bench& bench);

}  // namespace tiepoint
