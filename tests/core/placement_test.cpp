// Placing by hand: which holes are found, where parts fall when they turn, and the words of a refusal.

#include "core/edit/placement.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <random>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

Bench halfBoard() { return BenchBuilder().board("A", "half").build(); }

Part partOf(std::string_view kind, std::string id = "X1") { return makePart(*findKind(kind), std::move(id)); }

/// The holes of a part's leads, "e12 f12 - -".
std::string holesUnder(const Part& part) {
    std::string text;
    for (const auto& lead : part.leads) text += (text.empty() ? "" : " ") + (lead ? shortName(*lead) : "-");
    return text;
}

using Words = std::optional<std::string>;

TEST(NearestHole, IsFoundWithinReach) {
    const Bench bench = halfBoard();
    const Point e12 = *holeMm(bench, holeAt("A.e12"));
    EXPECT_EQ(nearestHole(bench, e12), holeAt("A.e12"));
    EXPECT_EQ(nearestHole(bench, e12 + Point{0.9, -0.9}), holeAt("A.e12"));
    EXPECT_EQ(nearestHole(bench, e12 + Point{1.4, 0}), holeAt("A.e13"));
    EXPECT_EQ(nearestHole(bench, e12 + Point{0, 3.8}), std::nullopt);  // in the gap
    EXPECT_EQ(nearestHole(bench, {-50, 0}), std::nullopt);
    EXPECT_EQ(nearestHole(bench, *holeMm(bench, holeAt("A.bottom-7"))), holeAt("A.bottom-7"));
}

TEST(NearestHole, EveryHoleFindsItself) {
    const Bench bench = BenchBuilder().board("A", "half").board("B", "mini", 40, 3.3).build();
    for (const Board& board : bench.boards) {
        for (int line = 0; line < kRowCount + kRailCount; ++line) {
            for (int number = 1; board.kind->has(static_cast<Line>(line), number); ++number) {
                const Hole hole{board.id, static_cast<Line>(line), number};
                EXPECT_EQ(nearestHole(bench, *holeMm(bench, hole)), hole);
            }
        }
    }
}

TEST(Occupant, NamesTheLeadOrTheEnd) {
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                            .jumper("W1", "A.a1", "A.a5")
                            .build();
    const auto lead = occupantOf(bench, holeAt("A.c14"));
    ASSERT_TRUE(lead);
    EXPECT_EQ(lead->id, "R1");
    EXPECT_EQ(lead->lead, 1);
    EXPECT_FALSE(lead->jumper);
    const auto end = occupantOf(bench, holeAt("A.a1"));
    ASSERT_TRUE(end);
    EXPECT_EQ(end->id, "W1");
    EXPECT_EQ(end->lead, 0);
    EXPECT_TRUE(end->jumper);
    EXPECT_FALSE(occupantOf(bench, holeAt("A.b14")));
}

TEST(NearestFree, StaysInTheStrip) {
    const Bench bench = BenchBuilder()
                            .board("A", "half", 0, 0, Rails::Split)
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                            .jumper("W1", "A.e20", "A.f20")
                            .jumper("W2", "A.d20", "A.c20")
                            .jumper("W3", "A.b20", "A.a20")
                            .jumper("W4", "A.top+12", "A.top+13")
                            .build();
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.c14")), holeAt("A.b14"));  // a tie goes towards row a
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.c15")), holeAt("A.c15"));
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.e20")), std::nullopt);  // full, and f20 is other metal
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.f20")), holeAt("A.g20"));
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.top+12")),
              holeAt("A.top+11"));  // the rail is split behind 12
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.top+13")), holeAt("A.top+14"));
}

TEST(PlacedAt, PutsLeadsAlongTheTurn) {
    const Bench bench = halfBoard();
    const struct {
        const char *kind, *anchor;
        int turns;
        const char* holes;
    } cases[] = {
        {"led", "A.h16", 0, "h16 h17"},
        {"led", "A.h16", 2, "h16 h15"},
        {"led", "A.e16", 1, "e16 f16"},  // the next row counts 3
        {"led", "A.f16", 3, "f16 e16"},
        {"led", "A.j30", 0, "j30 -"},
        {"resistor", "A.c8", 0, "c8 c13"},
        {"resistor", "A.d8", 1, "d8 g8"},
        {"resistor", "A.c8", 3, "c8 top-7"},
        {"push-button", "A.e14", 0, "e14 f14 e16 f16"},
        {"push-button", "A.b14", 0, "b14 e14 b16 e16"},
        {"push-button", "A.a14", 0, "a14 d14 a16 d16"},
        {"push-button", "A.c14", 1, "c14 c11 e14 e11"},
        {"push-button", "A.e14", 1, "e14 e11 - -"},
        {"push-button", "A.f16", 2, "f16 e16 f14 e14"},
        {"slide-switch", "A.c5", 0, "c5 c6 c7"},
        {"potentiometer", "A.e11", 2, "e11 e9 e7"},
        {"usb-supply", "A.c5", 0, "- - -"},
    };
    for (const auto& c : cases) {
        const Part part = placedAt(bench, partOf(c.kind), holeAt(c.anchor), c.turns);
        EXPECT_EQ(holesUnder(part), c.holes) << c.kind << " " << c.anchor << " " << c.turns;
    }
}

