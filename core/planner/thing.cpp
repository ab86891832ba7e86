#include "core/planner/thing.h"

#include "core/bench/bodies.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

Point turnedPlace(Point offset, int quarters) {
    for (int i = 0; i < quarters; ++i) offset = {-offset.y, offset.x};
    return offset;
}

Outline lineBetween(Point a, Point b, double halfWidth) {
    Outline line;
    line.centre = (a + b) * 0.5;
    line.angle = std::atan2(b.y - a.y, b.x - a.x);
    line.halfLength = distance(a, b) / 2;
    line.halfWidth = halfWidth;
    return line;
}

bool isInside(const Outline& body, Point at, double marginMm) {
    const Point off = at - body.centre;
    if (body.shape == BodyShape::Round) return length(off) < body.halfLength + marginMm;
    const double x = off.x * std::cos(body.angle) + off.y * std::sin(body.angle);
    const double y = -off.x * std::sin(body.angle) + off.y * std::cos(body.angle);
    return std::abs(x) < body.halfLength + marginMm && std::abs(y) < body.halfWidth + marginMm;
}

bool spanFits(const Package& package, double mm) {
    const double span = mm / kPitchMm;
    constexpr double kSlack = 0.02;
    if (span < 1 - kSlack) return false;
    return span <= package.standingMaxSpan + kSlack ||
           (span >= package.minSpan - kSlack && span <= package.maxSpan + kSlack);
}

}  // namespace

std::optional<PlanPlace> lieIn(const PlanGround& ground, const PlanThing& thing, std::vector<int> holes) {
    PlanPlace place;
    place.holes = std::move(holes);
    if (!thing.package) return place;
    std::vector<std::optional<Point>> leads(thing.package->reach == Reach::Bending ? 2
                                                                                   : thing.package->footprint.size());
    for (std::size_t i = 0; i < place.holes.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (place.holes[k] == place.holes[i]) return std::nullopt;
        }
        leads[thing.leads[i]] = ground.spot(place.holes[i]).at;
    }
    if (misfit(*thing.package, leads)) return std::nullopt;
    const auto pose = poseOf(*thing.package, leads);
    if (!pose) return std::nullopt;
    place.body = pose->body;
    place.hasBody = true;
    constexpr double kWireRoom = 0.3;  // a pin beside a body
    const double reach = std::hypot(place.body.halfLength, place.body.halfWidth) + 1;
    std::vector<int> near;
    ground.near(place.body.centre, reach, near);
    if (thing.package->reach == Reach::Bending && place.holes.size() == 2) {
        const Point a = ground.spot(place.holes[0]).at, b = ground.spot(place.holes[1]).at;
        place.legs = lineBetween(a, b, kBareMm / 2);
        place.hasLegs = true;
        ground.near(place.legs.centre, place.legs.halfLength + 0.1, near);
    }
    std::ranges::sort(near);
    near.erase(std::unique(near.begin(), near.end()), near.end());
    for (const int hole : near) {
        if (std::ranges::find(place.holes, hole) != place.holes.end()) continue;
        const Point at = ground.spot(hole).at;
        if (isInside(place.body, at, kWireRoom) || (place.hasLegs && isInside(place.legs, at, kBareMm)))
            place.covered.push_back(hole);
    }
    return place;
}

std::optional<PlanPlace> lieAt(const PlanGround& ground, const PlanThing& thing, int lead, int hole, PlanRandom& random,
                               int second) {
    std::vector<int> holes(thing.leads.size(), -1);
    holes[lead] = hole;
    const PlanGround::Spot& spot = ground.spot(hole);
    if (!thing.package || thing.leads.size() == 1) {
        return thing.package ? std::nullopt : lieIn(ground, thing, std::move(holes));
    }
    if (thing.package->reach == Reach::Bending) {
        if (second < 0) {
            const int way = below(random, 4);
            const int most = static_cast<int>(thing.package->maxSpan),
                      least = static_cast<int>(
                          std::max(1.0, thing.package->standingMaxSpan > 0 ? 1.0 : thing.package->minSpan));
            const int span = least + below(random, std::max(1, std::min(most, least + 7) - least + 1));
            if (way == 0 && !isRail(spot.line)) {
                // Across the gap, in the same column.
                const int row = static_cast<int>(spot.line);
                const int other = row < 5 ? 5 + below(random, 3) : 4 - below(random, 3);
                second = ground.holeAt(static_cast<Line>(other), spot.number);
            } else if (way == 1 && !isRail(spot.line)) {
                const Line rail = static_cast<int>(spot.line) < 5
                                      ? (below(random, 2) ? Line::TopPlus : Line::TopMinus)
                                      : (below(random, 2) ? Line::BottomPlus : Line::BottomMinus);
                second = ground.holeAt({spot.at.x, ground.kind().has(rail, 1) ? ground.kind().holeMm(rail, 1).y : -99});
            } else if (!isRail(spot.line)) {
                second = ground.holeAt(spot.line, spot.number + (below(random, 2) ? span : -span));
            }
        }
        if (second < 0 || second == hole) return std::nullopt;
        if (!spanFits(*thing.package, distance(spot.at, ground.spot(second).at))) return std::nullopt;
        holes[1 - lead] = second;
        return lieIn(ground, thing, std::move(holes));
    }
    const int quarters = below(random, 4);
    const std::vector<Point>& footprint = thing.package->footprint;
    const Point own = footprint[thing.leads[lead]];
    for (std::size_t i = 0; i < holes.size(); ++i) {
        const Point offset = turnedPlace(footprint[thing.leads[i]] - own, quarters) * kPitchMm;
        holes[i] = ground.holeAt(spot.at + offset);
        if (holes[i] < 0) return std::nullopt;
    }
    return lieIn(ground, thing, std::move(holes));
}

}  // namespace tiepoint
