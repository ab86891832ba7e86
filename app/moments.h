#pragma once
// Benches at chosen instants: what the commands that run time share.

#include "core/base/result.h"
#include "core/bench/bench.h"
#include "core/snapshot/runner.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::app {

/// "S1@0.5-0.8": a button pressed from one time to another, seconds. An error if the bench has no such button.
Result<Press> readPress(std::string_view text, const Bench& bench, const std::string& file);

/// What is read of a bench: "A.e12" volts of a hole, "R1" amperes of a part into its first lead or of a jumper.
Result<PinnedReading> readTraced(std::string_view name, const Bench& bench, const std::string& file);

struct TraceRow {
    double second = 0;
    std::vector<double> figures;  ///< in the order of what is read; NaN where there is nothing to read
};
struct Trace {
    std::vector<TraceRow> rows;
    std::string stopped;  ///< why the run ended before its time; empty if it didn't
};
/// Follows a bench from power-up at 0 s, reading at 0, every, 2 every, ... and at the end.
Trace follow(const std::shared_ptr<const Bench>& bench, const Inputs& inputs, const std::vector<PinnedReading>& things,
             double untilSecond, double everySecond);

/// The bench at one time after power-up.
std::shared_ptr<const Snapshot> momentOf(const std::shared_ptr<const Bench>& bench, const Inputs& inputs,
                                         double second);

}  // namespace tiepoint::app
