// An arc must keep off tall bodies; that is looked at closely. What it only had better keep off is looked at in a few points of the arc:
// lying bodies, the places where ids like to stand, and earlier wires. Near its own ends a wire may touch what it likes: neighbouring
// holes are closer than two wires are broad.

#include "core/bench/jumper_routes.h"

#include "core/bench/id_places.h"
#include "core/parts/outline.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kBetweenWiresMm = 1.9;  ///< two insulations and a gap to tell them apart
constexpr double kFreeEndMm = 2.6;       ///< about the ends: a pitch
constexpr int kSamples = 14;
constexpr double kBlockedWeight = 1000;  ///< of a tall body: nothing outweighs it
constexpr double kBodyWeight = 3;        ///< a hidden part is worse than two wires side by side
constexpr double kIdWeight = 1.5;
constexpr std::size_t kMostPairs = 4'000'000;  ///< of jumpers and things: beyond, nobody tells one arc from another
constexpr double kReachShare = 1.2;            ///< of its span: no arc gets farther from its middle
constexpr double kRankWeight = 0.35;           ///< of a sample: how much an unusual arc must save
constexpr double kArcControl = 0.28;           ///< where the controls of the cubic stand along the span, from each end

/// In the order of liking; both are shares of the usual bow. For each arc there is its mirror image.
constexpr std::array kShapes{
    Arc{1, 0},      Arc{-1, 0},      Arc{0.55, 0},  Arc{-0.55, 0},  Arc{1.5, 0},    Arc{-1.5, 0},
    Arc{2.1, 0},    Arc{-2.1, 0},    Arc{0.2, 0},   Arc{-0.2, 0},   Arc{0.8, 0.8},  Arc{0.8, -0.8},
    Arc{-0.8, 0.8}, Arc{-0.8, -0.8}, Arc{1.5, 1.2}, Arc{1.5, -1.2}, Arc{-1.5, 1.2}, Arc{-1.5, -1.2},
    Arc{0, 1.2},    Arc{0, -1.2},    Arc{0.4, 1.6}, Arc{0.4, -1.6}, Arc{-0.4, 1.6}, Arc{-0.4, -1.6},
    Arc{2.9, 0},    Arc{-2.9, 0},    Arc{2.3, 2},   Arc{2.3, -2},   Arc{-2.3, 2},   Arc{-2.3, -2},
    Arc{0, 2.2},    Arc{0, -2.2},    Arc{3.4, 1.5}, Arc{3.4, -1.5}, Arc{-3.4, 1.5}, Arc{-3.4, -1.5}};

Arc scaled(const Arc& shape, double bow) { return {shape.bow * bow, shape.lean * bow}; }

using Samples = std::array<Point, kSamples>;

Samples samplesOf(Point first, Point second, const Arc& arc) {
    Samples samples;
    for (int i = 0; i < kSamples; ++i) samples[i] = arcPoint(first, second, arc, (i + 0.5) / kSamples);
    return samples;
}

/// A wire that has its arc.
struct LaidWire {
    Samples samples;
    Point middle;
    double reachMm;  ///< from the middle to the farthest sample, at most
};

LaidWire laid(Point first, Point second, const Arc& arc) {
    return {samplesOf(first, second, arc), (first + second) * 0.5, distance(first, second) * kReachShare};
}

/// The bodies that an arc between two places may come near to.
std::vector<Body> bodiesAbout(const InOrder<Body>& bodies, Point first, Point second) {
    const Point middle = (first + second) * 0.5;
    const double reach = distance(first, second) * kReachShare + kBetweenWiresMm;
    std::vector<Body> near;
    bodies.within(middle.x - reach, middle.x + reach, [&](const Body& body) {
        if (distance(body.outline.centre, middle) < reach + body.radiusMm) near.push_back(body);
    });
    return near;
}

bool isBlocked(const std::vector<Body>& near, Point first, Point second, const Arc& arc) {
    return std::any_of(near.begin(), near.end(),
                       [&](const Body& body) { return body.isTall() && arcRunsThrough(body, first, second, arc); });
}

/// What one jumper has to keep off.
class WireSurroundings {
public:
    WireSurroundings(Point first, Point second, const InOrder<Body>& bodies)
        : first_(first),
          second_(second),
          bodies_(bodiesAbout(bodies, first, second)) {}

    void addIds(const InOrder<Rect>& ids) {
        const Point middle = (first_ + second_) * 0.5;
        const double reach = distance(first_, second_) * kReachShare + kHalfWireMm;
        ids.within(middle.x - reach, middle.x + reach, [&](const Rect& id) {
            if (id.top < middle.y + reach && id.bottom() > middle.y - reach) ids_.push_back(id);
        });
    }
    void addWire(const LaidWire& wire) {
        const double reach = distance(first_, second_) * kReachShare + kBetweenWiresMm;
        if (distance(wire.middle, (first_ + second_) * 0.5) < reach + wire.reachMm)
            wires_.insert(wires_.end(), wire.samples.begin(), wire.samples.end());
    }

