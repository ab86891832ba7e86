#include "core/bench/table.h"

#include "core/bench/bodies.h"
#include "core/bench/cable_routes.h"
#include "core/bench/jumper_routes.h"

#include <algorithm>
#include <cassert>

namespace tiepoint {

std::vector<std::optional<Point>> leadHolesMm(const Bench& bench, const Part& part) {
    std::vector<std::optional<Point>> holes(part.leads.size());
    for (std::size_t i = 0; i < holes.size(); ++i) {
        if (part.leads[i]) holes[i] = holeMm(bench, *part.leads[i]);
    }
    return holes;
}

std::optional<Point> middleOfHolesMm(const Bench& bench, const Part& part) {
    Point sum;
    int count = 0;
    for (const auto& hole : leadHolesMm(bench, part)) {
        if (!hole) continue;
        sum = sum + *hole;
        ++count;
    }
    if (count == 0) return std::nullopt;
    return sum * (1.0 / count);
}

Point WireCurve::at(double t) const {
    const double u = 1 - t;
    return a * (u * u * u) + b * (3 * u * u * t) + c * (3 * u * t * t) + d * (t * t * t);
}

Table arrange(const Bench& bench) {
    Table table = placeThings(bench);
    const InOrder<Body> bodies = bodiesOn(bench, table);
    routeCables(bench, bodies, table);
    table.jumperArcs = routeJumpers(bench, bodies, table);
    return table;
}

Point endMm(const Bench& bench, const Table& table, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) {
        const auto at = holeMm(bench, *hole);
        assert(at);
        return table.seen(*at);
    }
    const Socket& socket = std::get<Socket>(end);
    const int part = bench.partIndex(socket.part);
    assert(part >= 0);
    return table.parts[part].leadsMm[socket.lead];
}

double jumperBow(double spanMm) {
    constexpr double kMostBow = 0.3, kLeastBow = 0.12;  // shares of the span
    constexpr double kShortMm = 10, kLongMm = 60;
    const double along = std::clamp((spanMm - kShortMm) / (kLongMm - kShortMm), 0.0, 1.0);
    return kMostBow + (kLeastBow - kMostBow) * along;
}

double jumperLengthMm(Point a, Point b) {
    const double span = distance(a, b);
    const double bow = jumperBow(span);
    // A flat parabola of that rise; the next term of the series is under 1 % here.
    const double stretch = 1 + 8.0 / 3 * bow * bow - 32.0 / 5 * bow * bow * bow * bow;
    return span * stretch + 2 * kBareEndMm;
}

double wireToCutMm(const Bench& bench, const Table& table, const Jumper& jumper) {
    const Point a = endMm(bench, table, jumper.ends[0]), b = endMm(bench, table, jumper.ends[1]);
    return jumper.flat ? distance(a, b) + 2 * kBareEndMm : jumperLengthMm(a, b);
}

}  // namespace tiepoint