TEST(PlacedAt, KeepsTheSpanOfAPartThatLies) {
    const Bench bench =
        BenchBuilder().board("A", "half").part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c18"}}).build();
    EXPECT_EQ(holesUnder(placedAt(bench, bench.parts[0], holeAt("A.h3"), 0)), "h3 h13");
}

TEST(Refusal, PushButtonFitsWhereTheRealOneDoes) {
    const Bench bench = halfBoard();
    const struct {
        const char* anchor;
        int turns;
        Words words;
    } cases[] = {
        {"A.e14", 0, std::nullopt},  // astride the gap
        {"A.b14", 0, std::nullopt},  // one side, b to e
        {"A.a14", 0, std::nullopt},  // one side, a to d
        {"A.f16", 2, std::nullopt},
        {"A.c14", 1, std::nullopt},  // a quarter turned on one side: fits, and reads always closed
        {"A.e14", 1, "its legs are now 2 holes apart; e to f is 3"},
        {"A.d14", 1, "its legs are now 2 holes apart; d to f is 4"},
        {"A.f14", 3, "its legs are now 2 holes apart; f to e is 3"},
        {"A.c14", 0, "its legs are 3 holes apart; c to f is 5"},
        {"A.e30", 0, "one of its legs would be off the board"},
        {"A.h14", 0, "one of its legs would stand where there is no hole"},
    };
    for (const auto& c : cases)
        EXPECT_EQ(refusal(bench, placedAt(bench, partOf("push-button"), holeAt(c.anchor), c.turns)), c.words)
            << c.anchor << " " << c.turns;
}

TEST(Refusal, AllLegsInHolesThatDontSuitReadTheSame) {
    Part button = partOf("push-button");
    button.leads = {holeAt("A.e14"), holeAt("A.e11"), holeAt("A.f14"), holeAt("A.f11")};
    EXPECT_EQ(refusal(halfBoard(), button), "its legs are now 2 holes apart; e to f is 3");
    EXPECT_FALSE(
        validate(BenchBuilder(halfBoard())
                     .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.e11"}, {"2a", "A.f14"}, {"2b", "A.f11"}})
                     .build())
            .ok());
}

TEST(Refusal, TellsWhoIsInTheHoleAndWhichHoleIsTheSameMetal) {
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                            .jumper("W1", "A.a20", "A.b20")
                            .jumper("W2", "A.c20", "A.d20")
                            .jumper("W3", "A.e20", "A.f20")
                            .build();
    const auto place = [&](const char* from, const char* to) {
        Part part = partOf("resistor", "R2");
        part.leads = {holeAt(from), holeAt(to)};
        return refusal(bench, part);
    };
    EXPECT_EQ(place("A.c14", "A.e24"), "c14 is taken by R1; b14 is the same metal");
    EXPECT_EQ(place("A.e20", "A.e28"), "e20 is taken by W3; no hole of its strip is free");
    EXPECT_EQ(place("A.h8", "A.h9"), std::nullopt);
    EXPECT_EQ(place("A.h8", "A.h28"), "its leads reach 17 holes at most; these are 20 apart");
    EXPECT_EQ(place("A.h8", "A.h8"), "its leads need at least 1 hole spacing between them");
    Part moved = bench.parts[0];
    moved.leads = {holeAt("A.c14"), holeAt("A.c18")};
    EXPECT_EQ(refusal(bench, moved), std::nullopt);  // its own lead is no obstacle
    Part other = partOf("resistor", "R2");
    other.leads = bench.parts[0].leads;
    EXPECT_EQ(refusal(bench, other, {"R1"}), std::nullopt);
}

TEST(Refusal, NamesTheBoardWhereThereAreSeveral) {
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .board("B", "half", 40, 0)
                            .part("R1", "resistor", {{"1", "B.c8"}, {"2", "B.c14"}})
                            .build();
    Part part = partOf("resistor", "R2");
    part.leads = {holeAt("B.c8"), holeAt("B.h12")};
    EXPECT_EQ(refusal(bench, part), "B.c8 is taken by R1; B.b8 is the same metal");
}

