#pragma once
// Curves that wires follow and arrows run along: a cubic that can be cut by length, and a line of short
// straight pieces with lengths known in advance, so that a place on it costs one search. Lengths in mm.

#include <QPainterPath>
#include <QPointF>

#include <vector>

namespace tiepoint::ui {

/// A place on a line and the direction there, radians, clockwise on the screen from the x axis.
struct Place {
    QPointF at;
    double angle = 0;
};

/// A line of points with their distances from its beginning.
class Polyline {
public:
    Polyline() = default;
    explicit Polyline(std::vector<QPointF> points);
    /// Flattens a path; curves become pieces of about half a millimetre.
    static Polyline of(const QPainterPath& path);

    bool isEmpty() const { return points_.size() < 2; }
    double lengthMm() const { return distances_.empty() ? 0 : distances_.back(); }
    Place at(double distanceMm) const;
    const std::vector<QPointF>& points() const { return points_; }

private:
    std::vector<QPointF> points_;
    std::vector<double> distances_, angles_;  ///< to each point, and from each to the next
};

/// A cubic from `a` to `d`.
struct Cubic {
    QPointF a, b, c, d;

    QPointF at(double t) const;
    double lengthMm() const;
    /// The part between two distances from the beginning.
    Cubic between(double fromMm, double toMm) const;
    QPainterPath path() const;
    /// The same ends with the middle pushed away.
    Cubic lifted(QPointF by) const { return {a, b + by, c + by, d}; }
};

/// Cubics one after the other.
struct CubicChain {
    std::vector<Cubic> pieces;  ///< at least one

    double lengthMm() const;
    CubicChain between(double fromMm, double toMm) const;
    QPainterPath path() const;
    /// The same two ends with all between them pushed away.
    CubicChain lifted(QPointF by) const;
    QPointF end() const { return pieces.back().d; }
};

}  // namespace tiepoint::ui
