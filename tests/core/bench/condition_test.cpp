// The condition of parts and jumpers: in the file, in the metal and in the circuit, and what is said of it.

#include "core/bench/condition.h"

#include "core/bench/bench_file.h"
#include "core/edit/copies.h"
#include "core/findings/unfinished.h"
#include "core/flow/flow.h"
#include "core/meter/meter.h"
#include "core/why/explain.h"
#include "support/inspect_bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint::test {
namespace {

Bench broken(Bench bench, std::string_view id, Condition condition) {
    for (Part& part : bench.parts)
        if (part.id == id) part.condition = condition;
    for (Jumper& jumper : bench.jumpers)
        if (jumper.id == id) jumper.condition = condition;
    return bench;
}

std::shared_ptr<const Bench> shared(Bench bench) { return std::make_shared<const Bench>(std::move(bench)); }

constexpr Condition kFailings[] = {Condition::Dead, Condition::OpenInside, Condition::DryContact};

TEST(Condition, IsKeptInTheFileAndLeftOutWhereSound) {
    const Bench sound = beacon().build();
    EXPECT_EQ(writeBench(sound).find("condition"), std::string::npos);
    for (const char* id : {"D1", "R1", "W1"}) {
        for (const Condition condition : kFailings) {
            const Bench bench = broken(sound, id, condition);
            const std::string text = writeBench(bench);
            const std::string member =
                "\"condition\": \"" + std::string(kConditionNames[static_cast<std::size_t>(condition)]) + "\"";
            EXPECT_NE(text.find(member), std::string::npos);
            const auto read = readBench(text);
            ASSERT_TRUE(read.ok()) << read.error().oneLine();
            EXPECT_TRUE(read->warnings.empty());
            EXPECT_EQ(read->bench, bench);
            EXPECT_FALSE(isSound(read->bench));
            EXPECT_EQ(soundOf(read->bench), sound);
        }
    }
    const auto said =
        readBench(R"({"format":"tiepoint-bench","version":1,"title":"","boards":[{"id":"A","kind":"mini"}],
        "parts":[{"id":"R1","kind":"resistor","condition":"sound"}]})");
    ASSERT_TRUE(said.ok());
    EXPECT_TRUE(isSound(said->bench));
}

TEST(Condition, OfNoKnownNameIsRefused) {
    const auto read = readBench(
        R"({"format":"tiepoint-bench","version":1,"title":"","parts":[{"id":"R1","kind":"resistor","condition":"tired"}]})");
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(read.error().oneLine(),
              "1:101: /parts/0/condition: there is no condition \"tired\"; there are: sound, dead, open inside, dry "
              "contact");
    EXPECT_FALSE(readBench(R"({"format":"tiepoint-bench","version":1,"title":"","boards":[{"id":"A","kind":"mini"}],
        "jumpers":[{"id":"W1","ends":["A.a1","A.a2"],"condition":true}]})")
                     .ok());
}

TEST(Condition, IsSetByAnEditAndGoesWithACopy) {
    const Bench bench = beacon().build();
    Part dead = *bench.findPart("D1");
    dead.condition = Condition::Dead;
    const auto applied = apply(bench, {"Swap D1", {ReplacePart{dead}}});
    ASSERT_TRUE(applied.ok());
    EXPECT_EQ(applied->bench.findPart("D1")->condition, Condition::Dead);
    EXPECT_EQ(apply(applied->bench, applied->inverse)->bench, bench);
    const auto copies = copiesInRow(applied->bench, {"D1"}, 1);
    ASSERT_TRUE(copies.ok()) << copies.error().oneLine();
    const auto copied = apply(applied->bench, copies->edit);
    ASSERT_TRUE(copied.ok());
    EXPECT_EQ(copied->bench.parts.back().condition, Condition::Dead);
}

TEST(Condition, OpensTheCircuitWhereverTheBreakIs) {
    const Bench sound = beacon().build();
    ASSERT_GT(evaluate(shared(sound))->brightness(sound.partIndex("D1")), 0.5);
    for (const char* id : {"D1", "R1", "W1", "W2", "PS1"}) {
        for (const Condition condition : kFailings) {
            SCOPED_TRACE(std::string(id) + " " + std::string(kConditionNames[static_cast<std::size_t>(condition)]));
            const auto live = evaluate(shared(broken(sound, id, condition)));
            EXPECT_EQ(live->brightness(sound.partIndex("D1")), 0);
            EXPECT_LT(live->largestCurrentAmpere, 1e-9);
            EXPECT_LT(Flow(live->layout).worstDefect(live->solution.leadInjection, live->pieceCurrent), 1e-12);
        }
    }
}

