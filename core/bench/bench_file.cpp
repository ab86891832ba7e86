#include "core/bench/bench_file.h"

#include "core/base/file_io.h"

namespace tiepoint {

Result<ReadBench> readBenchFile(const std::filesystem::path& path) {
    auto text = readFile(path, kLargestBenchBytes);
    if (!text) return text.error();
    auto read = readBench(text.value());
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
