#include "core/compare/other_circuits.h"

#include "core/base/stopping.h"
#include "core/hunt/draws.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"
#include "core/slips/slip.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// A slip that may be drawn, and how far it is from what learners look for.
struct Drawable {
    std::shared_ptr<const Bench> bench;
    Netlist circuit;
    const SlipKind* kind = nullptr;
    int hanging = 0;
};

Netlist circuitOf(const std::shared_ptr<const Bench>& bench) { return netlistOf(*buildLayout(bench)); }

int hangingLeads(const Netlist& circuit) {
    int hanging = 0;
    for (const auto& leads : circuit.leads) hanging += static_cast<int>(std::ranges::count(leads, -1));
    return hanging;
}

/// Neither the order in a chain, nor where switches stand, nor what no current passes makes another circuit.
bool isSameCircuit(const Netlist& one, const Netlist& other) {
    Likeness likeness;
    likeness.states = false;
    likeness.unusedParts = false;
    likeness.seriesOrder = false;
    return compareCircuits(one, other, likeness).verdict != Verdict::Different;
}

/// Settings and what is broken inside aren't drawn as lines.
bool joinsOtherwise(const Slip& slip) {
    const BenchChange& change = slip.wrong;
    return !slip.kind->hidden && change.figures.empty() && change.conditions.empty() && change.rails.empty();
}

std::vector<Drawable> drawables(const std::shared_ptr<const Bench>& bench, const Netlist& right, SeededDraws& draws) {
    constexpr std::size_t kMostSlips = 400, kMostKept = 40;
    std::vector<Slip> all = allSlips(Ground(buildLayout(bench)), kMostSlips);
    draws.shuffle(all);
    std::vector<Drawable> found;
    for (const Slip& slip : all) {
        stopIfAsked();
        if (found.size() >= kMostKept) break;
        if (!joinsOtherwise(slip)) continue;
        auto applied = apply(*bench, editOf(*bench, slip));
        if (!applied) continue;
        auto wrong = std::make_shared<const Bench>(std::move(applied).value().bench);
        Netlist circuit = circuitOf(wrong);
        if (isSameCircuit(circuit, right)) continue;
        const int hanging = hangingLeads(circuit);
        found.push_back({std::move(wrong), std::move(circuit), slip.kind, hanging});
    }
    std::ranges::stable_sort(found, {}, &Drawable::hanging);
    return found;
}

}  // namespace

std::vector<std::shared_ptr<const Bench>> otherCircuits(std::shared_ptr<const Bench> bench, int count,
                                                        std::uint64_t seed) {
    SeededDraws draws(seed);
    const Netlist right = circuitOf(bench);
    const std::vector<Drawable> found = drawables(bench, right, draws);
    std::vector<const Drawable*> chosen;
    // Slips of different kinds first.
    for (const bool anyKind : {false, true}) {
        for (const Drawable& each : found) {
            if (std::ssize(chosen) >= count) break;
            const bool known = std::ranges::any_of(chosen, [&](const Drawable* other) {
                return (!anyKind && other->kind == each.kind) || isSameCircuit(other->circuit, each.circuit);
            });
            if (!known) chosen.push_back(&each);
        }
    }
    std::vector<std::shared_ptr<const Bench>> benches;
    for (const Drawable* each : chosen) benches.push_back(each->bench);
    return benches;
}

CircuitChoice circuitChoice(std::shared_ptr<const Bench> bench, int count, int right, std::uint64_t seed) {
    CircuitChoice choice;
    choice.benches = otherCircuits(bench, count - 1, seed);
    choice.right = std::min(right, static_cast<int>(choice.benches.size()));
    choice.benches.insert(choice.benches.begin() + choice.right, std::move(bench));
    return choice;
}

}  // namespace tiepoint
