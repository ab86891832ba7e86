// A kind with three leads, in a catalogue beside the shipped one, through everything: file, placing, edits, nets, solve, findings, answers.
// Its picture: tests/ui/family_paint_test.cpp.

#include "core/bench/bench_file.h"
#include "core/edit/copies.h"
#include "core/edit/edit_file.h"
#include "core/edit/placement.h"
#include "core/parts/kind_file.h"
#include "core/parts/rated_quantity.h"
#include "core/snapshot/readings.h"
#include "core/why/explain.h"
#include "support/inspect_bench.h"
#include "support/test_catalogue.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <thread>

namespace tiepoint::test {
namespace {

/// The star between plus, minus and, through 100 ohm, plus again.
BenchBuilder starred(double volt = 3, double ohm = 100) {
    BenchBuilder builder(testCatalogue());
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
              {{"voltage", volt}, {"seriesResistance", 0}})
        .part("Q1", "test-star", {{"left", "A.c10"}, {"middle", "A.c11"}, {"right", "A.c12"}}, {{"resistance", ohm}})
        .part("R1", "resistor", {{"1", "A.d5"}, {"2", "A.d12"}}, {{"resistance", 100}})
        .jumper("W1", "A.top+9", "A.a10", "red")
        .jumper("W2", "A.top+5", "A.a5", "red")
        .jumper("W3", "A.b11", "A.bottom-10", "black");
    return builder;
}

TEST(AnyKind, ReadWrittenAndKnownOnlyToTheirCatalogue) {
    const Bench bench = starred().build();
    const std::string text = writeBench(bench);
    const auto read = readBench(text, testCatalogue());
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->bench, bench);
    const auto unknown = readBench(text);
    ASSERT_FALSE(unknown.ok());
    EXPECT_NE(unknown.error().message.find("there is no kind of part \"test-star\""), std::string::npos);
    EXPECT_EQ(Catalogue::shipped().find("test-star"), nullptr);
    EXPECT_EQ(findKind("test-star"), nullptr);
    EXPECT_EQ(testCatalogue().find("led"), findKind("led"));
}

TEST(AnyKind, CataloguesAreReadFromManyThreads) {
    const std::string text = writeBench(starred().build());
    std::vector<std::thread> threads;
    std::vector<int> good(4, 0);
    for (int& each : good)
        threads.emplace_back([&each, &text] {
            for (int i = 0; i < 50; ++i) each += readBench(text, testCatalogue()).ok() && !readBench(text).ok() ? 1 : 0;
        });
    for (std::thread& thread : threads) thread.join();
    for (const int each : good) EXPECT_EQ(each, 50);
}

TEST(AnyKind, PlacedMovedCopiedAndEdited) {
    const Bench bench = starred().build();
    const Part& star = *bench.findPart("Q1");
    EXPECT_EQ(placedAt(bench, star, holeAt("A.h20"), 0).leads[2], holeAt("A.h22"));
    const auto copies = copiesInRow(bench, {"Q1"}, 1);
    ASSERT_TRUE(copies.ok()) << copies.error().oneLine();
    const std::string text = fmt::format("{{\"edits\": [{}]}}", fmt::join(operationLines(copies->edit, bench), ", "));
    const auto read = readEdit(text, bench, testCatalogue());
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(apply(bench, read->edit)->bench, apply(bench, copies->edit)->bench);
    EXPECT_FALSE(readEdit(text, bench).ok());
}

