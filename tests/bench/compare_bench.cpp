// Two benches of 50 parts compared, from the benches on: circuits, differences in words and behaviour in all positions of eight buttons. The same
// bench listed backwards, one value changed, one LED turned round.

#include "bench/full_boards.h"
#include "bench/stopwatch.h"
#include "core/compare/comparison.h"

#include <algorithm>
#include <cstdio>

namespace tiepoint::test {
namespace {

int run() {
    const auto target = std::make_shared<const Bench>(crowdedBoards(1, kFullBoard));
    auto backwards = std::make_shared<Bench>(*target), valued = std::make_shared<Bench>(*target),
         turned = std::make_shared<Bench>(*target);
    std::ranges::reverse(backwards->parts);
    std::ranges::reverse(backwards->jumpers);
    valued->parts[1].values[0] = 4700;
    std::swap(turned->parts[2].leads[0], turned->parts[2].leads[1]);
    std::printf("%zu parts, %zu jumpers\n", target->parts.size(), target->jumpers.size());
    const ComparisonTarget prepared(target);
    bool right = true;
    const auto compareWith = [&](const std::shared_ptr<const Bench>& mine, bool same) {
        const auto compared = compareBenches(mine, prepared);
        right = right && compared.ok() && compared->sameCircuit == same && compared->sameBehaviour == same;
        keep(right);
    };
    SideBySide race;
    race.add("the same", [&] { compareWith(backwards, true); });
    race.add("one value otherwise", [&] { compareWith(valued, false); });
    race.add("one LED turned round", [&] { compareWith(turned, false); });
    const auto seconds = race.run();
    Gate gate;
    gate.atLeast("verdicts as they should be (1: yes)", right, 1);
    gate.atMost("ms for two benches of 50 parts that are the same", seconds[0] * 1e3, 5);
    return gate.exitCode();
}

}  // namespace
}  // namespace tiepoint::test

int main() { return tiepoint::test::run(); }
