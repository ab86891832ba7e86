#pragma once
// Small questions about holes that placing and refusing share.

#include "core/bench/bench.h"

#include <functional>
#include <optional>
#include <string>

namespace tiepoint {

bool holeExists(const Bench& bench, const Hole& hole);
/// Whether both exist and are one piece of spring metal.
bool sameStrip(const Bench& bench, const Hole& a, const Hole& b);
/// "e12" on a bench with one board, "B.e12" on others.
std::string holeName(const Bench& bench, const Hole& hole);
/// Height of a row on the bench.
double rowMm(const Board& board, Line row);
/// Whether a place lies between rows e and f of a board, on neither of them.
bool isInGap(const Board& board, Point at);
/// The nearest hole of the same strip that suits (ties: towards row a or number 1).
std::optional<Hole> nearestWhere(const Bench& bench, const Hole& hole, const std::function<bool(const Hole&)>& suits);

}  // namespace tiepoint
