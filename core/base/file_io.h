#pragma once
// Whole files in and out. Errors say in plain words why it failed; the file's name is in Error::file.

#include "core/base/result.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace tiepoint {

/// Done if a file stands there; else an error that says what does, or that nothing does. Opens nothing.
Result<Done> checkFile(const std::filesystem::path& path);

/// The content of a file; an error at once where a folder, a pipe or a device stands. Over `largestBytes` is an error, found before all of it is read.
Result<std::string> readFile(const std::filesystem::path& path, std::size_t largestBytes);

/// Puts a text in a file's place in one step: a temporary file beside it, synced to the disk, renamed over
/// it. Whoever reads sees the old content or the new, also after a power cut; on failure the old file is
/// untouched. Keeps permissions; follows links. What is no file, such as a folder, a pipe or a device, and what is write-protected is
/// refused and never replaced. Safe from any thread. Not durable, it is quick and safe from the death of the program, but not yet from a
/// power cut: syncToDisk() makes it so.
Result<Done> writeFileAtomically(const std::filesystem::path& path, std::string_view text, bool durable = true);
/// Waits until what stands in a file is on the disk. A file that is gone is no trouble.
void syncToDisk(const std::filesystem::path& path);

}  // namespace tiepoint