TEST(Condition, ABrokenJumperJoinsNoNets) {
    const Bench sound = beacon().build();
    const auto whole = buildLayout(shared(sound));
    const auto netAt = [](const Layout& layout, const char* hole) {
        return layout.netOfHole(layout.holeIndex(holeAt(hole)));
    };
    ASSERT_EQ(netAt(*whole, "A.top+7"), netAt(*whole, "A.a8"));
    for (const Condition condition : kFailings) {
        const auto parted = buildLayout(shared(broken(sound, "W1", condition)));
        EXPECT_NE(netAt(*parted, "A.top+7"), netAt(*parted, "A.a8"));
        EXPECT_EQ(parted->netCount, whole->netCount + 1);
        // What is left of it hangs on one of its ends, and its other end is still in its hole.
        const Piece& rest = parted->pieces[parted->pieceOfJumper[0]];
        const int hangsAt = condition == Condition::DryContact ? rest.to : rest.from;
        const char* hole = condition == Condition::DryContact ? "A.a8" : "A.top+7";
        EXPECT_EQ(parted->joints[hangsAt].hole, parted->holeIndex(holeAt(hole)));
        EXPECT_EQ(parted->joints[rest.from].net, parted->joints[rest.to].net);
        EXPECT_GE(parted->jointOfHole[parted->holeIndex(holeAt("A.top+7"))], 0);
        EXPECT_GE(parted->jointOfHole[parted->holeIndex(holeAt("A.a8"))], 0);
    }
}

TEST(Condition, ALeadThatTouchesBadlyHasANetOfItsOwn) {
    const auto layout = buildLayout(shared(broken(beacon().build(), "R1", Condition::DryContact)));
    const int lead = layout->leadIndex(layout->bench->partIndex("R1"), 0);
    const int hole = layout->holeIndex(holeAt("A.c8"));
    EXPECT_EQ(layout->holeOfLead[lead], hole) << "it is in its hole all the same";
    EXPECT_NE(layout->netOfLead[lead], layout->netOfHole(hole));
    EXPECT_TRUE(layout->netUsed[layout->netOfHole(hole)]);
    EXPECT_EQ(layout->netOfLead[lead + 1], layout->netOfHole(layout->holeIndex(holeAt("A.c14"))));

    Part first = makePart(*findKind("resistor"), "R9");
    first.condition = Condition::DryContact;
    EXPECT_EQ(untouchedLead(first), -1);
    first.leads[1] = holeAt("A.a1");
    EXPECT_EQ(untouchedLead(first), 1);
}

/// Of a push button's two joined legs one may touch badly: the other still leads to both.
TEST(Condition, JoinedLegsHelpEachOther) {
    auto builder = supplied();
    builder.part("S1", "push-button", {{"1a", "A.e8"}, {"1b", "A.f8"}, {"2a", "A.e10"}, {"2b", "A.f10"}})
        .part("R1", "resistor", {{"1", "A.g10"}, {"2", "A.g14"}}, {{"resistance", 100}})
        .jumper("W1", "A.top+7", "A.j8")
        .jumper("W2", "A.j14", "A.bottom-13");
    const Bench dry = broken(builder.build(), "S1", Condition::DryContact);
    Inputs held;
    held.held = {"S1"};
    const auto live = evaluate(shared(dry), held);
    EXPECT_NEAR(live->leadCurrent[live->layout->leadIndex(dry.partIndex("R1"), 0)], 0.05, 1e-3);
    EXPECT_NEAR(live->leadCurrent[live->layout->leadIndex(dry.partIndex("S1"), 0)], 0, 1e-12) << "1a touches nothing";
    EXPECT_NEAR(live->leadCurrent[live->layout->leadIndex(dry.partIndex("S1"), 1)], 0.05, 1e-3);
    EXPECT_LT(Flow(live->layout).worstDefect(live->solution.leadInjection, live->pieceCurrent), 1e-12);
    // The other way round the strip of 1a is cut off.
    const auto layout = live->layout;
    EXPECT_NE(layout->netOfHole(layout->holeIndex(holeAt("A.e8"))),
              layout->netOfHole(layout->holeIndex(holeAt("A.f8"))));
    // Dead, its contacts never close, and its joined legs stay joined.
    const Bench dead = broken(builder.build(), "S1", Condition::Dead);
    const auto still = evaluate(shared(dead), held);
    EXPECT_LT(still->largestCurrentAmpere, 1e-9);
    EXPECT_EQ(still->layout->netOfHole(still->layout->holeIndex(holeAt("A.e8"))),
              still->layout->netOfHole(still->layout->holeIndex(holeAt("A.f8"))));
}

