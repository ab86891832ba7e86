// Bodies that overlap: hands couldn't place the parts so. A file may say it, so it is a finding and no error.

#include "core/base/stopping.h"
#include "core/bench/table.h"
#include "core/edit/placement.h"
#include "core/findings/rules.h"

#include <fmt/format.h>

#include <cmath>

namespace tiepoint {
namespace {

/// A body and the circle round it.
struct Body {
    int part;
    Outline outline;
    double radiusMm;
};

std::vector<Body> bodiesOf(const Bench& bench) {
    std::vector<Body> bodies;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        const auto pose = poseOf(*bench.parts[part].kind->package, leadHolesMm(bench, bench.parts[part]));
        if (pose) bodies.push_back({part, pose->body, std::hypot(pose->body.halfLength, pose->body.halfWidth)});
    }
    return bodies;
}

bool meet(const Body& a, const Body& b) {
    return distance(a.outline.centre, b.outline.centre) < a.radiusMm + b.radiusMm && overlap(a.outline, b.outline);
}

Suspicion suspicionOfOverlap(const Bench& bench, const Part& one, const Part& other) {
    Suspicion found;
    found.finding.severity = Severity::Risk;
    found.finding.parts = {one.id, other.id};
    found.finding.holes = holesOf(one);
    for (const Hole& hole : holesOf(other)) found.finding.holes.push_back(hole);
    found.finding.text = fmt::format("{} and {} are in each other's way: their bodies overlap.", one.id, other.id);
    for (const Part* mover : {&one, &other}) {
        for (const int rows : {1, -1, 2, -2}) {
            const auto moved = shifted(bench, *mover, 0, rows);
            if (!moved) continue;
            const int count = rows < 0 ? -rows : rows;
            found.proposals.push_back({fmt::format("Move {} by {} {}", mover->id, count, count == 1 ? "row" : "rows"),
                                       {"Move " + mover->id, {ReplacePart{*moved}}}});
        }
    }
    return found;
}

}  // namespace

Suspicions findOverlaps(const Examination& examination) {
    const Bench& bench = examination.bench();
    const std::vector<Body> bodies = bodiesOf(bench);
    Suspicions all;
    for (std::size_t i = 0; i < bodies.size(); ++i) {
        stopIfAsked();
        for (std::size_t j = i + 1; j < bodies.size(); ++j) {
            if (meet(bodies[i], bodies[j]))
                all.push_back(suspicionOfOverlap(bench, bench.parts[bodies[i].part], bench.parts[bodies[j].part]));
        }
    }
    return all;
}

}  // namespace tiepoint
