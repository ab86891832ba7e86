// How the planner does on random circuits that it has never seen: planner_bench [COUNT [SEED]]. Each of 2 to 40 parts is laid on a board of a form by
// chance, and built: the same circuit again, nothing over anything else, no more than 10 s. Prints what isn't, and figures of all.

#include "core/edit/clashes.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"
#include "core/planner/planner.h"
#include "support/random_circuits.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

namespace {

using namespace tiepoint;

struct Tried {
    int parts = 0, jumpers = 0;
    double seconds = 0, wireMm = 0;
    std::string wrong;
};

Tried tryOne(test::RandomCircuits& random) {
    Tried tried;
    tried.parts = 2 + random.below(39);
    const Netlist circuit = random.tame(tried.parts);
    PlanWish wish;
    constexpr int kMostOnHalf = 14;
    wish.board = findBoardKind(tried.parts > kMostOnHalf ? "full" : "half");
    wish.rails = random.below(2) ? Rails::Split : Rails::Through;
    wish.labels = random.below(2) ? Labels::ABottom : Labels::ATop;
    const auto begin = std::chrono::steady_clock::now();
    const Plan plan = planBench(circuit, wish);
    tried.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    const JumperBill bill = jumperBill(plan.bench);
    tried.jumpers = bill.count, tried.wireMm = bill.lengthMm;
    if (!plan.isWhole()) {
        tried.wrong = plan.unplaced.front().part + ": " + plan.unplaced.front().why;
    } else if (!Occupancy(plan.bench).all().empty()) {
        tried.wrong = "things lie over each other";
    } else if (compareCircuits(circuit, netlistOf(*buildLayout(std::make_shared<const Bench>(plan.bench)))).verdict !=
               Verdict::Equal) {
        tried.wrong = "another circuit";
    }
    return tried;
}

}  // namespace

int main(int count, char** words) {
    const int circuits = count > 1 ? std::atoi(words[1]) : 200;
    const unsigned seed = count > 2 ? static_cast<unsigned>(std::atoi(words[2])) : 1;
    test::RandomCircuits random(seed);
    std::vector<double> seconds;
    int built = 0;
    double jumpers = 0, wire = 0, parts = 0;
    for (int i = 0; i < circuits; ++i) {
        const Tried tried = tryOne(random);
        seconds.push_back(tried.seconds);
        if (tried.wrong.empty())
            ++built;
        else
            fmt::print("circuit {}, {} parts: {} ({:.1f} s)\n", i, tried.parts, tried.wrong, tried.seconds);
        jumpers += tried.jumpers, wire += tried.wireMm, parts += tried.parts;
        std::fflush(stdout);
    }
    std::ranges::sort(seconds);
    fmt::print("{} of {} built; {:.2f} jumpers and {:.0f} mm of wire a part; seconds: median {:.2f}, longest {:.2f}\n",
               built, circuits, jumpers / parts, wire / parts, seconds[seconds.size() / 2], seconds.back());
    return built == circuits ? 0 : 1;
}
