// Benches that are broken on purpose, each with the finding that has to come first, the thing it has to name, and what its mend
// must bring about: judged by solving the mended bench.

#include "core/bench/validate.h"
#include "core/snapshot/readings.h"
#include "support/compact_bench.h"
#include "support/inspect_bench.h"
#include "support/slips.h"

#include <set>

namespace tiepoint::test {
namespace {

struct BrokenBench {
    const char* text;
    const char* rule;   ///< of the finding that comes first
    const char* names;  ///< id among its parts
    const char*
        lit;  ///< lights that shine in some position once it is mended, "D1 D2"; empty: no light has to; null: it has no mend
};

constexpr BrokenBench kBroken[] = {
    // short-circuit
    {"half; PS1 top+3 bottom-3 5; W1 top+10 bottom-10 red", "short-circuit", "W1", ""},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; W3 b8 j13 "
     "red; W4 i13 bottom-11 black",
     "short-circuit", "PS1", nullptr},
    {"half; CE1 top+3 top+9 2", "short-circuit", "CE1", nullptr},
    {"half; PS1 top+3 bottom-3 5; S1 e8; W1 top+7 a8 red; W2 j10 bottom-8 black", "short-circuit", "S1", nullptr},
    {"half; KB1 top+3 top-3; R1 c8 c14 470; D1 d14 d17 red; W1 top+7 a8 red; W2 a17 top-15 black; W3 top+20 top-20 "
     "orange",
     "short-circuit", "W3", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; M1 top+20 "
     "bottom-20 amperes",
     "short-circuit", "M1", "D1"},
    // meter-dial
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; M1 j14 bottom-13 volts", "meter-dial",
     "M1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; M1 a14 i14 "
     "ohms",
     "meter-dial", "M1", ""},
    // reversed
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 f14 e14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "reversed",
     "D1", "D1"},
    {"half; PS1 bottom-3 top+3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "reversed",
     "PS1", "D1"},
    {"half; PS1 top+3 bottom-3 5; V1 c9 c5; R1 d9 d14 270; D1 e14 f14 red; W1 top+5 a5 red; W2 j14 bottom-13 black",
     "reversed", "V1", "D1"},
    {"half; PS1 top+3 bottom-3 9; R1 c5 c10 330; D1 e10 f10 red; D2 h13 h10 red; W1 top+5 a5 red; W2 j13 bottom-12 "
     "black",
     "reversed", "D2", "D1 D2"},
    {"half; PS1 top+3 bottom-3 5; R1 c5 c10 330; S1 e10; D1 g16 g12 red; W1 top+5 a5 red; W2 j16 bottom-14 black",
     "reversed", "D1", "D1"},
    {"half; PS1 top+3 top-3 5; PS2 bottom+3 bottom-3 9; R1 c8 c14 330; D1 d14 d17 red; R2 h8 h14 470; D2 g17 g14 "
     "green; W1 top+7 a8 red; "
     "W2 a17 top-15 black; W3 bottom+7 j8 red; W4 j17 bottom-15 black",
     "reversed", "D2", "D2"},
    // bypassed
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 d14 e14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "bypassed",
     "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; W3 d14 g14 "
     "green",
     "bypassed", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 9; R1 c5 c10 330; D1 e10 f10 red; D2 h10 h13 red; W1 top+5 a5 red; W2 j13 bottom-12 "
     "black; W3 g10 g13 blue",
     "bypassed", "D2", "D2"},
    // gap-crossed
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 d14 d17 red; W1 top+7 a8 red; W2 j17 bottom-15 black",
     "gap-crossed", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 h8 h14 330; D1 g14 g17 red; W1 top+7 a8 red; W2 j17 bottom-15 black",
     "gap-crossed", "D1", "D1"},
    {"mini; CE1 a1 j1 3; R1 c1 c6 150; D1 d6 d8 red; W1 i8 i1 black", "gap-crossed", "D1", "D1"},
    // rail-halves
    {"half split; PS1 top+3 bottom-3 5; R1 c18 c24 330; D1 e24 f24 red; W1 top+20 a18 red; W2 j24 bottom-5 black",
     "rail-halves", "D1", "D1"},
    {"half split; PS1 top+3 bottom-3 5; R1 c18 c24 330; D1 e24 f24 red; W1 top+5 a18 red; W2 j24 bottom-20 black",
     "rail-halves", "D1", "D1"},
    {"half split; PS1 top+3 bottom-3 5; R1 c18 c24 330; D1 e24 f24 red; W1 top+20 a18 red; W2 j24 bottom-20 black",
     "rail-halves", "D1", "D1"},
    {"full split; PS1 top+3 bottom-3 5; R1 c40 c46 330; D1 e46 f46 red; W1 top+35 a40 red; W2 j46 bottom-10 black",
     "rail-halves", "D1", "D1"},
    // rails-apart
    {"half; PS1 top+3 top-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "rails-apart",
     "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 h8 h14 330; D1 g14 g17 red; W1 bottom+7 j8 red; W2 j17 bottom-15 black",
     "rails-apart", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 d14 d17 red; W1 top+7 a8 red; W2 a17 top-15 black", "rails-apart",
     "D1", "D1"},
    // one-hole-off
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e15 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "one-hole-off", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f13 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "one-hole-off", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a9 red; W2 j14 bottom-13 black",
     "one-hole-off", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom+13 black",
     "one-hole-off", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top-7 a8 red; W2 j14 bottom-13 black",
     "one-hole-off", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c5 c10 330; S1 e11; D1 g12 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black",
     "one-hole-off", "S1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c5 c10 330; S1 e10; D1 g13 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black",
     "one-hole-off", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c3 c8 330; S1 e8; S2 e14; D1 g16 g20 red; W1 top+4 a3 red; W2 c10 c13 yellow; W3 "
     "j20 bottom-17 black",
     "one-hole-off", "W2", "D1"},
    // lead-alone
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 e19 red; W1 top+7 a8 red", "lead-alone", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 - c14 330; D1 e14 f14 red; W2 j14 bottom-13 black", "lead-alone", "R1", nullptr},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red", "lead-alone", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W2 j14 bottom-13 black", "lead-alone", "R1", "D1"},
    // one-wire, open-loop
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 100; R2 d8 d14 100; D1 e14 f14 red; R3 g14 g21 220; R4 h14 h21 1000; W1 "
     "top+7 a8 red",
     "one-wire", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 100; R2 d8 d14 100; D1 e14 f14 red; R3 g14 g21 220; R4 h14 h21 1000; W2 "
     "j21 bottom-18 black",
     "open-loop", "D1", "D1"},
    // over-current
    {"half; PS1 top+3 bottom-3 5; D1 e14 f14 red; W1 top+13 a14 red; W2 j14 bottom-13 black", "over-current", "D1",
     "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 33; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "over-current", "R1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 120; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "over-current", "D1", "D1"},
    {"half; KB1 top+3 bottom-3; R1 c8 c14 150; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "over-current",
     "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c5 c10 33; S1 e10; D1 g12 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black",
     "over-current", "R1", "D1"},
    {"half; PS1 top+3 bottom-3 5 5; R1 c8 c14 4.7 10; W1 top+7 a8 red; W2 a14 top-13 black; W3 top-20 bottom-20 black",
     "over-current", "W1", nullptr},
    // over-power
    {"half; PS1 top+3 bottom-3 12; R1 c8 c14 330; W1 top+7 a8 red; W2 e14 f14 green; W3 j14 bottom-13 black",
     "over-power", "R1", ""},
    {"half; PS1 top+3 bottom-3 9; R1 c8 c14 100; W1 top+7 a8 red; W2 e14 f14 green; W3 j14 bottom-13 black",
     "over-power", "R1", ""},
    // over-voltage
    {"half; PS1 top+3 bottom-3 20; R1 c5 c10 2200; S1 e10; D1 g12 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black",
     "over-voltage", "S1", "D1"},
    // too-dim
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 33000; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "too-dim",
     "R1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 10000; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "too-dim",
     "R1", "D1"},
    {"half; PS1 top+3 bottom-3 5; RV1 e7 5000 0.3; R1 b9 b15 33000; D1 e15 f15 red; W1 top+7 a7 red; W2 j15 bottom-13 "
     "black",
     "too-dim", "R1", "D1"},
    // always-closed, no-effect
    {"half; PS1 top+3 bottom-3 5; R1 a4 a10 330; S1 b13 1; D1 a12 a15 red; W1 top+4 b4 red; W2 b15 top-13 black; W3 "
     "top-1 bottom-1 black",
     "always-closed", "S1", "D1"},
    {"half; PS1 top+3 bottom-3 5; SW1 c7 1; R1 a8 a14 330; D1 e14 f14 red; W1 top+6 b7 red; W2 j14 bottom-13 black; W3 "
     "a7 b8 yellow",
     "always-closed", "SW1", nullptr},
    {"half; PS1 top+3 bottom-3 5; R1 c5 c10 330; S1 e10; D1 g12 g16 red; W1 top+5 a5 red; W2 j16 bottom-14 black; W3 "
     "d10 d12 yellow",
     "no-effect", "S1", nullptr},
    // supplies
    {"half; PS1 top+3 bottom-3 5; PS2 top+6 bottom-6 9; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 "
     "bottom-13 black",
     "supply-conflict", "PS2", "D1"},
    {"half; PS1 top+3 top-3 5; CE1 bottom+3 bottom-3 2; R1 c8 c14 330; D1 d14 d17 red; W1 top+7 a8 red; W2 a17 top-15 "
     "black; W3 top+20 bottom+20 red; "
     "W4 top-20 bottom-20 black",
     "supply-conflict", "CE1", "D1"},
    {"half; PS1 top+3 bottom-3 5 off; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "supply-off", "PS1", "D1"},
    // overlap, bare-leads
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; R2 c9 d13 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 "
     "black",
     "overlap", "R1", ""},
    // not-buildable
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; R2 a11 a16 "
     "330; W3 c11 j22 yellow",
     "not-buildable", "W3", "D1"},
    // jumpers
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; W3 top+10 b8 "
     "red",
     "idle-jumper", "W3", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 black; W2 j14 bottom-13 black",
     "colour-misleads", "W1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 red",
     "colour-misleads", "W2", "D1"},
    // wiper-short
    {"half; PS1 top+3 bottom-3 5; RV1 e7 5000 0.5; D1 c9 c12 red; W1 top+7 a7 red; W2 a12 top-11 black; W3 top-1 "
     "bottom-1 black",
     "wiper-short", "RV1", "D1"},
    {"half; PS1 top+3 bottom-3 5; RV1 e7 1000 0.5; W1 top+7 a7 red; W2 a9 top-8 black; W3 top-1 bottom-1 black",
     "wiper-short", "RV1", nullptr},
    // shared-resistor
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 220; D1 d14 d17 red; D2 a14 a17 blue; W1 top+7 a8 red; W2 e17 f17 green; "
     "W3 j17 bottom-15 black",
     "shared-resistor", "R1", nullptr},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 150; D1 d14 d17 red; D2 a14 a17 red; W1 top+7 a8 red; W2 e17 f17 green; W3 "
     "j17 bottom-15 black",
     "shared-resistor", "R1", nullptr},
    // too-little-voltage
    {"half; CE1 top+3 bottom-3 1; R1 c8 c14 100; D1 e14 f14 blue; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "too-little-voltage", "D1", "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c5 c10 330; D1 e10 f10 blue; D2 h10 h13 blue; W1 top+5 a5 red; W2 j13 bottom-12 "
     "black",
     "too-little-voltage", "D1", "D1 D2"},
    // one of two supplies off
    {"half; CE1 top+3 bottom-3 2; PS1 top+9 bottom-9 3 off; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 "
     "bottom-13 black",
     "supply-off", "PS1", nullptr},
};

