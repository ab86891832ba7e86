// Bare leads that cross: seen from above the legs of two bending parts run over each other, and a nudge makes them touch. Jumpers
// are insulated; legs of one net may touch.

#include "core/base/stopping.h"
#include "core/bench/table.h"
#include "core/findings/rules.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

struct Stretch {
    int part;
    Point a, b;
};

double turn(Point o, Point a, Point b) { return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x); }

/// Whether two stretches cross inside both.
bool cross(const Stretch& one, const Stretch& other) {
    return turn(one.a, one.b, other.a) * turn(one.a, one.b, other.b) < 0 &&
           turn(other.a, other.b, one.a) * turn(other.a, other.b, one.b) < 0;
}

std::vector<Stretch> stretchesOf(const Bench& bench) {
    std::vector<Stretch> stretches;
    for (int index = 0; index < static_cast<int>(bench.parts.size()); ++index) {
        if (bench.parts[index].kind->package->reach != Reach::Bending) continue;
        const auto places = leadHolesMm(bench, bench.parts[index]);
        if (places[0] && places[1]) stretches.push_back({index, *places[0], *places[1]});
    }
    return stretches;
}

bool shareANet(const Layout& layout, int one, int other) {
    for (int a = layout.firstLead[one]; a < layout.firstLead[one + 1]; ++a) {
        for (int b = layout.firstLead[other]; b < layout.firstLead[other + 1]; ++b) {
            if (layout.netOfLead[a] == layout.netOfLead[b]) return true;
        }
    }
    return false;
}

}  // namespace

Suspicions findBareLeads(const Examination& examination) {
    const Bench& bench = examination.bench();
    const auto stretches = stretchesOf(bench);
    Suspicions all;
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        stopIfAsked();
        for (std::size_t j = i + 1; j < stretches.size(); ++j) {
            const Stretch& one = stretches[i];
            const Stretch& other = stretches[j];
            if (!cross(one, other) || shareANet(examination.layout(), one.part, other.part)) continue;
            const Part& first = bench.parts[one.part];
            const Part& second = bench.parts[other.part];
            Suspicion found;
            found.finding.severity = Severity::Risk;
            found.finding.parts = {first.id, second.id};
            found.finding.holes = holesOf(first);
            for (const Hole& hole : holesOf(second)) found.finding.holes.push_back(hole);
            found.finding.text = fmt::format(
                "The bare leads of {} and {} cross: a nudge makes them touch and joins what should be apart.", first.id,
                second.id);
            all.push_back(std::move(found));
        }
    }
    return all;
}

}  // namespace tiepoint
