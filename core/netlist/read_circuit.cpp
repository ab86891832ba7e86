// Which of the two a text is stands in its head, which may be anywhere: it is scanned once for that, and then read by its own reader.

#include "core/base/json_text.h"
#include "core/bench/bench_file.h"
#include "core/bench/file_head.h"
#include "core/bench/read_named.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/circuit_file.h"

#include <fmt/format.h>

#include <array>

namespace tiepoint {
namespace {

constexpr std::string_view kBenchFormat = "tiepoint-bench", kNetlistFormat = "tiepoint-circuit";
/// So that none of them is held in one piece.
constexpr std::array<std::string_view, 3> kLongLists = {"boards", "parts", "jumpers"};

Result<ReadCircuit> fromBench(std::string_view text) {
    auto read = readBench(text);
    if (!read) return read.error();
    ReadCircuit circuit;
    circuit.bench = std::make_shared<const Bench>(std::move(read.value().bench));
    circuit.netlist = netlistOf(*buildLayout(circuit.bench));
    circuit.warnings = std::move(read.value().warnings);
    return circuit;
}

Result<ReadCircuit> fromNetlist(std::string_view text) {
    auto read = readNetlist(text);
    if (!read) return read.error();
    return ReadCircuit{std::move(read.value().netlist), nullptr, std::move(read.value().warnings)};
}

/// The format that a text says it has; an empty one where it says none.
Result<std::string> formatOf(std::string_view text) try {
    text = withoutMark(text);
    FileHead head;
    std::size_t begin = 0;
    const auto take = [&](JsonPiece&& piece) {
        if (piece.list >= 0) return;
        const std::size_t at = piece.value.begin;
        if (piece.value.name == "format") begin = at;
        head.take(piece.value);
    };
    if (auto error = scanJson(text, kLongLists, take)) return std::move(*error);
    const std::string format(head.format().value_or(""));
    if (format.empty() || format == kBenchFormat || format == kNetlistFormat) return format;
    return located(text, {ErrorKind::Format,
                          fmt::format("the format is {}, neither \"{}\" nor \"{}\"", inQuotes(format), kBenchFormat,
                                      kNetlistFormat),
                          "/format", begin});
} catch (const std::bad_alloc&) {
    return Error{ErrorKind::Io, "the file needs more memory than there is", {}, {}};
}

}  // namespace

Result<ReadCircuit> readCircuitText(std::string_view text) {
    if (text.size() > kLargestBenchBytes) return Error{ErrorKind::Format, "the file is larger than 128 MB", {}, {}};
    const auto format = formatOf(text);
    if (!format) return format.error();
    return *format == kNetlistFormat ? fromNetlist(text) : fromBench(text);
}

Result<ReadCircuit> readCircuit(const std::filesystem::path& path) {
    return readNamed(path, [](std::string_view text) { return readCircuitText(text); });
}

}  // namespace tiepoint
