// Before and after: what an edit or a press changed, and what it left alone.

#include "core/snapshot/changes.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint {
namespace {

using test::BenchBuilder;

std::shared_ptr<const Snapshot> solvedWith(Bench bench, std::set<std::string, std::less<>> held = {}) {
    Inputs inputs;
    inputs.held = std::move(held);
    return evaluate(std::make_shared<const Bench>(std::move(bench)), inputs);
}

const Change* currentOf(const std::vector<Change>& changes, std::string_view part) {
    const auto found = std::find_if(changes.begin(), changes.end(), [&](const Change& change) {
        return change.kind == ReadingKind::Current && change.part == part;
    });
    return found == changes.end() ? nullptr : &*found;
}

/// Two resistors side by side across a stiff supply, the second behind a button.
Bench sideBySide(double firstOhm) {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
              {{"voltage", 5}, {"seriesResistance", 0.01}})
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c12"}}, {{"resistance", firstOhm}})
        .part("R2", "resistor", {{"1", "A.b8"}, {"2", "A.b14"}}, {{"resistance", 1000}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .jumper("A.top+7", "A.a8")
        .jumper("A.a12", "A.bottom-12")
        .jumper("A.j16", "A.bottom-16")
        .build();
}

TEST(Changes, TwiceTheResistanceIsHalfTheCurrent) {
    // Ohm's law: the currents must stand in the inverse ratio of the resistances, but for the supply's 0.01 ohm.
    const auto changes = compareSnapshots(*solvedWith(sideBySide(500)), *solvedWith(sideBySide(1000)));
    const Change* current = currentOf(changes, "R1");
    ASSERT_TRUE(current);
    EXPECT_TRUE(current->changed);
    EXPECT_NEAR(current->after / current->before, 0.5, 1e-4);
    EXPECT_NEAR(current->before, 0.01, 1e-5);
}

TEST(Changes, ABranchBesideIsLeftAloneAndThatIsSaid) {
    const Bench bench = sideBySide(1000);
    const auto changes = compareSnapshots(*solvedWith(bench), *solvedWith(bench, {"S1"}));
    const Change* pressed = currentOf(changes, "R2");
    ASSERT_TRUE(pressed);
    EXPECT_EQ(pressed->before, 0);
    EXPECT_NEAR(pressed->after, 0.005, 1e-5);
    const Change* beside = currentOf(changes, "R1");
    ASSERT_TRUE(beside) << "a class would expect the branch beside to lose current";
    EXPECT_FALSE(beside->changed);
}

TEST(Changes, NothingIsSaidWhereNothingHappened) {
    const Bench bench = sideBySide(1000);
    EXPECT_TRUE(compareSnapshots(*solvedWith(bench), *solvedWith(bench)).empty());
}

TEST(Changes, ACircuitThatSharesNothingIsNotMentioned) {
    const auto two = [](double ohm) {
        return BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}}, {{"voltage", 5}})
            .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}}, {{"resistance", ohm}})
            .part("PS2", "bench-supply", {{"+", "A.a11"}, {"-", "A.a15"}}, {{"voltage", 3}})
            .part("R2", "resistor", {{"1", "A.b11"}, {"2", "A.b15"}}, {{"resistance", 1000}})
            .build();
    };
    const auto changes = compareSnapshots(*solvedWith(two(1000)), *solvedWith(two(470)));
    EXPECT_TRUE(currentOf(changes, "R1"));
    EXPECT_FALSE(currentOf(changes, "R2"));
}

TEST(Changes, ANetIsNamedOnceWithBothVoltages) {
    const auto divider = [](double lower) {
        return BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a11"}}, {{"voltage", 6}})
            .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b6"}}, {{"resistance", 1000}})
            .part("R2", "resistor", {{"1", "A.c6"}, {"2", "A.c11"}}, {{"resistance", lower}})
            .build();
    };
    const auto changes = compareSnapshots(*solvedWith(divider(1000)), *solvedWith(divider(2000)));
    std::vector<Change> volts;
    std::copy_if(changes.begin(), changes.end(), std::back_inserter(volts),
                 [](const Change& change) { return change.kind == ReadingKind::Voltage; });
    ASSERT_EQ(volts.size(), 1u) << "the middle of the divider, though two leads stand in it";
    EXPECT_NEAR(volts[0].before, 3, 1e-3);
    EXPECT_NEAR(volts[0].after, 4, 1e-3);
}

TEST(Changes, WithoutASolutionNothingIsCompared) {
    Snapshot none = *solvedWith(sideBySide(1000));
    none.solution.status = Status::None;
    EXPECT_TRUE(compareSnapshots(*solvedWith(sideBySide(470)), none).empty());
}

}  // namespace
}  // namespace tiepoint
