#include "core/findings/positions.h"

#include "core/behaviour/position_plan.h"
#include "core/behaviour/position_solver.h"
#include "core/behaviour/switch_groups.h"
#include "core/snapshot/lit.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {

std::string positionWords(const std::vector<Throw>& all, const Bench& bench, const Digits& digits, const Digits& now) {
    if (digits == now) return {};
    std::vector<std::string> pressed, released, thrown;
    for (std::size_t t = 0; t < all.size(); ++t) {
        const Part& part = bench.parts[all[t].part];
        if (!all[t].isCap()) {
            if (digits[t] == now[t]) continue;
            thrown.push_back(say("finding.position.with",
                                 {{"part", part.id}, {"position", positionInWords(all[t], bench, digits[t])}}));
        } else if (digits[t] != 0) {
            pressed.push_back(part.id);
        } else if (now[t] != 0) {
            released.push_back(part.id);
        }
    }
    if (!pressed.empty()) {
        thrown.push_back(
            say("finding.position.pressed", {{"buttons", sayList(pressed, "list.and")}, {"count", pressed.size()}}));
    } else if (!released.empty()) {
        thrown.push_back(say("finding.position.released", {{"buttons", sayList(released, "list.and")}}));
    }
    return sayList(thrown, "list.and");
}

std::optional<std::string> positionThatLights(const std::shared_ptr<const Bench>& bench, const Inputs& inputs,
                                              int light) {
    const auto shines = [light](const Snapshot& snapshot) {
        return snapshot.status() == Status::Solved && isLit(snapshot, light);
    };
    const auto now = evaluate(bench, inputs);
    if (shines(*now)) return std::string();
    PositionSolver solver(now->layout);
    const auto& all = solver.throws();
    const std::vector<int> circuits = circuitsOf(*now->layout);
    ControlGroup felt;
    for (std::size_t t = 0; t < all.size(); ++t) {
        if (circuits[all[t].part] == circuits[light]) felt.push_back(t);
    }
    if (felt.empty()) return std::nullopt;
    const Digits present = digitsOf(all, *bench, inputs);
    const PositionPlan plan = planGroup(all, felt, present);
    const auto lit =
        std::ranges::find_if(plan.others, [&](const Digits& digits) { return shines(*solver.solve(digits)); });
    if (lit == plan.others.end()) return std::nullopt;
    return positionWords(all, *bench, *lit, present);
}

}  // namespace tiepoint
