#include "core/course/shipped.h"

#include "core/base/embedded.h"
#include "core/course/lesson_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <vector>

namespace tiepoint {
namespace {

std::vector<ShippedLesson> readShipped(std::string_view folder) {
    std::vector<ShippedLesson> lessons;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with(folder)) continue;
        auto read = readLesson(file.text);
        if (!read) {
            fmt::print(stderr, "{}: {}\n", file.name, read.error().oneLine());
            std::abort();
        }
        const int number = std::atoi(std::string(file.name.substr(folder.size(), 2)).c_str());
        lessons.push_back({file.name, number, std::make_shared<const Lesson>(std::move(read).value().lesson)});
    }
    std::ranges::sort(lessons, {}, &ShippedLesson::number);
    return lessons;
}

}  // namespace

std::span<const ShippedLesson> shippedLessons() {
    static const std::vector<ShippedLesson> lessons = readShipped("lessons/");
    return lessons;
}

std::span<const ShippedLesson> shippedExercises() {
    static const std::vector<ShippedLesson> exercises = readShipped("exercises/");
    return exercises;
}

const ShippedLesson* findShippedLesson(std::string_view name) {
    for (const auto& shipped : {shippedLessons(), shippedExercises()}) {
        const auto found = std::ranges::find(shipped, name, &ShippedLesson::name);
        if (found != shipped.end()) return &*found;
    }
    return nullptr;
}

}  // namespace tiepoint
