#include "core/edit/edit.h"

#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

Bench startBench() {
    return BenchBuilder()
        .title("Quay bell")
        .board("A", "full")
        .board("B", "mini", 70, 0)
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}}, {{"on", 1}})
        .part("PS2", "usb-supply", {})
        .part("R1", "resistor", {{"1", "A.c10"}, {"2", "A.c14"}}, {{"resistance", 220}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .cap("A")
        .part("D1", "led", {{"anode", "A.g16"}, {"cathode", "A.g17"}})
        .jumper("W1", "A.top+8", "A.a10")
        .jumper("W2", "PS2.GND2", "A.j17")
        .jumper("W3", "PS2.5V", "A.top+9")
        .build();
}

/// Applies an edit that must work, and checks that its inverse gives the old bench back to the byte.
Bench applied(const Bench& bench, const Edit& edit) {
    const auto result = apply(bench, edit);
    if (!result) {
        ADD_FAILURE() << result.error().oneLine();
        return bench;
    }
    EXPECT_TRUE(validate(result->bench).ok());
    const auto back = apply(result->bench, result->inverse);
    EXPECT_TRUE(back.ok());
    if (back) {
        EXPECT_EQ(back->bench, bench);
        EXPECT_EQ(writeBench(back->bench), writeBench(bench));
    }
    return result->bench;
}

TEST(Edit, AddsAtTheEndOrAtAPlace) {
    const Part part = makePart(*findKind("resistor"), "R9");
    EXPECT_EQ(applied(startBench(), {"Add", {AddPart{part, -1}}}).parts.back().id, "R9");
    EXPECT_EQ(applied(startBench(), {"Add", {AddPart{part, 2}}}).parts[2].id, "R9");
    EXPECT_FALSE(apply(startBench(), {"Add", {AddPart{part, 99}}}).ok());
    EXPECT_FALSE(apply(startBench(), {"Add", {AddPart{part, -2}}}).ok());
}

TEST(Edit, ReplacesAndRenames) {
    const Bench bench = applied(startBench(), {"Title", {SetTitle{"Ferry"}}});
    EXPECT_EQ(bench.title, "Ferry");
    Board split = bench.boards[0];
    split.rails = Rails::Split;
    EXPECT_EQ(applied(bench, {"Split", {ReplaceBoard{split}}}).boards[0].rails, Rails::Split);
    Jumper green = bench.jumpers[0];
    green.colour = findJumperColour("green");
    EXPECT_EQ(applied(bench, {"Colour", {ReplaceJumper{green}}}).jumpers[0].colour, green.colour);
}

TEST(Edit, SetsValuesAndStates) {
    const Bench start = startBench();
    const Bench brighter = applied(start, setValueEdit(start, "R1", "resistance", 330));
    EXPECT_EQ(brighter.findPart("R1")->value(0), 330);
    const Bench off = applied(start, setStateEdit(start, "PS1", "on", 0));
    EXPECT_EQ(off.findPart("PS1")->stateValue(0), 0);
    EXPECT_FALSE(apply(start, setValueEdit(start, "PS1", "voltage", 230)).ok());
}

TEST(Edit, RemovesJumpersWithTheSocketsTheyAreIn) {
    const Bench start = startBench();
    const Bench without = applied(start, removeEdit(start, {"PS2"}));
    EXPECT_EQ(without.findPart("PS2"), nullptr);
    EXPECT_EQ(without.findJumper("W2"), nullptr);
    EXPECT_EQ(without.findJumper("W3"), nullptr);
    EXPECT_NE(without.findJumper("W1"), nullptr);
    // Named both ways, a jumper goes once.
    EXPECT_EQ(applied(start, removeEdit(start, {"W2", "PS2", "D1", "W2"})).jumpers.size(), 1u);
    EXPECT_EQ(removeEdit(start, {"D1"}).name, "Remove D1");
}

TEST(Edit, PinsAndUnpins) {
    const Bench start = startBench();
    const struct {
        Measurand of;
        const char* name;
    } table[] = {{VoltsAt{holeAt("A.e14")}, "Pin volts at A.e14"},
                 {VoltsBetween{holeAt("A.e14"), holeAt("B.a1")}, "Pin volts of A.e14 above B.a1"},
                 {AmperesIn{"W1", {}}, "Pin amperes in W1"},
                 {AmperesIn{"R1", "1"}, "Pin amperes in R1, lead 1"},
                 {WattsOf{"D1"}, "Pin watts of D1"}};
    for (const auto& [of, name] : table) {
        const Edit pin = pinEdit(start, of);
        EXPECT_EQ(pin.name, name);
        const Bench pinned = applied(start, pin);
        ASSERT_EQ(pinned.pinned.size(), 1u);
        EXPECT_EQ(pinned.pinned[0].id, "M1");
        EXPECT_EQ(applied(pinned, pinEdit(pinned, of)), start) << "the same again takes it away";
    }
    EXPECT_FALSE(apply(start, pinEdit(start, WattsOf{"D9"})).ok());
    EXPECT_FALSE(apply(start, pinEdit(start, VoltsAt{holeAt("C.a1")})).ok());
}

TEST(Edit, ReadingsGoWithWhatTheyMeasureAndComeBackWithIt) {
    Bench start = startBench();
    start.pinned = {{"M1", WattsOf{"PS2"}, {}},
                    {"M2", AmperesIn{"W3", {}}, {}},
                    {"M3", VoltsAt{holeAt("A.e16")}, {}},
                    {"M4", AmperesIn{"D1", "anode"}, {}}};
    start.views = SavedViews{};
    const Bench without = applied(start, removeEdit(start, {"PS2"}));
    ASSERT_EQ(without.pinned.size(), 2u) << "its jumper W3 went too";
    EXPECT_EQ(without.pinned[0].id, "M3");
    EXPECT_EQ(without.pinned[1].id, "M4");
    EXPECT_EQ(without.views, start.views);
    // Taken out and put back in one edit, it keeps its reading: mends do so.
    const Part led = *start.findPart("D1");
    EXPECT_EQ(applied(start, {"Swap", {Remove{"D1"}, AddPart{led, -1}}}).pinned.size(), 4u);
    EXPECT_EQ(applied(start, removeEdit(start, {"D1", "M4"})).pinned.size(), 3u);
}

TEST(Edit, RefusesWhatWouldBreakTheBench) {
    const Bench start = startBench();
    Part moved = *start.findPart("D1");
    moved.leads[0] = holeAt("A.f16");
    const std::pair<const char*, Edit> table[] = {
        {"unknown id", {"", {Remove{"R7"}}}},
        {"unknown part", {"", {ReplacePart{makePart(*findKind("led"), "D7")}}}},
        {"an id used twice", {"", {AddPart{makePart(*findKind("led"), "W1")}}}},
        {"a hole that is taken", {"", {ReplacePart{moved}}}},
        {"a board with parts in it", {"", {Remove{"A"}}}},
        {"a supply with jumpers in it", {"", {Remove{"PS2"}}}},
        {"the second operation fails", {"", {Remove{"D1"}, Remove{"D1"}}}},
    };
    for (const auto& [name, edit] : table) {
        SCOPED_TRACE(name);
        const auto result = apply(start, edit);
        ASSERT_FALSE(result.ok());
        EXPECT_FALSE(result.error().message.empty());
    }
}

TEST(Edit, JudgesTheWholeAndNotTheWayThere) {
    // Two parts change places: after the first operation alone, two leads are in one hole.
    const Bench start = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.a1"}, {"2", "A.a6"}})
                            .part("R2", "resistor", {{"1", "A.b1"}, {"2", "A.b6"}})
                            .build();
    Part first = start.parts[0], second = start.parts[1];
    std::swap(first.leads, second.leads);
    const Bench swapped = applied(start, {"Swap", {ReplacePart{first}, ReplacePart{second}}});
    EXPECT_EQ(swapped.parts[0].leads[0], holeAt("A.b1"));
}

/// Makes edits as hands would: most are sound, some must be refused.
class RandomHands {
public:
    explicit RandomHands(unsigned seed) : random_(seed) {}

    Edit next(const Bench& bench) {
        Edit edit{"Random", {}};
        for (int count = 1 + below(3); count > 0; --count) edit.operations.push_back(operation(bench));
        return edit;
    }

private:
    int below(std::size_t n) { return static_cast<int>(random_() % n); }

    Hole hole() { return {"A", static_cast<Line>(below(14)), 1 + below(50)}; }

    Operation operation(const Bench& bench) {
        const int place = below(2) == 0 ? -1 : below(bench.parts.size() + 1);
        switch (below(7)) {
            case 0: {
                Part part = makePart(catalogue()[below(catalogue().size())], freeId(bench, "X"));
                for (auto& lead : part.leads) {
                    if (below(4) == 0) lead = hole();
                }
                return AddPart{part, place};
            }
            case 1: {
                Jumper jumper;
                jumper.id = freeId(bench, "W");
                jumper.ends = {hole(), hole()};
                return AddJumper{jumper, -1};
            }
            case 2:
                return bench.parts.empty() ? Operation{SetTitle{"none"}}
                                           : Remove{bench.parts[below(bench.parts.size())].id};
            case 3:
                return bench.jumpers.empty() ? Operation{SetTitle{"none"}}
                                             : Remove{bench.jumpers[below(bench.jumpers.size())].id};
            case 4:
                return SetTitle{"Title " + std::to_string(below(1000))};
            case 5: {
                if (bench.parts.empty()) return SetTitle{"none"};
                Part part = bench.parts[below(bench.parts.size())];
                part.cap = part.kind->hasCap ? std::string(1, static_cast<char>('A' + below(26))) : "";
                if (!part.leads.empty() && below(2) == 0) part.leads[below(part.leads.size())].reset();
                return ReplacePart{part};
            }
            default: {
                Board board = bench.boards[0];
                board.rails = below(2) == 0 ? Rails::Through : Rails::Split;
                board.atX = -below(10);
                return ReplaceBoard{board};
            }
        }
    }

    std::mt19937 random_;
};

TEST(Edit, UndoesLongHistoriesToTheByte) {
    for (const unsigned seed : {1u, 2u, 3u, 4u}) {
        SCOPED_TRACE(seed);
        RandomHands hands(seed);
        std::vector<Bench> benches{startBench()};
        std::vector<Edit> inverses;
        int refused = 0;
        for (int i = 0; i < 250; ++i) {
            auto result = apply(benches.back(), hands.next(benches.back()));
            if (!result) {
                ++refused;
                continue;
            }
            inverses.push_back(result->inverse);
            benches.push_back(result->bench);
        }
        EXPECT_GT(inverses.size(), 50u);
        EXPECT_GT(refused, 10);
        for (std::size_t i = inverses.size(); i-- > 0;) {
            const auto undone = apply(benches[i + 1], inverses[i]);
            ASSERT_TRUE(undone.ok()) << undone.error().oneLine();
            ASSERT_EQ(undone->bench, benches[i]);
            ASSERT_EQ(writeBench(undone->bench), writeBench(benches[i]));
            const auto redone = apply(undone->bench, undone->inverse);
            ASSERT_TRUE(redone.ok());
            ASSERT_EQ(redone->bench, benches[i + 1]);
        }
    }
}

}  // namespace
}  // namespace tiepoint
