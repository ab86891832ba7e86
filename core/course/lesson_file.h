#pragma once
// Reading and writing lessons (*.lesson.json). The format is documented in DEVELOPERS.md.

#include "core/course/lesson.h"

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

inline constexpr std::string_view kLessonFormat = "tiepoint-lesson";
inline constexpr int kMostSteps = 200;
inline constexpr int kFewestAnswers = 2, kMostAnswers = 4;

struct ReadLesson {
    Lesson lesson;
    std::vector<Error> warnings;  ///< members that are not known here; those of the root are kept
};

/// Reads a lesson from text: strict, whole or not at all. Every edit is applied, and what claims name must be there.
Result<ReadLesson> readLesson(std::string_view text);
Result<ReadLesson> readLessonFile(const std::filesystem::path& path);

/// The text of a lesson, in stable order. readLesson(writeLesson(l)) has the same benches, words and claims.
std::string writeLesson(const Lesson& lesson);
Result<Done> writeLessonFile(const Lesson& lesson, const std::filesystem::path& path);

/// The format that a text says it has; empty where it says none or can't be scanned.
std::string formatOfText(std::string_view text);

/// What a file on the table is: a bench, or a lesson that begins with one.
struct ReadTable {
    Bench bench;
    std::shared_ptr<const Lesson> lesson;  ///< null where the file is a bench
    std::vector<Error> warnings;
};
/// A lesson opens everywhere a bench opens: its member "format" says which it is.
Result<ReadTable> readTable(std::string_view text);
Result<ReadTable> readTableFile(const std::filesystem::path& path);

}  // namespace tiepoint
