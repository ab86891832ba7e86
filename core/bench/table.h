#pragma once
// Where everything lies on the table, in mm: derived from the bench, never saved.
// Supplies stand at the left of the boards, instruments at their right; parts with no lead in a hole lie below the boards.

#include "core/bench/bench.h"

namespace tiepoint {

/// Where one part lies.
struct PartPlace {
    Pose pose;
    std::vector<Point> leadsMm;  ///< by lead index: the tip of the lead (its hole, or where it hangs), or the socket
    std::vector<Point> exitsMm;  ///< by lead index: where the lead leaves the body
};

struct Table {
    std::vector<PartPlace> parts;  ///< by part index
    std::vector<double>
        jumperBows;       ///< by jumper index: how far its arc stands out to the left of the way from its first end to
                          ///< its second, as a share of its span; 0: straight
    Rect boardsMm;        ///< around all boards
    Rect allMm;           ///< around boards, supplies and parts
    bool turned = false;  ///< the boards are seen from below, see core/bench/turned_table.h

    /// Where a place of the boards is seen, and which place of the boards is seen there: turned boards are mirrored left to right.
    Point seen(Point at) const { return turned ? Point{2 * boardsMm.left + boardsMm.width - at.x, at.y} : at; }
};

Table arrange(const Bench& bench);

/// By lead: the middle of its hole; nothing for a lead that hangs, a socket, or a hole that doesn't exist.
std::vector<std::optional<Point>> leadHolesMm(const Bench& bench, const Part& part);

/// Tip of a jumper's end in mm.
Point endMm(const Bench& bench, const Table& table, const JumperEnd& end);

/// How far a jumper's usual arc stands out sideways, as a share of its span: short ones bow 0.3, long ones 0.12.
double jumperBow(double spanMm);

/// Length along which a jumper is cut for these ends: the span with its arc, and 2 x 6 mm in the holes; mm.
double jumperLengthMm(Point a, Point b);

}  // namespace tiepoint
