// Sound harbour benches broken in every way that one slip of the hand can: turned LEDs, missing jumpers, and leads one column on.
// Whatever makes a light dark for good must be found as a fault, with a mend that lights it again. The figures are printed; a slip
// that leaves every light able to light isn't counted.

#include "core/bench/bench_file.h"
#include "core/findings/trial.h"
#include "support/inspect_bench.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint::test {
namespace {

struct Broken {
    std::string how;
    std::string id;        ///< of what was broken
    std::string expected;  ///< rule that must come first; empty: any
    Edit edit;
};

std::vector<Broken> breaksOf(const Bench& bench) {
    std::vector<Broken> breaks;
    for (const Part& part : bench.parts) {
        if (part.kind->emitsLight) breaks.push_back({"turned " + part.id, part.id, "reversed", exchangeLeads(part)});
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            for (const int columns : {-1, 1}) {
                if (part.kind->package->reach != Reach::Bending) continue;
                Part moved = part;
                moved.leads[lead]->number += columns;
                breaks.push_back({fmt::format("{} of {} by {}", lead, part.id, columns),
                                  part.id,
                                  "",
                                  {"Move", {ReplacePart{moved}}}});
            }
        }
    }
    for (const Jumper& jumper : bench.jumpers) {
        breaks.push_back({"without " + jumper.id, "", "", removeEdit(bench, {jumper.id})});
        for (std::size_t end = 0; end < 2; ++end) {
            for (const int columns : {-1, 1}) {
                Jumper moved = jumper;
                Hole& hole = std::get<Hole>(moved.ends[end]);
                if (isRail(hole.line)) continue;
                hole.number += columns;
                breaks.push_back({fmt::format("end {} of {} by {}", end, jumper.id, columns),
                                  jumper.id,
                                  "",
                                  {"Move", {ReplaceJumper{moved}}}});
            }
        }
    }
    return breaks;
}

TEST(BrokenBenches, EveryDarkLightIsExplainedAndMended) {
    int dark = 0, named = 0, slips = 0, found = 0, mended = 0, alarms = 0, bright = 0;
    for (const char* name :
         {"beacon-lamp", "lock-gate", "quay-bell-lamp", "two-way-stair-lamp", "three-buoys", "gangway"}) {
        auto read = readBenchFile(std::string(TIEPOINT_SOURCE_DIR "/resources/benches/") + name + ".bench.json");
        ASSERT_TRUE(read.ok());
        const Bench sound = std::move(read).value().bench;
        for (const Broken& broken : breaksOf(sound)) {
            SCOPED_TRACE(std::string(name) + ": " + broken.how);
            const auto applied = apply(sound, broken.edit);
            if (!applied) continue;  // the slip finds its hole taken
            const auto bench = std::make_shared<const Bench>(applied->bench);
            const auto snapshot = evaluate(bench);
            const Examination examination(*snapshot);
            const auto findings = inspect(*snapshot).findings;
            if (examination.darkLights().empty()) {
                ++bright;
                alarms += !findings.empty() && findings[0].severity == Severity::Fault &&
                          broken.how.find(" by ") == std::string::npos;
                continue;
            }
            ++dark;
            const bool fault = !findings.empty() && findings[0].severity == Severity::Fault;
            found += fault;
            if (fault && !broken.id.empty()) {
                ++slips;
                named += std::ranges::find(findings[0].parts, broken.id) != findings[0].parts.end();
            }
            mended += fault && findings[0].mend.has_value();
            if (!fault || !findings[0].mend) fmt::print("  {}: {}: {}\n", name, broken.how, told(findings));
            if (!broken.expected.empty() && fault) {
                EXPECT_EQ(findings[0].rule, broken.expected);
            }
        }
    }
    fmt::print("the broken piece itself named {} of {}\n", named, slips);
    fmt::print("dark {}, found {}, mended {}; bright {}, alarms {}\n", dark, found, mended, bright, alarms);
    EXPECT_GT(dark, 50);
    EXPECT_EQ(found, dark);
    EXPECT_GE(mended, dark * 9 / 10);
    EXPECT_EQ(alarms, 0);
    // Where two ends miss each other by one column, the board can't tell which is the wrong one; either mend is right.
    EXPECT_GE(named, slips * 8 / 10);
}

}  // namespace
}  // namespace tiepoint::test