/// By hand: left at 3 V, right at 3 V through 100 ohm, middle at 0 V. With 1/100 S to the heart from plus, 1/200 S from plus, 1/100 S to
/// minus the heart lies at 3 V * 1.5 / 2.5.
TEST(AnyKind, JoinedIntoNetsAndSolved) {
    const auto live = evaluate(starred().share());
    ASSERT_EQ(live->status(), Status::Solved);
    const Layout& layout = *live->layout;
    const int part = layout.bench->partIndex("Q1");
    const auto lead = [&](int index) { return layout.leadIndex(part, index); };
    EXPECT_EQ(layout.netOfLead[lead(0)], layout.netOfHole(layout.holeIndex(holeAt("A.top+3"))));
    EXPECT_NE(layout.netOfLead[lead(0)], layout.netOfLead[lead(1)]);
    EXPECT_EQ(layout.netOfLead[lead(1)], layout.netOfHole(layout.holeIndex(holeAt("A.bottom-3"))));
    const double heart = 3 * 1.5 / 2.5;
    EXPECT_NEAR(live->leadCurrent[lead(0)], (3 - heart) / 100, 1e-9);
    EXPECT_NEAR(live->leadCurrent[lead(1)], -heart / 100, 1e-9);
    EXPECT_NEAR(live->leadCurrent[lead(2)], (3 - heart) / 200, 1e-9);
    EXPECT_NEAR(live->leadVoltage(lead(2)), 3 - (3 - heart) / 2, 1e-9);
    EXPECT_NEAR(currentThrough(*live, part).inAmpere, heart / 100, 1e-9);
    EXPECT_NEAR(live->partPower[part],
                ((3 - heart) * (3 - heart) + heart * heart) / 100 + (3 - heart) * (3 - heart) / 400, 1e-9);
}

TEST(AnyKind, RatingsOfLeadsAreMeasuredAtThem) {
    const auto live = evaluate(starred().share());
    const auto shares = ratingShares(*live, live->layout->bench->partIndex("Q1"));
    ASSERT_EQ(shares.size(), 4u);
    EXPECT_NEAR(shares[0].figure, 0.018, 1e-9);
    EXPECT_EQ(shares[0].unit, "A");
    EXPECT_NEAR(shares[1].figure, 0.6, 1e-9);
    EXPECT_EQ(shares[1].unit, "V");
    EXPECT_EQ(shares[2].figure, 0) << "the middle lies below the left";
    EXPECT_NEAR(shares[3].figure, 0.0324 + 0.0144 + 0.0036, 1e-9);
    EXPECT_EQ(shares[3].unit, "W");
    for (const RatingShare& share : shares) {
        if (share.figure == 0) continue;
        EXPECT_NEAR(shownFigure(*live, live->layout->bench->partIndex("Q1"), *share.rating).exact(), share.figure,
                    1e-4);
    }
}

TEST(AnyKind, RulesJudgeEveryRating) {
    const auto over = [](double volt, double ohm) { return inspected(starred(volt, ohm).share()); };
    const auto said = [](const std::vector<Finding>& findings, std::string_view rule) {
        std::string text;
        for (const Finding& each : findings)
            if (each.rule == rule && each.parts.front() == "Q1") text += each.text;
        return text;
    };
    EXPECT_TRUE(over(3, 100).empty()) << told(over(3, 100));
    const auto current = over(5, 100);
    EXPECT_EQ(said(current, "over-current"),
              "The middle of Q1 would carry 30.0 mA; its maximum is 20 mA. R1 is only 100 \u03a9.")
        << told(current);
    const auto power = over(9, 150);
    EXPECT_NE(said(power, "over-power").find("Q1 gets too hot"), std::string::npos) << told(power);

    BenchBuilder between(testCatalogue());
    between.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("Q1", "test-star", {{"left", "A.c10"}, {"middle", "A.c11"}, {"right", "A.c12"}}, {{"resistance", 1000}})
        .part("R1", "resistor", {{"1", "A.e11"}, {"2", "A.e18"}}, {{"resistance", 10e3}})
        .jumper("W1", "A.top+9", "A.a12", "red")
        .jumper("W2", "A.a10", "A.bottom-8", "black")
        .jumper("W3", "A.a18", "A.bottom-15", "black");
    const auto wide = inspected(between.share());
    EXPECT_NE(said(wide, "over-voltage").find("Q1 has 5.00 V between its left and its right; its maximum is 4 V."),
              std::string::npos)
        << told(wide);

    BenchBuilder backwards(testCatalogue());
    backwards.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 3}})
        .part("Q1", "test-star", {{"left", "A.c10"}, {"middle", "A.c11"}, {"right", "A.c12"}}, {{"resistance", 1000}})
        .part("R1", "resistor", {{"1", "A.e12"}, {"2", "A.e18"}}, {{"resistance", 10e3}})
        .jumper("W1", "A.top+9", "A.a11", "red")
        .jumper("W2", "A.a10", "A.bottom-8", "black")
        .jumper("W3", "A.a18", "A.bottom-15", "black");
    const auto reversed = inspected(backwards.share());
    EXPECT_NE(said(reversed, "over-voltage").find("between its left and its middle the wrong way round"),
              std::string::npos)
        << told(reversed);
}

