#include "core/bench/bodies.h"

#include "core/bench/resolve.h"
#include "core/bench/turned_table.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kStandsOverMm = 1;  ///< a standing body over the board
constexpr double kClearPerMm = 0.7;  ///< how fast a way gets clear of an edge under which it begins

double reachOf(const Outline& body) {
    return body.shape == BodyShape::Round ? body.halfLength : std::hypot(body.halfLength, body.halfWidth);
}

double sideOf(Point o, Point a, Point b) { return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x); }

WireCurve straightWay(Point a, Point b) {
    const Point third = (b - a) * (1.0 / 3);
    return {a, a + third, b - third, b};
}

/// Looks closely at a way only where it comes near to a body: a piece whose controls are all far off is let go whole, another is halved.
struct Approach {
    const Body& body;
    double freeMm = 0;
    std::initializer_list<Point> holes;

    bool tooNear(const WireCurve& way) const {
        if (isFar(way)) return false;
        constexpr double kPieceMm = 0.2;
        const Point middle = way.at(0.5);
        if (std::abs(way.d.x - way.a.x) + std::abs(way.d.y - way.a.y) < kPieceMm &&
            std::abs(middle.x - way.a.x) + std::abs(middle.y - way.a.y) < kPieceMm)
            return distanceOutside(body.outline, middle) < roomAt(middle);
        const Point ab = half(way.a, way.b), bc = half(way.b, way.c), cd = half(way.c, way.d);
        return tooNear({way.a, ab, half(ab, bc), middle}) || tooNear({middle, half(bc, cd), cd, way.d});
    }

private:
    static Point half(Point a, Point b) { return (a + b) * 0.5; }

    bool isFar(const WireCurve& way) const {
        const auto [left, right] = std::minmax({way.a.x, way.b.x, way.c.x, way.d.x});
        const auto [top, bottom] = std::minmax({way.a.y, way.b.y, way.c.y, way.d.y});
        const Point centre = body.outline.centre;
        const double x = std::max({0.0, left - centre.x, centre.x - right}),
                     y = std::max({0.0, top - centre.y, centre.y - bottom});
        const double reach = body.radiusMm + std::max(0.0, freeMm);
        return x * x + y * y > reach * reach;
    }

    double roomAt(Point place) const {
        double room = freeMm;
        for (const Point hole : holes) room = std::min(room, roomBeside(freeMm, distance(hole, place)));
        return room;
    }
};

bool crossEachOther(const Leg& one, const Leg& other) {
    return sideOf(one.tip, one.exit, other.tip) * sideOf(one.tip, one.exit, other.exit) < 0 &&
           sideOf(other.tip, other.exit, one.tip) * sideOf(other.tip, other.exit, one.exit) < 0;
}

}  // namespace

std::optional<Body> bodyOf(const Part& part, const PartPlace& place, int index) {
    if (!standsOnBoard(part)) return std::nullopt;
    const Package& package = packageOf(part);
    Body body;
    body.part = index;
    body.outline = place.pose.body;
    body.radiusMm = reachOf(body.outline);
    body.heightMm = place.pose.standing ? package.bodyLengthMm + kStandsOverMm : package.heightMm;
    body.raised = package.raised && !place.pose.standing;
    return body;
}

std::vector<Leg> legsOf(const Part& part, const PartPlace& place, int index) {
    std::vector<Leg> legs;
    if (!standsOnBoard(part)) return legs;
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        if (part.leads[lead] && distance(place.leadsMm[lead], place.exitsMm[lead]) > 0)
            legs.push_back({index, static_cast<int>(lead), place.leadsMm[lead], place.exitsMm[lead]});
    }
    return legs;
}

InOrder<Body> bodiesOn(const Bench& bench, const Table& table) {
    InOrder<Body> bodies;
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        const auto body = bodyOf(bench.parts[i], table.parts[i], static_cast<int>(i));
        if (!body) continue;
        const double x = body->outline.centre.x;
        bodies.add(x - body->radiusMm, x + body->radiusMm, *body);
    }
    bodies.sort();
    return bodies;
}

InOrder<Body> bodiesAndBoxesOn(const Bench& bench, const Table& table) {
    constexpr double kBoxHeightMm = 40;
    InOrder<Body> bodies;
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        auto body = bodyOf(bench.parts[i], table.parts[i], static_cast<int>(i));
        if (!body && standsOnTable(bench.parts[i])) {
            const Outline& box = table.parts[i].pose.body;
            body = Body{static_cast<int>(i), box, reachOf(box), kBoxHeightMm, false};
        }
        if (!body) continue;
        const double x = body->outline.centre.x;
        bodies.add(x - body->radiusMm, x + body->radiusMm, *body);
    }
    bodies.sort();
    return bodies;
}

double roomBeside(double freeMm, double fromHoleMm) {
    return std::min(freeMm, kClearPerMm * fromHoleMm - kUnderEdgeMm);
}

bool covers(const Body& body, Point hole) { return distanceOutside(body.outline, hole) < -kUnderEdgeMm; }

bool runsThrough(const Body& body, const WireCurve& way, double freeMm, std::initializer_list<Point> holes) {
    return Approach{body, freeMm, holes}.tooNear(way);
}

bool runsThrough(const Body& body, const Leg& leg) {
    return runsThrough(body, straightWay(leg.tip, leg.exit), kLegRoomMm, {leg.tip});
}

bool runsThrough(const Body& body, Point first, Point second) {
    return runsThrough(body, straightWay(first, second), kWireRoomMm, {first, second});
}

bool touch(const Leg& one, const Leg& other) {
    if (crossEachOther(one, other)) return true;
    const double nearest =
        std::min({distanceToStretch(one.tip, other.tip, other.exit), distanceToStretch(one.exit, other.tip, other.exit),
                  distanceToStretch(other.tip, one.tip, one.exit), distanceToStretch(other.exit, one.tip, one.exit)});
    return nearest < kBareMm;
}

bool touches(const Leg& leg, Point pin) { return distanceToStretch(pin, leg.tip, leg.exit) < kBareMm; }

}  // namespace tiepoint
