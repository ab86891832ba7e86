#pragma once
// The sides of a part. Pure; safe from any thread.

#include "core/parts/part_kind.h"

#include <vector>

namespace tiepoint {

/// A first lead for each piece of metal that the kind's leads are: two for a push button with its four legs.
std::vector<int> sidesOf(const PartKind& kind);

/// Two sides are what any part needs to pass current.
inline constexpr std::size_t kSidesNeeded = 2;

}  // namespace tiepoint
