// Answers: the chain of causes, the missing link, and remedies that hold. Whatever is offered is solved here once more.

#include "core/why/explain.h"

#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "support/inspect_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

Answer asked(const std::shared_ptr<const Bench>& bench, std::string_view part,
             std::set<std::string, std::less<>> held = {}) {
    Inputs inputs;
    inputs.held = std::move(held);
    return explain(*evaluate(bench, inputs), bench->partIndex(part));
}

std::string chainOf(const Answer& answer) {
    std::string text = answer.question + '\n';
    for (const Cause& cause : answer.chain) text += (cause.missingLink ? "! " : "  ") + cause.text + '\n';
    for (const Remedy& remedy : answer.remedies) text += "> " + remedy.text + " -> " + remedy.outcome + '\n';
    return text;
}

/// The bench with a remedy carried out.
std::shared_ptr<const Snapshot> after(const Bench& bench, const Remedy& remedy) {
    const auto applied = apply(bench, remedy.edit);
    EXPECT_TRUE(applied.ok()) << remedy.text;
    if (!applied) return nullptr;
    Inputs inputs;
    inputs.held = remedy.held;
    return evaluate(std::make_shared<const Bench>(applied->bench), inputs);
}

const Cause* missingLink(const Answer& answer) {
    const auto found = std::ranges::find(answer.chain, true, &Cause::missingLink);
    return found == answer.chain.end() ? nullptr : &*found;
}

/// A lamp on plus through a resistor and two buttons one after the other.
BenchBuilder twoButtons() {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}})
        .part("S1", "push-button", {{"1a", "A.e9"}, {"1b", "A.f9"}, {"2a", "A.e11"}, {"2b", "A.f11"}})
        .part("S2", "push-button", {{"1a", "A.e15"}, {"1b", "A.f15"}, {"2a", "A.e17"}, {"2b", "A.f17"}})
        .part("D1", "led", {{"anode", "A.h17"}, {"cathode", "A.h20"}})
        .jumper("W1", "A.top+4", "A.a4", "red")
        .jumper("W2", "A.c11", "A.c15", "yellow")
        .jumper("W3", "A.j20", "A.bottom-18", "black");
    return builder;
}

TEST(Explain, OpenButtonsAreTheMissingLinks) {
    const auto bench = twoButtons().share();
    const Answer answer = asked(bench, "D1");
    EXPECT_EQ(answer.question, "Why is D1 dark?");
    ASSERT_NE(missingLink(answer), nullptr) << chainOf(answer);
    EXPECT_EQ(missingLink(answer)->text, "S1 is open: no complete path.");
    EXPECT_EQ(missingLink(answer)->parts, Ids{"S1"});
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    EXPECT_EQ(answer.remedies[0].text, "Press S1 and S2");
    EXPECT_EQ(answer.remedies[0].held, (std::set<std::string, std::less<>>{"S1", "S2"}));
    EXPECT_TRUE(answer.remedies[0].edit.operations.empty());

    const Answer half = asked(bench, "D1", {"S1"});
    EXPECT_EQ(missingLink(half)->text, "S2 is open: no complete path.") << chainOf(half);
    EXPECT_EQ(half.remedies[0].text, "Press S2");
    EXPECT_EQ(half.remedies[0].held.size(), 2u);
}

TEST(Explain, LitLightTellsSupplyWayAndFigures) {
    const Answer answer = asked(twoButtons().share(), "D1", {"S1", "S2"});
    EXPECT_EQ(answer.question, "Why is D1 lit as it is?");
    EXPECT_EQ(missingLink(answer), nullptr);
    EXPECT_TRUE(answer.remedies.empty());
    const std::string chain = chainOf(answer);
    EXPECT_NE(
        chain.find("The current comes from PS1 (5.00 V), runs through R1, then S1, then S2, then D1, and goes back."),
        std::string::npos)
        << chain;
    // Ohm's law: 5 V less 1.91 V over 330 ohm.
    EXPECT_NE(chain.find("R1 sets how much: 3.09 V divided by its 330 Ω is 9.37 mA."), std::string::npos) << chain;
}

