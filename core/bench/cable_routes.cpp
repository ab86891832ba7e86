// A lead is one cubic. It takes the first of a short list of ways that runs through nothing; where a box is in the way of all of them, the
// shortest of a fan of detours: out of the box, along its side up or down past the boxes, and then over or under them to the hole.

#include "core/bench/cable_routes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace tiepoint {
namespace {

/// How a way differs from the usual one. The usual one is all ones.
struct CableWay {
    double rise;   ///< how steeply it comes down on its hole; negative: from the other side of the boards
    double aside;  ///< how far it comes from the side of its box, or leans; negative: from the other side
    double out;    ///< how far it runs straight out of the box
};
constexpr std::array kCableWays{
    CableWay{1, 1, 1},      CableWay{1.6, 1, 1},     CableWay{0.6, 1, 1},   CableWay{1, -1, 1},
    CableWay{1.6, 0, 1},    CableWay{2.4, 1, 1},     CableWay{2.4, -1, 1},  CableWay{-1, 1, 1},
    CableWay{-1.6, 1, 1},   CableWay{-1, -1, 1},     CableWay{1, 2.5, 1.6}, CableWay{1.6, 2.5, 0.5},
    CableWay{3.4, 2, 1},    CableWay{3.4, -2, 1.6},  CableWay{-2.4, 1, 1},  CableWay{-2.4, -2, 1},
    CableWay{0.1, 3, 1},    CableWay{0.1, 4.5, 1.6}, CableWay{-0.6, 3, 1},  CableWay{3.4, 0, 0.5},
    CableWay{-3.4, 0, 1.6}, CableWay{0.6, -3, 1},    CableWay{-0.6, -3, 1}, CableWay{0.3, -2, 1}};

constexpr double kBoxRoomMm = 1.5;  ///< between a lead and a box that isn't its own
constexpr double kOwnBandMm = 4.2;  ///< on its own box a lead stays so near to the height of its exit
constexpr int kMostBoxes = 60;  ///< among more, nobody could follow a lead anyway, and looking for ways would take long
constexpr double kBesideBoxMm = 4.6;                         ///< from its own box, where a lead runs along it
constexpr std::array kRisesMm{6.0, 12.0, 22.0, 36.0, 60.0};  ///< past the last box, and over it

/// A supply's lead from its exit: out of the box, and into the hole from outside of the boards.
WireCurve supplyWay(const CableRun& run, const CableWay& way) {
    const Point exit = run.exit, tip = run.tip;
    const double dx = std::abs(tip.x - exit.x), dy = std::abs(tip.y - exit.y);
    const double outside = tip.y < run.middleY ? -1 : 1;
    const double reach = std::clamp(0.4 * dx + 0.1 * dy, 6.0, 40.0) * way.out;
    // It comes down on its hole from beyond the edge, clear of the signs printed there.
    const double rise = std::clamp(8 + 0.4 * dy, 8.0, 18.0) * way.rise;
    return {exit, exit + Point{run.outward * reach, outside * 0.08 * dy},
            tip + Point{-run.outward * std::min(12.0, 0.34 * dx) * way.aside, outside * rise}, tip};
}

/// A test lead: straight out of the box, and to its hole from below, on the side of the box, where the probe leans.
WireCurve testLeadWay(const CableRun& run, const CableWay& way) {
    constexpr Point kLean{0.56, 0.83};
    const double away = distance(run.exit, run.tip);
    const double out = std::clamp(0.36 * away, 12.0, 32.0) * way.out, lean = std::clamp(0.4 * away, 10.0, 40.0);
    const Point leaning = run.tip + Point{-run.outward * kLean.x * way.aside, kLean.y * way.rise} * lean;
    return {run.exit, run.exit + Point{run.outward * out, 0}, leaning, run.tip};
}

WireCurve cableAlong(const CableRun& run, const CableWay& way) {
    return run.isProbe ? testLeadWay(run, way) : supplyWay(run, way);
}

std::vector<Body> tallInWayOf(const InOrder<Body>& bodies, const WireCurve& curve) {
    const auto [left, right] = std::minmax({curve.a.x, curve.b.x, curve.c.x, curve.d.x});
    std::vector<Body> found;
    bodies.within(left - kWireRoomMm, right + kWireRoomMm, [&](const Body& body) {
        if (body.isTall() && runsThrough(body, curve, kWireRoomMm, {curve.d})) found.push_back(body);
    });
    return found;
}

double middleOfBoards(const Table& table) { return table.boardsMm.top + table.boardsMm.height / 2; }

/// The boxes on a table, by part.
struct Box {
    int part;
    Rect frame;
};
using Boxes = InOrder<Box>;

Boxes boxesOn(const Bench& bench, const Table& table) {
    Boxes boxes;
    if (std::ranges::count_if(bench.parts, standsOnTable) > kMostBoxes) return boxes;
    for (int i = 0; i < std::ssize(bench.parts); ++i) {
        if (!standsOnTable(bench.parts[i])) continue;
        const Rect frame = frameOf(table.parts[i]);
        boxes.add(frame.left, frame.right(), {i, frame});
    }
    boxes.sort();
    return boxes;
}

/// How much of a way lies over boxes, in samples: over another, or over its own but for the band from socket to edge.
int overBoxes(const Boxes& boxes, int own, const WireCurve& curve, Point exit) {
    constexpr int kSamples = 48;
    const auto [left, right] = std::minmax({curve.a.x, curve.b.x, curve.c.x, curve.d.x});
    const double top = std::min({curve.a.y, curve.b.y, curve.c.y, curve.d.y});
    const double bottom = std::max({curve.a.y, curve.b.y, curve.c.y, curve.d.y});
    int over = 0;
    boxes.within(left - kBoxRoomMm, right + kBoxRoomMm, [&](const Box& box) {
        const double room = box.part == own ? 0 : kBoxRoomMm;
        const Rect wide{box.frame.left - room, box.frame.top - room, box.frame.width + 2 * room,
                        box.frame.height + 2 * room};
        if (wide.top > bottom || wide.bottom() < top) return;
        for (int i = 0; i <= kSamples; ++i) {
            const Point at = curve.at(static_cast<double>(i) / kSamples);
            const bool leaves = box.part == own && std::abs(at.y - exit.y) < kOwnBandMm;
            if (wide.contains(at) && !leaves) ++over;
        }
    });
    return over;
}

double roughLength(const WireCurve& curve) {
    return distance(curve.a, curve.b) + distance(curve.b, curve.c) + distance(curve.c, curve.d);
}

/// A lead that goes round a box.
struct Detour {
    WireCurve beside, on;
};

/// How high (-1) or low (1) a lead may run past boxes: beyond the edge of each that reaches into the stretch from exit to tip, the nearest first.
std::vector<double> levelsPastBoxes(const Boxes& boxes, const CableRun& run, double way) {
    constexpr std::size_t kMostLevels = 5;
    const auto [left, right] = std::minmax(run.exit.x, run.tip.x);
    std::vector<double> levels;
    boxes.within(left, right, [&](const Box& box) {
        const double edge = (way < 0 ? box.frame.top : box.frame.bottom()) + way * kBoxRoomMm;
        if ((edge - run.exit.y) * way > 0) levels.push_back(edge);
    });
    std::sort(levels.begin(), levels.end(), [way](double a, double b) { return a * way < b * way; });
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    if (levels.size() > kMostLevels) levels.erase(levels.begin() + kMostLevels - 1, levels.end() - 1);
    return levels;
}

/// The shortest detour that runs through nothing, or else the one that lies least over boxes.
Detour roundBoxes(const CableRun& run, const InOrder<Body>& bodies, const Boxes& boxes, const Rect& own, int part) {
    constexpr double kPerSampleMm = 1e4, kTallMm = 1e3;  // anything in the way is worse than any detour
    const double x = (run.outward > 0 ? own.right() : own.left) + run.outward * kBesideBoxMm;
    Detour best;
    double least = std::numeric_limits<double>::infinity();
    const auto consider = [&](const WireCurve& beside, const WireCurve& on) {
        double cost = roughLength(beside) + roughLength(on);
        if (cost >= least) return;
        cost += kPerSampleMm * (overBoxes(boxes, part, beside, run.exit) + overBoxes(boxes, part, on, run.exit));
        if (cost < least && !tallInWayOf(bodies, on).empty()) cost += kTallMm;
        if (cost >= least) return;
        least = cost;
        best = {beside, on};
    };
    for (const double way : {-1.0, 1.0}) {
        for (const double level : levelsPastBoxes(boxes, run, way)) {
            const Point corner{x, level};
            const double turn = std::min(8.0, std::abs(corner.y - run.exit.y) / 2);
            const WireCurve beside{run.exit, {x, run.exit.y}, {x, run.exit.y + way * turn}, corner};
            for (const double rise : kRisesMm) {
                for (const double over : kRisesMm) {
                    for (const double share : {0.0, 0.25, 0.5, 0.75}) {
                        const Point before{run.tip.x + (corner.x - run.tip.x) * share, corner.y + way * over};
                        consider(beside, {corner, corner + Point{0, way * rise}, before, run.tip});
                    }
                }
            }
        }
    }
    return best;
}

}  // namespace

