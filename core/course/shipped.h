#pragma once
// The course that ships: the first build and ten lessons of a model harbour, in their order. Read once, from the embedded files; a broken
// one ends the program, as a broken part kind does.

#include "core/course/lesson.h"

#include <memory>
#include <span>
#include <string_view>

namespace tiepoint {

struct ShippedLesson {
    std::string_view name;  ///< among the embedded files: "lessons/01-both-ends.lesson.json"
    int number = 0;         ///< 1..10; 0: the first build
    std::shared_ptr<const Lesson> lesson;
};

std::span<const ShippedLesson> shippedLessons();
/// The exercises that ship, in their order; numbered from 1.
std::span<const ShippedLesson> shippedExercises();
/// The lesson or exercise of that name, or null.
const ShippedLesson* findShippedLesson(std::string_view name);

}  // namespace tiepoint