TEST(Explain, SlideThatStandsWrong) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("S1", "slide-switch", {{"a", "A.e14"}, {"common", "A.e15"}, {"b", "A.e16"}}, {}, {{"position", "b"}})
        .part("D1", "led", {{"anode", "A.c15"}, {"cathode", "A.c19"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.a19", "A.bottom-18", "black");
    const auto bench = builder.share();
    const Answer answer = asked(bench, "D1");
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    EXPECT_EQ(missingLink(answer)->text, "S1 stands towards b, so its way towards a is open: no complete path.");
    EXPECT_EQ(answer.remedies[0].text, "Slide S1 towards a");
    ASSERT_FALSE(answer.remedies[0].edit.operations.empty());
    EXPECT_TRUE(isLit(*after(*bench, answer.remedies[0]), bench->partIndex("D1")));
}

TEST(Explain, ButtonThatLeadsTheCurrentPast) {
    auto builder = beacon();
    builder.part("S1", "push-button", {{"1a", "A.e20"}, {"1b", "A.f20"}, {"2a", "A.e22"}, {"2b", "A.f22"}})
        .jumper("W3", "A.a14", "A.a20", "yellow")
        .jumper("W4", "A.j22", "A.i14", "yellow");
    const Answer answer = asked(builder.share(), "D1", {"S1"});
    EXPECT_EQ(missingLink(answer)->text, "S1 is closed: joined, and that leads the current past.") << chainOf(answer);
    EXPECT_EQ(answer.remedies[0].text, "Let go of S1");
    EXPECT_TRUE(answer.remedies[0].held.empty());
}

/// One fault, another, and a button still to be pressed.
TEST(Explain, SeveralFaultsAreMendedOneAfterTheOther) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}})
        .part("S1", "push-button", {{"1a", "A.e9"}, {"1b", "A.f9"}, {"2a", "A.e11"}, {"2b", "A.f11"}})
        .part("D1", "led", {{"anode", "A.h15"}, {"cathode", "A.h11"}})
        .jumper("W1", "A.top+4", "A.a4", "red")
        .jumper("W3", "A.j15", "A.bottom-18", "black");
    Bench bench = builder.build();
    bench.parts[0].state[bench.parts[0].kind->stateIndex("on")] = 0;
    const auto shared = std::make_shared<const Bench>(bench);
    const Answer answer = asked(shared, "D1");
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    const auto then = after(bench, answer.remedies[0]);
    ASSERT_NE(then, nullptr);
    EXPECT_TRUE(isLit(*then, then->layout->bench->partIndex("D1"))) << chainOf(answer);
    EXPECT_EQ(answer.remedies[0].text, "Switch PS1 on, then turn D1 round, then press S1") << chainOf(answer);
}

TEST(Explain, DimLightIsToldItsResistorAndABetterOne) {
    const auto bench = beacon({.ohm = 10000}).share();
    const Answer answer = asked(bench, "D1");
    EXPECT_EQ(answer.question, "Why is D1 so dim?");
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    EXPECT_NE(chainOf(answer).find("R1 sets how much"), std::string::npos) << chainOf(answer);
    EXPECT_GT(after(*bench, answer.remedies[0])->partBrightness[bench->partIndex("D1")], 0.7);
}

TEST(Explain, CurrentTooSmallToBeSeenIsNotCalledNone) {
    const auto bench = beacon({.ohm = 1e6}).share();
    const Answer answer = asked(bench, "D1");
    EXPECT_EQ(answer.question, "Why is D1 dark?");
    EXPECT_TRUE(answer.chain[0].text.ends_with("too little to be seen.")) << chainOf(answer);
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    EXPECT_TRUE(isLit(*after(*bench, answer.remedies[0]), bench->partIndex("D1")));
}

TEST(Explain, LightWithoutAResistorIsOverloaded) {
    auto builder = supplied();
    builder.part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}})
        .jumper("W1", "A.top+12", "A.a14", "red")
        .jumper("W2", "A.j14", "A.bottom-12", "black");
    const auto bench = builder.share();
    const Answer answer = asked(bench, "D1");
    EXPECT_EQ(answer.question, "Why is D1 overloaded?");
    EXPECT_EQ(answer.chain[0].text, "D1 gets far too much current: it bears at most 30 mA.");
    EXPECT_NE(chainOf(answer).find("Nothing on the way holds the current back: D1 needs a resistor."),
              std::string::npos);
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    const auto then = after(*bench, answer.remedies[0]);
    EXPECT_LE(currentThrough(*then, then->layout->bench->partIndex("D1")).inAmpere, 0.030);
    EXPECT_TRUE(isLit(*then, then->layout->bench->partIndex("D1")));
}

