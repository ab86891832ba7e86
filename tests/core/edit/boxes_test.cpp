// Supplies and instruments put somewhere by hand: never over a board or another box, their sockets towards the boards, their leads round
// boxes, and everything else where it was.

#include "core/edit/boxes.h"

#include "core/bench/bench_file.h"
#include "core/bench/cable_routes.h"
#include "core/bench/frame_grid.h"
#include "core/edit/boards.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using test::BenchBuilder;

Bench afterBoxEdit(const Bench& bench, const Result<Edit>& edit) {
    EXPECT_TRUE(edit.ok()) << (edit.ok() ? "" : edit.error().message);
    auto done = apply(bench, *edit);
    EXPECT_TRUE(done.ok()) << (done.ok() ? "" : done.error().message);
    EXPECT_EQ(apply(done->bench, done->inverse)->bench, bench) << "undone exactly";
    return std::move(done).value().bench;
}

Bench twoSuppliesAndAMeter() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("PS2", "bench-supply", {{"+", "A.top-5"}, {"-", "A.bottom+8"}})
        .part("M1", "multimeter", {{"+", "A.c10"}, {"com", "A.c20"}})
        .build();
}

Rect frameIn(const Table& table, const Bench& bench, std::string_view id) {
    return frameOf(table.parts[static_cast<std::size_t>(bench.partIndex(id))]);
}

void expectNothingOverlaps(const Bench& bench) {
    const Table table = arrange(bench);
    std::vector<Rect> frames;
    for (const Board& board : bench.boards) frames.push_back(board.frameMm());
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        if (standsOnTable(bench.parts[i])) frames.push_back(frameOf(table.parts[i]));
    }
    for (std::size_t i = 0; i < frames.size(); ++i) {
        for (std::size_t j = i + 1; j < frames.size(); ++j)
            EXPECT_FALSE(overlap(frames[i], frames[j])) << i << " " << j;
    }
}

TEST(Boxes, StandWhereAHandPutsThem) {
    const Bench bench = twoSuppliesAndAMeter();
    const Bench moved = afterBoxEdit(bench, moveBoxEdit(bench, "PS1", {60, -4}));
    const Rect frame = frameIn(arrange(moved), moved, "PS1");
    EXPECT_NEAR(frame.left, 60 * kPitchMm, 1e-9);
    EXPECT_NEAR(frame.top, -4 * kPitchMm, 1e-9);
    expectNothingOverlaps(moved);
}

TEST(Boxes, OthersStayWhereTheyAre) {
    const Bench bench = twoSuppliesAndAMeter();
    const Table before = arrange(bench);
    const Bench moved = afterBoxEdit(bench, moveBoxEdit(bench, "PS1", {10, 40}));
    const Table after = arrange(moved);
    EXPECT_NEAR(frameIn(after, moved, "PS2").left, frameIn(before, bench, "PS2").left, 1e-9);
    EXPECT_EQ(frameIn(after, moved, "M1"), frameIn(before, bench, "M1"));
    EXPECT_FALSE(moved.findPart("M1")->at) << "what finds the same place by itself goes on doing so";
}

TEST(Boxes, AreRefusedOverBoardsAndBoxesWithTheReason) {
    const Bench bench = twoSuppliesAndAMeter();
    EXPECT_EQ(moveBoxEdit(bench, "PS1", {3, 3}).error().message, "PS1 would stand on board A");
    const Rect meter = frameIn(arrange(bench), bench, "M1");
    const Point at{meter.left / kPitchMm + 2, meter.top / kPitchMm};
    EXPECT_EQ(moveBoxEdit(bench, "PS1", at).error().message, "PS1 would stand on M1");
}

TEST(Boxes, GoBackBesideTheBoards) {
    const Bench bench = twoSuppliesAndAMeter();
    const Bench moved = afterBoxEdit(bench, moveBoxEdit(bench, "M1", {0, 40}));
    const Bench home = afterBoxEdit(moved, boxHomeEdit(moved, "M1"));
    EXPECT_EQ(home, bench);
}

