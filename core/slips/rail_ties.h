#pragma once
// Jumpers between rails: where they would go, and how they are told. Pure.

#include "core/slips/search.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

struct RailOf {
    std::string board;
    Line line = Line::TopPlus;
};

/// Free holes of two rails between which a jumper would join them, the most natural first; several, for one may lie under something.
using TieWays = std::vector<std::array<JumperEnd, 2>>;

/// Between two rails, at the edge of the board; none where either isn't there or holds nothing, or where they are one net already. Of broken
/// rails either half may be the one in use: a list for each pair of halves.
std::vector<TieWays> tiesOf(const Ground& ground, const RailOf& one, const RailOf& other);
/// Over the break of a rail in two halves.
std::optional<TieWays> bridgeOf(const Ground& ground, const Board& board, Line rail);
/// Offers them together, as one change.
void offerTies(SlipSearch& search, const std::vector<TieWays>& ties, double share);
/// "join top+1 and bottom+1 with a jumper", of several "..., and ..., with a jumper each".
std::string joinWords(const Bench& bench, const Slip& slip);

}  // namespace tiepoint
