// An arc must keep off tall bodies; that is looked at closely. What it only had better keep off is looked at in a few points of the arc:
// lying bodies, the places where ids like to stand, and earlier wires. Near its own ends a wire may touch what it likes: neighbouring
// holes are closer than two wires are broad.

#include "core/bench/jumper_routes.h"

#include "core/bench/id_places.h"
#include "core/parts/outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kBetweenWiresMm = 1.9;  ///< two insulations and a gap to tell them apart
constexpr double kFreeEndMm = 2.6;       ///< about the ends: a pitch
constexpr int kSamples = 14;
constexpr double kBlockedWeight = 1000;  ///< of a tall body: nothing outweighs it
constexpr double kBodyWeight = 3;        ///< a hidden part is worse than two wires side by side
constexpr double kIdWeight = 1.5;
constexpr double kReachShare = 1.2;   ///< of its span: no arc gets farther from its middle
constexpr double kRankWeight = 0.35;  ///< of a sample: how much an unusual arc must save

/// In the order of liking; both are shares of the usual bow. For each arc there is its mirror image.
constexpr std::array kPlainShapes{
    Arc{1, 0},      Arc{-1, 0},      Arc{0.55, 0},  Arc{-0.55, 0},  Arc{1.5, 0},    Arc{-1.5, 0},
    Arc{2.1, 0},    Arc{-2.1, 0},    Arc{0.2, 0},   Arc{-0.2, 0},   Arc{0.8, 0.8},  Arc{0.8, -0.8},
    Arc{-0.8, 0.8}, Arc{-0.8, -0.8}, Arc{1.5, 1.2}, Arc{1.5, -1.2}, Arc{-1.5, 1.2}, Arc{-1.5, -1.2},
    Arc{0, 1.2},    Arc{0, -1.2},    Arc{0.4, 1.6}, Arc{0.4, -1.6}, Arc{-0.4, 1.6}, Arc{-0.4, -1.6},
    Arc{2.9, 0},    Arc{-2.9, 0},    Arc{2.3, 2},   Arc{2.3, -2},   Arc{-2.3, 2},   Arc{-2.3, -2},
    Arc{0, 2.2},    Arc{0, -2.2},    Arc{3.4, 1.5}, Arc{3.4, -1.5}, Arc{-3.4, 1.5}, Arc{-3.4, -1.5}};

/// The plain ones, and then, for ends beside a body, those that leave backwards.
std::vector<Arc> allShapes() {
    std::vector<Arc> shapes(kPlainShapes.begin(), kPlainShapes.end());
    constexpr double kUsual = Arc::kUsualReach;
    constexpr std::array<std::array<double, 2>, 6> kReaches{
        {{-0.15, kUsual}, {kUsual, -0.15}, {-0.15, -0.15}, {-0.5, kUsual}, {kUsual, -0.5}, {-0.5, -0.5}}};
    for (const auto& [first, second] : kReaches) {
        for (const double bow : {1.2, -1.2, 2.4, -2.4, 3.6, -3.6}) shapes.push_back({bow, 0, first, second});
    }
    return shapes;
}
Arc scaledBy(Arc shape, double bow) {
    shape.bow *= bow;
    shape.lean *= bow;
    return shape;
}

using Samples = std::array<Point, kSamples>;

Samples samplesOf(Point first, Point second, const Arc& arc) {
    const WireCurve curve = arcCurve(first, second, arc);
    Samples samples;
    for (int i = 0; i < kSamples; ++i) samples[i] = curve.at((i + 0.5) / kSamples);
    return samples;
}

double squareOf(Point p) { return p.x * p.x + p.y * p.y; }

/// Points of the wires that have their arcs, in cells as broad as wires must be apart, so that a look about a place is nine cells.
class LaidWires {
public:
    void add(const Samples& samples) {
        for (const Point at : samples) {
            int& head = heads_[bucketOf(cellOf(at.x), cellOf(at.y))];
            points_.push_back({at, head});
            head = static_cast<int>(points_.size()) - 1;
        }
    }
    bool anyNear(Point at) const {
        if (points_.empty()) return false;
        const long column = cellOf(at.x), row = cellOf(at.y);
        for (long x = column - 1; x <= column + 1; ++x) {
            for (long y = row - 1; y <= row + 1; ++y) {
                for (int i = heads_[bucketOf(x, y)]; i >= 0; i = points_[i].next)
                    if (squareOf(points_[i].at - at) < kBetweenWiresMm * kBetweenWiresMm) return true;
            }
        }
        return false;
    }

private:
    struct Entry {
        Point at;
        int next;  ///< in the same bucket; -1: none
    };
    static constexpr std::size_t kBuckets = 4096;

    static long cellOf(double mm) { return static_cast<long>(std::floor(mm / kBetweenWiresMm)); }
    /// Cells that share a bucket cost a comparison, nothing else.
    static std::size_t bucketOf(long x, long y) { return static_cast<std::size_t>(x * 73 + y * 1031) % kBuckets; }

