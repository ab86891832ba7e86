#pragma once
// Inspects benches for tests of rules: the findings of one rule, and whether a mend really mends.

#include "core/findings/rules.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::test {

using Ids = std::vector<std::string>;

inline std::vector<Finding> inspected(std::shared_ptr<const Bench> bench,
                                      std::set<std::string, std::less<>> held = {}) {
    Inputs inputs;
    inputs.held = std::move(held);
    return inspect(*evaluate(std::move(bench), inputs)).findings;
}

inline std::vector<Finding> found(std::string_view rule, std::shared_ptr<const Bench> bench,
                                  std::set<std::string, std::less<>> held = {}) {
    std::vector<Finding> matching = inspected(std::move(bench), std::move(held));
    std::erase_if(matching, [&](const Finding& finding) { return finding.rule != rule; });
    return matching;
}

inline std::vector<std::string> names(const std::vector<Hole>& holes) {
    std::vector<std::string> texts;
    for (const Hole& hole : holes) texts.push_back(toString(hole));
    return texts;
}

/// The rules of the findings and their parts in words, for messages: "reversed D1; ".
inline std::string told(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& finding : findings) text += finding.rule + ' ' + finding.text + "; ";
    return text;
}

/// Applies the finding's mend and tells what is found on the mended bench; fails without a mend.
inline std::vector<Finding> afterMend(const Bench& bench, const Finding& finding) {
    EXPECT_TRUE(finding.mend) << finding.text;
    if (!finding.mend) return {};
    const auto mended = apply(bench, finding.mend->edit);
    EXPECT_TRUE(mended.ok());
    return inspected(std::make_shared<const Bench>(mended->bench));
}

inline double brightnessAfterMend(const Bench& bench, const Finding& finding, std::string_view light,
                                  std::set<std::string, std::less<>> held = {}) {
    EXPECT_TRUE(finding.mend) << finding.text;
    if (!finding.mend) return 0;
    const auto mended = apply(bench, finding.mend->edit);
    EXPECT_TRUE(mended.ok());
    Inputs inputs;
    inputs.held = std::move(held);
    return evaluate(std::make_shared<const Bench>(mended->bench), inputs)->brightness(mended->bench.partIndex(light));
}

/// Half a board with a bench supply of 5 V on its outer rails.
inline BenchBuilder supplied(double volt = 5) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", volt}});
    return builder;
}

/// A beacon: jumper from plus, resistor, LED over the gap, jumper to minus. Sound with 330 ohm and 5 V.
struct Beacon {
    const char* anode = "A.e14";
    const char* cathode = "A.f14";
    double ohm = 330;
    double volt = 5;
    const char* colour = "red";
};
inline BenchBuilder beacon(const Beacon& as = {}) {
    auto builder = supplied(as.volt);
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", as.ohm}})
        .part("D1", "led", {{"anode", as.anode}, {"cathode", as.cathode}}, {{"colour", as.colour}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j14", "A.bottom-13", "black");
    return builder;
}

/// An LED between pairs of resistors, so that no lead of a dark light stands alone where the jumper is missing.
inline BenchBuilder pairedBeacon(bool toPlus, bool toMinus) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 100}})
        .part("R2", "resistor", {{"1", "A.d8"}, {"2", "A.d14"}}, {{"resistance", 100}})
        .part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}})
        .part("R3", "resistor", {{"1", "A.g14"}, {"2", "A.g21"}}, {{"resistance", 220}})
        .part("R4", "resistor", {{"1", "A.h14"}, {"2", "A.h21"}}, {{"resistance", 1000}});
    if (toPlus) builder.jumper("W1", "A.top+7", "A.a8", "red");
    if (toMinus) builder.jumper("W2", "A.j21", "A.bottom-18", "black");
    return builder;
}

/// A beacon at the right of a board, with the rail holes of its two jumpers and the hole of its cathode.
inline BenchBuilder onRails(Rails rails, const char* plusAt, const char* minusAt, const char* cathode) {
    BenchBuilder builder;
    builder.board("A", "half", 0, 0, rails)
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("R1", "resistor", {{"1", "A.c18"}, {"2", "A.c24"}})
        .part("D1", "led", {{"anode", "A.e24"}, {"cathode", cathode}})
        .jumper("W1", plusAt, "A.a18", "red")
        .jumper("W2", std::string(cathode) == "A.f24" ? "A.j24" : "A.a27", minusAt, "black");
    return builder;
}

}  // namespace tiepoint::test