double outwardOf(const Package& package, const PartPlace& place) {
    return package.rightOfBoards != place.mirrored ? -1 : 1;
}

Rect frameOf(const PartPlace& box) {
    const Outline& body = box.pose.body;
    return {body.centre.x - body.halfLength, body.centre.y - body.halfWidth, 2 * body.halfLength, 2 * body.halfWidth};
}

CableRun cableRun(const Table& table, const Part& part, const PartPlace& place, std::size_t lead) {
    const Package& package = *part.kind->package;
    return {place.exitsMm[lead], place.leadsMm[lead], outwardOf(package, place), middleOfBoards(table),
            package.rightOfBoards};
}

void layCables(const Table& table, const Part& part, PartPlace& place) {
    place.cablesMm.clear();
    place.detoursMm.clear();
    if (!standsOnTable(part)) return;
    for (std::size_t i = 0; i < place.leadsMm.size(); ++i) {
        const Point exit = place.exitsMm[i];
        place.cablesMm.push_back(cableAlong(cableRun(table, part, place, i), kCableWays.front()));
        place.detoursMm.push_back({exit, exit, exit, exit});
    }
}

void routeCables(const Bench& bench, const InOrder<Body>& bodies, Table& table) {
    const Boxes boxes = boxesOn(bench, table);
    for (int p = 0; p < std::ssize(bench.parts); ++p) {
        const Part& part = bench.parts[p];
        PartPlace& place = table.parts[p];
        layCables(table, part, place);
        for (std::size_t i = 0; i < place.cablesMm.size(); ++i) {
            if (part.kind->leads[i].socket) continue;
            const CableRun run = cableRun(table, part, place, i);
            std::optional<WireCurve> pastBodies, pastAll;
            for (const CableWay& way : kCableWays) {
                const WireCurve curve = cableAlong(run, way);
                if (part.leads[i] && !tallInWayOf(bodies, curve).empty()) continue;
                if (!pastBodies) pastBodies = curve;
                if (overBoxes(boxes, p, curve, run.exit) > 0) continue;
                pastAll = curve;
                break;
            }
            if (pastAll || pastBodies) place.cablesMm[i] = pastAll ? *pastAll : *pastBodies;
            if (pastAll || boxes.empty()) continue;
            const Detour detour = roundBoxes(run, bodies, boxes, frameOf(place), p);
            place.detoursMm[i] = detour.beside;
            place.cablesMm[i] = detour.on;
        }
    }
}

bool cableGetsTo(const CableRun& run, const InOrder<Body>& bodies) {
    return std::ranges::any_of(kCableWays,
                               [&](const CableWay& way) { return tallInWayOf(bodies, cableAlong(run, way)).empty(); });
}

std::vector<Body> inWayOfCable(const CableRun& run, const InOrder<Body>& bodies) {
    return tallInWayOf(bodies, cableAlong(run, kCableWays.front()));
}

}  // namespace tiepoint
