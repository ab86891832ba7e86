#include "core/bench/bench_file.h"

#include "core/base/file_io.h"
#include "core/bench/read_named.h"

#include <utility>

namespace tiepoint {

Result<ReadBench> readBenchFile(const std::filesystem::path& path) {
    return readNamed(path, [](std::string_view text) { return readBench(text); });
}

Result<Done> writeBenchFile(const Bench& bench, const std::filesystem::path& path) {
    return writeFileAtomically(path, writeBench(bench));
}

}  // namespace tiepoint
