// A whole part in a wrong place, or the wrong way round.
#include "core/edit/placement.h"
#include "examiner/hands.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint::examiner {
namespace {

using Maybe = std::optional<Slip>;

bool isPolar(const PartKind& kind) { return kind.leadIndex("anode") >= 0; }

Maybe wholeShifted(const Bench& bench, Chance& chance) {
    const auto part =
        pick(bench.parts, chance, [](const Part& each) { return each.kind->package->reach != Reach::Flying; });
    if (!part) return {};
    const int columns = (chance.happens(0.75) ? 1 : 2) * (chance.happens(0.5) ? 1 : -1);
    const auto moved = shifted(bench, *part, columns, 0);
    if (!moved) return {};
    return changedPart(bench, *moved, fmt::format("{} shifted by {} columns", part->id, columns));
}

Maybe jumperShifted(const Bench& bench, Chance& chance) {
    if (bench.jumpers.empty()) return {};
    const Jumper& jumper = chance.oneOf(bench.jumpers);
    const auto moved = shifted(bench, jumper, chance.happens(0.5) ? 1 : -1, 0);
    if (!moved) return {};
    Slip slip;
    slip.words = jumper.id + " shifted";
    slip.things = {jumper.id};
    slip.bench = bench;
    for (const Jumper* each : {&jumper, &*moved}) {
        for (const JumperEnd& end : each->ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) slip.holes.push_back(*hole);
        }
    }
    slip.bench.jumpers[bench.jumperIndex(jumper.id)] = *moved;
    return slip;
}

Maybe reversedPart(const Bench& bench, Chance& chance) {
    auto part = pick(bench.parts, chance, [](const Part& each) { return isPolar(*each.kind); });
    if (!part) return {};
    std::swap(part->leads[0], part->leads[1]);
    return changedPart(bench, *part, part->id + " reversed");
}

Maybe flyingReversed(const Bench& bench, Chance& chance, bool supply) {
    auto part = pick(bench.parts, chance, [supply](const Part& each) {
        return each.kind->package->reach == Reach::Flying && !each.kind->leads[0].socket &&
               each.kind->isSupply == supply;
    });
    if (!part) return {};
    std::swap(part->leads[0], part->leads[1]);
    return changedPart(bench, *part, part->id + "'s leads exchanged");
}

Maybe buttonTurned(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) { return each.kind->name == "push-button"; });
    if (!part) return {};
    const Part after = turned(bench, *part, chance.happens(0.5) ? 1 : 3);
    if (std::ranges::any_of(after.leads, [](const auto& lead) { return !lead; })) return {};
    return changedPart(bench, after, part->id + " turned by a quarter");
}

Maybe outerPins(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) { return each.kind->name == "slide-switch"; });
    if (!part || !part->leads[1]) return {};
    // What should meet the middle leg goes to an outer one with nothing else in its strip, or changes places with what is there.
    const int outer = chance.happens(0.5) ? 0 : 2;
    const auto onMiddle = othersIn(bench, *part->leads[1], part->id),
               onOuter = othersIn(bench, *part->leads[outer], part->id);
    if (onMiddle.size() != 1 || onOuter.size() > 1) return {};
    const auto to = besideIn(bench, *part->leads[outer], chance);
    if (!to) return {};
    Slip slip = movedPin(bench, onMiddle[0], *to);
    if (!onOuter.empty()) {
        slip = movedPin(bench, onMiddle[0], onOuter[0].hole);
        put(slip.bench, onOuter[0], onMiddle[0].hole);
        slip.things.push_back(onOuter[0].id);
    }
    slip.things.push_back(part->id);
    slip.words += ", " + part->id + " by its outer pins";
    return slip;
}

}  // namespace

std::vector<SlipKind> partSlips() {
    return {
        {"part shifted", 5, wholeShifted},
        {"jumper shifted", 1.5, jumperShifted},
        {"part reversed", 7, reversedPart},
        {"supply reversed", 2, [](const Bench& bench, Chance& chance) { return flyingReversed(bench, chance, true); }},
        {"meter's sockets", 1.5,
         [](const Bench& bench, Chance& chance) { return flyingReversed(bench, chance, false); }},
        {"button turned", 4, buttonTurned},
        {"outer pins", 2.5, outerPins},
    };
}

}  // namespace tiepoint::examiner
