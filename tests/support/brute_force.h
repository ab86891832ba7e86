#pragma once
// An oracle for room on the boards: distances from outlines by sampling their edge, and no formula of the core.

#include "core/bench/bodies.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace tiepoint::test {

/// Points all along the edge of a body.
inline std::vector<Point> edgeOf(const Outline& body, int count = 1600) {
    std::vector<Point> edge;
    const double c = std::cos(body.angle), s = std::sin(body.angle);
    const double round = 2 * (body.halfLength + body.halfWidth);
    for (int i = 0; i < count; ++i) {
        Point p;
        if (body.shape == BodyShape::Round) {
            const double angle = 2 * std::numbers::pi * i / count;
            p = {body.halfLength * std::cos(angle), body.halfLength * std::sin(angle)};
        } else {
            const double along = 2 * round * i / count;
            const double l = 2 * body.halfLength, w = 2 * body.halfWidth;
            if (along < l)
                p = {-l / 2 + along, -w / 2};
            else if (along < l + w)
                p = {l / 2, -w / 2 + along - l};
            else if (along < 2 * l + w)
                p = {l / 2 - (along - l - w), w / 2};
            else
                p = {-l / 2, w / 2 - (along - 2 * l - w)};
        }
        edge.push_back(body.centre + Point{c * p.x - s * p.y, s * p.x + c * p.y});
    }
    return edge;
}

/// Whether rays from the place cross the edge an odd number of times.
inline bool isInside(const std::vector<Point>& edge, Point at) {
    bool inside = false;
    for (std::size_t i = 0, j = edge.size() - 1; i < edge.size(); j = i++) {
        if ((edge[i].y > at.y) != (edge[j].y > at.y) &&
            at.x < (edge[j].x - edge[i].x) * (at.y - edge[i].y) / (edge[j].y - edge[i].y) + edge[i].x)
            inside = !inside;
    }
    return inside;
}

/// How far outside of the edge a place is; negative inside.
inline double farOutside(const std::vector<Point>& edge, Point at) {
    double least = 1e9;
    for (const Point p : edge) least = std::min(least, distance(p, at));
    return isInside(edge, at) ? -least : least;
}

/// By how much a way of many points has more room beside a body than it needs, at its tightest place.
inline double leastSpare(const Outline& body, const std::vector<Point>& way, double free,
                         const std::vector<Point>& holes) {
    const auto edge = edgeOf(body);
    double least = 1e9;
    for (const Point at : way) {
        double needed = free;
        for (const Point hole : holes) needed = std::min(needed, 0.7 * distance(hole, at) - 0.55);
        least = std::min(least, farOutside(edge, at) - needed);
    }
    return least;
}

inline std::vector<Point> straight(Point a, Point b, int count = 200) {
    std::vector<Point> way;
    for (int i = 0; i <= count; ++i) way.push_back(a + (b - a) * (static_cast<double>(i) / count));
    return way;
}

}  // namespace tiepoint::test