    std::vector<int> heads_ = std::vector<int>(kBuckets, -1);
    std::vector<Entry> points_;
};

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
    WireSurroundings(Point first, Point second, const InOrder<Body>& bodies, const LaidWires& wires)
        : first_(first),
          second_(second),
          wires_(wires),
          bodies_(bodiesAbout(bodies, first, second)) {}

    /// A wire in a socket begins on its box, which isn't in its way.
    void leaveOut(const Bench& bench, const Jumper& jumper) {
        for (const JumperEnd& end : jumper.ends) {
            const auto* socket = std::get_if<Socket>(&end);
            const int box = socket ? bench.partIndex(socket->part) : -1;
            std::erase_if(bodies_, [box](const Body& body) { return body.part == box; });
        }
    }

    void addIds(const InOrder<Rect>& ids) {
        const Point middle = (first_ + second_) * 0.5;
        const double reach = distance(first_, second_) * kReachShare + kHalfWireMm;
        ids.within(middle.x - reach, middle.x + reach, [&](const Rect& id) {
            if (id.top < middle.y + reach && id.bottom() > middle.y - reach) ids_.push_back(id);
        });
    }

    Arc best(double usual) const {
        Arc best = Arc{usual, 0};
        double least = std::numeric_limits<double>::infinity();
        for (std::size_t rank = 0; rank < arcShapes().size(); ++rank) {
            const double dislike = kRankWeight * static_cast<double>(rank);
            if (dislike >= least) break;  // nothing that follows can be liked more
            const Arc arc = scaledBy(arcShapes()[rank], usual);
            double cost = dislike + costOf(arc, least - dislike);
            if (cost < least && isBlocked(bodies_, first_, second_, arc)) cost += kBlockedWeight;
            if (cost >= least) continue;
            best = arc;
            least = cost;
        }
        return best;
    }

private:
    bool isTouched(Point at) const {
        return std::any_of(bodies_.begin(), bodies_.end(), [&](const Body& body) {
            const double reach = body.radiusMm + kHalfWireMm;
            return squareOf(at - body.outline.centre) < reach * reach &&
                   distanceOutside(body.outline, at) < kHalfWireMm;
        });
    }
    bool hidesAnId(Point at) const {
        return std::any_of(ids_.begin(), ids_.end(), [&](const Rect& id) {
            return at.x > id.left - kHalfWireMm && at.x < id.right() + kHalfWireMm && at.y > id.top - kHalfWireMm &&
                   at.y < id.bottom() + kHalfWireMm;
        });
    }

    /// What the arc had better keep off; it is reckoned no further than to `most`.
    double costOf(const Arc& arc, double most) const {
        double cost = 0;
        for (const Point at : samplesOf(first_, second_, arc)) {
            if (cost >= most) break;
            if (squareOf(at - first_) < kFreeEndMm * kFreeEndMm || squareOf(at - second_) < kFreeEndMm * kFreeEndMm)
                continue;
            if (isTouched(at)) cost += kBodyWeight;
            if (hidesAnId(at)) cost += kIdWeight;
            if (wires_.anyNear(at)) cost += 1;
        }
        return cost;
    }

    Point first_, second_;
    const LaidWires& wires_;
    std::vector<Body> bodies_;
    std::vector<Rect> ids_;
};

double middleLine(const Table& table) { return table.boardsMm.top + table.boardsMm.height / 2; }

}  // namespace

const std::vector<Arc>& arcShapes() {
    static const std::vector<Arc> kShapes = allShapes();
    return kShapes;
}

WireCurve arcCurve(Point first, Point second, const Arc& arc) {
    const Point along = second - first;
    const Point left{along.y, -along.x};
    return {first, first + along * arc.first + left * (arc.bow + arc.lean),
            second - along * arc.second + left * (arc.bow - arc.lean), second};
}

Point arcPoint(Point first, Point second, const Arc& arc, double t) { return arcCurve(first, second, arc).at(t); }

double usualBow(Point first, Point second, double middleY) {
    const double nearness = std::abs(first.y - middleY) - std::abs(second.y - middleY);
    const bool fromFirst = std::abs(nearness) > 1e-6 ? nearness < 0 : first.x <= second.x;
    return (fromFirst ? 1 : -1) * jumperBow(distance(first, second));
}

bool arcRunsThrough(const Body& body, Point first, Point second, const Arc& arc) {
    return runsThrough(body, arcCurve(first, second, arc), kWireRoomMm, {first, second});
}

bool arcGetsTo(const InOrder<Body>& bodies, Point first, Point second) {
    const std::vector<Body> near = bodiesAbout(bodies, first, second);
    const double usual = jumperBow(distance(first, second));
    return std::any_of(arcShapes().begin(), arcShapes().end(),
                       [&](const Arc& shape) { return !isBlocked(near, first, second, scaledBy(shape, usual)); });
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
    const InOrder<Rect> ids = idPlaces(bench, bodies, table);
    const InOrder<Body> all = bodiesAndBoxesOn(bench, table);
    std::vector<Arc> arcs;
    LaidWires wires;
    for (const Jumper& jumper : bench.jumpers) {
        const Point first = endMm(bench, table, jumper.ends[0]), second = endMm(bench, table, jumper.ends[1]);
        Arc arc;
        if (!jumper.flat) {
            WireSurroundings around(first, second, all, wires);
            around.leaveOut(bench, jumper);
            around.addIds(ids);
            arc = around.best(usualBow(first, second, middleLine(table)));
        }
        arcs.push_back(arc);
        wires.add(samplesOf(first, second, arc));
    }
    return arcs;
}

Arc routeJumper(const Bench& bench, const Table& table, const Jumper& jumper) {
    if (jumper.flat) return {};
    const Point first = endMm(bench, table, jumper.ends[0]), second = endMm(bench, table, jumper.ends[1]);
    LaidWires wires;
    for (std::size_t i = 0; i < bench.jumpers.size(); ++i) {
        const Jumper& other = bench.jumpers[i];
        if (other.id == jumper.id) continue;
        wires.add(
            samplesOf(endMm(bench, table, other.ends[0]), endMm(bench, table, other.ends[1]), table.jumperArcs[i]));
    }
    const InOrder<Body> all = bodiesAndBoxesOn(bench, table);
    WireSurroundings around(first, second, all, wires);
    around.leaveOut(bench, jumper);
    around.addIds(idPlaces(bench, bodiesOn(bench, table), table));
    return around.best(usualBow(first, second, middleLine(table)));
}

}  // namespace tiepoint
