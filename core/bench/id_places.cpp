#include "core/bench/id_places.h"

#include "core/base/quantity.h"
#include "core/base/utf8.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tiepoint {
namespace {

// As painters letter ids at the desk; a letter's breadth is an average.
constexpr double kIdEmMm = 1.7, kIdLetterMm = 0.58 * kIdEmMm, kIdPadsMm = 0.7, kIdHighMm = 1.95;
constexpr double kIdAwayMm = 0.5, kIdFromLightMm = 2.25;

int lettersBeside(const Part& part) {
    int letters = static_cast<int>(part.id.size());
    const int value = valueBesideId(*part.kind);
    if (value < 0) return letters;
    constexpr int kSpace = 1;
    const std::string words = formatSetting(part.value(value), part.kind->values[value].unit);
    return letters + kSpace + static_cast<int>(std::ranges::count_if(words, [](char c) { return !isContinuation(c); }));
}

Rect around(Point middle, double width, double height) {
    return {middle.x - width / 2, middle.y - height / 2, width, height};
}

bool liesOn(const Rect& id, const Body& body) {
    const Point nearest{std::clamp(body.outline.centre.x, id.left, id.right()),
                        std::clamp(body.outline.centre.y, id.top, id.bottom())};
    return distanceOutside(body.outline, nearest) < 0;
}

Rect idPlaceOf(const Part& part, const Body& body, const InOrder<Body>& bodies) {
    const double away = part.kind->emitsLight ? kIdFromLightMm : kIdAwayMm;
    const double width = kIdLetterMm * lettersBeside(part) + kIdPadsMm;
    const bool round = body.outline.shape == BodyShape::Round;
    const double c = round ? 1 : std::abs(std::cos(body.outline.angle)),
                 s = round ? 0 : std::abs(std::sin(body.outline.angle));
    const double halfWidth = round ? body.outline.halfLength : body.outline.halfWidth;
    const double side = c * body.outline.halfLength + s * halfWidth + away + width / 2;
    const double up = s * body.outline.halfLength + c * halfWidth + away + kIdHighMm / 2;
    std::array<Point, 4> steps{Point{0, -up}, Point{0, up}, Point{-side, 0}, Point{side, 0}};
    const bool standsUp = std::abs(std::sin(body.outline.angle)) > std::numbers::sqrt2 / 2;
    if (standsUp || part.kind->hasCap) std::rotate(steps.begin(), steps.begin() + 2, steps.end());
    for (const Point step : steps) {
        const Rect place = around(body.outline.centre + step, width, kIdHighMm);
        bool free = true;
        bodies.within(place.left, place.right(), [&](const Body& other) { free = free && !liesOn(place, other); });
        if (free) return place;
    }
    return around(body.outline.centre + steps.front(), width, kIdHighMm);
}

}  // namespace

InOrder<Rect> idPlaces(const Bench& bench, const InOrder<Body>& bodies, const Table& table) {
    InOrder<Rect> places;
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        const auto body = bodyOf(bench.parts[i], table.parts[i], static_cast<int>(i));
        if (!body) continue;
        const Rect place = idPlaceOf(bench.parts[i], *body, bodies);
        places.add(place.left, place.right(), place);
    }
    places.sort();
    return places;
}

}  // namespace tiepoint
