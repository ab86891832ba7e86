#pragma once
// Placing by hand: where leads go for a pointer position, and why a place is refused.
// Used by gestures, the keyboard and copies; the window shows the refusal beside the pointer.

#include "core/bench/bench.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// The hole nearest to a point within a reach (mm), or nothing.
std::optional<Hole> nearestHole(const Bench& bench, Point at, double reachMm = 1.8);
/// The same of one board's.
std::optional<Hole> nearestHole(const Board& board, Point at, double reachMm);

/// The id of the part or jumper whose lead is in the hole, with its lead or end index; nothing if it is free.
struct Occupant {
    std::string id;
    int lead = 0;
    bool jumper = false;
};
std::optional<Occupant> occupantOf(const Bench& bench, const Hole& hole);

/// Why nothing can go into a hole: "c14 is taken", "c9 lies under R1"; nothing if something can.
std::optional<std::string> whyNotFree(const Bench& bench, const Hole& hole);

/// The nearest free hole of the same strip (ties: towards row a or number 1), taken ones and those under a body, a bare leg or a flat
/// wire left out; nothing if there is none.
std::optional<Hole> nearestFreeInStrip(const Bench& bench, const Hole& hole);

/// The part as it would lie with its first lead in `anchor` and turned by quarter turns (bending parts at their current
/// or default span). Leads that fall outside every board stay empty and the part is then refused.
/// For bending parts the second lead is `span` pitches along the turn; across the gap the next row counts 3.
Part placedAt(const Bench& bench, const Part& part, const Hole& anchor, int quarterTurns);

/// How many quarter turns clockwise the part lies now (bending: rounded to the nearest).
int quarterTurnsOf(const Bench& bench, const Part& part);

/// Why the part can't lie so, in plain words: a lead outside the board, a hole taken (by whom), legs that don't fit, a span
/// out of range, or a clash with what is there (core/edit/clashes.h). Ignores the part with the same id and every id in `ignoring`. Nothing if it can.
std::optional<std::string> refusal(const Bench& bench, const Part& part, const std::vector<std::string>& ignoring = {});
/// The same for a jumper: ends that are taken or covered, or no way for the wire.
std::optional<std::string> refusal(const Bench& bench, const Jumper& jumper,
                                   const std::vector<std::string>& ignoring = {});
/// Why a hand couldn't bring a bench to another one: the first refusal among the parts and jumpers that lie otherwise there. The other
/// bench must be valid.
std::optional<std::string> refusalOfChange(const Bench& before, const Bench& after);

/// The part turned by quarter turns about its first lead, as it turns in the hand. The result may be refused.
Part turned(const Bench& bench, const Part& part, int quarterTurns);
/// The part as it lies after a quarter turn to the right (1) or left (-1). One with two legs goes on round to the next place that fits;
/// half a turn swaps its legs in their holes, if it can. Nothing, and why, if none fits.
struct Turned {
    std::optional<Part> part;
    std::string why;
};
Turned turnedRound(const Bench& bench, const Part& part, int direction);
/// The part moved by whole columns and rows (rails: by places); nothing if a lead leaves the holes.
std::optional<Part> shifted(const Bench& bench, const Part& part, int columns, int rows);
std::optional<Jumper> shifted(const Bench& bench, const Jumper& jumper, int columns, int rows);
std::optional<Note> shifted(const Bench& bench, const Note& note, int columns, int rows);

/// Ids of parts whose bodies overlap this one's (validly placed) body.
std::vector<std::string> overlapping(const Bench& bench, const Part& part);

}  // namespace tiepoint
