// tiepoint arrange FILE -o OUT: a bench that a hand can build, from a circuit without places or from another bench.

#include "app/commands.h"
#include "app/output.h"
#include "core/bench/bench_file.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/circuit_file.h"
#include "core/planner/kit_wish.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>

namespace tiepoint::app {
namespace {

struct ArrangeOptions {
    std::string file, output;
    std::string board, kit;
    std::vector<std::string> keep;
};

/// The parts that stay, as they lie on the only board of the bench.
Result<std::vector<Part>> keptParts(const ArrangeOptions& options, const ReadCircuit& read) {
    std::vector<Part> kept;
    for (const std::string& id : options.keep) {
        const Part* part = read.bench ? read.bench->findPart(id) : nullptr;
        if (!part)
            return Error{
                ErrorKind::Reference, fmt::format("--keep {}: the bench has no part of that id", id), {}, options.file};
        kept.push_back(*part);
        for (auto& lead : kept.back().leads) {
            if (!lead) continue;
            if (lead->board != read.bench->boards.front().id) {
                return Error{ErrorKind::Placement,
                             fmt::format("--keep {}: it must lie on the first board", id),
                             {},
                             options.file};
            }
            lead->board = "A";
        }
    }
    return kept;
}

/// The board that was asked for; else that of the bench, that of the kit, or a half board. As a class's boards are labelled and its rails run.
PlanWish boardWish(const ArrangeOptions& options, const ReadCircuit& read, const std::optional<Kit>& kit) {
    PlanWish wish = kit ? wishFor(*kit) : PlanWish{};
    if (!wish.board) wish.board = findBoardKind("half");
    if (read.bench && !read.bench->boards.empty()) {
        const Board& first = read.bench->boards.front();
        wish.board = first.kind, wish.rails = first.rails, wish.labels = first.labels;
    }
    if (!options.board.empty()) wish.board = findBoardKind(options.board);
    return wish;
}

int runArrange(const ArrangeOptions& options) {
    const auto read = readCircuit(options.file);
    if (!read) return complain(read.error());
    for (const Error& warning : read->warnings) spdlog::warn(warning.oneLine());
    const auto kept = keptParts(options, *read);
    if (!kept) return complain(kept.error());
    std::optional<Kit> kit;
    if (!options.kit.empty()) {
        auto readKit = readKitFile(options.kit);
        if (!readKit) return complain(readKit.error());
        kit = std::move(readKit).value().kit;
    }
    PlanWish wish = boardWish(options, *read, kit);
    wish.kept = *kept;

    Plan plan = planBench(read->netlist, wish);
    if (read->bench) {
        plan.bench.disclosure = read->bench->disclosure;
        plan.bench.surroundings = read->bench->surroundings;
    }
    for (const Unplaced& part : plan.unplaced) print(fmt::format("{} isn't placed: {}\n", part.part, part.why));
    if (!plan.bench.boards.empty()) {
        const auto written = writeBenchFile(plan.bench, options.output);
        if (!written) return complain(written.error());
        const JumperBill bill = jumperBill(plan.bench);
        print(fmt::format("{} parts, {} jumpers, {:.0f} mm of wire\n", plan.bench.parts.size(), bill.count,
                          bill.lengthMm));
    }
    if (plan.jumpersOver > 0) print(fmt::format("the kit has {} jumpers too few\n", plan.jumpersOver));
    return plan.isWhole() && plan.jumpersOver == 0 ? kExitGood : kExitBad;
}

}  // namespace

Action declareArrange(CLI::App& parser) {
    auto options = std::make_shared<ArrangeOptions>();
    parser.add_option("FILE", options->file, "The circuit or bench, a *.circuit.json or *.bench.json file")->required();
    parser.add_option("-o,--output", options->output, "The bench to write")->required();
    parser.add_option("--board", options->board, "half, full or mini; else the bench's own, or half")
        ->check(CLI::IsMember({"half", "full", "mini"}).description(""));
    parser.add_option("--kit", options->kit,
                      "What the class has, a *.kit.json file: its boards and parts alone are used");
    parser.add_option("--keep", options->keep, "Ids of parts that stay where they are: R1,S1")
        ->delimiter(',')
        ->allow_extra_args(false);
    return [options] { return runArrange(*options); };
}

}  // namespace tiepoint::app
