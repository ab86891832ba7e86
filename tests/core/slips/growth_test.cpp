// How the search grows with the bench, counted in what it looks at, not in time; and that it stops when asked.

#include "core/base/stopping.h"
#include "core/bench/validate.h"
#include "slip_benches.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <stop_token>

namespace tiepoint::test {
namespace {

/// Quay lamps side by side on as many full boards as they need, one supply for all: a resistor, a button and a light each, from rail to rail;
/// each lamp of a board is joined with the next by a resistor across, so that there are loops.
Bench quayLamps(int parts) {
    constexpr int kPartsOfLamp = 4, kLampsOfBoard = 5, kColumns = 12, kBoardPitches = 30;
    const int lamps = (parts + kPartsOfLamp - 1) / kPartsOfLamp;
    BenchBuilder builder;
    const int boards = (lamps + kLampsOfBoard - 1) / kLampsOfBoard;
    for (int b = 0; b < boards; ++b) builder.board(fmt::format("B{}", b), "full", 0, b * kBoardPitches);
    builder.part("PS1", "bench-supply", {{"+", "B0.top+1"}, {"-", "B0.bottom-1"}}, {{"voltage", 5}});
    for (int b = 1; b < boards; ++b) {
        builder.jumper(fmt::format("B{}.top+50", b - 1), fmt::format("B{}.top+49", b));
        builder.jumper(fmt::format("B{}.bottom-50", b - 1), fmt::format("B{}.bottom-49", b));
    }
    for (int lamp = 0; lamp < lamps; ++lamp) {
        const std::string board = fmt::format("B{}.", lamp / kLampsOfBoard);
        const int place = lamp % kLampsOfBoard, column = 2 + kColumns * place;
        const auto at = [&](const char* row, int offset) { return fmt::format("{}{}{}", board, row, column + offset); };
        const auto rail = [&](const char* name) { return fmt::format("{}{}{}", board, name, 2 + 10 * place); };
        builder.part(fmt::format("R{}", lamp), "resistor", {{"1", at("c", 0)}, {"2", at("c", 4)}});
        builder.part(fmt::format("S{}", lamp), "push-button",
                     {{"1a", at("e", 4)}, {"1b", at("f", 4)}, {"2a", at("e", 6)}, {"2b", at("f", 6)}});
        builder.part(fmt::format("D{}", lamp), "led", {{"anode", at("h", 6)}, {"cathode", at("h", 9)}});
        if (place + 1 < kLampsOfBoard && lamp + 1 < lamps)
            builder.part(fmt::format("RX{}", lamp), "resistor", {{"1", at("b", 4)}, {"2", at("d", 16)}},
                         {{"resistance", 10000}});
        builder.jumper(rail("top+"), at("a", 0));
        builder.jumper(at("j", 9), rail("bottom-"));
    }
    return builder.build();
}

double perNLogN(std::size_t count, int parts) {
    return static_cast<double>(count) / (parts * std::log(static_cast<double>(parts)));
}

TEST(SlipGrowth, IsNoFasterThanNLogN) {
    struct Counted {
        int parts;
        double slips, work, mends, mendWork;
    };
    std::vector<Counted> all;
    for (const int parts : {10, 100, 1000}) {
        const Bench bench = quayLamps(parts);
        const auto valid = validate(bench);
        ASSERT_TRUE(valid) << valid.error().message;
        const Ground ground(laidOut(bench));
        constexpr std::size_t kAll = 1'000'000;
        const std::size_t slips = allSlips(ground, kAll).size();
        const std::size_t work = ground.work();
        const std::size_t mends = allMends(ground, {}, kAll).size();
        const std::size_t mendWork = ground.work() - work;
        std::printf("%5d parts: %6zu slips, work %8zu; %6zu mends, work %8zu\n", parts, slips, work, mends, mendWork);
        all.push_back(
            {parts, perNLogN(slips, parts), perNLogN(work, parts), perNLogN(mends, parts), perNLogN(mendWork, parts)});
    }
    for (std::size_t i = 1; i < all.size(); ++i) {
        constexpr double kRoom = 1.5;
        EXPECT_LE(all[i].slips, kRoom * all[i - 1].slips) << all[i].parts;
        EXPECT_LE(all[i].work, kRoom * all[i - 1].work) << all[i].parts;
        EXPECT_LE(all[i].mends, kRoom * all[i - 1].mends) << all[i].parts;
        EXPECT_LE(all[i].mendWork, kRoom * all[i - 1].mendWork) << all[i].parts;
    }
}

TEST(SlipGrowth, OneSymptomCostsTheSameOnAnyBench) {
    std::vector<std::size_t> work;
    for (const int parts : {100, 1000}) {
        const Ground ground(laidOut(quayLamps(parts)));
        const auto found = allMends(ground, Symptom{{"D3"}}, 200);
        EXPECT_EQ(found.size(), 200u);
        work.push_back(ground.work());
        std::printf("%5d parts: work %8zu\n", parts, work.back());
    }
    EXPECT_LE(work[1], 2 * work[0]);
}

TEST(SlipGrowth, StopsWhenAsked) {
    const Ground ground(laidOut(quayLamps(100)));
    std::stop_source source;
    source.request_stop();
    const StopScope scope(source.get_token());
    EXPECT_THROW(static_cast<void>(allSlips(ground, 1000)), Stopped);
    EXPECT_THROW(static_cast<void>(allMends(ground, Symptom{{"D3"}}, 200)), Stopped);
    for (const SlipKind* kind : slipKinds()) {
        if (kind->name == "rail-halves" || kind->name == "rails-apart" || kind->name == "wrong-socket") continue;
        EXPECT_THROW(static_cast<void>(slips(*kind, ground)), Stopped) << kind->name;
    }
}

}  // namespace
}  // namespace tiepoint::test
