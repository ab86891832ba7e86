// Opening a file: from its text to the first live snapshot (read, laid out, solved, currents of all metal). A bench of 100 parts on
// a full board must be live within 50 ms, and a file of 10,000 parts on many boards within 1 s. Times are of this process; other
// programs' don't count.

#include "bench/stopwatch.h"
#include "core/bench/bench_file.h"
#include "core/snapshot/runner.h"
#include "support/build_bench.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <memory>

namespace tiepoint::test {
namespace {

/// Boards like a quay of signal lamps: a resistor and a light in a row, again and again over the columns of both halves, fed from the
/// rails by jumpers. Boards hang together by their rails.
constexpr int kRowsOfBoard = 24;  // rows of lights on one board, twelve in each half
constexpr int kPartsOfRow = 2;
constexpr double kBoardPitches = 30;  // from board to board

void addRow(Bench& bench, const std::string& board, int row, int number) {
    constexpr int kColumnsOfRow = 5;
    const bool upper = row % 2 == 0;
    const int column = 1 + row / 2 * kColumnsOfRow;
    const auto hole = [&](Line line, int n) { return Hole{board, line, n}; };
    const Line parts = upper ? Line::C : Line::H, wires = upper ? Line::A : Line::J;
    const Line plus = upper ? Line::TopPlus : Line::BottomPlus, minus = upper ? Line::TopMinus : Line::BottomMinus;

    Part resistor = makePart(*findKind("resistor"), fmt::format("R{}", number));
    resistor.leads = {hole(parts, column), hole(parts, column + 3)};
    resistor.values[resistor.kind->valueIndex("resistance")] = 220 + number % 7 * 100;
    Part light = makePart(*findKind("led"), fmt::format("D{}", number));
    light.leads = {hole(upper ? Line::E : Line::F, column + 3), hole(upper ? Line::E : Line::F, column + 4)};
    light.values[light.kind->valueIndex("colour")] = number % 8;
    bench.parts.push_back(std::move(resistor));
    bench.parts.push_back(std::move(light));
    bench.jumpers.push_back({fmt::format("W{}a", number), {hole(plus, 3 + row), hole(wires, column)}, 0, false, {}});
    bench.jumpers.push_back(
        {fmt::format("W{}b", number), {hole(minus, 3 + row), hole(wires, column + 4)}, 1, false, {}});
}

/// Joins the rails of a board to each other, and to those of the board above.
void joinRails(Bench& bench, int b) {
    const auto id = [](int n) { return fmt::format("Board{}", n); };
    const auto join = [&](const char* name, Hole from, Hole to) {
        bench.jumpers.push_back({fmt::format("V{}{}", b, name), {std::move(from), std::move(to)}, 2, false, {}});
    };
    join("p", {id(b), Line::TopPlus, 1}, {id(b), Line::BottomPlus, 1});
    join("m", {id(b), Line::TopMinus, 50}, {id(b), Line::BottomMinus, 50});
    if (b == 0) return;
    join("q", {id(b - 1), Line::BottomPlus, 50}, {id(b), Line::TopPlus, 50});
    join("n", {id(b - 1), Line::BottomMinus, 1}, {id(b), Line::TopMinus, 1});
}

/// Each board with its own supply, or all on the first one's.
std::string fileOf(int parts, bool ownSupplies) {
    Bench bench;
    bench.title = "Quay of signal lamps";
    for (int b = 0, number = 0; number * kPartsOfRow < parts; ++b) {
        Board board;
        board.id = fmt::format("Board{}", b);
        board.kind = findBoardKind("full");
        board.atY = b * kBoardPitches;
        bench.boards.push_back(board);
        if (ownSupplies || b == 0) {
            Part supply = makePart(*findKind("bench-supply"), fmt::format("PS{}", b + 1));
            supply.leads = {Hole{board.id, Line::TopPlus, 2}, Hole{board.id, Line::TopMinus, 2}};
            supply.values[supply.kind->valueIndex("currentLimit")] = 30;
            bench.parts.push_back(std::move(supply));
        }
        for (int row = 0; row < kRowsOfBoard && number * kPartsOfRow < parts; ++row)
            addRow(bench, board.id, row, number++);
        joinRails(bench, b);
        if (ownSupplies && b > 0) bench.jumpers.resize(bench.jumpers.size() - 2);  // boards stand alone
    }
    return writeBench(bench);
}

struct Stages {
    double read = 0, layout = 0, solve = 0;
    double whole() const { return read + layout + solve; }
};

/// One opening, stage by stage; ends the program if the file isn't what it should be.
Stages open(const std::string& text) {
    Stages stages;
    const auto timed = [](double& seconds, auto work) {
        const double start = bench::threadSecond();
        auto result = work();
        seconds = bench::threadSecond() - start;
        return result;
    };
    auto file = timed(stages.read, [&] { return readBench(text); });
    if (!file.ok()) {
        std::printf("FAIL %s\n", file.error().oneLine().c_str());
        std::exit(1);
    }
    const auto shared = std::make_shared<const Bench>(std::move(file.value().bench));
    const auto layout = timed(stages.layout, [&] { return buildLayout(shared); });
    const auto runner = makeRestingRunner();
    const auto snapshot = timed(stages.solve, [&] {
        runner->setBench(1, shared);
        return runner->snapshot();
    });
    stages.solve -= stages.layout;  // the runner lays out again
    if (snapshot->status() != Status::Solved) {
        std::printf("FAIL no solution: %s\n", snapshot->solution.reason.c_str());
        std::exit(1);
    }
    return stages;
}

void judge(Gate& gate, const char* name, const std::string& text, double barSecond) {
    constexpr int kRepeats = 5;
    std::vector<Stages> all;
    for (int i = 0; i < kRepeats; ++i) all.push_back(open(text));
    std::nth_element(all.begin(), all.begin() + kRepeats / 2, all.end(),
                     [](const Stages& a, const Stages& b) { return a.whole() < b.whole(); });
    const Stages& s = all[kRepeats / 2];
    constexpr double kMs = 1e3;
    std::printf("%s, %zu bytes: read %.2f, lay out %.2f, solve and share currents %.2f ms\n", name, text.size(),
                s.read * kMs, s.layout * kMs, s.solve * kMs);
    gate.atMost(fmt::format("s from text to live: {}", name).c_str(), s.whole(), barSecond);
}

int run() {
    Gate gate;
    catalogue();  // read once by every program, before any file
    judge(gate, "100 parts", fileOf(100, false), 0.050);
    judge(gate, "10,000 parts, boards with their own supplies", fileOf(10000, true), 1);
    judge(gate, "10,000 parts, all boards on one supply", fileOf(10000, false), 1);
    return gate.exitCode();
}

}  // namespace
}  // namespace tiepoint::test

int main() { return tiepoint::test::run(); }
