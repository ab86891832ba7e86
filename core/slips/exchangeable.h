#pragma once
// Which leads of a part do the same work. Pure functions of the kind.

#include "core/parts/part_kind.h"

#include <optional>
#include <utility>
#include <vector>

namespace tiepoint {

/// By lead: the first lead that does the same work. Joined leads do, and both ends of a part that works either way round.
std::vector<int> terminalsOf(const PartKind& kind);
/// Whether it makes a difference which way round the part is: it has two ends or more, and they don't do the same work.
bool hasDirection(const PartKind& kind);
/// The two leads between which the part lies, by the first of each; nothing for parts with more or fewer terminals.
std::optional<std::pair<int, int>> twoEndsOf(const PartKind& kind);

}  // namespace tiepoint
