// tiepoint compare MINE TARGET: whether two benches are one circuit and do the same; and of a folder, a row for each learner.

#include "app/class_page.h"
#include "app/commands.h"
#include "app/json_writer.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "app/progress.h"
#include "core/base/file_io.h"
#include "core/base/printable.h"
#include "core/bench/bench_file.h"
#include "core/compare/class_comparison.h"
#include "core/compare/exercise_target.h"
#include "ui/sheet/feedback.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>

namespace tiepoint::app {
namespace {

namespace fs = std::filesystem;

struct CompareOptions {
    std::string mine, second, target;
    std::string csv, html, feedback;
    double tolerancePercent = 5;
    bool json = false;

    std::string targetFile() const { return target.empty() ? second : target; }
    bool hasReports() const { return !csv.empty() || !html.empty() || !feedback.empty(); }
    ComparisonBounds bounds() const {
        ComparisonBounds bounds;
        constexpr double kPercent = 100;
        bounds.tolerance = tolerancePercent / kPercent;
        return bounds;
    }
};

void writeDifferences(JsonWriter& json, std::string_view name, const std::vector<BenchDifference>& differences) {
    const auto addresses = [](const std::vector<Hole>& holes) {
        std::vector<std::string> names;
        names.reserve(holes.size());
        for (const Hole& hole : holes) names.push_back(toString(hole));
        return names;
    };
    json.key(name).beginArray();
    for (const BenchDifference& each : differences) {
        json.beginObject().field("text", each.text).field("look", each.look);
        json.texts("parts", each.parts).texts("holes", addresses(each.holes));
        json.texts("targetParts", each.targetParts).texts("targetHoles", addresses(each.targetHoles)).endObject();
    }
    json.endArray();
}

/// Of an exercise its limits too.
void writeComparison(JsonWriter& json, const Comparison& comparison, const ComparisonTarget& target) {
    json.field("sameCircuit", comparison.sameCircuit).field("sameBehaviour", comparison.sameBehaviour);
    json.field("allPositions", comparison.allPositions);
    writeDifferences(json, "differences", comparison.differences);
    writeDifferences(json, "behaviour", comparison.behaviour);
    if (target.exercise.empty()) return;
    json.field("reached", comparison.isReached()).texts("limits", comparison.limits);
}

std::string comparisonAsJson(const Comparison& comparison, const ComparisonTarget& target) {
    JsonWriter json;
    json.beginObject();
    writeComparison(json, comparison, target);
    json.endObject();
    return json.take();
}

std::string verdictWords(const Comparison& comparison) {
    if (comparison.sameCircuit && comparison.sameBehaviour) return "the same circuit, and it does the same";
    if (comparison.sameCircuit) return "the same circuit, but it doesn't do the same";
    return comparison.sameBehaviour ? "another circuit, but it does the same"
                                    : "another circuit, and it does something else";
}

std::string placesWords(const std::vector<Hole>& holes) {
    std::vector<std::string> names;
    names.reserve(holes.size());
    for (const Hole& hole : holes) names.push_back(toString(hole));
    return names.empty() ? "" : fmt::format(" [{}]", fmt::join(names, ", "));
}

std::string comparisonAsText(std::string_view title, const Comparison& comparison) {
    std::string text = fmt::format("{}: {}\n", printable(title), verdictWords(comparison));
    for (const BenchDifference& each : comparison.differences)
        text += fmt::format("  {}{}\n", each.text, placesWords(each.holes));
    for (const BenchDifference& each : comparison.behaviour) text += fmt::format("  {}\n", each.text);
    for (const std::string& each : comparison.limits) text += fmt::format("  {}\n", each);
    if (!comparison.allPositions)
        text += "  So many switches work together that not every position of theirs was tried.\n";
    return text;
}

int runPair(const CompareOptions& options, const ComparisonTarget& target) {
    auto mine = readBenchFile(options.mine);
    if (!mine) return complain(mine.error());
    for (const Error& warning : mine->warnings) spdlog::warn(warning.oneLine());
    const auto bench = std::make_shared<const Bench>(std::move(mine).value().bench);
    auto compared = compareBenches(bench, target, options.bounds());
    if (!compared) {
        Error error = compared.error();
        error.file = options.mine;
        return complain(error);
    }
    print(options.json ? comparisonAsJson(*compared, target) : comparisonAsText(bench->title, *compared));
    return compared->isReached() ? kExitGood : kExitBad;
}

// A folder.

std::string rowsAsJson(const std::vector<LearnerRow>& rows, const ComparisonTarget& target) {
    JsonWriter json;
    json.beginObject().key("rows").beginArray();
    for (const LearnerRow& row : rows) {
        json.beginObject().field("file", row.file);
        if (row.error.empty())
            writeComparison(json, row.comparison, target);
        else
            json.field("error", row.error);
        json.endObject();
    }
    json.endArray().endObject();
    return json.take();
}

std::string rowsAsText(const std::vector<LearnerRow>& rows) {
    std::string text;
    for (const LearnerRow& row : rows) {
        if (!row.error.empty()) {
            text += fmt::format("{}: can't be compared: {}\n", row.file, row.error);
            continue;
        }
        text += fmt::format("{}: {}\n", row.file, verdictWords(row.comparison));
        for (const BenchDifference& each : row.comparison.differences) text += fmt::format("  {}\n", each.text);
        for (const std::string& each : row.comparison.limits) text += fmt::format("  {}\n", each);
    }
    return text;
}

std::set<fs::path> ownFiles(const CompareOptions& options) {
    std::set<fs::path> own;
    for (const std::string& file : {options.target, options.csv, options.html, options.feedback}) {
        std::error_code unseen;
        if (!file.empty()) own.insert(fs::weakly_canonical(fs::path(file), unseen));
    }
    return own;
}

Result<Done> writeReports(const CompareOptions& options, const std::vector<LearnerRow>& rows,
                          const ComparisonTarget& target) {
    if (!options.csv.empty()) {
        const auto written = writeFileAtomically(options.csv, rowsAsCsv(rows));
        if (!written) return written.error();
    }
    if (options.html.empty() && options.feedback.empty()) return Done{};
    const Offscreen offscreen;
    if (!options.html.empty()) {
        const auto written = writeFileAtomically(options.html, classAsHtml(rows, target));
        if (!written) return written.error();
    }
    if (!options.feedback.empty()) {
        const auto failed =
            ui::saveFeedback(rows, target.bench().title, ui::Paper::A4, QString::fromStdString(options.feedback));
        if (failed) return Error{ErrorKind::Io, failed->toStdString(), {}, options.feedback};
    }
    return Done{};
}

int runClass(const CompareOptions& options, const ComparisonTarget& target) {
    ClassComparison wanted;
    wanted.folder = options.mine;
    wanted.except = ownFiles(options);
    wanted.bounds = options.bounds();
    const auto files = learnersFiles(wanted);
    if (!files) return complain(files.error());
    std::vector<LearnerRow> rows;
    {
        ProgressBar bar("Comparing", files->size());
        rows = compareFiles(wanted, *files, target, [&](std::size_t done) { bar.show(done); });
    }
    const auto written = writeReports(options, rows, target);
    if (!written) return complain(written.error());
    print(options.json ? rowsAsJson(rows, target) : rowsAsText(rows));
    const bool all = std::ranges::all_of(
        rows, [](const LearnerRow& row) { return row.error.empty() && row.comparison.isReached(); });
    return all ? kExitGood : kExitBad;
}

int runCompare(const CompareOptions& options) {
    if (options.target.empty() == options.second.empty())
        return complain("compare: give a bench and a target, or --target TARGET and a folder or a bench");
    std::error_code unseen;
    const bool isFolder = fs::is_directory(options.mine, unseen);
    if (!isFolder && options.hasReports()) return complain("compare: --csv, --html and --feedback are for a folder");
    const auto read = readTarget(options.targetFile());
    if (!read) return complain(read.error());
    for (const Error& warning : read->warnings) spdlog::warn(warning.oneLine());
    return isFolder ? runClass(options, *read->target) : runPair(options, *read->target);
}

}  // namespace

Action declareCompare(CLI::App& parser) {
    auto options = std::make_shared<CompareOptions>();
    parser.add_option("MINE", options->mine, "A bench, or a folder of learners' benches")->required();
    parser.add_option("TARGET", options->second, "What it is compared with: a bench, a circuit or an exercise");
    parser.add_option("--target", options->target, "The same, where MINE is a folder");
    parser.add_option("--csv", options->csv, "Write a row for each file of the folder as CSV");
    parser.add_option("--html", options->html, "Write them as a page with a picture of each bench");
    parser.add_option("--feedback", options->feedback, "Write a page for each learner that says where to look, as PDF")
        ->check([](const std::string& path) {
            return path.ends_with(".pdf") ? std::string() : fmt::format("{}: feedback's name ends in .pdf", path);
        });
    parser
        .add_option("--tolerance", options->tolerancePercent,
                    "Values and readings are alike within so many per cent of the larger (5)")
        ->check(CLI::Range(0.0, 50.0));
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runCompare(*options); };
}

}  // namespace tiepoint::app