    Arc best(double usual) const {
        Arc best = scaled(kShapes.front(), usual);
        double least = 0;
        for (std::size_t rank = 0; rank < kShapes.size(); ++rank) {
            const double dislike = kRankWeight * static_cast<double>(rank);
            if (rank > 0 && dislike >= least) break;  // nothing that follows can be liked more
            const Arc arc = scaled(kShapes[rank], usual);
            const double cost = costOf(arc) + dislike;
            if (rank > 0 && cost >= least) continue;
            best = arc;
            least = cost;
        }
        return best;
    }

private:
    double costOf(const Arc& arc) const {
        double cost = isBlocked(bodies_, first_, second_, arc) ? kBlockedWeight : 0;
        for (const Point at : samplesOf(first_, second_, arc)) {
            if (distance(at, first_) < kFreeEndMm || distance(at, second_) < kFreeEndMm) continue;
            const auto touches = [&](const Body& body) { return distanceOutside(body.outline, at) < kHalfWireMm; };
            const auto crowds = [&](Point wire) { return distance(wire, at) < kBetweenWiresMm; };
            const auto hides = [&](const Rect& id) {
                return at.x > id.left - kHalfWireMm && at.x < id.right() + kHalfWireMm && at.y > id.top - kHalfWireMm &&
                       at.y < id.bottom() + kHalfWireMm;
            };
            if (std::any_of(bodies_.begin(), bodies_.end(), touches)) cost += kBodyWeight;
            if (std::any_of(ids_.begin(), ids_.end(), hides)) cost += kIdWeight;
            if (std::any_of(wires_.begin(), wires_.end(), crowds)) cost += 1;
        }
        return cost;
    }

    Point first_, second_;
    std::vector<Body> bodies_;
    std::vector<Rect> ids_;
    std::vector<Point> wires_;
};

double middleLine(const Table& table) { return table.boardsMm.top + table.boardsMm.height / 2; }

}  // namespace

WireCurve arcCurve(Point first, Point second, const Arc& arc) {
    const Point along = second - first;
    const Point left{along.y, -along.x};
    return {first, first + along * kArcControl + left * (arc.bow + arc.lean),
            second - along * kArcControl + left * (arc.bow - arc.lean), second};
}

Point arcPoint(Point first, Point second, const Arc& arc, double t) { return arcCurve(first, second, arc).at(t); }

double usualBow(Point first, Point second, double middleY) {
    const double nearness = std::abs(first.y - middleY) - std::abs(second.y - middleY);
    const bool fromFirst = std::abs(nearness) > 1e-6 ? nearness < 0 : first.x <= second.x;
    return (fromFirst ? 1 : -1) * jumperBow(distance(first, second));
}

bool arcRunsThrough(const Body& body, Point first, Point second, const Arc& arc) {
    const WireCurve curve = arcCurve(first, second, arc);
    const double length = distance(curve.a, curve.b) + distance(curve.b, curve.c) + distance(curve.c, curve.d);
    return runsThrough(body.outline, kWireRoomMm, length, [&](double t) { return curve.at(t); }, {first, second});
}

bool arcGetsTo(const InOrder<Body>& bodies, Point first, Point second) {
    const std::vector<Body> near = bodiesAbout(bodies, first, second);
    const double usual = jumperBow(distance(first, second));
    return std::any_of(kShapes.begin(), kShapes.end(),
                       [&](const Arc& shape) { return !isBlocked(near, first, second, scaled(shape, usual)); });
}

std::vector<Body> inWayOfArc(const InOrder<Body>& bodies, Point first, Point second) {
    const double usual = jumperBow(distance(first, second));
    std::vector<Body> found;
    for (const Body& body : bodiesAbout(bodies, first, second)) {
        if (!body.isTall()) continue;
        if (arcRunsThrough(body, first, second, {usual, 0}) || arcRunsThrough(body, first, second, {-usual, 0}))
            found.push_back(body);
    }
    return found;
}

std::vector<Arc> routeJumpers(const Bench& bench, const InOrder<Body>& bodies, const Table& table) {
    const bool crowded = bench.jumpers.size() * (bench.parts.size() + bench.jumpers.size()) > kMostPairs;
    const InOrder<Rect> ids = crowded ? InOrder<Rect>() : idPlaces(bench, bodies, table);
    std::vector<Arc> arcs;
    std::vector<LaidWire> earlier;
    for (const Jumper& jumper : bench.jumpers) {
        const Point first = endMm(bench, table, jumper.ends[0]), second = endMm(bench, table, jumper.ends[1]);
        if (jumper.flat) {
            arcs.emplace_back();
        } else {
            WireSurroundings around(first, second, bodies);
            around.addIds(ids);
            for (const LaidWire& wire : earlier) around.addWire(wire);
            arcs.push_back(around.best(usualBow(first, second, middleLine(table))));
        }
        if (!crowded) earlier.push_back(laid(first, second, arcs.back()));
    }
    return arcs;
}

Arc routeJumper(const Bench& bench, const Table& table, const Jumper& jumper) {
    if (jumper.flat) return {};
    const Point first = endMm(bench, table, jumper.ends[0]), second = endMm(bench, table, jumper.ends[1]);
    const InOrder<Body> bodies = bodiesOn(bench, table);
    WireSurroundings around(first, second, bodies);
    around.addIds(idPlaces(bench, bodies, table));
    for (std::size_t i = 0; i < bench.jumpers.size(); ++i) {
        const Jumper& other = bench.jumpers[i];
        if (other.id == jumper.id) continue;
        around.addWire(
            laid(endMm(bench, table, other.ends[0]), endMm(bench, table, other.ends[1]), table.jumperArcs[i]));
    }
    return around.best(usualBow(first, second, middleLine(table)));
}

}  // namespace tiepoint