TEST(Refusal, BodiesDontOverlap) {
    const Bench bench =
        BenchBuilder()
            .board("A", "half")
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .build();
    Part led = partOf("led", "D1");
    led.leads = {holeAt("A.f15"), holeAt("A.g15")};
    EXPECT_EQ(refusal(bench, led), "its body would overlap S1");
    EXPECT_EQ(overlapping(bench, led), std::vector<std::string>{"S1"});
    EXPECT_EQ(refusal(bench, led, {"S1"}), std::nullopt);
    led.leads = {holeAt("A.h15"), holeAt("A.h16")};
    EXPECT_EQ(refusal(bench, led), std::nullopt);
}

TEST(Refusal, LeadsHangOnlyWhereTheyHungBefore) {
    const Bench bench = BenchBuilder().board("A", "half").part("D1", "led", {{"anode", "A.h16"}}).build();
    Part led = bench.parts[0];
    led.leads[0] = holeAt("A.h20");
    EXPECT_EQ(refusal(bench, led), std::nullopt);
    led.id = "D2";
    EXPECT_EQ(refusal(bench, led), "its other lead would reach no hole");
    EXPECT_EQ(refusal(bench, partOf("led")), std::nullopt);           // lies on the table
    EXPECT_EQ(refusal(bench, partOf("bench-supply")), std::nullopt);  // stands on it
    Part supply = partOf("bench-supply");
    supply.leads[0] = holeAt("A.h16");
    EXPECT_EQ(refusal(bench, supply), "h16 is taken by D1; g16 is the same metal");
}

TEST(Refusal, JumpersNeedTwoFreePlaces) {
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("PS1", "usb-supply", {})
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                            .jumper("W1", "PS1.GND1", "A.a1")
                            .build();
    const auto words = [&](JumperEnd from, JumperEnd to) {
        return refusal(bench, Jumper{"W2", {from, to}, 0, false, {}});
    };
    EXPECT_EQ(words(holeAt("A.a10"), holeAt("A.a12")), std::nullopt);
    EXPECT_EQ(words(Socket{"PS1", 2}, holeAt("A.a12")), std::nullopt);
    EXPECT_EQ(words(holeAt("A.a10"), holeAt("A.c14")), "c14 is taken by R1; b14 is the same metal");
    EXPECT_EQ(words(holeAt("A.b14"), holeAt("A.c14")), "c14 is taken by R1; d14 is the same metal");
    EXPECT_EQ(words(holeAt("A.a10"), holeAt("A.a10")), "both of its ends can't share one place");
    EXPECT_EQ(words(Socket{"PS1", 1}, holeAt("A.a12")), "the socket GND1 of PS1 is taken by W1");
    EXPECT_EQ(words(Socket{"R1", 0}, holeAt("A.a12")), "there is no such socket");
    EXPECT_EQ(words(holeAt("A.a31"), holeAt("A.a12")), "there is no hole a31");
    EXPECT_EQ(refusal(bench, bench.jumpers[0]), std::nullopt);
}

TEST(Turned, RigidPartsTurnAboutTheirFirstLead) {
    const Bench bench =
        BenchBuilder()
            .board("A", "half")
            .part("S1", "push-button", {{"1a", "A.c14"}, {"1b", "A.c11"}, {"2a", "A.e14"}, {"2b", "A.e11"}})
            .build();
    EXPECT_EQ(quarterTurnsOf(bench, bench.parts[0]), 1);
    const Part back = turned(bench, bench.parts[0], -1);
    EXPECT_EQ(holesUnder(back), "c14 - c16 -");
    EXPECT_EQ(refusal(bench, back), "its legs are 3 holes apart; c to f is 5");
}

/// The places of a part's legs after each turn, as long as one fits.
std::vector<std::string> turnsOf(Bench bench, int direction, int times) {
    std::vector<std::string> places;
    for (int i = 0; i < times; ++i) {
        const Turned next = turnedRound(bench, bench.parts[0], direction);
        if (!next.part) return {next.why};
        bench.parts[0] = *next.part;
        places.push_back(holesUnder(bench.parts[0]));
    }
    return places;
}

using TurnPlaces = std::vector<std::string>;

