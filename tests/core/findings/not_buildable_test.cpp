// not-buildable: what hands couldn't put together so, and mends that hands can do.

#include "core/edit/clashes.h"
#include "support/compact_bench.h"
#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

struct Unbuildable {
    const char* text;  ///< beside a sound beacon
    bool flat;         ///< W9 lies flat
    const char *said, *parts, *hole;
};

constexpr const char* kSoundBeacon =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";

constexpr Unbuildable kUnbuildable[] = {
    {"W9 c11 j22 blue; R9 a11 a16 330", false,
     "One end of W9 is in c11, but that hole lies under R1: nothing goes in there.", "W9 R1", "A.c11"},
    {"D9 g20 g21 red; W9 g18 g23 blue", true,
     "W9 from g18 to g23 lies flat and runs through D9: no hand can lay it so.", "W9 D9", "A.g18"},
    {"W8 g20 b29 green; W9 g18 g23 blue", true,
     "W9 from g18 to g23 lies flat over g20, where W8 is plugged in: no hand can lay it so.", "W9 W8", "A.g20"},
    {"RV9 e20 1000 0.5; RV8 a20 1000 0.5; W9 c22 j29 blue", false,
     "W9 from c22 to j29 can't be laid: RV9 stands in the way, and no arc gets round.", "W9 RV9", "A.c22"},
};

std::string inOneLine(const Ids& ids) {
    std::string text;
    for (const std::string& id : ids) text += (text.empty() ? "" : " ") + id;
    return text;
}

TEST(NotBuildable, IsToldWithItsPlaceAndMended) {
    for (const Unbuildable& each : kUnbuildable) {
        Bench bench = compactBench(std::string(kSoundBeacon) + "; " + each.text);
        for (Jumper& jumper : bench.jumpers)
            if (jumper.id == "W9") jumper.flat = each.flat;
        const auto findings = found("not-buildable", std::make_shared<const Bench>(bench));
        ASSERT_EQ(findings.size(), 1u) << each.text << ": " << told(findings);
        EXPECT_EQ(findings[0].text, each.said);
        EXPECT_EQ(findings[0].severity, Severity::Risk);
        EXPECT_EQ(inOneLine(findings[0].parts), each.parts);
        EXPECT_EQ(toString(findings[0].holes.at(0)), each.hole);
        ASSERT_TRUE(findings[0].mend) << each.text;
        const auto mended = apply(bench, findings[0].mend->edit);
        ASSERT_TRUE(mended.ok());
        EXPECT_TRUE(Occupancy(mended->bench).all().empty()) << findings[0].mend->text;
    }
}

TEST(NotBuildable, ALegThroughABody) {
    const Bench bench = compactBench(std::string(kSoundBeacon) + "; D9 h20 h21 red; R9 h17 h29 330; R8 b20 b26 330");
    const auto findings = found("not-buildable", std::make_shared<const Bench>(bench));
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].text, "Leg 1 of R9 in h17 runs through D9: no hand can lay it so.");
    EXPECT_TRUE(findings[0].mend);
}

TEST(NotBuildable, BareMetalUnderALegIsARiskAndAJumperOnlyLooksJoined) {
    const auto bare = found(
        "bare-leads",
        std::make_shared<const Bench>(compactBench(std::string(kSoundBeacon) + "; R9 g17 g23 330; PS2 g18 b29 5")));
    ASSERT_EQ(bare.size(), 1u) << told(bare);
    EXPECT_EQ(bare[0].severity, Severity::Risk);
    EXPECT_EQ(bare[0].text,
              "In g18, bare metal touches: leg 1 of R9 runs over the + lead of PS2 and joins what should be apart.");
    EXPECT_TRUE(bare[0].mend);
    const auto looks =
        found("bare-leads",
              std::make_shared<const Bench>(compactBench(std::string(kSoundBeacon) + "; R9 g17 g23 330; W9 g18 b26")));
    ASSERT_EQ(looks.size(), 1u) << told(looks);
    EXPECT_EQ(looks[0].severity, Severity::Remark);
    EXPECT_EQ(looks[0].text, "One end of W9 in g18 lies under leg 1 of R9: they look joined but aren't.");
}

TEST(NotBuildable, MendsLayNothingThroughAnything) {
    // The open end of the chain is bridged, but not into the holes under R9.
    const Bench bench =
        compactBench("half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 d14 d17 red; W1 top+7 a8 red; R9 i15 i21 330");
    for (const Finding& finding : inspected(std::make_shared<const Bench>(bench))) {
        if (!finding.mend) continue;
        const auto mended = apply(bench, finding.mend->edit);
        ASSERT_TRUE(mended.ok());
        EXPECT_TRUE(Occupancy(mended->bench).all().empty()) << finding.mend->text;
    }
}

}  // namespace
}  // namespace tiepoint::test
