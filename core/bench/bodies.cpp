#include "core/bench/bodies.h"

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

bool crossEachOther(const Leg& one, const Leg& other) {
    return sideOf(one.tip, one.exit, other.tip) * sideOf(one.tip, one.exit, other.exit) < 0 &&
           sideOf(other.tip, other.exit, one.tip) * sideOf(other.tip, other.exit, one.exit) < 0;
}

}  // namespace

std::optional<Body> bodyOf(const Part& part, const PartPlace& place, int index) {
    if (!standsOnBoard(part)) return std::nullopt;
    const Package& package = *part.kind->package;
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

double roomBeside(double freeMm, double fromHoleMm) {
    return std::min(freeMm, kClearPerMm * fromHoleMm - kUnderEdgeMm);
}

bool covers(const Body& body, Point hole) { return distanceOutside(body.outline, hole) < -kUnderEdgeMm; }

bool runsThrough(const Body& body, const Leg& leg) {
    const auto at = [&](double t) { return leg.tip + (leg.exit - leg.tip) * t; };
    return runsThrough(body.outline, kLegRoomMm, distance(leg.tip, leg.exit), at, {leg.tip});
}

bool runsThrough(const Body& body, Point first, Point second) {
    const auto at = [&](double t) { return first + (second - first) * t; };
    return runsThrough(body.outline, kWireRoomMm, distance(first, second), at, {first, second});
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