TEST(Turned, TwoLegsGoRoundThroughAllFour) {
    const auto lying = [](const char* kind, const char* second) {
        Bench bench = BenchBuilder().board("A", "half").build();
        bench.parts.push_back(makePart(*findKind(kind), "X1"));
        bench.parts[0].leads = {holeAt("A.e15"), holeAt(second)};
        return bench;
    };
    for (const char* kind : {"lamp", "resistor", "diode"}) {
        const Bench bench = lying(kind, "A.e18");
        EXPECT_EQ(turnsOf(bench, 1, 4), (TurnPlaces{"e15 f15", "e15 e12", "e15 b15", "e15 e18"})) << kind;
        EXPECT_EQ(turnsOf(bench, -1, 2), (TurnPlaces{"e15 b15", "e15 e12"})) << kind;
    }
    // Over the gap its legs are spread, and after it they are as before.
    EXPECT_EQ(turnsOf(lying("led", "A.e16"), 1, 4), (TurnPlaces{"e15 f15", "e15 e14", "e15 d15", "e15 e16"}));
}

TEST(Turned, PlacesThatDontFitAreLeftOut) {
    const auto turn = [](const char* from, const char* to, const char* kind = "resistor") {
        Bench bench = BenchBuilder().board("A", "half").build();
        bench.parts.push_back(makePart(*findKind(kind), "X1"));
        bench.parts[0].leads = {holeAt(from), holeAt(to)};
        return turnsOf(bench, 1, 1);
    };
    EXPECT_EQ(turn("A.d8", "A.d13"), TurnPlaces{"d8 g8"});
    EXPECT_EQ(turn("A.a8", "A.a12"), TurnPlaces{"a8 e8"});
    EXPECT_EQ(turn("A.i8", "A.i20"), TurnPlaces{"i20 i8"}) << "no hole there: end for end, in its holes";
    EXPECT_EQ(turn("A.h16", "A.h19", "led"), TurnPlaces{"h19 h16"});
}

TEST(Turned, WhereNoneFitsTheReasonIsTold) {
    const Bench bench =
        BenchBuilder()
            .board("A", "half")
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .build();
    EXPECT_EQ(turnsOf(bench, 1, 1), TurnPlaces{"its legs are now 2 holes apart; e to f is 3"});
    const Bench table = BenchBuilder().board("A", "half").part("PS1", "bench-supply", {{"+", "A.top+3"}}).build();
    EXPECT_EQ(turnsOf(table, 1, 1), TurnPlaces{"it stands on the table"});
}

TEST(Shifted, MovesByColumnsAndRows) {
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                            .jumper("W1", "A.top+7", "A.a8")
                            .build();
    EXPECT_EQ(holesUnder(*shifted(bench, bench.parts[0], 3, 1)), "d11 d17");
    EXPECT_FALSE(shifted(bench, bench.parts[0], 17, 0));
    EXPECT_FALSE(shifted(bench, bench.parts[0], 0, -3));
    const auto jumper = shifted(bench, bench.jumpers[0], 2, 1);
    ASSERT_TRUE(jumper);
    EXPECT_EQ(jumper->ends[0], JumperEnd(holeAt("A.top+9")));
    EXPECT_EQ(jumper->ends[1], JumperEnd(holeAt("A.b10")));
}

/// What a hand may do is what a file may say: a part that isn't refused makes a valid bench.
TEST(Refusal, AgreesWithTheFileRules) {
    std::mt19937 random(5);
    Bench bench = BenchBuilder().board("A", "half").board("B", "mini", 0, 24).build();
    const auto pick = [&](int count) { return std::uniform_int_distribution<int>(0, count - 1)(random); };
    int placed = 0;
    for (int i = 0; i < 600; ++i) {
        const PartKind& kind = catalogue()[pick(static_cast<int>(catalogue().size()))];
        const Hole anchor{pick(3) ? "A" : "B", static_cast<Line>(pick(kRowCount)), 1 + pick(17)};
        const Part part = placedAt(bench, makePart(kind, freeId(bench, kind.prefix)), anchor, pick(4));
        if (refusal(bench, part)) continue;
        bench.parts.push_back(part);
        ++placed;
        const auto valid = validate(bench);
        ASSERT_TRUE(valid.ok()) << valid.error().message;
    }
    EXPECT_GT(placed, 20);
}

TEST(Refusal, NothingOnTheHarbourBenchesIsRefused) {
    int benches = 0;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/")) continue;
        ++benches;
        const auto read = readBench(file.text);
        ASSERT_TRUE(read.ok()) << read.error().oneLine();
        const Bench& bench = read->bench;
        for (const Part& part : bench.parts)
            EXPECT_EQ(refusal(bench, part), std::nullopt) << file.name << " " << part.id;
        for (const Jumper& jumper : bench.jumpers) EXPECT_EQ(refusal(bench, jumper), std::nullopt) << file.name;
    }
    EXPECT_GE(benches, 9);
}

}  // namespace
}  // namespace tiepoint
