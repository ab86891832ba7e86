#include "core/planner/kit_wish.h"

#include "core/bench/natural_order.h"
#include "core/bench/resolve.h"
#include "core/course/fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

namespace tiepoint {

PlanWish wishFor(const Kit& kit) {
    PlanWish wish;
    wish.kit = &kit;
    wish.board = kit.board ? kit.board : findBoardKind("half");
    if (kit.board) wish.rails = kit.rails, wish.labels = kit.labels;
    return wish;
}

std::vector<Unplaced> beyondKit(const Kit& kit, const Netlist& circuit) {
    std::vector<int> order(circuit.parts.size());
    std::iota(order.begin(), order.end(), 0);
    std::ranges::sort(order, [&](int a, int b) { return naturalLess(circuit.parts[a].id, circuit.parts[b].id); });
    std::vector<Unplaced> beyond;
    std::vector<std::pair<const Part*, int>> taken;  // of each that is the same in a drawer
    int meters = 0;
    for (const int index : order) {
        const Part& part = circuit.parts[index];
        if (part.kind->isSupply) {
            if (!hasPart(kit, part))
                beyond.push_back({part.id, fmt::format("the kit's supply isn't a {}", part.kind->label)});
            continue;
        }
        int there = 0, used = 0;
        if (packageOf(part).reach == Reach::Flying) {
            there = kit.meters, used = ++meters;
        } else {
            for (const KitPart& each : kit.parts) there += isSameInDrawer(each.part, part) ? each.count : 0;
            const auto same =
                std::ranges::find_if(taken, [&](const auto& pair) { return isSameInDrawer(*pair.first, part); });
            if (same == taken.end()) {
                taken.emplace_back(&part, used = 1);
            } else {
                used = ++same->second;
            }
        }
        if (used <= there) continue;
        beyond.push_back({part.id, there == 0 ? fmt::format("the kit has no {}", askedFor(part))
                                              : fmt::format("of {} the kit has only {}", askedFor(part), there)});
    }
    return beyond;
}

}  // namespace tiepoint
