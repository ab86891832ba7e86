#include "core/bench/bench_file.h"

#include "core/base/file_io.h"
#include "core/bench/bench_in_picture.h"

#include <utility>

namespace tiepoint {

Result<ReadBench> readBenchFile(const std::filesystem::path& path) {
    auto bytes = readFile(path, kLargestBenchBytes);
    if (!bytes) return bytes.error();
    const auto text = textOrInside(std::move(bytes).value());
    auto read = text ? readBench(*text) : Result<ReadBench>(text.error());
    if (!read) {
        Error error = read.error();
        error.file = path.string();
        return error;
    }
    for (Error& warning : read.value().warnings) warning.file = path.string();
    return read;
}

Result<Done> writeBenchFile(const Bench& bench, const std::filesystem::path& path) {
    return writeFileAtomically(path, writeBench(bench));
}

}  // namespace tiepoint
