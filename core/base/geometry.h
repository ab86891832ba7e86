#pragma once
// Plain geometry in the plane of the bench: millimetres, x to the right, y down (as rows a to j run).

#include <algorithm>
#include <cmath>

namespace tiepoint {

inline constexpr double kPitchMm = 2.54;

struct Point {
    double x = 0;
    double y = 0;
    friend bool operator==(const Point&, const Point&) = default;
};

inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
inline Point operator*(Point a, double k) { return {a.x * k, a.y * k}; }
inline double length(Point a) { return std::hypot(a.x, a.y); }
inline double distance(Point a, Point b) { return length(a - b); }
inline double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }

/// The point of the stretch from `a` to `b` that is nearest to a place.
inline Point nearestOnStretch(Point at, Point a, Point b) {
    const Point along = b - a;
    const double square = dot(along, along);
    return square > 0 ? a + along * std::clamp(dot(at - a, along) / square, 0.0, 1.0) : a;
}
inline double distanceToStretch(Point at, Point a, Point b) { return distance(at, nearestOnStretch(at, a, b)); }

struct Rect {
    double left = 0, top = 0, width = 0, height = 0;
    double right() const { return left + width; }
    double bottom() const { return top + height; }
    bool contains(Point p) const { return p.x >= left && p.x <= right() && p.y >= top && p.y <= bottom(); }
    friend bool operator==(const Rect&, const Rect&) = default;
};

}  // namespace tiepoint