TEST(Boxes, TheOthersKeepClearOfThem) {
    Bench bench = twoSuppliesAndAMeter();
    const Rect meter = frameIn(arrange(bench), bench, "M1");
    Part block = makePart(*findKind("block-9v"), "BAT1");
    block.at = Point{meter.left / kPitchMm, meter.top / kPitchMm};
    bench.parts.push_back(block);  // the meter has no place of its own and makes room
    ASSERT_TRUE(apply(bench, {"", {}}).ok());
    expectNothingOverlaps(bench);
    const Bench more = afterBoxEdit(bench, dockBoardEdit(bench, *findBoardKind("full")));
    expectNothingOverlaps(more);
}

TEST(Boxes, SocketsLookAtTheBoards) {
    Bench bench = twoSuppliesAndAMeter();
    const auto exitsLookRight = [](const Table& table, int part) {
        const PartPlace& place = table.parts[static_cast<std::size_t>(part)];
        return place.exitsMm[0].x > place.pose.centre.x;
    };
    const Table usual = arrange(bench);
    EXPECT_TRUE(exitsLookRight(usual, 0)) << "a supply at the left";
    EXPECT_FALSE(exitsLookRight(usual, 2)) << "a meter at the right";
    bench.parts[0].at = Point{60, 40};
    bench.parts[2].at = Point{-60, 40};
    const Table changed = arrange(bench);
    EXPECT_FALSE(exitsLookRight(changed, 0)) << "a supply at the right";
    EXPECT_TRUE(exitsLookRight(changed, 2)) << "a meter at the left";
}

/// How much of a lead lies over boxes, in samples; over its own it may run in a band from its socket to the edge.
int samplesOverBoxes(const Bench& bench) {
    const Table table = arrange(bench);
    int over = 0;
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        const PartPlace& place = table.parts[i];
        for (std::size_t c = 0; c < 2 * place.cablesMm.size(); ++c) {
            const std::size_t lead = c / 2;
            const WireCurve& cable = c % 2 == 0 ? place.detoursMm[lead] : place.cablesMm[lead];
            for (std::size_t j = 0; j < bench.parts.size(); ++j) {
                if (!standsOnTable(bench.parts[j])) continue;
                for (int k = 0; k <= 200; ++k) {
                    const Point at = cable.at(k / 200.0);
                    if (frameOf(table.parts[j]).contains(at) &&
                        (i != j || std::abs(at.y - place.exitsMm[lead].y) > 4.5))
                        ++over;
                }
            }
        }
    }
    return over;
}

TEST(Boxes, LeadsRunRoundThem) {
    Bench bench = twoSuppliesAndAMeter();
    EXPECT_EQ(samplesOverBoxes(bench), 0) << "the second supply stands behind the first";
    const Point places[] = {{60, -4}, {0, 30}, {10, -30}, {-60, 10}, {50, 30}};
    for (const Point at : places) {
        const auto edit = moveBoxEdit(bench, "PS1", at);
        if (!edit) continue;
        const Bench moved = afterBoxEdit(bench, edit);
        EXPECT_EQ(samplesOverBoxes(moved), 0) << at.x << " " << at.y;
    }
}

TEST(Boxes, LooseLeadsEndBesideThem) {
    BenchBuilder builder;
    builder.board("A", "half");
    for (const char* id : {"M1", "M2", "M3"}) builder.part(id, "multimeter", {});
    const Bench bench = builder.build();
    const Table table = arrange(bench);
    for (const PartPlace& place : table.parts) {
        for (const Point tip : place.leadsMm) {
            for (const PartPlace& other : table.parts) EXPECT_FALSE(frameOf(other).contains(tip));
        }
    }
}

