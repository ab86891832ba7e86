// The table of kinds: every kind has slips on the benches of the harbour, each of which can be built, is told in plain words, changes the
// circuit and is undone exactly.

#include "core/bench/validate.h"
#include "core/edit/placement.h"
#include "slip_benches.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <set>

namespace tiepoint::test {
namespace {

bool isPlain(const std::string& text) {
    return text.find_first_of("{}\n") == std::string::npos && text.find("  ") == std::string::npos &&
           text.find("''") == std::string::npos && text.find("  ") == std::string::npos;
}

void expectSentence(const std::string& text) {
    ASSERT_FALSE(text.empty());
    EXPECT_TRUE(std::isupper(static_cast<unsigned char>(text.front()))) << text;
    EXPECT_TRUE(text.ends_with('.')) << text;
    EXPECT_FALSE(text.ends_with("..")) << text;
    EXPECT_TRUE(isPlain(text)) << text;
    EXPECT_GE(std::ranges::count(text, ' '), 2) << text;
}

void expectGoodSlip(const Bench& bench, const tiepoint::Slip& slip) {
    const std::string words = slipInWords(bench, slip);
    SCOPED_TRACE(words);
    expectSentence(words);
    expectSentence(mendInWords(bench, slip));
    expectSentence(seenInWords(slip));
    EXPECT_FALSE(slip.ids().empty());
    EXPECT_GT(slip.weight, 0);

    const Edit edit = editOf(bench, slip);
    EXPECT_FALSE(edit.name.empty());
    const auto applied = apply(bench, edit);
    ASSERT_TRUE(applied) << applied.error().message;
    EXPECT_TRUE(validate(applied->bench));
    EXPECT_EQ(refusalOfChange(bench, applied->bench), std::nullopt);
    EXPECT_NE(digestOfCircuit(applied->bench), digestOfCircuit(bench));
    const auto back = apply(applied->bench, applied->inverse);
    ASSERT_TRUE(back);
    EXPECT_EQ(back->bench, bench);

    // The plain data say the same as the edit, both ways.
    const auto mended = apply(applied->bench, editOf(applied->bench, slip.made ? slip.wrong : slip.right, "Back"));
    ASSERT_TRUE(mended) << mended.error().message;
    EXPECT_EQ(digestOfCircuit(mended->bench), digestOfCircuit(bench));
}

TEST(SlipKinds, EachHasSlipsOnTheHarbourThatCanBeBuiltAndUndone) {
    std::set<std::string_view> found;
    std::vector<NamedBench> benches = harbourBenches();
    for (const char* name : {"dusk-light", "signal-lantern", "frost-warning"}) {
        auto read = readBenchFile(std::string(TIEPOINT_SOURCE_DIR "/resources/benches/") + name + ".bench.json");
        benches.push_back({name, std::move(read).value().bench});
    }
    for (const auto& [name, bench] : benches) {
        SCOPED_TRACE(name);
        const Ground ground(laidOut(bench));
        for (const SlipKind* kind : slipKinds()) {
            SCOPED_TRACE(kind->name);
            for (const tiepoint::Slip& slip : slips(*kind, ground)) {
                found.insert(kind->name);
                EXPECT_FALSE(slip.made);
                expectGoodSlip(bench, slip);
            }
        }
    }
    for (const SlipKind* kind : slipKinds()) EXPECT_TRUE(found.contains(kind->name)) << kind->name;
}

/// What a hand does who takes one for the other: the part lies as before, and each lead is where its leg is.
TEST(SlipKinds, ATransistorOfTheOtherFamilyHasItsLegsTheOtherWayRound) {
    auto read = readBenchFile(TIEPOINT_SOURCE_DIR "/resources/benches/dusk-light.bench.json");
    const Bench bench = std::move(read).value().bench;
    const Part& right = *bench.findPart("Q1");
    int families = 0;
    for (const tiepoint::Slip& slip : slips(*findSlipKind("look-alike-type"), Ground(laidOut(bench)))) {
        const Part wrong = *apply(bench, editOf(bench, slip))->bench.findPart("Q1");
        if (wrong.value(wrong.kind->valueIndex("legs")) != 1) continue;
        ++families;
        EXPECT_EQ(wrong.leads[0], right.leads[2]) << "C-B-E: the collector where the emitter was";
        EXPECT_EQ(wrong.leads[1], right.leads[1]);
        EXPECT_EQ(wrong.leads[2], right.leads[0]);
        EXPECT_EQ(slipInWords(bench, slip), "Q1 is another part than it looks: legs C-B-E and not E-B-C.");
    }
    EXPECT_EQ(families, 1);
}

TEST(SlipKinds, MendsCanBeBuiltAndUndoneToo) {
    for (const auto& [name, bench] : harbourBenches()) {
        SCOPED_TRACE(name);
        const Ground ground(laidOut(bench));
        for (const tiepoint::Slip& mend : allMends(ground, {}, 150)) {
            SCOPED_TRACE(mend.kind->name);
            EXPECT_TRUE(mend.made);
            expectGoodSlip(bench, mend);
        }
    }
}

TEST(SlipKinds, AreNamedOnceAndStandByTheirWeight) {
    std::set<std::string_view> names;
    double last = 1e9;
    for (const SlipKind* kind : slipKinds()) {
        EXPECT_TRUE(names.insert(kind->name).second) << kind->name;
        EXPECT_EQ(findSlipKind(kind->name), kind);
        EXPECT_TRUE(std::ranges::all_of(kind->name, [](char c) { return std::islower(c) != 0 || c == '-'; }));
        EXPECT_LE(kind->weight, last) << kind->name;
        last = kind->weight;
    }
    EXPECT_EQ(findSlipKind("no-such-slip"), nullptr);
}

TEST(Slips, AreToldByTheHolesWhereTheyAreAndShouldBe) {
    const Bench bench = compactBench(
        "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black");
    const Ground ground(laidOut(bench));
    std::set<std::string> told;
    for (const SlipKind* kind : slipKinds()) {
        for (const tiepoint::Slip& slip : slips(*kind, ground)) {
            told.insert(slipInWords(bench, slip));
            told.insert(mendInWords(bench, slip));
        }
    }
    for (const char* text :
         {"R1's leg 2 is in c15, one hole to the right of c14.", "Put R1's leg 2 into c14.",
          "D1 is the wrong way round: its anode is in f14.", "Turn D1 round.", "A jumper from top+7 to a8 is missing.",
          "Join top+7 and a8 with a jumper.", "PS1 is switched off.", "R1 is 3.3 kΩ and not 330 Ω.",
          "Take 330 Ω for R1.", "R1 is 130 Ω and not 330 Ω: its first band is brown, which is easily taken for orange.",
          "PS1's + lead is in top-3, in a rail printed minus and not in top+3."}) {
        EXPECT_TRUE(told.contains(text)) << text;
    }
    if (HasFailure()) {
        for (const std::string& text : told) std::printf("%s\n", text.c_str());
    }
}

}  // namespace
}  // namespace tiepoint::test
