#pragma once
// The files of resources/parts, resources/benches and resources/words, embedded at build time and sorted by name.

#include <span>
#include <string_view>

namespace tiepoint {

/// One embedded file: its path below resources ("parts/led.json") and its whole text (UTF-8).
struct EmbeddedFile {
    std::string_view name;
    std::string_view text;
};

/// All embedded files; they live as long as the program.
std::span<const EmbeddedFile> embeddedFiles();

}  // namespace tiepoint
