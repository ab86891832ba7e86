// tiepoint slips TARGET -o OUT: each single slip on a bench, what the eye sees of it, where to look first and what proves it.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/json_writer.h"
#include "app/kit_option.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/base/file_io.h"
#include "core/course/kit_slips.h"
#include "core/sheet/kit_bench.h"
#include "ui/sheet/symptom_sheet.h"

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

struct SlipsOptions {
    BenchInput input;
    KitOption kit;
    std::string output;
    std::string paper = "a4";
};

std::string checkSlipsEnding(const std::string& path) {
    if (path.ends_with(".pdf") || path.ends_with(".csv") || path.ends_with(".json")) return {};
    return fmt::format("{}: a symptom sheet's name ends in .pdf, .csv or .json", path);
}

std::string slipsAsJson(const Bench& bench, const std::vector<SlipSeen>& slips) {
    JsonWriter json;
    json.beginObject().field("title", bench.title).key("slips").beginArray();
    for (const SlipSeen& each : slips) {
        std::vector<std::string> holes;
        for (const Hole& hole : each.slip.holes()) holes.push_back(toString(hole));
        json.beginObject().field("kind", each.slip.kind->name).field("text", each.text).field("seen", each.seen);
        json.field("look", each.look)
            .field("proof", each.proof)
            .field("mend", each.mend)
            .field("weight", each.slip.weight);
        json.texts("parts", each.slip.ids()).texts("holes", holes).endObject();
    }
    json.endArray().endObject();
    return json.take();
}

int runSlips(const SlipsOptions& options) {
    const auto read = options.input.read();
    if (!read) return complain(read.error());
    std::shared_ptr<const Bench> bench = *read;
    const auto kit = options.kit.read();
    if (!kit) return complain(kit.error());
    std::function<bool(const Slip&)> possible;
    if (*kit) {
        bench = benchForKit(bench, **kit).bench;
        possible = [&](const Slip& slip) { return canHappenWith(**kit, *bench, slip); };
    }
    const std::vector<SlipSeen> slips = slipsAsSeen(bench, possible);
    if (!options.output.ends_with(".pdf")) {
        const bool csv = options.output.ends_with(".csv");
        const auto written = writeFileAtomically(options.output, csv ? slipsAsCsv(slips) : slipsAsJson(*bench, slips));
        return written ? kExitGood : complain(written.error());
    }
    const Offscreen offscreen;
    const auto paper = options.paper == "letter" ? ui::Paper::Letter : ui::Paper::A4;
    const auto failed =
        ui::saveSymptomSheet(bench->title, bySymptom(slips), paper, QString::fromStdString(options.output));
    if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    return kExitGood;
}

}  // namespace

Action declareSlips(CLI::App& parser) {
    auto options = std::make_shared<SlipsOptions>();
    options->input.declareFile(parser);
    options->kit.declare(parser);
    parser
        .add_option("-o,--output", options->output,
                    "The eight likeliest for each symptom as PDF, or all as CSV or JSON")
        ->required()
        ->check(checkSlipsEnding, "a name ending in .pdf, .csv or .json");
    parser.add_option("--paper", options->paper, "a4 or letter")
        ->check(CLI::IsMember({"a4", "letter"}).description(""));
    return [options] { return runSlips(*options); };
}

}  // namespace tiepoint::app
