#include "core/behaviour/behaviour.h"

#include "core/behaviour/position_plan.h"
#include "core/behaviour/position_solver.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/settled_snapshot.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tiepoint {
namespace {

std::vector<int> lightsOf(const Bench& bench) {
    std::vector<int> lights;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part)
        if (bench.parts[part].kind->emitsLight) lights.push_back(part);
    return lights;
}

constexpr double kFastestBlinkSecond = 1.0 / 30;  ///< faster ones are seen as steady light (common practice)

Glow glowOf(const Snapshot& snapshot, int light) {
    if (isUndecided(snapshot)) return Glow::Open;
    if (!isRepeating(snapshot) || snapshot.settled->periodSecond < kFastestBlinkSecond) return Glow::Steady;
    double least = 0, most = 0;
    const Layout& layout = *snapshot.layout;
    for (int lead = layout.firstLead[light]; lead < layout.firstLead[light + 1]; ++lead) {
        least = std::max(least, snapshot.settled->leadAmpere[lead].lastingLeast);
        most = std::max(most, snapshot.settled->leadAmpere[lead].lastingGreatest);
    }
    return least < kVisibleAmpere && most >= kVisibleAmpere ? Glow::Blinks : Glow::Steady;
}

BehaviourRow rowIn(Digits digits, const Snapshot& snapshot, const std::vector<int>& lights) {
    BehaviourRow row;
    row.digits = std::move(digits);
    row.status = snapshot.status();
    row.limiting = std::ranges::any_of(snapshot.solution.elementLimiting, [](char each) { return each != 0; });
    row.elementAmpere = snapshot.solution.elementAmpere;
    const auto parts = snapshot.layout->bench->parts.size();
    for (int part = 0; part < static_cast<int>(parts); ++part)
        row.partAmpere.push_back(currentThrough(snapshot, part).inAmpere);
    if (isRepeating(snapshot)) row.periodSecond = snapshot.settled->periodSecond;
    for (const int light : lights) {
        LightSeen seen;
        if (row.status == Status::Solved)
            seen = {row.partAmpere[light], snapshot.brightness(light), isLit(snapshot, light), glowOf(snapshot, light)};
        row.lights.push_back(seen);
    }
    return row;
}

/// Fills a row; the elements are the same in all.
void addFigures(Behaviour& behaviour, BehaviourRow& row, Digits digits, const Snapshot& snapshot) {
    row = rowIn(std::move(digits), snapshot, behaviour.lights);
    if (!behaviour.partOfElement.empty() || !snapshot.solution.places) return;
    for (const ElementPlace& place : *snapshot.solution.places) behaviour.partOfElement.push_back(place.part);
}

/// A table without rows.
Behaviour tableFor(std::shared_ptr<const Layout> layout, std::vector<Throw> controls) {
    Behaviour behaviour;
    behaviour.layout = std::move(layout);
    behaviour.controls = std::move(controls);
    behaviour.lights = lightsOf(*behaviour.layout->bench);
    return behaviour;
}

std::vector<Throw> controlsOf(const Bench& bench, Controls wanted) {
    std::vector<Throw> controls = throwsOf(bench);
    if (wanted == Controls::Switches) return controls;
    const std::vector<Throw> knobs = knobsOf(bench);
    controls.insert(controls.end(), knobs.begin(), knobs.end());
    return controls;
}

/// The order in which positions are solved: those that differ only in caps one after the other, since they share a prepared circuit.
std::vector<std::size_t> orderOfSolving(const std::vector<Throw>& controls, const std::vector<Digits>& positions) {
    std::vector<std::size_t> order(positions.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t position) {
        Digits states = positions[position];
        for (std::size_t c = 0; c < states.size(); ++c)
            if (controls[c].isCap()) states[c] = 0;
        return states;
    });
    return order;
}

}  // namespace

const BehaviourRow* Behaviour::row(const Digits& digits) const {
    const auto found = std::ranges::find(rows, digits, &BehaviourRow::digits);
    return found == rows.end() ? nullptr : &*found;
}

std::vector<std::string> Behaviour::untriedParts() const {
    std::vector<std::string> ids;
    for (const std::size_t control : untried) {
        const std::string& id = layout->bench->parts[controls[control].part].id;
        if (std::ranges::find(ids, id) == ids.end()) ids.push_back(id);
    }
    return ids;
}

Behaviour behaviourAround(std::shared_ptr<const Snapshot> now, Controls controls) {
    now = settledOf(std::move(now));
    const Bench& bench = *now->layout->bench;
    Behaviour behaviour = tableFor(now->layout, controlsOf(bench, controls));
    PositionSolver solver(now->layout, behaviour.controls);
    const Digits present = digitsOf(behaviour.controls, bench, *now->inputs);
    PositionPlan plan = planPositions(*now->layout, behaviour.controls, present);
    behaviour.untried = std::move(plan.untried);
    const auto add = [&](Digits digits, std::shared_ptr<const Snapshot> snapshot) {
        BehaviourRow& row = behaviour.rows.emplace_back();
        addFigures(behaviour, row, std::move(digits), *snapshot);
        row.snapshot = std::move(snapshot);
    };
    const std::shared_ptr<const Settled> settled = now->settled;
    add(present, std::move(now));
    for (Digits& each : plan.others) {
        auto snapshot = solver.solve(each, settled ? settled->state : State());
        std::shared_ptr<const Snapshot> back;
        if (snapshot->settled && throwsApart(each, present) == 1)
            back = solver.solve(present, snapshot->settled->state);
        add(std::move(each), std::move(snapshot));
        behaviour.rows.back().back = std::move(back);
    }
    return behaviour;
}

Behaviour behaviourInFull(std::shared_ptr<const Layout> layout) {
    Behaviour behaviour = tableFor(layout, throwsOf(*layout->bench));
    PositionSolver solver(std::move(layout), behaviour.controls);
    std::vector<Digits> positions = everyPosition(behaviour.controls);
    behaviour.rows.resize(positions.size());
    for (const std::size_t position : orderOfSolving(behaviour.controls, positions)) {
        const auto snapshot = solver.solve(positions[position]);
        addFigures(behaviour, behaviour.rows[position], std::move(positions[position]), *snapshot);
    }
    return behaviour;
}

}  // namespace tiepoint
