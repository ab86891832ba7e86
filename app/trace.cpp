// tiepoint trace FILE: what a bench does in time, read at even instants.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/finding_report.h"
#include "app/moments.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/base/file_io.h"
#include "ui/export/trace_sheet.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <cmath>

namespace tiepoint::app {
namespace {

struct TraceOptions {
    BenchInput input;
    double untilSecond = 0, everySecond = 0;
    std::vector<std::string> reads, presses;
    std::string output;
    int width = 1600;
};

constexpr int kUsualRows = 200;
constexpr double kMostRows = 10e6;

std::string csvOf(const std::vector<std::string>& names, const std::vector<TraceRow>& rows) {
    std::string text = "time";
    for (const std::string& name : names) text += ',' + name;
    text += '\n';
    for (const TraceRow& row : rows) {
        text += fmt::format("{:.10g}", row.second);
        for (const double figure : row.figures) text += std::isfinite(figure) ? fmt::format(",{:.10g}", figure) : ",";
        text += '\n';
    }
    return text;
}

/// The same figures as a drawing. Returns why it failed, or nothing.
std::optional<QString> drawTrace(const TraceOptions& options, const std::string& title,
                                 const std::vector<PinnedReading>& things, const Trace& trace) {
    std::vector<double> seconds;
    for (const TraceRow& row : trace.rows) seconds.push_back(row.second);
    std::vector<ui::TracedLine> lines;
    for (std::size_t i = 0; i < things.size(); ++i) {
        const bool volts = std::holds_alternative<VoltsAt>(things[i].of);
        ui::TracedLine line{
            QString::fromStdString(options.reads[i]), volts ? QStringLiteral("V") : QStringLiteral("A"), {}};
        for (const TraceRow& row : trace.rows) line.figures.push_back(row.figures[i]);
        lines.push_back(std::move(line));
    }
    const Offscreen offscreen;
    return ui::saveDrawing(ui::traceSheet(title, std::move(seconds), std::move(lines)),
                           QString::fromStdString(options.output), options.width);
}

int runTrace(const TraceOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    if (const auto secret = heldBackByHunt(**bench, options.input.file)) return complain(*secret);
    const auto held = options.input.inputsFor(**bench);
    if (!held) return complain(held.error());
    Inputs inputs = *held;
    for (const std::string& text : options.presses) {
        const auto press = readPress(text, **bench, options.input.file);
        if (!press) return complain(press.error());
        inputs.presses.push_back(*press);
    }
    std::vector<PinnedReading> things;
    for (const std::string& name : options.reads) {
        const auto thing = readTraced(name, **bench, options.input.file);
        if (!thing) return complain(thing.error());
        things.push_back(*thing);
    }
    if (!(options.untilSecond > 0)) return complain("tiepoint: --until: this is a time above 0, in seconds");
    const double every = options.everySecond > 0 ? options.everySecond : options.untilSecond / kUsualRows;
    if (options.untilSecond / every > kMostRows)
        return complain("tiepoint: --every: that is more than ten million rows");
    const bool drawn = ui::isDrawingFile(QString::fromStdString(options.output));
    if (!options.output.empty() && !drawn && !options.output.ends_with(".csv"))
        return complain(fmt::format("{}: a trace's name ends in .csv, .png, .svg or .pdf", options.output));
    const Trace trace = follow(*bench, inputs, things, options.untilSecond, every);
    if (drawn) {
        const auto failed = drawTrace(options, (*bench)->title, things, trace);
        if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    } else if (!options.output.empty()) {
        const auto written = writeFileAtomically(options.output, csvOf(options.reads, trace.rows));
        if (!written) return complain(written.error());
    } else {
        print(csvOf(options.reads, trace.rows));
    }
    if (trace.stopped.empty()) return kExitGood;
    spdlog::error("{}: {}", options.input.file, trace.stopped);
    return kExitBad;
}

}  // namespace

Action declareTrace(CLI::App& parser) {
    auto options = std::make_shared<TraceOptions>();
    options->input.declareFile(parser);
    options->input.declareHold(parser);
    parser.add_option("--until", options->untilSecond, "How long to follow the bench, in seconds")->required();
    parser.add_option("--read", options->reads, "What to read: volts of holes, amperes of parts and jumpers: A.e12,R1")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->required();
    parser.add_option("--every", options->everySecond, "Seconds from row to row; 200 rows without it");
    parser.add_option("--press", options->presses, "A button pressed from one time to another, in seconds: S1@0.5-0.8")
        ->delimiter(',')
        ->allow_extra_args(false);
    parser.add_option(
        "-o", options->output,
        "The file to write: CSV, or a drawing as PNG, SVG or PDF, by the ending; without it CSV goes to standard "
        "output");
    constexpr int kNarrowest = 64, kBroadest = 16384;
    parser.add_option("--width", options->width, "Width of PNG and SVG in pixels")
        ->check(CLI::Range(kNarrowest, kBroadest));
    return [options] { return runTrace(*options); };
}

}  // namespace tiepoint::app
