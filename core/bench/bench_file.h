#pragma once
// Reading and writing benches (*.bench.json). The format is documented in DEVELOPERS.md.

#include "core/base/result.h"
#include "core/bench/bench.h"
#include "core/parts/catalogue.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// The largest file that is read; more than a million parts fit.
inline constexpr std::size_t kLargestBenchBytes = 128'000'000;

struct ReadBench {
    Bench bench;
    std::vector<Error> warnings;  ///< members that are not known here; kept in the bench's extras
};

/// Reads a bench from text. Linear in its size, never throws. The result is valid (see validate.h) and points into the catalogue.
Result<ReadBench> readBench(std::string_view text, const Catalogue& kinds = Catalogue::shipped());
/// Reads a file; its name is in every error and warning. Over 128 MB is an error.
Result<ReadBench> readBenchFile(const std::filesystem::path& path);

/// The text of a bench: stable order, two spaces, a line for each board, part and jumper, a line break at the end.
/// readBench(writeBench(b)) == b for every valid bench.
std::string writeBench(const Bench& bench);
/// One object as its line of a bench file: {"id": "R1", "kind": "resistor", ...}. A jumper's stands in core/bench/jumper_ends.h.
std::string boardLine(const Board& board);
std::string partLine(const Part& part);
std::string noteLine(const Note& note);
std::string pinnedLine(const PinnedReading& reading);
/// What a bench says about its findings, as in its file: {"level": 1}.
std::string disclosureLine(const Disclosure& disclosure);
/// Light and temperature, as in its file: {"light": 300, "temperature": 25}.
std::string surroundingsLine(const SaidSurroundings& surroundings);
/// Writes atomically: a temporary file beside it, synced, renamed over. On failure the old file is untouched.
Result<Done> writeBenchFile(const Bench& bench, const std::filesystem::path& path);

}  // namespace tiepoint
