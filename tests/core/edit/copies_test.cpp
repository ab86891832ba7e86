#include "core/edit/copies.h"

#include "core/bench/validate.h"
#include "core/edit/clashes.h"
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

/// One light of the lock gate's row: a resistor, an LED over the gap, and a jumper to each rail.
BenchBuilder& addLight(BenchBuilder& builder) {
    return builder.part("R1", "resistor", {{"1", "A.c2"}, {"2", "A.c6"}})
        .part("D1", "led", {{"anode", "A.e6"}, {"cathode", "A.f6"}})
        .jumper("W1", "A.top+2", "A.a2")
        .jumper("W2", "A.j6", "A.bottom-5");
}
const std::vector<std::string> kLight{"R1", "D1", "W1", "W2"};

/// The copies on the bench; a failure is told.
Bench benchWith(const Bench& bench, const Result<Copies>& copies) {
    if (!copies) {
        ADD_FAILURE() << copies.error().oneLine();
        return bench;
    }
    const auto applied = apply(bench, copies->edit);
    if (!applied) {
        ADD_FAILURE() << applied.error().oneLine();
        return bench;
    }
    EXPECT_TRUE(validate(applied->bench).ok());
    EXPECT_TRUE(Occupancy(applied->bench).all().empty());
    return applied->bench;
}

TEST(CopiesInRow, StandBesideEachOtherWithTheirEndsInRails) {
    BenchBuilder builder = BenchBuilder().board("A", "full");
    const Bench bench = addLight(builder).build();
    const auto copies = copiesInRow(bench, kLight, 5);
    ASSERT_TRUE(copies.ok());
    EXPECT_EQ(copies->count, 5);
    EXPECT_EQ(copies->noMore, "");
    EXPECT_EQ(copies->ids, (std::vector<std::string>{"R6", "D6", "W11", "W12"})) << "the last one, for going on";
    const Bench row = benchWith(bench, copies);
    for (int copy = 2; copy <= 6; ++copy) {
        const Part* resistor = row.findPart("R" + std::to_string(copy));
        ASSERT_TRUE(resistor);
        const int column = 2 + 5 * (copy - 1);
        EXPECT_EQ(resistor->leads[0], (Hole{"A", Line::C, column})) << copy;
        EXPECT_EQ(resistor->leads[1], (Hole{"A", Line::C, column + 4})) << copy;
    }
    for (const Jumper& jumper : row.jumpers) {
        const auto& rail = std::get<Hole>(jumper.ends[isRail(std::get<Hole>(jumper.ends[0]).line) ? 0 : 1]);
        const auto& strip = std::get<Hole>(jumper.ends[isRail(std::get<Hole>(jumper.ends[0]).line) ? 1 : 0]);
        EXPECT_NEAR(row.boards[0].kind->railColumn(rail.number), strip.number, 2.0) << jumper.id;
    }
}

TEST(CopiesInRow, HaveStripsOfTheirOwn) {
    // The nearest free place for R1 would put its leg into c12's strip, where the bell's jumper ends.
    const Bench bench = BenchBuilder()
                            .board("A", "full")
                            .part("R1", "resistor", {{"1", "A.c2"}, {"2", "A.c6"}})
                            .jumper("W1", "A.a11", "A.j30")
                            .build();
    const Bench row = benchWith(bench, copiesInRow(bench, {"R1"}, 1));
    EXPECT_EQ(row.findPart("R2")->leads[0], holeAt("A.c8"));
}

TEST(CopiesInRow, SayWhenThereIsNoRoomForMore) {
    BenchBuilder builder = BenchBuilder().board("A", "half");
    const Bench bench = addLight(builder).build();
    const auto copies = copiesInRow(bench, kLight, 9);
    ASSERT_TRUE(copies.ok());
    EXPECT_EQ(copies->count, 4);
    EXPECT_TRUE(copies->noMore.starts_with("there is no room to the right for all 4 things together; one column on, "))
        << copies->noMore;
    const Bench full = benchWith(bench, copies);
    const auto more = copiesInRow(full, copies->ids, 1);
    ASSERT_FALSE(more.ok());
    EXPECT_EQ(more.error().message, copies->noMore);
}

TEST(CopiesInRow, GoOnOnTheNextBoard) {
    BenchBuilder builder = BenchBuilder().board("A", "half").board("B", "half", 40, 0);
    const Bench bench = addLight(builder).build();
    const auto copies = copiesInRow(bench, kLight, 5);
    ASSERT_TRUE(copies.ok());
    EXPECT_EQ(copies->count, 5);
    const Bench row = benchWith(bench, copies);
    EXPECT_EQ(row.findPart("R6")->leads[0], holeAt("B.c1"));
    EXPECT_EQ(std::get<Hole>(row.findJumper("W11")->ends[0]).board, "B");
}

TEST(Copies, GoToTheBoardThatTheHandIsAt) {
    BenchBuilder builder = BenchBuilder().board("A", "half").board("B", "half", 0, 24);
    const Bench bench = addLight(builder).build();
    const Bench pasted = benchWith(bench, copiesOnto(bench, bench, kLight, holeAt("B.e20")));
    EXPECT_EQ(pasted.findPart("R2")->leads[0], holeAt("B.c2"));
    EXPECT_EQ(pasted.findPart("D2")->leads[1], holeAt("B.f6"));
    EXPECT_EQ(pasted.findJumper("W3")->ends[0], JumperEnd(holeAt("B.top+2")));
    EXPECT_EQ(pasted.findJumper("W4")->ends[1], JumperEnd(holeAt("B.bottom-5")));
    const auto nowhere = copiesOnto(BenchBuilder().board("M", "mini").build(), bench, kLight, holeAt("M.e2"));
    ASSERT_FALSE(nowhere.ok());
    EXPECT_EQ(nowhere.error().message,
              "no place is free for all 4 things together; W1 needs a rail, and board M has none");
}

TEST(Copies, NameNothingToCopy) {
    const Bench bench = cabinLamp();
    const auto copies = copiesOnto(bench, bench, {"M2"});
    ASSERT_FALSE(copies.ok()) << "a reading alone is no thing to copy";
    EXPECT_EQ(copies.error().message, "there is nothing to copy");
}

}  // namespace
}  // namespace tiepoint
