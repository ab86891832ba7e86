// tiepoint check FILE: what is wrong, where, and what mends it.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/drawer_option.h"
#include "app/finding_report.h"
#include "app/output.h"
#include "core/base/printable.h"
#include "core/bench/bench_file.h"
#include "core/findings/when_words.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>
#include <optional>

namespace tiepoint::app {
namespace {

struct CheckOptions {
    BenchInput input;
    DrawerOption drawer;
    bool json = false;
    bool mend = false;
    std::string output;
    std::optional<int> reveal;
};

/// How much is told: what was asked for, or what the file says. Asking for a mend is asking for everything.
Result<Reveal> levelFor(const CheckOptions& options, const Bench& bench) {
    Reveal level = printedLevel(bench, options.json);
    if (options.mend) level = Reveal::Mend;
    if (options.reveal) level = static_cast<Reveal>(*options.reveal);
    const Reveal needed = options.mend ? Reveal::Mend : level;
    if (mayReveal(bench, needed)) return level;
    return Error{ErrorKind::Range,
                 fmt::format("this bench is locked and shows no more than {} (level {})", revealWords(revealOf(bench)),
                             static_cast<int>(revealOf(bench))),
                 {"/reveal", 0, 0},
                 options.input.file};
}

std::string checkAsJson(const Bench& bench, const Report& report, const Snapshot& now) {
    JsonWriter json;
    json.beginObject().field("title", bench.title);
    writeSettled(json, now);
    writeFindings(json, bench, report);
    json.endObject();
    return json.take();
}

std::string checkAsText(const Bench& bench, const Report& report, const Snapshot& now) {
    std::string lasting = lastingWords(now);
    if (!lasting.empty()) lasting = "  " + lasting + '\n';
    if (report.findings.empty()) return fmt::format("{}: nothing found\n{}", printable(bench.title), lasting);
    return fmt::format("{}\n{}{}", printable(bench.title), lasting, findingsText(report));
}

/// The report as it is told, with what one could ask for.
std::string tell(const CheckOptions& options, const Snapshot& now, const Report& report, Reveal level) {
    const Bench& bench = *now.layout->bench;
    const Report told{report.revision, revealed(bench, report.findings, level)};
    if (options.json) return checkAsJson(bench, told, now);
    if (level == Reveal::Nothing)
        return fmt::format("{}: this bench keeps what is found to itself\n", printable(bench.title));
    const bool more =
        level < Reveal::Mend && mayReveal(bench, Reveal::Mend) &&
        std::ranges::any_of(report.findings, [](const Finding& finding) { return finding.mend.has_value(); });
    return checkAsText(bench, told, now) + (more ? "  --reveal 3 tells how to mend it.\n" : "");
}

/// Writes the bench with the first mend applied; unchanged where no finding has one.
Result<Done> writeMended(const Bench& bench, const Report& report, const std::string& output) {
    const auto mendable = std::find_if(report.findings.begin(), report.findings.end(),
                                       [](const Finding& finding) { return finding.mend.has_value(); });
    if (mendable == report.findings.end()) {
        spdlog::warn("{}: nothing here has a mend; written unchanged", output);
        return writeBenchFile(bench, output);
    }
    const auto mended = apply(bench, mendable->mend->edit);
    if (!mended) return mended.error();
    spdlog::info("{}: {}", output, mendable->mend->text);
    return writeBenchFile(mended->bench, output);
}

int runCheck(const CheckOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    const auto drawer = options.drawer.read();
    if (!drawer) return complain(drawer.error());
    const auto level = levelFor(options, **bench);
    if (!level) return complain(level.error());
    const auto now = evaluate(*bench);
    const Report report = inspect(*now, *drawer);
    if (options.mend) {
        const auto written = writeMended(**bench, report, options.output);
        if (!written) return complain(written.error());
    }
    print(tell(options, *now, report, *level));
    const bool bad = std::any_of(report.findings.begin(), report.findings.end(),
                                 [](const Finding& finding) { return finding.severity != Severity::Remark; });
    return bad ? kExitBad : kExitGood;
}

}  // namespace

Action declareCheck(CLI::App& parser) {
    auto options = std::make_shared<CheckOptions>();
    options->input.declareFile(parser);
    options->drawer.declare(parser);
    parser.add_flag("--json", options->json, "Write JSON");
    auto* mend = parser.add_flag("--mend", options->mend, "Apply the first mend and write the bench to OUT");
    auto* output = parser.add_option("-o,--output", options->output, "Where the mended bench goes");
    parser
        .add_option("--reveal", options->reveal,
                    "How much to tell: 0 nothing, 1 where to look, 2 place and proof, 3 the mend too")
        ->check(CLI::Range(static_cast<int>(Reveal::Nothing), static_cast<int>(Reveal::Mend)));
    mend->needs(output);
    output->needs(mend);
    return [options] { return runCheck(*options); };
}

}  // namespace tiepoint::app
