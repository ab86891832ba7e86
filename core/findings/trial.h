#pragma once
// Trials of moves by hand, for rules that propose mends: how one lead, one end or one rigid part could lie a little elsewhere.
// Pure functions; safe from any thread.

#include "core/findings/examination.h"

#include <string>
#include <vector>

namespace tiepoint {

/// One lead, jumper end or rigid part put into a neighbouring strip that something else is plugged into.
struct Move {
    std::string id;    ///< of the part or jumper
    std::string what;  ///< "The anode of D1", "W2", "S1"
    Hole from, to;
    int fromNet = 0, toNet = 0;
    bool wasAlone = false;  ///< its net holds no other part
    Edit edit;
};

/// Moves of a part's leads: each lead of its own, or a rigid part by one column.
std::vector<Move> movesOfPart(const Examination& examination, int part);
/// Moves of a jumper's two ends.
std::vector<Move> movesOfJumper(const Examination& examination, int jumper);

/// The part with its first and last lead exchanged.
Edit exchangeLeads(const Part& part);
/// "the anode of D1".
std::string leadInWords(const Part& part, int lead);
/// The text with the position's words before its full stop.
std::string saidOf(std::string text, const Position& position);

}  // namespace tiepoint
