#pragma once
// Reading and writing circuits without places (*.circuit.json), and reading what may be either a circuit or a bench. The format is
// documented in DEVELOPERS.md.

#include "core/base/result.h"
#include "core/netlist/netlist.h"

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

struct ReadNetlist {
    Netlist netlist;
    std::vector<Error> warnings;  ///< members that are not known here; kept in extras
};

/// Reads a circuit from text. As strict as readBench(): linear in its size, never throws; the result is valid.
Result<ReadNetlist> readNetlist(std::string_view text);

/// The text of a circuit: stable order, a line for each part, a line break at the end. readNetlist(writeNetlist(n)) == n for every valid
/// netlist.
std::string writeNetlist(const Netlist& netlist);
/// Writes atomically, as writeBenchFile().
Result<Done> writeNetlistFile(const Netlist& netlist, const std::filesystem::path& path);

/// A circuit that is wanted, however it was given.
struct ReadCircuit {
    Netlist netlist;
    std::shared_ptr<const Bench> bench;  ///< where the file was a bench; else null
    std::vector<Error> warnings;
};
/// Takes the text of a bench or of a circuit; its member "format" says which.
Result<ReadCircuit> readCircuitText(std::string_view text);
/// The same for a file; its name is in every error and warning.
Result<ReadCircuit> readCircuit(const std::filesystem::path& path);

}  // namespace tiepoint
