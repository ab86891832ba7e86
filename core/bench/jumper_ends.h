#pragma once
// The ends of jumpers as a file names them: holes (A.e12) or sockets of parts (PS1.GND2). Which of both a text is shows only
// with the parts at hand. Internal to reading and writing; pure functions.

#include "core/bench/read_objects.h"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

namespace tiepoint {

/// Kinds by part id; the ids are borrowed.
using PartKinds = std::unordered_map<std::string_view, const PartKind*>;
PartKinds kindsOf(const Bench& bench);

/// Decides for each end whether it is a hole or a socket, and fills the jumper with them. Trouble has the pointer from the jumper on.
std::optional<Trouble> resolveEnds(UnresolvedJumper& jumper, const PartKinds& kinds);
/// An end as JSON text. A socket's part must be among the kinds.
std::string endText(const JumperEnd& end, const PartKinds& kinds);
/// A jumper as its line of a bench file.
std::string jumperLine(const Jumper& jumper, const PartKinds& kinds);

}  // namespace tiepoint