bool shines(const std::shared_ptr<const Bench>& bench, const std::string& light) {
    const auto snapshot = evaluate(bench);
    return Examination(*snapshot).mostAmpere(bench->partIndex(light)) > 1e-3;
}

void expectMended(const Bench& broken, const Finding& finding, const BrokenBench& expected) {
    ASSERT_TRUE(finding.mend) << finding.text;
    const auto mended = apply(broken, finding.mend->edit);
    ASSERT_TRUE(mended.ok());
    const auto bench = std::make_shared<const Bench>(mended->bench);
    for (const Finding& left : inspected(bench)) {
        EXPECT_NE(left.rule, finding.rule) << left.text << " after: " << finding.mend->text;
        EXPECT_NE(left.severity, Severity::Fault) << left.text << " after: " << finding.mend->text;
    }
    std::stringstream lights(expected.lit);
    for (std::string light; lights >> light;)
        EXPECT_TRUE(shines(bench, light)) << light << " after: " << finding.mend->text;
}

TEST(Corpus, EachBrokenBenchIsToldAndMended) {
    EXPECT_GE(std::size(kBroken), 60u);
    std::set<std::string> seen;
    for (const BrokenBench& broken : kBroken) {
        SCOPED_TRACE(broken.text);
        const Bench bench = compactBench(broken.text);
        const auto valid = validate(bench);
        EXPECT_TRUE(valid.ok()) << (valid.ok() ? "" : valid.error().oneLine());
        if (!valid.ok()) continue;
        const auto findings = inspected(std::make_shared<const Bench>(bench));
        EXPECT_FALSE(findings.empty());
        if (findings.empty()) continue;
        seen.insert(findings.front().rule);
        EXPECT_EQ(findings.front().rule, broken.rule) << told(findings);
        const auto& named = findings.front().parts;
        EXPECT_NE(std::ranges::find(named, broken.names), named.end()) << told(findings);
        if (broken.lit != nullptr) expectMended(bench, findings.front(), broken);
    }
    // What has tests of its own: these, and what is said of broken things.
    constexpr std::array<std::string_view, 5> kElsewhere = {"no-solution", "bare-leads", "floating-lead", "a-moment",
                                                            "coil-spike"};
    for (const Rule& rule : rules()) {
        if (std::ranges::find(kElsewhere, rule.name) != kElsewhere.end() || rule.ofBroken) continue;
        EXPECT_TRUE(seen.contains(std::string(rule.name))) << rule.name;
    }
}

}  // namespace
}  // namespace tiepoint::test