TEST(Explain, HotResistorIsToldItsHeat) {
    auto builder = supplied(12);
    builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}}, {{"resistance", 100}})
        .jumper("W1", "A.top+4", "A.a4", "red")
        .jumper("W2", "A.a9", "A.bottom-8", "black");
    const Answer answer = asked(builder.share(), "R1");
    EXPECT_EQ(answer.question, "Why is R1 burning hot?") << chainOf(answer);
    // 12 V across 100 ohm: 120 mA, 1.44 W, beyond three times a quarter of a watt.
    EXPECT_NE(answer.chain[0].text.find("far too much heat"), std::string::npos) << chainOf(answer);
}

TEST(Explain, EveryPartOfEveryKindHasAnAnswer) {
    auto builder = beacon();
    builder.part("S1", "push-button", {{"1a", "A.e20"}, {"1b", "A.f20"}, {"2a", "A.e22"}, {"2b", "A.f22"}});
    for (const PartKind& kind : catalogue()) {
        Bench bench = builder.build();
        bench.parts.push_back(makePart(kind, "X1"));
        const auto shared = std::make_shared<const Bench>(bench);
        const Answer hanging = asked(shared, "X1");
        EXPECT_FALSE(hanging.question.empty());
        EXPECT_FALSE(hanging.chain.empty()) << kind.name;
    }
}

/// Every lead of three benches one hole off, and every LED turned: whatever is offered works, and nearly always something is.
TEST(Explain, EveryRemedyOfEveryBrokenBenchHolds) {
    int dark = 0, helped = 0;
    for (const BenchBuilder& start : {beacon(), twoButtons(), pairedBeacon(true, true)}) {
        const Bench sound = start.build();
        std::vector<Bench> broken;
        for (std::size_t p = 0; p < sound.parts.size(); ++p) {
            if (sound.parts[p].kind->package->reach == Reach::Rigid) continue;
            for (std::size_t lead = 0; lead < sound.parts[p].leads.size(); ++lead) {
                for (const int by : {-1, 1}) {
                    Bench each = sound;
                    each.parts[p].leads[lead]->number += by;
                    broken.push_back(each);
                }
            }
            Bench turned = sound;
            std::swap(turned.parts[p].leads.front(), turned.parts[p].leads.back());
            broken.push_back(turned);
        }
        for (const Bench& bench : broken) {
            if (!apply(bench, {"Nothing", {}}).ok()) continue;
            const auto shared = std::make_shared<const Bench>(bench);
            const int lamp = bench.partIndex("D1");
            const Answer answer = asked(shared, "D1");
            if (isLit(*evaluate(shared), lamp)) continue;
            ++dark;
            helped += !answer.remedies.empty();
            for (const Remedy& remedy : answer.remedies) {
                const auto then = after(bench, remedy);
                ASSERT_NE(then, nullptr);
                EXPECT_TRUE(isLit(*then, then->layout->bench->partIndex("D1"))) << chainOf(answer);
            }
            EXPECT_NE(missingLink(answer), nullptr) << chainOf(answer);
        }
    }
    EXPECT_GT(dark, 20);
    EXPECT_GE(helped, dark * 95 / 100) << helped << " of " << dark;
    std::printf("dark %d, helped %d\n", dark, helped);
}

TEST(Explain, BenchWithoutASupplySaysSo) {
    BenchBuilder builder;
    builder.board("A", "half").part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}});
    const Answer answer = asked(builder.share(), "D1");
    EXPECT_EQ(answer.chain[0].text, "No supply is plugged in on this bench, so nothing drives a current.");
    EXPECT_TRUE(answer.remedies.empty());
}

TEST(Explain, NoSolutionGivesItsReason) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}, {"seriesResistance", 0}})
        .part("PS2", "bench-supply", {{"+", "A.top+9"}, {"-", "A.bottom-9"}}, {{"voltage", 3}, {"seriesResistance", 0}})
        .part("D1", "led", {{"anode", "A.c20"}, {"cathode", "A.c23"}});
    const auto bench = builder.share();
    EXPECT_EQ(asked(bench, "D1").chain[0].text, evaluate(bench)->solution.reason);
}

}  // namespace
}  // namespace tiepoint::test
