// tiepoint solve FILE: nets, voltages, currents, brightness.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/finding_report.h"
#include "app/moments.h"
#include "app/output.h"
#include "app/solve_report.h"
#include "core/snapshot/snapshot.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

namespace tiepoint::app {
namespace {

struct SolveOptions {
    BenchInput input;
    std::string walk;
    std::optional<double> atSecond;
    bool json = false;
};

int runSolve(const SolveOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    if (const auto held = heldBackByHunt(**bench, options.input.file)) return complain(*held);
    const auto inputs = options.input.inputsFor(**bench);
    if (!inputs) return complain(inputs.error());
    std::optional<int> walked;
    if (!options.walk.empty()) {
        walked = (*bench)->partIndex(options.walk);
        if (*walked < 0)
            return complain(Error{ErrorKind::Reference,
                                  fmt::format("--walk {}: the bench has no part of that id", options.walk),
                                  {},
                                  options.input.file});
    }
    if (options.atSecond && !(*options.atSecond >= 0))
        return complain("tiepoint: --at: this is a time from 0, in seconds");
    const auto snapshot = options.atSecond ? momentOf(*bench, *inputs, *options.atSecond) : evaluate(*bench, *inputs);
    spdlog::debug("{}: {} after {} iterations", options.input.file, statusName(snapshot->status()),
                  snapshot->solution.iterations);
    Report report = inspect(*snapshot);
    report.findings = revealed(**bench, report.findings, printedLevel(**bench, options.json));
    print(options.json ? solveJson(*snapshot, report, walked) : solveText(*snapshot, report, walked));
    return snapshot->status() == Status::None ? kExitBad : kExitGood;
}

}  // namespace

Action declareSolve(CLI::App& parser) {
    auto options = std::make_shared<SolveOptions>();
    options->input.declareFile(parser);
    options->input.declareHold(parser);
    parser.add_option("--walk", options->walk, "The voltage around the loop of a part, hole by hole: D1");
    parser.add_option("--at", options->atSecond, "The bench so many seconds after it was switched on");
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runSolve(*options); };
}

}  // namespace tiepoint::app
