#include "core/edit/copies.h"

#include "core/bench/validate.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

/// The ferry's cabin lamp: amperes in its jumper and in its LED, watts of its resistor and volts at its anode are pinned.
Bench cabinLamp() {
    Bench bench = BenchBuilder()
                      .board("A", "full")
                      .part("R1", "resistor", {{"1", "A.c10"}, {"2", "A.c14"}})
                      .part("D1", "led", {{"anode", "A.d14"}, {"cathode", "A.d16"}})
                      .jumper("W1", "A.a5", "A.a10")
                      .build();
    bench.pinned = {{"M1", AmperesIn{"W1", ""}, {}},
                    {"M2", WattsOf{"R1"}, {}},
                    {"M3", AmperesIn{"D1", "anode"}, {}},
                    {"M4", VoltsAt{holeAt("A.b14")}, {}}};
    return bench;
}

/// What the copies measure, in the order of their readings; the copies must apply and be valid.
std::vector<Measurand> copiedReadings(const Bench& onto, const Result<Copies>& copies) {
    if (!copies) {
        ADD_FAILURE() << copies.error().oneLine();
        return {};
    }
    const auto applied = apply(onto, copies->edit);
    if (!applied) {
        ADD_FAILURE() << applied.error().oneLine();
        return {};
    }
    EXPECT_TRUE(validate(applied->bench).ok());
    std::vector<Measurand> measured;
    for (std::size_t i = onto.pinned.size(); i < applied->bench.pinned.size(); ++i)
        measured.push_back(applied->bench.pinned[i].of);
    return measured;
}

TEST(Copies, TakeTheReadingsPinnedToThemAlong) {
    const Bench bench = cabinLamp();
    const auto measured = copiedReadings(bench, copiesOnto(bench, bench, {"R1", "D1", "W1"}));
    EXPECT_EQ(measured, (std::vector<Measurand>{AmperesIn{"W2", ""}, WattsOf{"R2"}, AmperesIn{"D2", "anode"}}))
        << "volts belong to a hole, which isn't copied";
}

TEST(Copies, LeaveReadingsOfOtherThings) {
    const Bench bench = cabinLamp();
    EXPECT_EQ(copiedReadings(bench, copiesOnto(bench, bench, {"R1"})), (std::vector<Measurand>{WattsOf{"R2"}}));
}

TEST(Copies, BringTheirReadingsToAnotherBench) {
    const Bench quay = BenchBuilder().board("Q", "half").build();
    EXPECT_EQ(copiedReadings(quay, copiesOnto(quay, cabinLamp(), {"R1", "W1"})),
              (std::vector<Measurand>{AmperesIn{"W1", ""}, WattsOf{"R1"}}));
}

TEST(Copies, NameNothingToCopy) {
    const Bench bench = cabinLamp();
    const auto copies = copiesOnto(bench, bench, {"M2"});
    ASSERT_FALSE(copies.ok()) << "a reading alone is no thing to copy";
    EXPECT_EQ(copies.error().message, "there is nothing to copy");
}

}  // namespace
}  // namespace tiepoint
