// Answers: the chain of causes, the missing link, and remedies that hold. Whatever is offered is solved here once more.

#include "core/why/explain.h"

#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "support/inspect_bench.h"
#include "support/printed.h"

#include <fmt/format.h>
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
        chain.find("The current comes from PS1 (5.00 V), flows through R1, then S1, then S2, then D1, and goes back."),
        std::string::npos)
        << chain;
    // Ohm's law: 5 V less 1.91 V over 330 ohm.
    EXPECT_NE(chain.find("R1 sets how much: 3.09 V divided by its 330 Ω is about 9.37 mA."), std::string::npos)
        << chain;
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
    EXPECT_EQ(missingLink(answer)->text, "S1 is closed: joined, so the current goes through it instead.")
        << chainOf(answer);
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
    EXPECT_GT(after(*bench, answer.remedies[0])->brightness(bench->partIndex("D1")), 0.7);
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
    EXPECT_EQ(answer.chain[0].text, "D1 carries far too much current; its maximum is 30 mA.");
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

/// A 5 V supply with a resistor of its own, and a block that drives the light; both stand in one minus rail.
BenchBuilder sharedGround() {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.a4"}, {"2", "A.a9"}}, {{"resistance", 100}})
        .part("B1", "block-9v", {{"+", "A.f20"}, {"-", "A.bottom-20"}})
        .part("R2", "resistor", {{"1", "A.g20"}, {"2", "A.g25"}}, {{"resistance", 820}})
        .part("D1", "led", {{"anode", "A.h25"}, {"cathode", "A.h28"}})
        .jumper("W1", "A.top+4", "A.c4", "red")
        .jumper("W2", "A.c9", "A.bottom-8", "black")
        .jumper("W3", "A.j28", "A.bottom-23", "black");
    return builder;
}

TEST(Explain, TheSupplyOfTheLoopIsNamedWhereTwoShareAGround) {
    const std::string chain = chainOf(asked(sharedGround().share(), "D1"));
    EXPECT_NE(chain.find("The current comes from B1 (9.3"), std::string::npos) << chain;
    EXPECT_EQ(chain.find("PS1"), std::string::npos) << chain;
    const std::string other = chainOf(asked(sharedGround().share(), "R1"));
    EXPECT_NE(other.find("The current comes from PS1 (5.00 V)"), std::string::npos) << other;
    EXPECT_EQ(other.find("B1"), std::string::npos) << other;
}

/// Every figure between "(" and " V" of the supplies, and after the names of the parts, of the sentences that share the voltage out.
void expectSharesAddUp(const std::string& chain) {
    const auto sentence = [&](const std::string& begin) {
        const auto at = chain.find(begin);
        return at == std::string::npos ? std::string() : chain.substr(at, chain.find('\n', at) - at);
    };
    const auto sum = [](const std::string& text) {
        PrintedSum total;
        for (auto at = text.find(" V"); at != std::string::npos; at = text.find(" V", at + 1)) {
            const auto begin = text.find_last_of(" (", at - 1);
            total.add(text.substr(begin + 1, at + 2 - begin - 1));
        }
        return total.digits();
    };
    const std::string shares = sentence("They share the voltage");
    if (shares.empty()) return;
    EXPECT_EQ(sum(sentence("The current comes from")), sum(shares)) << chain;
}

/// Nothing ties the meter's own circuit to the supply's, so that no place there has a voltage of its own: what it takes is told all the same.
/// By hand: 0.5 V over 1 kilohm inside and 330 ohm outside are 0.124 V across these.
TEST(Explain, AMeterApartFromTheSupplyTellsItsVoltage) {
    auto apart = supplied();
    apart.part("R2", "resistor", {{"1", "A.c20"}, {"2", "A.c25"}}, {{"resistance", 330}})
        .part("M1", "multimeter", {{"+", "A.e20"}, {"com", "A.e25"}}, {}, {{"dial", "ohms"}});
    const auto bench = apart.share();
    const auto snapshot = evaluate(bench);
    const int meter = bench->partIndex("M1");
    ASSERT_FALSE(snapshot->shown().leadVolt(snapshot->layout->firstLead[meter]).isKnown());
    const std::string chain = chainOf(explain(*snapshot, meter));
    EXPECT_NE(chain.find("takes 124 mV"), std::string::npos) << chain;
}

