// Sound benches: every rule stays silent on each.

#include "support/sound_benches.h"

#include "core/bench/validate.h"
#include "support/compact_bench.h"
#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(SoundBenches, AreAtLeastFortyAndSilent) {
    EXPECT_GE(soundBenches().size(), 40u);
    for (const SoundBench& sound : soundBenches()) {
        SCOPED_TRACE(sound.name);
        const Bench bench = compactBench(sound.text);
        const auto valid = validate(bench);
        EXPECT_TRUE(valid.ok()) << (valid.ok() ? "" : valid.error().oneLine());
        if (!valid.ok()) continue;
        const auto findings = inspected(std::make_shared<const Bench>(bench));
        EXPECT_TRUE(findings.empty()) << told(findings);
    }
}

}  // namespace
}  // namespace tiepoint::test
