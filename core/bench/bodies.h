#pragma once
// How much room things take on the boards: bodies as their packages say, at their places, bare legs, and what stands in the holes.
// The one place that knows it. Arcs of jumpers, placing by hand and findings ask here. Pure; mm.
//
// The laws:
//   - A hole is covered where its whole opening lies under a body: its middle more than 0.55 mm inside the outline.
//   - A leg, a flat wire or an arc may begin under an edge, as far as a covered hole lets it, and must then get clear: 0.7 mm for each
//     millimetre of its way, until a leg is outside and a wire half a millimetre off (its insulation and the body give a little).
//   - Bare metal touches where the middles of two legs, or of a leg and a pin, are nearer than half a millimetre.
//   - An arched jumper passes over what is at most 4 mm high, which is what lies; a flat wire passes under what lies raised.

#include "core/base/in_order.h"
#include "core/bench/table.h"
#include "core/parts/outline.h"

namespace tiepoint {

inline constexpr double kBareMm = 0.5;          ///< breadth of legs and pins
inline constexpr double kHalfWireMm = 0.81;     ///< insulation
inline constexpr double kUnderEdgeMm = 0.55;    ///< so far a pin stands under the edge of a body
inline constexpr double kLegRoomMm = -0.05;     ///< outside of a body, for the middle of a leg: a touch is none
inline constexpr double kWireRoomMm = 0.51;     ///< for the middle of a wire
inline constexpr double kFlatPinRoomMm = 0.76;  ///< from the middle of a flat wire to that of a pin
inline constexpr double kArcRiseMm = 4;         ///< how high an arched jumper rises

/// The body of a part that stands in holes.
struct Body {
    int part = -1;
    Outline outline;
    double radiusMm = 0;  ///< of the circle round the outline
    double heightMm = 0;  ///< of its top over the board
    bool raised = false;  ///< lies on bent legs, clear of the board

    bool isTall() const { return heightMm > kArcRiseMm; }
};

/// The bare metal from a hole to the body.
struct Leg {
    int part = -1, lead = -1;
    Point tip, exit;
};

/// What a part takes up where it lies; nothing for one that stands on the table.
std::optional<Body> bodyOf(const Part& part, const PartPlace& place, int index);
std::vector<Leg> legsOf(const Part& part, const PartPlace& place, int index);

/// The bodies on the boards.
InOrder<Body> bodiesOn(const Bench& bench, const Table& table);

/// The same with the boxes that stand on the table, which are taller than any wire: what arcs are laid round.
InOrder<Body> bodiesAndBoxesOn(const Bench& bench, const Table& table);

/// How far outside of a body something must keep at a distance from the hole in which it ends, where `freeMm` is enough farther on.
double roomBeside(double freeMm, double fromHoleMm);

bool covers(const Body& body, Point hole);
/// Whether a way runs through the body: nearer than `freeMm` allows beyond the holes in which it ends.
bool runsThrough(const Body& body, const WireCurve& way, double freeMm, std::initializer_list<Point> holes);
bool runsThrough(const Body& body, const Leg& leg);
/// The same for a wire that lies straight on the board.
bool runsThrough(const Body& body, Point first, Point second);

/// Whether bare metal touches.
bool touch(const Leg& one, const Leg& other);
bool touches(const Leg& leg, Point pin);

}  // namespace tiepoint