/// A knob across the supply carries its own current too: only what lies on the way of the light counts.
TEST(Explain, FiguresOfTheVoltageAddUp) {
    auto knob = supplied();
    knob.part("RV1", "potentiometer", {{"1", "A.b5"}, {"wiper", "A.b7"}, {"2", "A.b9"}}, {{"resistance", 1000}},
              {{"turn", 0.3}})
        .part("R4", "resistor", {{"1", "A.d7"}, {"2", "A.d14"}}, {{"resistance", 47}})
        .part("D4", "led", {{"anode", "A.e14"}, {"cathode", "A.e18"}})
        .jumper("W1", "A.top+5", "A.a5", "red")
        .jumper("W2", "A.a9", "A.bottom-8", "black")
        .jumper("W3", "A.a18", "A.bottom-15", "black");
    const auto bench = knob.share();
    for (const char* part : {"D4", "R4"}) {
        const std::string chain = chainOf(asked(bench, part));
        EXPECT_NE(chain.find("They share the voltage"), std::string::npos) << chain;
        expectSharesAddUp(chain);
    }
    for (const char* part : {"R1", "R2", "D1"}) expectSharesAddUp(chainOf(asked(sharedGround().share(), part)));
    expectSharesAddUp(chainOf(asked(twoButtons().share(), "D1", {"S1", "S2"})));
}

/// So many buttons one after the other, before a light.
BenchBuilder manyButtons(int count) {
    BenchBuilder builder;
    builder.board("A", "full").part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}});
    const auto at = [](const char* row, int column) { return fmt::format("A.{}{}", row, column); };
    for (int k = 0; k < count; ++k) {
        const int column = 1 + 4 * k;
        builder.part(fmt::format("S{}", k + 1), "push-button",
                     {{"1a", at("e", column)},
                      {"1b", at("f", column)},
                      {"2a", at("e", column + 2)},
                      {"2b", at("f", column + 2)}});
        builder.jumper(at("a", column + 2), at("a", column + 4));
    }
    const int end = 1 + 4 * count;
    return builder.jumper("A.top+2", "A.b1")
        .part("R1", "resistor", {{"1", at("c", end)}, {"2", at("h", end)}})
        .part("D1", "led", {{"anode", at("i", end)}, {"cathode", at("i", end + 2)}})
        .jumper(at("j", end + 2), "A.bottom-48");
}

TEST(Explain, MoreButtonsThanCanBeTriedOneByOneAreFound) {
    const auto bench = manyButtons(14).share();
    const Answer answer = asked(bench, "D1");
    ASSERT_EQ(answer.remedies.size(), 1u) << chainOf(answer);
    EXPECT_EQ(answer.remedies[0].held.size(), 14u);
    EXPECT_TRUE(isLit(*after(*bench, answer.remedies[0]), bench->partIndex("D1")));
}

TEST(Explain, WhatWasNotTriedIsSaid) {
    Bench bench = manyButtons(14).build();
    bench.parts.push_back(makePart(*findKind("resistor"), "X1"));  // in no hole: nothing helps
    const Answer answer = asked(std::make_shared<const Bench>(bench), "X1");
    const std::string chain = chainOf(answer);
    EXPECT_TRUE(answer.remedies.empty());
    EXPECT_NE(chain.find("14 switches have too many positions to try them all. With up to 3 of them thrown, and"),
              std::string::npos)
        << chain;
    EXPECT_EQ(chain.find("No position of the switches"), std::string::npos) << chain;
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
