// Which of the two a text is stands in its head, which may be anywhere: it is scanned once for that, and then read by its own reader.

#include "core/base/json_scan.h"
#include "core/bench/file_head.h"
#include "core/bench/read_named.h"
#include "core/course/lesson_file.h"

#include <array>
#include <new>

namespace tiepoint {

std::string formatOfText(std::string_view text) {
    text = withoutMark(text);
    constexpr std::array<std::string_view, 4> kLists = {"boards", "parts", "jumpers", "steps"};
    FileHead head;
    const auto error = scanJson(text, kLists, [&](JsonPiece&& piece) {
        if (piece.list < 0) head.take(piece.value);
    });
    return error ? std::string() : std::string(head.format().value_or(""));
}

Result<ReadTable> readTable(std::string_view text) try {
    if (text.size() > kLargestBenchBytes) return Error{ErrorKind::Format, "the file is larger than 128 MB", {}, {}};
    if (formatOfText(text) == kLessonFormat) {
        auto read = readLesson(text);
        if (!read) return read.error();
        auto lesson = std::make_shared<const Lesson>(std::move(read.value().lesson));
        return ReadTable{*lesson->start, lesson, std::move(read.value().warnings)};
    }
    auto read = readBench(text);
    if (!read) return read.error();
    return ReadTable{std::move(read.value().bench), nullptr, std::move(read.value().warnings)};
} catch (const std::bad_alloc&) {
    return Error{ErrorKind::Io, "the file needs more memory than there is", {}, {}};
}

Result<ReadLesson> readLessonFile(const std::filesystem::path& path) {
    return readNamed(path, [](std::string_view text) { return readLesson(text); });
}
Result<ReadTable> readTableFile(const std::filesystem::path& path) {
    return readNamed(path, [](std::string_view text) { return readTable(text); });
}

}  // namespace tiepoint
