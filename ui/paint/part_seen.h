#pragma once
// A part, or a wire, as the bench shows it: values from which it is painted, for marks.

#include "ui/paint/curve.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <array>

namespace tiepoint::ui {

/// All that a package painter may draw a part from.
struct PartSeen {
    Part part;
    PartPlace place;
    bool held = false;
    double leastWordMm = 0, leastFigureMm = 0;
    QColor light = {};
    friend bool operator==(const PartSeen&, const PartSeen&) = default;

    /// Valid as long as this is.
    PartScene scene(const Theme& theme) const;
    const PackagePainter& painter() const;
    /// The same seen from the middle of its body, without what only says in which holes it stands: parts of a kind that lie alike are alike.
    /// What shows its name keeps it.
    PartSeen aboutItself() const;
    /// Of that the body alone: leads end where they leave it.
    PartSeen body() const;
};
/// As it is in the picture, pressed or not.
PartSeen partSeen(const Picture& picture, int part);

/// A cubic, compared exactly.
struct CurveSeen {
    std::array<Point, 4> points;
    friend bool operator==(const CurveSeen&, const CurveSeen&) = default;

    static CurveSeen of(const Cubic& cubic);
    Cubic cubic() const;
    CurveSeen from(Point origin) const;
};
/// The centre line of a jumper.
CurveSeen jumperSeen(const Picture& picture, int jumper);

}  // namespace tiepoint::ui