/// A capacitor's can: reverse voltage and rated voltage of a polarised part.
TEST(AnyKind, PolarisedPartsBearLittleBackwards) {
    const auto can = [](const char* plus, const char* minus, double volt) {
        BenchBuilder builder(testCatalogue());
        builder.board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", volt}})
            .part("C1", "test-can", {{"+", plus}, {"-", minus}}, {{"voltageRating", 16}})
            .jumper("W1", "A.top+9", "A.a10", "red")
            .jumper("W2", "A.a12", "A.bottom-10", "black");
        return found("over-voltage", builder.share());
    };
    EXPECT_TRUE(can("A.c10", "A.c12", 9).empty());
    const auto reversed = can("A.c12", "A.c10", 9);
    ASSERT_EQ(reversed.size(), 1u);
    EXPECT_EQ(reversed[0].text.substr(0, 6), "C1 has");
    EXPECT_NE(reversed[0].text.find("the wrong way round; its maximum is 1 V."), std::string::npos) << reversed[0].text;
    const auto high = can("A.c10", "A.c12", 24);
    ASSERT_EQ(high.size(), 1u);
    EXPECT_EQ(high[0].text, "C1 has 24.00 V across it; its maximum is 16 V.");
}

TEST(AnyKind, AnswersAreGivenAboutThem) {
    const auto live = evaluate(starred(5).share());
    const Answer answer = explain(*live, live->layout->bench->partIndex("Q1"), {});
    EXPECT_FALSE(answer.question.empty());
    EXPECT_FALSE(answer.chain.empty());
}

/// A transistor in the minus lead of an LED; a button feeds its base through a resistor.
BenchBuilder switched(double baseOhm, double volt = 5) {
    BenchBuilder builder(testCatalogue());
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", volt}})
        .part("R1", "resistor", {{"1", "A.c3"}, {"2", "A.c8"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "A.e8"}, {"cathode", "A.e12"}})
        .part("Q1", "test-npn", {{"emitter", "A.c10"}, {"base", "A.c11"}, {"collector", "A.c12"}})
        .part("R2", "resistor", {{"1", "A.b11"}, {"2", "A.b16"}}, {{"resistance", baseOhm}})
        .part("S1", "push-button", {{"1a", "A.e16"}, {"1b", "A.f16"}, {"2a", "A.e18"}, {"2b", "A.f18"}})
        .jumper("W1", "A.top+1", "A.a3", "red")
        .jumper("W2", "A.top+16", "A.a18", "red")
        .jumper("W3", "A.a10", "A.bottom-9", "black");
    return builder;
}

TEST(AnyKind, ATransistorGoesTheWholeWay) {
    const Bench bench = switched(10e3).build();
    const auto read = readBench(writeBench(bench), testCatalogue());
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    ASSERT_EQ(read->bench, bench);
    const auto shared = std::make_shared<const Bench>(read->bench);
    const int light = bench.partIndex("D1"), npn = bench.partIndex("Q1");
    EXPECT_LT(evaluate(shared)->brightness(light), 0.01);

    Inputs held;
    held.held = {"S1"};
    const auto live = evaluate(shared, held);
    ASSERT_EQ(live->status(), Status::Solved);
    EXPECT_GT(live->brightness(light), 0.5);
    const int first = live->layout->firstLead[npn];
    const double emitter = live->leadCurrent[first], base = live->leadCurrent[first + 1],
                 collector = live->leadCurrent[first + 2];
    EXPECT_NEAR(emitter + base + collector, 0, 1e-9);
    EXPECT_NEAR(base, (5 - (live->leadVoltage(first + 1) - live->leadVoltage(first))) / 10e3, 1e-6);
    EXPECT_LT(collector, 100 * base) << "saturated: what the LED's resistor lets through";
    EXPECT_LT(live->leadVoltage(first + 2) - live->leadVoltage(first), 0.3);
    EXPECT_TRUE(inspect(*live).findings.empty()) << told(inspect(*live).findings);
    EXPECT_FALSE(explain(*live, npn, {}).chain.empty());
}

