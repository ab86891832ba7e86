#pragma once
// Where everything lies on the table, in mm: derived from the bench.
// Boxes stand where a hand has put them; of the others supplies stand at the left of the boards and instruments at their right, clear of
// those. Parts with no lead in a hole lie below the boards. Nothing of it but the places of boards and of boxes put by hand is saved.

#include "core/bench/bench.h"

namespace tiepoint {

/// The way of a wire: a cubic from `a` to `d`.
struct WireCurve {
    Point a, b, c, d;
    Point at(double t) const;
    friend bool operator==(const WireCurve&, const WireCurve&) = default;
};

/// Where one part lies.
struct PartPlace {
    Pose pose;
    std::vector<Point> leadsMm;  ///< by lead index: the tip of the lead (its hole, or where it hangs), or the socket
    std::vector<Point> exitsMm;  ///< by lead index: where the lead leaves the body
    std::vector<WireCurve>
        cablesMm;  ///< by lead index: from exit (or the end of its detour) to tip, of a part that stands on the table; else empty
    std::vector<WireCurve>
        detoursMm;  ///< by lead index: from the exit to where its cable begins, of one that goes round a box first; else a point
    bool mirrored = false;  ///< a box whose face is laid out from right to left, so that its sockets look at the boards
    friend bool operator==(const PartPlace&, const PartPlace&) = default;
};

/// How a jumper's arc stands out to the left of the way from its first end to its second, as a share of its span (negative: to the
/// right; 0: straight).
struct Arc {
    double bow = 0;   ///< in its middle
    double lean = 0;  ///< so much more near the first end, and less near the second
    double first = kUsualReach,
           second = kUsualReach;  ///< how far it reaches straight from each end; negative: it leaves backwards
    static constexpr double kUsualReach = 0.28;
    friend bool operator==(const Arc&, const Arc&) = default;
};

struct Table {
    std::vector<PartPlace> parts;  ///< by part index
    std::vector<Arc> jumperArcs;   ///< by jumper index
    Rect boardsMm;                 ///< around all boards
    Rect allMm;                    ///< around boards, supplies and parts
    bool turned = false;           ///< the boards are seen from below, see core/bench/turned_table.h

    /// Where a place of the boards is seen, and which place of the boards is seen there: turned boards are mirrored left to right.
    Point seen(Point at) const { return turned ? Point{2 * boardsMm.left + boardsMm.width - at.x, at.y} : at; }
};

Table arrange(const Bench& bench);
/// Where everything lies, without the ways of wires.
Table placeThings(const Bench& bench);

/// By lead: the middle of its hole; nothing for a lead that hangs, a socket, or a hole that doesn't exist.
std::vector<std::optional<Point>> leadHolesMm(const Bench& bench, const Part& part);

/// The middle of the holes that a part's leads are in; nothing of one that is in none.
std::optional<Point> middleOfHolesMm(const Bench& bench, const Part& part);

/// Tip of a jumper's end in mm.
Point endMm(const Bench& bench, const Table& table, const JumperEnd& end);

/// How far a jumper's usual arc stands out sideways, as a share of its span: short ones bow 0.3, long ones 0.12.
double jumperBow(double spanMm);

/// Length along which a jumper is cut for these ends: the span with its arc, and 2 x 6 mm in the holes; mm.
double jumperLengthMm(Point a, Point b);
/// So much of each end of a jumper is bare: it goes so deep into a hole.
inline constexpr double kBareEndMm = 6;
/// How much wire a jumper of the bench takes, bare ends counted: along its arc, or straight where it lies flat; mm.
double wireToCutMm(const Bench& bench, const Table& table, const Jumper& jumper);

}  // namespace tiepoint
