#pragma once
// Edits as JSON: what mends, answers and lessons propose. Boards, parts, jumpers, notes and pinned readings stand in it as in a bench
// file. Pure functions; safe from any thread.
//
//   {"text": "Take 330 Ω for R1", "edits": [ operation, ... ]}
//
//   {"operation": "add", "part": {...}, "place": 2}     or "board", "jumper", "note", "pinned"; place: where in its list, left out: last
//   {"operation": "replace", "part": {...}}             or "board", "jumper", "note": the one with that id
//   {"operation": "remove", "id": "R1"}
//   {"operation": "title", "title": "Quay bell"}
//   {"operation": "reveal", "reveal": {...} or null}
//   {"operation": "surroundings", "surroundings": {...} or null}

#include "core/base/result.h"
#include "core/edit/edit.h"
#include "core/parts/catalogue.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// Each operation as its line. The edit must suit the bench: the parts whose sockets it names are there, or it adds them first.
std::vector<std::string> operationLines(const Edit& edit, const Bench& bench);

/// More operations in one edit are refused: what applies them looks for each thing in its list.
inline constexpr int kMostOperations = 10'000;

struct ReadEdit {
    Edit edit;
    std::vector<Error> warnings;  ///< members of boards, parts, ... that are not known; they are kept
};

/// Reads the object above; without "text" the edit has no name. Strict about names, types and numbers of the operations. Whether the
/// edit suits the bench is for apply() to judge; the bench says which ends of jumpers are sockets.
Result<ReadEdit> readEdit(std::string_view text, const Bench& bench, const Catalogue& kinds = Catalogue::shipped());

/// Reads a list of operations that stands in a larger text, from `begin` to `end`, under the pointer `pointer`; errors and warnings
/// have their place in the larger text.
Result<ReadEdit> readOperations(std::string_view text, std::size_t begin, std::size_t end, const std::string& pointer,
                                const Bench& bench, const Catalogue& kinds = Catalogue::shipped());

/// Names of the operations as they stand in the table of the reader, each once.
std::vector<std::string_view> operationNames();

}  // namespace tiepoint
