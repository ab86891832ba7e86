#pragma once
// Copies of parts and jumpers: with new ids, laid beside the originals where all of them fit. Serves duplicating and pasting.

#include "core/edit/edit.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

struct Copies {
    Edit edit;                     ///< adds the copies to the bench
    std::vector<std::string> ids;  ///< of the last copy, in the order of the originals
    int count = 1;                 ///< how often all was copied
    std::string noMore;            ///< why there are fewer than asked for, in words; empty: there aren't
};

/// Copies everything named in `ids` `count` times, in a row to the right: the same rows, each copy at the nearest columns after the last
/// where nothing else is in its strips. Ends in rails go along into free holes of their rails. Where a board is full the row goes on on
/// the next one. Readings pinned to what is copied are copied along. Fails, saying why, if there is no room for one, or if `ids` names no
/// part or jumper.
Result<Copies> copiesInRow(const Bench& bench, const std::vector<std::string>& ids, int count);

/// Copies everything named in `ids` from one bench onto another (or the same). The copies keep their places towards each other and
/// move together to the nearest free place, sideways first, of the board of `beside` or else of the one that they were on (a board whose
/// id the bench doesn't have stands for the bench's first one), or else of any. Readings pinned to them are copied along.
/// Fails, saying why, if they fit nowhere together, or if `ids` names no part or jumper.
Result<Copies> copiesOnto(const Bench& onto, const Bench& from, const std::vector<std::string>& ids,
                          const std::optional<Hole>& beside = {});

/// Letters for caps in the order in which new buttons get them. B and the full stop stay free: presenters' remotes send them.
inline constexpr std::string_view kCapLetters = "ASDFGH";
/// The first of them that no cap bears yet; empty if all are taken.
std::string freeCapLetter(const Bench& bench);

}  // namespace tiepoint
