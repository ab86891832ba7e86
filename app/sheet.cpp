// tiepoint sheet FILE -o OUT: a plan on paper for building the bench from real parts, or the list of parts as CSV. Needs no display.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/kit_option.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/base/file_io.h"
#include "core/base/printable.h"
#include "ui/sheet/build_sheet.h"

#include <fmt/format.h>

#include <map>

namespace tiepoint::app {
namespace {

struct SheetOptions {
    BenchInput input;
    KitOption kit;
    std::string output;
    std::string paper = "a4", support = "pictures";
    bool blank = false, worksheet = false, key = false;
    int copies = 1;
    double spare = 0;
};

bool endsIn(const std::string& path, std::string_view ending) { return path.ends_with(ending); }

std::string checkSheetEnding(const std::string& path) {
    if (endsIn(path, ".pdf") || endsIn(path, ".csv")) return {};
    return fmt::format("{}: a sheet's name ends in .pdf, a parts list's in .csv", path);
}

ui::SheetWish wishOf(const SheetOptions& options) {
    ui::SheetWish wish;
    wish.paper = options.paper == "letter" ? ui::Paper::Letter : ui::Paper::A4;
    wish.support = options.support == "holes"     ? ui::Support::Holes
                   : options.support == "diagram" ? ui::Support::Diagram
                                                  : ui::Support::Pictures;
    wish.reader = options.key ? ui::SheetFor::Teacher : options.blank ? ui::SheetFor::Planner : ui::SheetFor::Learner;
    wish.copies = options.copies;
    wish.sparePercent = options.spare;
    return wish;
}

int runSheet(const SheetOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    const auto kit = options.kit.read();
    if (!kit) return complain(kit.error());
    const BuildPlan plan = *kit ? planOf(*bench, **kit) : planOf(*bench);
    for (const std::string& gap : plan.kitGaps)
        print(fmt::format("{}: {}\n", printable(plan.kitTitle), printable(gap)));
    const int done = plan.kitServes ? kExitGood : kExitBad;
    if (endsIn(options.output, ".csv")) {
        const auto written =
            writeFileAtomically(options.output, totalsAsCsv(totalsOf(plan, options.copies, options.spare)));
        return written ? done : complain(written.error());
    }
    const Offscreen offscreen;
    const auto failed = ui::saveBuildSheet(plan, wishOf(options), QString::fromStdString(options.output));
    if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    return done;
}

}  // namespace

Action declareSheet(CLI::App& parser) {
    auto options = std::make_shared<SheetOptions>();
    options->input.declareFile(parser);
    options->kit.declare(parser);
    parser.add_option("-o,--output", options->output, "The plan as PDF, or the parts list as CSV")
        ->required()
        ->check(checkSheetEnding, "a name ending in .pdf or .csv");
    parser.add_option("--paper", options->paper, "a4 or letter")
        ->check(CLI::IsMember({"a4", "letter"}).description(""));
    parser.add_option("--support", options->support, "How much the steps help: pictures, holes or diagram")
        ->check(CLI::IsMember({"pictures", "holes", "diagram"}).description(""));
    auto* blank =
        parser.add_flag("--blank", options->blank, "An empty board and the parts: places are the learner's own");
    auto* worksheet =
        parser.add_flag("--worksheet", options->worksheet, "Fields for what is predicted and measured (as without)");
    auto* key = parser.add_flag("--key", options->key, "For the teacher: what is expected, with its range");
    blank->excludes(worksheet)->excludes(key);
    worksheet->excludes(key);
    parser.add_option("--copies", options->copies, "Add what to buy for so many benches")->check(CLI::Range(1, 10000));
    parser.add_option("--spare", options->spare, "So many per cent more, in reserve")->check(CLI::Range(0.0, 1000.0));
    return [options] { return runSheet(*options); };
}

}  // namespace tiepoint::app
