#pragma once
// Copies of parts and jumpers: with new ids, laid beside the originals where all of them fit. Serves duplicating and pasting.

#include "core/edit/edit.h"

#include <string>
#include <vector>

namespace tiepoint {

struct Copies {
    Edit edit;                     ///< adds the copies to the bench
    std::vector<std::string> ids;  ///< of the copies, in the order of the originals
};

/// Copies everything named in `ids` from one bench onto another (or the same). The copies keep their places towards each other and
/// move together to the nearest free place, sideways first; readings pinned to them are copied along. A board whose id the bench doesn't have stands for the bench's first one.
/// Fails, saying why, if they fit nowhere together, or if `ids` names no part or jumper.
Result<Copies> copiesOnto(const Bench& onto, const Bench& from, const std::vector<std::string>& ids);

/// Letters for caps in the order in which new buttons get them. B and the full stop stay free: presenters' remotes send them.
inline constexpr std::string_view kCapLetters = "ASDFGH";
/// The first of them that no cap bears yet; empty if all are taken.
std::string freeCapLetter(const Bench& bench);

}  // namespace tiepoint
