// tiepoint check FILE: what is wrong, where, and what mends it.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/drawer_option.h"
#include "app/finding_report.h"
#include "app/output.h"

#include "core/bench/bench_file.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>

namespace tiepoint::app {
namespace {

struct Options {
    BenchInput input;
    DrawerOption drawer;
    bool json = false;
    bool mend = false;
    std::string output;
};

std::string asJson(const Bench& bench, const Report& report) {
    JsonWriter json;
    json.beginObject().field("title", bench.title);
    writeFindings(json, bench, report);
    json.endObject();
    return json.take();
}

std::string asText(const Bench& bench, const Report& report) {
    if (report.findings.empty()) return fmt::format("{}: nothing found\n", bench.title);
    return fmt::format("{}\n{}", bench.title, findingsText(report));
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

int run(const Options& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    const auto drawer = options.drawer.read();
    if (!drawer) return complain(drawer.error());
    const Report report = inspect(*evaluate(*bench), *drawer);
    if (options.mend) {
        const auto written = writeMended(**bench, report, options.output);
        if (!written) return complain(written.error());
    }
    print(options.json ? asJson(**bench, report) : asText(**bench, report));
    const bool bad = std::any_of(report.findings.begin(), report.findings.end(),
                                 [](const Finding& finding) { return finding.severity != Severity::Remark; });
    return bad ? kExitBad : kExitGood;
}

}  // namespace

Action declareCheck(CLI::App& parser) {
    auto options = std::make_shared<Options>();
    options->input.declareFile(parser);
    options->drawer.declare(parser);
    parser.add_flag("--json", options->json, "Write JSON");
    auto* mend = parser.add_flag("--mend", options->mend, "Apply the first mend and write the bench to OUT");
    auto* output = parser.add_option("-o,--output", options->output, "Where the mended bench goes");
    mend->needs(output);
    output->needs(mend);
    return [options] { return run(*options); };
}

}  // namespace tiepoint::app
