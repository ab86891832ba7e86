// Variants of a bench (one slip each) by ports against the same variant from scratch, in one process: how many times as fast, and how far
// apart the answers are. Both give the currents of all lights. From scratch is `evaluate` of a bench that stands ready.
// Slips are taken as they come, those that have to be solved in full too; their share is printed. Responses of the base are found as they are
// first asked for, so a run of few slips is slower for each.

#include "bench/interleave.h"
#include "core/snapshot/snapshot.h"
#include "core/variants/variant_solver.h"
#include "support/slip_benches.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace tiepoint::bench {
namespace {

struct Timed {
    double scratchSecond = 0, shortSecond = 0;
};

struct SlipTally {
    int count = 0, reduced = 0;
    double worstShare = 0;
    std::vector<double> ratios;
    Timed sum;
};

double lightsOf(const VariantSolver& solver, const std::vector<int>& lights) {
    double sum = 0;
    for (const int part : lights) sum += solver.ampere(part, 0);
    return sum;
}

/// The largest distance of any element's current, as a share of the largest current.
double distanceShare(const VariantSolver& solver, const Snapshot& whole) {
    double largest = 1e-5, worst = 0;  // below ten microamperes nothing lights
    for (const ElementState& e : whole.solution.elements()) largest = std::max(largest, std::abs(e.currentAmpere));
    for (const ElementState& e : whole.solution.elements())
        worst = std::max(worst, std::abs(solver.ampere(e.part, e.spec) - e.currentAmpere));
    return worst / largest;
}

/// The same bench in full, but for what a bench can't say.
bool canBeSaid(const Variant& variant) { return variant.open.empty() && variant.dry.empty(); }

void measure(int parts, int supplies, int slips) {
    std::mt19937 random(static_cast<unsigned>(parts));
    test::SlipBench drawn(parts, supplies, random);
    const auto base = drawn.share();
    std::vector<int> lights;
    for (std::size_t p = 0; p < base->parts.size(); ++p)
        if (base->parts[p].kind->emitsLight) lights.push_back(static_cast<int>(p));
    const double before = threadSecond();
    VariantSolver solver(buildLayout(base));
    const double prepared = threadSecond() - before;

    std::map<std::string, SlipTally> tallies;
    double checksum = 0;
    for (int k = 0; k < slips; ++k) {
        const Variant variant = drawn.slip(1);
        if (!canBeSaid(variant)) continue;
        const auto changed = benchOf(*base, variant);
        Timed t;
        double start = threadSecond();
        const auto whole = evaluate(changed);
        for (const int part : lights) checksum += whole->partPower[part];
        t.scratchSecond = threadSecond() - start;
        start = threadSecond();
        const Status status = solver.solve(variant);
        checksum += lightsOf(solver, lights);
        t.shortSecond = threadSecond() - start;
        SlipTally& tally = tallies[drawn.said()];
        ++tally.count;
        tally.reduced += solver.wasReduced();
        tally.ratios.push_back(t.scratchSecond / t.shortSecond);
        tally.sum.scratchSecond += t.scratchSecond;
        tally.sum.shortSecond += t.shortSecond;
        if (status != whole->status())
            tally.worstShare = INFINITY;
        else if (status == Status::Solved)
            tally.worstShare = std::max(tally.worstShare, distanceShare(solver, *whole));
    }

    fmt::print("{} parts, {} supplies, {} jumpers, {} lights; prepared in {:.1f} ms\n", base->parts.size(), supplies,
               base->jumpers.size(), lights.size(), prepared * 1e3);
    fmt::print("   {:<22} {:>6} {:>9} {:>12} {:>10} {:>14} {:>14}\n", "slip", "count", "by ports", "scratch us",
               "short us", "median times", "worst distance");
    SlipTally all;
    for (const auto& [said, tally] : tallies) {
        all.count += tally.count;
        all.reduced += tally.reduced;
        all.worstShare = std::max(all.worstShare, tally.worstShare);
        all.sum.scratchSecond += tally.sum.scratchSecond;
        all.sum.shortSecond += tally.sum.shortSecond;
        all.ratios.insert(all.ratios.end(), tally.ratios.begin(), tally.ratios.end());
    }
    tallies["all"] = all;
    for (auto& [said, tally] : tallies) {
        std::nth_element(tally.ratios.begin(), tally.ratios.begin() + tally.ratios.size() / 2, tally.ratios.end());
        fmt::print("   {:<22} {:>6} {:>9} {:>12.1f} {:>10.1f} {:>14.1f} {:>14.1e}\n", said, tally.count, tally.reduced,
                   tally.sum.scratchSecond / tally.count * 1e6, tally.sum.shortSecond / tally.count * 1e6,
                   tally.ratios[tally.ratios.size() / 2], tally.worstShare);
    }
    fmt::print("   in all {:.1f} times as fast (checksum {:.3g})\n\n", all.sum.scratchSecond / all.sum.shortSecond,
               checksum);
}

}  // namespace
}  // namespace tiepoint::bench

int main() {
    fmt::print(
        "Variants of a bench, one slip each (bars: 10 times as fast for 100 parts, 50 for 1,000; distance 1e-6)\n");
    tiepoint::bench::measure(100, 2, 3000);
    tiepoint::bench::measure(1000, 3, 4000);
}
