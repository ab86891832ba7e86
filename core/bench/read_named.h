#pragma once
// What reading any file of the program has in common: its bytes, a bench inside a picture, and errors and warnings that name the file.
// Internal to reading.

#include "core/base/file_io.h"
#include "core/bench/bench_file.h"
#include "core/bench/bench_in_picture.h"

#include <filesystem>
#include <string_view>
#include <utility>

namespace tiepoint {

/// `read` takes the text and returns a Result; warnings of what it holds name the file too. A file of more bytes than that is refused unread.
template <class Read>
auto readNamed(const std::filesystem::path& path, Read read, std::size_t mostBytes = kLargestBenchBytes)
    -> decltype(read(std::string_view())) {
    auto bytes = readFile(path, mostBytes);
    if (!bytes) return bytes.error();
    const auto text = textOrInside(std::move(bytes).value());
    auto result = text ? read(std::string_view(*text)) : decltype(read(std::string_view()))(text.error());
    if (!result) {
        Error error = result.error();
        error.file = path.string();
        return error;
    }
    if constexpr (requires { result.value().warnings; }) {
        for (Error& warning : result.value().warnings) warning.file = path.string();
    }
    return result;
}

}  // namespace tiepoint