TEST(Condition, IsFoundWithAMeter) {
    const auto with = [](const char* dial, const char* from, const char* to, double on) {
        BenchBuilder builder(beacon().build());
        builder.part("M1", "multimeter", {{"+", from}, {"com", to}}, {}, {{"dial", dial}});
        Bench bench = builder.build();
        bench.parts[0].state[bench.parts[0].kind->stateIndex("on")] = on;
        return bench;
    };
    const auto reading = [](const Bench& bench) {
        const auto live = evaluate(shared(bench));
        return *meterReading(*live, bench.partIndex("M1"));
    };
    // The whole voltage stands across what is broken.
    const Bench volts = with("volts", "A.b14", "A.g14", 1);
    for (const Condition condition : kFailings)
        EXPECT_NEAR(reading(broken(volts, "D1", condition)).value, 5, 0.01)
            << reading(broken(volts, "D1", condition)).text();
    EXPECT_LT(reading(volts).value, 2.5);
    // From end to end of a jumper it beeps no more.
    const Bench ends = with("continuity", "A.top+9", "A.b8", 0);
    EXPECT_TRUE(reading(ends).beeps);
    for (const Condition condition : kFailings) EXPECT_FALSE(reading(broken(ends, "W1", condition)).beeps);
}

TEST(Condition, IsRemarkedWithItsReadingAndMended) {
    for (const char* id : {"D1", "R1", "W1"}) {
        for (const Condition condition : kFailings) {
            SCOPED_TRACE(std::string(id) + " " + std::string(kConditionNames[static_cast<std::size_t>(condition)]));
            const Bench bench = broken(beacon().build(), id, condition);
            const auto findings = inspected(shared(bench));
            ASSERT_EQ(findings.size(), 1u) << told(findings);
            EXPECT_EQ(findings[0].rule, "passes-nothing");
            EXPECT_EQ(findings[0].severity, Severity::Remark);
            EXPECT_EQ(findings[0].parts, Ids{id});
            EXPECT_NE(findings[0].text.find(std::string(id) + " passes no current"), std::string::npos);
            EXPECT_NE(findings[0].text.find("a sound one would carry 9."), std::string::npos) << findings[0].text;
            ASSERT_TRUE(findings[0].mend);
            EXPECT_EQ(findings[0].mend->text, "Put a new one in place of " + std::string(id));
            EXPECT_GT(brightnessAfterMend(bench, findings[0], "D1"), 0.5);
        }
    }
    const auto across = inspected(shared(broken(beacon().build(), "D1", Condition::Dead)));
    EXPECT_EQ(across[0].text.substr(0, 48), "D1 passes no current, though 5.00 V stand across");
}

/// What is wrong with the wiring is told beside it, and only that.
TEST(Condition, RulesDontBlameTheWiring) {
    auto reversed = beacon({.anode = "A.f14", .cathode = "A.e14"}).build();
    const auto both = inspected(shared(broken(reversed, "W1", Condition::OpenInside)));
    EXPECT_TRUE(std::ranges::none_of(both, [](const Finding& each) { return each.rule == "lead-alone"; }))
        << told(both);
    // A lead that really is alone is said to be, whatever else is broken.
    const auto alone = inspected(shared(broken(pairedBeacon(true, false).build(), "W1", Condition::Dead)));
    const auto sound = inspected(pairedBeacon(true, false).share());
    for (const Finding& each : alone) {
        if (each.rule == "passes-nothing") continue;
        EXPECT_TRUE(std::ranges::any_of(sound, [&](const Finding& same) { return same.text == each.text; }))
            << each.text;
    }
}

TEST(Condition, NothingIsCalledOpenThatNobodyLeftOpen) {
    for (const Condition condition : kFailings) {
        for (const char* id : {"D1", "R1", "W1", "W2"}) {
            const auto live = evaluate(shared(broken(beacon().build(), id, condition)));
            EXPECT_TRUE(unfinished(*live, false).isEmpty());
        }
    }
}

TEST(Condition, AnswersTellWhatIsSo) {
    const Bench bench = broken(beacon().build(), "W1", Condition::OpenInside);
    const Answer answer = explain(*evaluate(shared(bench)), bench.partIndex("D1"), {});
    ASSERT_FALSE(answer.remedies.empty());
    EXPECT_EQ(answer.remedies[0].text, "Put a new one in place of W1");
    std::string chain;
    for (const Cause& cause : answer.chain) chain += cause.text + "\n";
    EXPECT_NE(chain.find("W1 passes no current"), std::string::npos) << chain;
    EXPECT_EQ(chain.find("alone"), std::string::npos) << chain;
}

}  // namespace
}  // namespace tiepoint::test
