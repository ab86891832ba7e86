// Arcs are sampled at points; a body or an earlier wire is touched where a point comes closer than the insulation allows. Near its own
// ends a wire may touch what it likes: neighbouring holes are closer than two wires are broad.

#include "core/bench/jumper_routes.h"

#include "core/parts/outline.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kHalfWireMm = 0.81;     ///< insulation
constexpr double kBetweenWiresMm = 1.9;  ///< two insulations and a gap to tell them apart
constexpr double kFreeEndMm = 2.6;       ///< about the ends: a pitch
constexpr int kSamples = 14;
constexpr double kBodyWeight = 3;              ///< a hidden part is worse than two wires side by side
constexpr std::size_t kMostPairs = 4'000'000;  ///< of jumpers and things: beyond, nobody tells one arc from another
constexpr double kReachShare = 1.2;            ///< of its span: no arc gets farther from its middle
constexpr double kRankWeight = 0.35;           ///< of a sample: how much an unusual arc must save
constexpr std::array kShapes{1.0,  -1.0, 0.55, -0.55, 1.5,
                             -1.5, 2.1,  -2.1, 0.2,   -0.2};  ///< in the order of liking, of the usual bow

using Samples = std::array<Point, kSamples>;

Samples samplesOf(Point first, Point second, double bow) {
    Samples samples;
    for (int i = 0; i < kSamples; ++i) samples[i] = arcPoint(first, second, bow, (i + 0.5) / kSamples);
    return samples;
}

/// A wire that has its arc.
struct Laid {
    Samples samples;
    Point middle;
    double reachMm;  ///< from the middle to the farthest sample, at most
};

/// What one jumper has to keep off.
class Surroundings {
public:
    Surroundings(const Bench& bench, const Table& table, Point first, Point second, const std::vector<Laid>& earlier)
        : first_(first),
          second_(second) {
        const Point middle = (first + second) * 0.5;
        const double reach = distance(first, second) * kReachShare + kBetweenWiresMm;
        for (std::size_t i = 0; i < bench.parts.size(); ++i) {
            const Outline& body = table.parts[i].pose.body;
            if (bench.parts[i].kind->package->reach == Reach::Flying) continue;
            if (distance(body.centre, middle) < reach + body.halfLength) bodies_.push_back(&body);
        }
        for (const Laid& wire : earlier) {
            if (distance(wire.middle, middle) < reach + wire.reachMm)
                wires_.insert(wires_.end(), wire.samples.begin(), wire.samples.end());
        }
    }

    double costOf(const Samples& samples) const {
        double cost = 0;
        for (const Point at : samples) {
            if (distance(at, first_) < kFreeEndMm || distance(at, second_) < kFreeEndMm) continue;
            const auto touches = [&](const Outline* body) { return distanceOutside(*body, at) < kHalfWireMm; };
            const auto crowds = [&](Point wire) { return distance(wire, at) < kBetweenWiresMm; };
            if (std::any_of(bodies_.begin(), bodies_.end(), touches)) cost += kBodyWeight;
            if (std::any_of(wires_.begin(), wires_.end(), crowds)) cost += 1;
        }
        return cost;
    }

private:
    Point first_, second_;
    std::vector<const Outline*> bodies_;
    std::vector<Point> wires_;
};

double bestBow(const Surroundings& around, Point first, Point second, double usual) {
    double best = usual, least = 0;
    for (std::size_t rank = 0; rank < kShapes.size(); ++rank) {
        const double bow = usual * kShapes[rank];
        const double cost = around.costOf(samplesOf(first, second, bow)) + kRankWeight * static_cast<double>(rank);
        if (rank > 0 && cost >= least) continue;
        best = bow;
        least = cost;
        if (cost <= kRankWeight * static_cast<double>(rank)) break;  // touches nothing; what follows is liked less
    }
    return best;
}

}  // namespace

Point arcPoint(Point first, Point second, double bow, double t) {
    const Point along = second - first;
    const Point left{along.y, -along.x};
    const double u = 1 - t;
    const double share = 3 * u * u * t * kArcControl + 3 * u * t * t * (1 - kArcControl) + t * t * t;
    return first + along * share + left * (3 * u * t * bow);
}

double usualBow(Point first, Point second, double middleY) {
    const double nearness = std::abs(first.y - middleY) - std::abs(second.y - middleY);
    const bool fromFirst = std::abs(nearness) > 1e-6 ? nearness < 0 : first.x <= second.x;
    return (fromFirst ? 1 : -1) * jumperBow(distance(first, second));
}

std::vector<double> routeJumpers(const Bench& bench, const Table& table) {
    const double middleY = table.boardsMm.top + table.boardsMm.height / 2;
    std::vector<double> bows;
    std::vector<Laid> earlier;
    const bool crowded = bench.jumpers.size() * (bench.parts.size() + bench.jumpers.size()) > kMostPairs;
    for (const Jumper& jumper : bench.jumpers) {
        const Point first = endMm(bench, table, jumper.ends[0]), second = endMm(bench, table, jumper.ends[1]);
        const double usual = jumper.flat ? 0 : usualBow(first, second, middleY);
        const bool chooses = !jumper.flat && !crowded;
        bows.push_back(chooses ? bestBow(Surroundings(bench, table, first, second, earlier), first, second, usual)
                               : usual);
        if (!crowded)
            earlier.push_back(
                {samplesOf(first, second, bows.back()), (first + second) * 0.5, distance(first, second) * kReachShare});
    }
    return bows;
}

}  // namespace tiepoint
