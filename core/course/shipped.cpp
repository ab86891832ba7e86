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

std::vector<ShippedLesson> readShipped() {
    std::vector<ShippedLesson> lessons;
    for (const EmbeddedFile& file : embeddedFiles()) {
        constexpr std::string_view kFolder = "lessons/";
        if (!file.name.starts_with(kFolder)) continue;
        auto read = readLesson(file.text);
        if (!read) {
            fmt::print(stderr, "{}: {}\n", file.name, read.error().oneLine());
            std::abort();
        }
        const int number = std::atoi(std::string(file.name.substr(kFolder.size(), 2)).c_str());
        lessons.push_back({file.name, number, std::make_shared<const Lesson>(std::move(read).value().lesson)});
    }
    std::ranges::sort(lessons, {}, &ShippedLesson::number);
    return lessons;
}

}  // namespace

std::span<const ShippedLesson> shippedLessons() {
    static const std::vector<ShippedLesson> lessons = readShipped();
    return lessons;
}

const ShippedLesson* findShippedLesson(std::string_view name) {
    const auto lessons = shippedLessons();
    const auto found = std::ranges::find(lessons, name, &ShippedLesson::name);
    return found == lessons.end() ? nullptr : &*found;
}

}  // namespace tiepoint