TEST(AnyKind, ATransistorAmplifiesBySoMuchAsItsGain) {
    Inputs held;
    held.held = {"S1"};
    const auto live = evaluate(switched(2e6).share(), held);
    const int first = live->layout->firstLead[live->layout->bench->partIndex("Q1")];
    EXPECT_NEAR(live->leadCurrent[first + 2] / live->leadCurrent[first + 1], 100, 0.1);
}

TEST(AnyKind, ATransistorsBaseBearsSoMuch) {
    const auto findings = inspected(switched(10).share());
    const auto excess = std::ranges::find_if(findings, [](const Finding& each) {
        return each.rule == "over-current" && each.text.starts_with("The base of Q1");
    });
    ASSERT_NE(excess, findings.end()) << told(findings);
    EXPECT_NE(excess->text.find("its maximum is 50 mA"), std::string::npos) << excess->text;
}

TEST(Rating, LeadsAreReadStrictly) {
    const char* const two = R"([{"name": "a", "description": "a"}, {"name": "k", "description": "b"}])";
    const char* const model = R"([{"element": "resistance", "from": "a", "to": "k", "resistance": 1}])";
    const auto read = [&](const std::string& quantity, const std::string& leads) {
        KindText text{"x", R"("led-5mm")", two, "[]", model};
        text.ratings = fmt::format(R"([{{"name": "n", "quantity": "{}", "label": "l", "limit": 1{}}}])", quantity,
                                   leads.empty() ? "" : ", \"leads\": " + leads);
        return readPartKind("x.json", text.text());
    };
    const struct {
        const char *quantity, *leads, *message;
    } refused[] = {{"warmth", "", "no such quantity is known"},
                   {"current", "[\"b\"]", "this names something that is no lead"},
                   {"current", "[3]", "this names something that is no lead"},
                   {"current", "[]", "this quantity takes 1 of them"},
                   {"current", "[\"a\", \"k\"]", "this quantity takes 1 of them"},
                   {"voltage", "[\"a\"]", "this quantity takes 2 of them"},
                   {"voltage", "[\"a\", \"a\"]", "a lead stands twice"},
                   {"power", "[\"a\"]", "this quantity is the whole part's"}};
    for (const auto& c : refused) {
        const auto kind = read(c.quantity, c.leads);
        ASSERT_FALSE(kind.ok()) << c.quantity << c.leads;
        EXPECT_EQ(kind.error().message, c.message) << c.quantity << c.leads;
    }
    for (const RatedQuantity& quantity : ratedQuantities())
        EXPECT_TRUE(read(std::string(quantity.name), "").ok()) << quantity.name;
    EXPECT_EQ(read("reverseVoltage", "[\"k\", \"a\"]")->ratings[0].leads, (std::vector<int>{1, 0}));
}

/// A new quantity must be measured, and judged by a rule.
TEST(Rating, EveryQuantityIsJudged) {
    const std::string ratings[] = {R"("quantity": "current")", R"("quantity": "power")", R"("quantity": "voltage")",
                                   R"("quantity": "reverseVoltage")"};
    ASSERT_EQ(std::size(ratings), ratedQuantities().size());
    for (const std::string& each : ratings) {
        KindText text{"test-any", R"("led-5mm")",
                      R"([{"name": "a", "description": "a"}, {"name": "k", "description": "b"}])", "[]",
                      R"([{"element": "resistance", "from": "a", "to": "k", "resistance": 100}])"};
        text.ratings = "[{" + each + R"(, "name": "n", "label": "maximum", "limit": 1e-3}])";
        std::vector<PartKind> kinds;
        kinds.push_back(std::move(readPartKind("any", text.text())).value());
        const Catalogue catalogue(std::move(kinds));
        BenchBuilder builder(catalogue);
        builder.board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 1}})
            .part("X1", "test-any", {{"a", "A.c12"}, {"k", "A.c10"}})
            .jumper("W1", "A.top+9", "A.a10", "red")
            .jumper("W2", "A.a12", "A.bottom-10", "black");
        const auto findings = inspected(builder.share());
        ASSERT_EQ(findings.size(), 1u) << each << told(findings);
        EXPECT_TRUE(findings[0].rule.starts_with("over-")) << findings[0].rule;
        EXPECT_EQ(findings[0].parts.front(), "X1");
    }
}

}  // namespace
}  // namespace tiepoint::test
