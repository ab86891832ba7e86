#pragma once
// What becomes of a bench that is left alone: followed from its present instant until it is steady, until it repeats, or until it has been
// followed long enough. What reads benches as if they rested (findings, answers, truth tables, meters, claims) reads this of a bench that
// stores: what lasts, and how far each figure went on the way there.
//
// Bounds are counts, not clocks, so that the same bench gets the same answer anywhere. Loops call stopIfAsked().

#include "core/time/bench_run.h"
#include "core/time/settled.h"

#include <functional>

namespace tiepoint {

struct SettleLimits {
    double mostSecond = 10;
    long long mostWork = 300'000;  ///< as CircuitRun::workDone(); about 0.2 s
};

/// Called with each solution of what lasts and for how long it held, in order.
using LastingVisit = std::function<void(const Solution&, double seconds)>;

/// Whether anything is stored or kept by bits: where nothing is, time finds no side for what could fall either way.
bool keepsAnything(const Circuit& circuit);

/// Follows a bench from its present instant. Its run is left at the end.
Settled settle(BenchRun& run, const LastingVisit& visit = {}, const SettleLimits& limits = {});

}  // namespace tiepoint