TEST(Boxes, LeadsGoNoFartherRoundThanTheyMust) {
    Bench bench = twoSuppliesAndAMeter();
    Part block = makePart(*findKind("block-9v"), "BAT1");
    block.at = Point{8, 26};  // far below; what goes round the first supply needn't go round this too
    bench.parts.push_back(block);
    EXPECT_EQ(samplesOverBoxes(bench), 0);
    const Table table = arrange(bench);
    const int second = bench.partIndex("PS2");
    for (std::size_t lead = 0; lead < 2; ++lead) {
        const WireCurve& detour = table.parts[static_cast<std::size_t>(second)].detoursMm[lead];
        EXPECT_LT(detour.d.y, frameIn(table, bench, "PS1").bottom() + 5);
    }
}

TEST(Boxes, TheFileKeepsTheirPlaces) {
    Bench bench = twoSuppliesAndAMeter();
    const std::string without = writeBench(bench);
    EXPECT_EQ(without.find("\"kind\": \"bench-supply\", \"at\""), std::string::npos) << "as it always was";
    bench.parts[0].at = Point{-40.5, 3};
    const std::string text = writeBench(bench);
    EXPECT_NE(text.find(R"("kind": "bench-supply", "at": [-40.5, 3])"), std::string::npos) << text;
    const auto read = readBench(text);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->bench, bench);
    EXPECT_EQ(writeBench(read->bench), text);
}

struct BadPlace {
    const char* part;
    const char* pointer;
    const char* words;
};

TEST(Boxes, WrongPlacesInAFileAreErrorsWithTheirPlace) {
    const BadPlace cases[] = {
        {R"({"id": "PS1", "kind": "bench-supply", "at": [0, 0]})", "/parts/0/at", "PS1 stands on board A"},
        {R"({"id": "PS1", "kind": "bench-supply", "at": [2e6, 0]})", "/parts/0/at", "off the table"},
        {R"({"id": "PS1", "kind": "bench-supply", "at": [1]})", "/parts/0/at", "takes two"},
        {R"({"id": "PS1", "kind": "bench-supply", "at": "A.a1"})", "/parts/0/at", "a list of two numbers"},
        {R"({"id": "PS1", "kind": "bench-supply", "at": [90, 0]}, {"id": "M1", "kind": "multimeter", "at": [91, 2]})",
         "/parts/1/at", "M1 stands on PS1"},
    };
    for (const BadPlace& each : cases) {
        const auto read = readBench(
            std::string(R"({"format": "tiepoint-bench", "version": 1, "title": "x", "boards":)") +
            R"( [{"id": "A", "kind": "half", "at": [0, 0]}], "parts": [)" + each.part + R"(], "jumpers": []})");
        ASSERT_FALSE(read.ok()) << each.part;
        EXPECT_EQ(read.error().place.pointer, each.pointer) << each.part;
        EXPECT_NE(read.error().message.find(each.words), std::string::npos) << read.error().message;
    }
}

TEST(Boxes, PartsInHolesHaveNoSuchPlace) {
    const auto read = readBench(
        R"({"format": "tiepoint-bench", "version": 1, "title": "x", "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],)"
        R"( "parts": [{"id": "R1", "kind": "resistor", "at": [50, 0], "leads": {"1": "A.a1", "2": "A.a6"}}], "jumpers": []})");
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_FALSE(read->bench.parts[0].at);
    EXPECT_EQ(read->warnings.size(), 1u) << "kept, and warned about";
    Bench bench = read->bench;
    bench.parts[0].at = Point{50, 0};
    EXPECT_FALSE(apply(bench, {"", {}}).ok());
}

TEST(Boxes, ManyOnOneTableAreLaidOutInTime) {
    BenchBuilder builder;
    builder.board("A", "half");
    Bench bench = builder.build();
    for (int i = 0; i < 2000; ++i) {
        bench.parts.push_back(makePart(*findKind("usb-supply"), "X" + std::to_string(i)));
        if (i % 2 == 0) bench.parts.back().at = Point{-30.0 - 30 * i, 0};
    }
    const Table table = arrange(bench);  // half of them find their place between those that were put somewhere
    EXPECT_EQ(table.parts.size(), 2000u);
}

}  // namespace
}  // namespace tiepoint
