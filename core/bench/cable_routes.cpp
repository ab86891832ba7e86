#include "core/bench/cable_routes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace tiepoint {
namespace {

/// How a way differs from the usual one. The usual one is all ones.
struct CableWay {
    double rise;   ///< how steeply it comes down on its hole; negative: from the other side of the boards
    double aside;  ///< how far it comes from the left, or leans; negative: from the other side
    double out;    ///< how far it runs straight out of the box
};
constexpr std::array kCableWays{
    CableWay{1, 1, 1},      CableWay{1.6, 1, 1},     CableWay{0.6, 1, 1},   CableWay{1, -1, 1},
    CableWay{1.6, 0, 1},    CableWay{2.4, 1, 1},     CableWay{2.4, -1, 1},  CableWay{-1, 1, 1},
    CableWay{-1.6, 1, 1},   CableWay{-1, -1, 1},     CableWay{1, 2.5, 1.6}, CableWay{1.6, 2.5, 0.5},
    CableWay{3.4, 2, 1},    CableWay{3.4, -2, 1.6},  CableWay{-2.4, 1, 1},  CableWay{-2.4, -2, 1},
    CableWay{0.1, 3, 1},    CableWay{0.1, 4.5, 1.6}, CableWay{-0.6, 3, 1},  CableWay{3.4, 0, 0.5},
    CableWay{-3.4, 0, 1.6}, CableWay{0.6, -3, 1},    CableWay{-0.6, -3, 1}, CableWay{0.3, -2, 1}};

/// A supply's lead from its exit at the left of the boards: out to the right, and into the hole from outside.
WireCurve supplyWay(Point exit, Point tip, double middleY, const CableWay& way) {
    const double dx = std::abs(tip.x - exit.x), dy = std::abs(tip.y - exit.y);
    const double outside = tip.y < middleY ? -1 : 1;
    const double reach = std::clamp(0.4 * dx + 0.1 * dy, 6.0, 40.0) * way.out;
    // It comes down on its hole from beyond the edge, clear of the signs printed there.
    const double rise = std::clamp(8 + 0.4 * dy, 8.0, 18.0) * way.rise;
    return {exit, exit + Point{reach, outside * 0.08 * dy},
            tip + Point{-std::min(12.0, 0.34 * dx) * way.aside, outside * rise}, tip};
}

/// A test lead from an instrument at the right of the boards: round the lower end of the box, clear of the other plug, and to its hole
/// from the lower right, where the probe leans.
WireCurve testLeadWay(Point exit, Point tip, const CableWay& way) {
    constexpr Point kLean{0.56, 0.83};
    const double away = distance(exit, tip);
    const double out = std::clamp(0.36 * away, 12.0, 32.0) * way.out, lean = std::clamp(0.5 * away, 10.0, 60.0);
    Point leaning = tip + Point{kLean.x * way.aside, kLean.y * way.rise} * lean;
    if (way.rise >= 1) leaning.y = std::max(leaning.y, exit.y);
    return {exit, exit + Point{0, out}, leaning, tip};
}

WireCurve cableAlong(const Package& package, Point exit, Point tip, double middleY, const CableWay& way) {
    return package.rightOfBoards ? testLeadWay(exit, tip, way) : supplyWay(exit, tip, middleY, way);
}

std::vector<Body> tallInWayOf(const InOrder<Body>& bodies, const WireCurve& curve) {
    const auto [left, right] = std::minmax({curve.a.x, curve.b.x, curve.c.x, curve.d.x});
    std::vector<Body> found;
    bodies.within(left - kWireRoomMm, right + kWireRoomMm, [&](const Body& body) {
        if (body.isTall() && runsThrough(body, curve, kWireRoomMm, {curve.d})) found.push_back(body);
    });
    return found;
}

std::optional<WireCurve> freeCable(const Package& package, const InOrder<Body>& bodies, Point exit, Point tip,
                                   double middleY) {
    for (const CableWay& way : kCableWays) {
        const WireCurve curve = cableAlong(package, exit, tip, middleY, way);
        if (tallInWayOf(bodies, curve).empty()) return curve;
    }
    return std::nullopt;
}

double middleOfBoards(const Table& table) { return table.boardsMm.top + table.boardsMm.height / 2; }

}  // namespace

void layCables(const Table& table, const Part& part, PartPlace& place) {
    place.cablesMm.clear();
    if (part.kind->package->reach != Reach::Flying) return;
    for (std::size_t i = 0; i < place.leadsMm.size(); ++i)
        place.cablesMm.push_back(cableAlong(*part.kind->package, place.exitsMm[i], place.leadsMm[i],
                                            middleOfBoards(table), kCableWays.front()));
}

void routeCables(const Bench& bench, const InOrder<Body>& bodies, Table& table) {
    for (std::size_t p = 0; p < bench.parts.size(); ++p) {
        const Part& part = bench.parts[p];
        PartPlace& place = table.parts[p];
        layCables(table, part, place);
        for (std::size_t i = 0; i < place.cablesMm.size(); ++i) {
            if (!part.leads[i]) continue;
            const auto way =
                freeCable(*part.kind->package, bodies, place.exitsMm[i], place.leadsMm[i], middleOfBoards(table));
            if (way) place.cablesMm[i] = *way;
        }
    }
}

bool cableGetsTo(const Package& package, const InOrder<Body>& bodies, Point exit, Point tip, double middleY) {
    return freeCable(package, bodies, exit, tip, middleY).has_value();
}

std::vector<Body> inWayOfCable(const Package& package, const InOrder<Body>& bodies, Point exit, Point tip,
                               double middleY) {
    return tallInWayOf(bodies, cableAlong(package, exit, tip, middleY, kCableWays.front()));
}

}  // namespace tiepoint
