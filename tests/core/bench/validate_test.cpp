#include "core/bench/validate.h"

#include "core/bench/cap.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <string>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::holeAt;

/// A good bench that each case spoils in one way.
Bench goodBench() {
    return BenchBuilder()
        .board("A", "full")
        .board("B", "mini", 70, 0)
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("PS2", "usb-supply", {})
        .part("R1", "resistor", {{"1", "A.c10"}, {"2", "A.c14"}}, {{"resistance", 220}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .cap("A")
        .part("D1", "led", {{"anode", "A.g16"}, {"cathode", "A.g17"}}, {{"colour", "red"}})
        .part("BAT1", "cells", {{"+", "B.a1"}})
        .jumper("W1", "A.top+8", "A.a10")
        .jumper("W2", "PS2.GND2", "A.bottom-14", "black")
        .build();
}

int leadOf(const Bench& bench, std::string_view part, std::string_view lead) {
    return bench.findPart(part)->kind->leadIndex(lead);
}

void plug(Bench& bench, std::string_view part, std::string_view lead, std::string_view hole) {
    bench.parts[bench.partIndex(part)].leads[leadOf(bench, part, lead)] = holeAt(hole);
}

void set(Bench& bench, std::string_view part, std::string_view value, double to) {
    Part& changed = bench.parts[bench.partIndex(part)];
    changed.values[changed.kind->valueIndex(value)] = to;
}

TEST(Validate, AcceptsAGoodBench) {
    const auto valid = validate(goodBench());
    EXPECT_TRUE(valid.ok()) << valid.error().oneLine();
    EXPECT_TRUE(validate(Bench{}).ok());
}

struct Spoiled {
    const char* name;
    std::function<void(Bench&)> spoil;
    ErrorKind kind;
    const char* pointer;
    const char* words;  ///< that the message must hold
};

TEST(Validate, RefusesEveryOffenceAtItsPlace) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const Spoiled table[] = {
        {"bad title", [](Bench& b) { b.title = "\xFF"; }, ErrorKind::Format, "/title", "UTF-8"},
        {"NUL in title", [](Bench& b) { b.title = std::string(1, '\0'); }, ErrorKind::Format, "/title", "NUL"},
        {"id with a dash", [](Bench& b) { b.parts[2].id = "R-1"; }, ErrorKind::Format, "/parts/2/id", "R-1"},
        {"id twice", [](Bench& b) { b.parts[2].id = "PS1"; }, ErrorKind::Reference, "/parts/2/id", "PS1 is used twice"},
        {"board and jumper share an id", [](Bench& b) { b.jumpers[1].id = "B"; }, ErrorKind::Reference, "/jumpers/1/id",
         "boards"},
        {"boards overlap", [](Bench& b) { b.boards[1].atX = 60; }, ErrorKind::Placement, "/boards/1/at",
         "board B overlaps board A"},
        {"board at NaN", [=](Bench& b) { b.boards[0].atY = nan; }, ErrorKind::Range, "/boards/0/at", "off the table"},
        {"board far off", [](Bench& b) { b.boards[0].atY = 1e300; }, ErrorKind::Range, "/boards/0/at", "off the table"},
        {"no such board", [](Bench& b) { plug(b, "R1", "1", "C.c10"); }, ErrorKind::Reference, "/parts/2/leads/1",
         "no board has the id C"},
        {"no such column", [](Bench& b) { plug(b, "R1", "2", "A.c64"); }, ErrorKind::Placement, "/parts/2/leads/2",
         "1 to 63"},
        {"no such rail hole", [](Bench& b) { plug(b, "PS1", "+", "A.top+51"); }, ErrorKind::Placement,
         "/parts/0/leads/+", "1 to 50"},
        {"mini has no rails", [](Bench& b) { plug(b, "BAT1", "-", "B.top-1"); }, ErrorKind::Placement,
         "/parts/5/leads/-", "no rails"},
        {"two leads in a hole", [](Bench& b) { plug(b, "D1", "anode", "A.f16"); }, ErrorKind::Placement,
         "/parts/4/leads/anode", "A.f16 is taken by S1"},
        {"jumper in a taken hole", [](Bench& b) { b.jumpers[0].ends[1] = holeAt("A.c10"); }, ErrorKind::Placement,
         "/jumpers/0/ends/1", "taken by R1"},
        {"jumper twice in a hole", [](Bench& b) { b.jumpers[0].ends[1] = b.jumpers[0].ends[0]; }, ErrorKind::Placement,
         "/jumpers/0/ends/1", "taken by W1"},
        {"socket in a hole", [](Bench& b) { plug(b, "PS2", "5V", "A.a1"); }, ErrorKind::Placement, "/parts/1/leads/5V",
         "socket"},
        {"span too long", [](Bench& b) { plug(b, "R1", "2", "A.c28"); }, ErrorKind::Placement, "/parts/2/leads",
         "R1 doesn't fit"},
        {"button across the gap, turned",
         [](Bench& b) {
             plug(b, "S1", "1a", "A.e14"), plug(b, "S1", "1b", "A.e16"), plug(b, "S1", "2a", "A.f14"),
                 plug(b, "S1", "2b", "A.f16");
         },
         ErrorKind::Placement, "/parts/3/leads", "S1 doesn't fit"},
        {"number below", [](Bench& b) { set(b, "R1", "resistance", 0); }, ErrorKind::Range,
         "/parts/2/values/resistance", "resistance is 0"},
        {"number above", [](Bench& b) { set(b, "PS1", "voltage", 31); }, ErrorKind::Range, "/parts/0/values/voltage",
         "0 to 30"},
        {"number NaN", [=](Bench& b) { set(b, "R1", "resistance", nan); }, ErrorKind::Range,
         "/parts/2/values/resistance", "resistance is no number"},
        {"cells in halves", [](Bench& b) { set(b, "BAT1", "count", 2.5); }, ErrorKind::Range, "/parts/5/values/count",
         "whole"},
        {"no such choice", [](Bench& b) { set(b, "D1", "colour", 99); }, ErrorKind::Range, "/parts/4/values/colour",
         "colour"},
        {"half on", [](Bench& b) { b.parts[0].state[0] = 0.5; }, ErrorKind::Range, "/parts/0/state/on",
         "true or false"},
        {"two letters on a cap", [](Bench& b) { b.parts[3].cap = "AB"; }, ErrorKind::Format, "/parts/3/cap",
         "one letter or digit"},
        {"sign on a cap", [](Bench& b) { b.parts[3].cap = "."; }, ErrorKind::Format, "/parts/3/cap",
         "one letter or digit"},
        {"cap without a button", [](Bench& b) { b.parts[2].cap = "A"; }, ErrorKind::Format, "/parts/2/cap", "no cap"},
        {"jumper to nowhere",
         [](Bench& b) {
             b.jumpers[1].ends[0] = Socket{"PS9", 0};
         },
         ErrorKind::Reference, "/jumpers/1/ends/0", "PS9"},
        {"jumper to a lead",
         [](Bench& b) {
             b.jumpers[1].ends[0] = Socket{"R1", 0};
         },
         ErrorKind::Reference, "/jumpers/1/ends/0", "R1.1 is no socket"},
        {"jumper to no lead",
         [](Bench& b) {
             b.jumpers[1].ends[0] = Socket{"PS2", 7};
         },
         ErrorKind::Reference, "/jumpers/1/ends/0", "no socket"},
        {"two in a socket", [](Bench& b) { b.jumpers[0].ends[0] = b.jumpers[1].ends[0]; }, ErrorKind::Placement,
         "/jumpers/1/ends/0", "PS2.GND2 is taken by W1"},
        {"no such colour", [](Bench& b) { b.jumpers[0].colour = 8; }, ErrorKind::Range, "/jumpers/0/colour", "colour"},
        {"leads missing", [](Bench& b) { b.parts[2].leads.pop_back(); }, ErrorKind::Format, "/parts/2", "leads"},
    };
    for (const Spoiled& row : table) {
        SCOPED_TRACE(row.name);
        Bench bench = goodBench();
        row.spoil(bench);
        const auto valid = validate(bench);
        ASSERT_FALSE(valid.ok());
        EXPECT_EQ(valid.error().kind, row.kind);
        EXPECT_EQ(valid.error().place.pointer, row.pointer);
        EXPECT_NE(valid.error().message.find(row.words), std::string::npos) << valid.error().message;
    }
}

TEST(Validate, LetsBoardsDock) {
    // 165 mm is no whole number of pitches; docked boards share an edge.
    const double besideFull = 165 / 2.54, belowFull = 55 / 2.54;
    const Bench bench = BenchBuilder()
                            .board("A", "full")
                            .board("B", "half", besideFull, 0)
                            .board("C", "full", 0, belowFull)
                            .board("D", "half", -83 / 2.54, 0)
                            .board("E", "mini", -30, -40)
                            .build();
    const auto valid = validate(bench);
    EXPECT_TRUE(valid.ok()) << valid.error().oneLine();
}

TEST(Validate, FindsOverlapsAcrossTheWholeTable) {
    BenchBuilder builder;
    for (int i = 0; i < 300; ++i) builder.board("N" + std::to_string(i), "mini", (i % 20 - 10) * 19, (i / 20 - 7) * 14);
    Bench bench = builder.build();
    ASSERT_TRUE(validate(bench).ok());
    for (const int moved : {1, 57, 299}) {
        Bench spoiled = bench;
        spoiled.boards[moved].atX -= 1;  // 47 mm boards every 48.26 mm: one pitch is too much
        EXPECT_EQ(validate(spoiled).ok(), moved % 20 == 0) << moved;
    }
}

TEST(Validate, WantsASupplyToHaveAResistanceOrALimit) {
    PartKind ideal = *findKind("usb-supply");
    std::erase_if(ideal.values, [](const ValueSpec& value) { return value.name == "currentLimit"; });
    Bench bench = BenchBuilder().board("A", "half").build();
    bench.parts.push_back(makePart(ideal, "PS1"));
    EXPECT_TRUE(validate(bench).ok());
    set(bench, "PS1", "seriesResistance", 0);
    const auto valid = validate(bench);
    ASSERT_FALSE(valid.ok());
    EXPECT_EQ(valid.error().place.pointer, "/parts/0/values/seriesResistance");
    // The same with a limit is a real supply.
    Bench limited = BenchBuilder().part("PS1", "bench-supply", {}, {{"seriesResistance", 0}}).build();
    EXPECT_TRUE(validate(limited).ok());
}

/// What a kind says a value may be is the last that it may be, on both sides.
TEST(Validate, BoundsOfValuesMayBeReachedAndNotPassed) {
    int checked = 0;
    for (const PartKind& kind : catalogue()) {
        for (std::size_t v = 0; v < kind.values.size(); ++v) {
            const ValueSpec& spec = kind.values[v];
            Bench bench;
            bench.parts.push_back(makePart(kind, "X1"));
            const auto isValid = [&](double value) {
                bench.parts[0].values[v] = value;
                return validate(bench).ok();
            };
            SCOPED_TRACE(kind.name + " " + spec.name);
            const double most = spec.type == ValueType::Number   ? spec.maximum
                                : spec.type == ValueType::Choice ? static_cast<double>(spec.choices.size()) - 1
                                                                 : 1;
            const double least = spec.type == ValueType::Number ? spec.minimum : 0;
            const bool isWhole = spec.type != ValueType::Number || spec.integer;
            const double step = isWhole ? 1 : 1e-9 * std::max(1e-9, most);
            EXPECT_TRUE(isValid(least));
            EXPECT_TRUE(isValid(most));
            EXPECT_FALSE(isValid(least - step));
            EXPECT_FALSE(isValid(most + step));
            EXPECT_FALSE(isValid(std::numeric_limits<double>::quiet_NaN()));
            if (isWhole) {
                EXPECT_FALSE(isValid(least + 0.5));
            }
            ++checked;
        }
    }
    EXPECT_GT(checked, 20);
}

TEST(Validate, ATableReachesAMillionPitches) {
    for (const double edge : {1e6, -1e6}) {
        Bench bench = BenchBuilder().board("A", "mini", edge, edge).build();
        EXPECT_TRUE(validate(bench).ok());
        bench.boards[0].atX = std::nextafter(edge, 2 * edge);
        EXPECT_FALSE(validate(bench).ok());
        bench.boards[0] = BenchBuilder().board("A", "mini", edge, std::nextafter(edge, 2 * edge)).build().boards[0];
        EXPECT_FALSE(validate(bench).ok());
    }
}

/// Of ASCII letters and digits. Beyond it the blocks of signs are none (The Unicode Standard, code charts; from memory): the last before
/// each block may stand on a cap, its first and last may not, and what follows may.
TEST(Cap, IsALetterOrADigitOfAnyScript) {
    for (int code = 0; code < 0x80; ++code) {
        const std::string text(1, static_cast<char>(code));
        const std::string letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";
        EXPECT_EQ(isCap(text), letters.find(text) != std::string::npos) << code;
    }
    for (const char* letter : {"\u00c0", "\u00d6", "\u00d8", "\u00f6", "\u00f8", "\u1fff", "\u2c00", "\u2fff", "\u3040",
                               "\ud7ff", "\uf900", "\ufdff", "\ufe70", "\uffdf"})
        EXPECT_TRUE(isCap(letter)) << letter;
    for (const char* sign : {"\u0080", "\u00bf", "\u00d7", "\u00f7", "\u2000", "\u2bff", "\u3000", "\u303f", "\ue000",
                             "\uf8ff", "\ufe00", "\ufe6f", "\uffe0", "\uffff", "\U00010000", "\U0001f6df", "", "AB"})
        EXPECT_FALSE(isCap(sign)) << sign;
}

TEST(Validate, AllowsAnyLetterOnACapAndOverlappingBodies) {
    for (const char* cap : {"A", "z", "7", "B", "Ä", "ж", "あ"}) {
        Bench bench = goodBench();
        bench.parts[3].cap = cap;
        EXPECT_TRUE(validate(bench).ok()) << cap;
    }
    for (const char* cap : {" ", "-", "\n", "→", "AB", "\xC3", "×", "\u00a0", "\u2028"}) {
        Bench bench = goodBench();
        bench.parts[3].cap = cap;
        EXPECT_FALSE(validate(bench).ok()) << cap;
    }
    const Bench bench = BenchBuilder()
                            .board("A", "half")
                            .part("R1", "resistor", {{"1", "A.a1"}, {"2", "A.a8"}})
                            .part("R2", "resistor", {{"1", "A.a4"}, {"2", "A.b12"}})
                            .build();
    EXPECT_TRUE(validate(bench).ok());
}

}  // namespace
}  // namespace tiepoint
