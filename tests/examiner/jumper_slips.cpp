// Jumpers forgotten, too many, or that rails lack.
#include "examiner/hands.h"

#include <algorithm>

namespace tiepoint::examiner {
namespace {

using Maybe = std::optional<Slip>;

bool isRailEnd(const JumperEnd& end) {
    const Hole* hole = std::get_if<Hole>(&end);
    return hole && isRail(hole->line);
}
bool tiesRails(const Jumper& jumper) { return isRailEnd(jumper.ends[0]) && isRailEnd(jumper.ends[1]); }

/// Jumpers between the halves of one broken rail.
bool tiesHalves(const Jumper& jumper) {
    if (!tiesRails(jumper)) return false;
    const auto &one = std::get<Hole>(jumper.ends[0]), &other = std::get<Hole>(jumper.ends[1]);
    return one.board == other.board && one.line == other.line;
}

Maybe without(const Bench& bench, Chance& chance, bool (*suits)(const Jumper&)) {
    const auto jumper = pick(bench.jumpers, chance, suits);
    if (!jumper) return {};
    Slip slip;
    slip.words = jumper->id + " missing";
    slip.things = {jumper->id};
    for (const JumperEnd& end : jumper->ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) {
            slip.holes.push_back(*hole);
            slip.words += " " + toString(*hole);
        } else {
            slip.things.push_back(std::get<Socket>(end).part);
        }
    }
    slip.bench = bench;
    std::erase_if(slip.bench.jumpers, [&](const Jumper& each) { return each.id == jumper->id; });
    return slip;
}

Maybe joined(const Bench& bench, Chance& chance, const Hole& one, const Hole& other) {
    const auto from = besideIn(bench, one, chance), to = besideIn(bench, other, chance);
    if (!from || !to || sameStrip(bench, one, other)) return {};
    Slip slip;
    Jumper jumper;
    jumper.id = freeId(bench, "W");
    jumper.ends = {*from, *to};
    jumper.colour = chance.below(static_cast<int>(jumperColours().size()));
    slip.words = jumper.id + " too many, " + toString(*from) + " to " + toString(*to);
    slip.things = {jumper.id};
    slip.holes = {*from, *to};
    slip.bench = bench;
    slip.bench.jumpers.push_back(std::move(jumper));
    return slip;
}

Maybe extraJumper(const Bench& bench, Chance& chance) {
    const auto pins = pinsOf(bench);
    const Pin &one = chance.oneOf(pins), &other = chance.oneOf(pins);
    return joined(bench, chance, one.hole, other.hole);
}

Maybe buttonBridged(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) {
        return (each.kind->name == "push-button" || each.kind->name == "toggle") && each.leads.front() &&
               each.leads.back();
    });
    if (!part) return {};
    auto slip = joined(bench, chance, *part->leads.front(), *part->leads.back());
    if (slip) slip->things.push_back(part->id);
    return slip;
}

Maybe railsBroken(const Bench& bench, Chance& chance) {
    const auto board = pick(bench.boards, chance,
                            [](const Board& each) { return each.kind->hasRails() && each.rails == Rails::Through; });
    if (!board) return {};
    Slip slip;
    slip.words = board->id + "'s rails are broken in the middle";
    slip.things = {board->id};
    slip.bench = bench;
    for (Board& each : slip.bench.boards) {
        if (each.id == board->id) each.rails = Rails::Split;
    }
    // Whatever is in a rail on both its halves is parted.
    for (const Pin& pin : pinsOf(bench)) {
        if (pin.hole.board == board->id && isRail(pin.hole.line)) slip.holes.push_back(pin.hole);
    }
    return slip;
}

}  // namespace

std::vector<SlipKind> jumperSlips() {
    return {
        {"jumper missing", 6,
         [](const Bench& bench, Chance& chance) {
             return without(bench, chance, [](const Jumper& jumper) { return !tiesRails(jumper); });
         }},
        {"rails not tied", 3,
         [](const Bench& bench, Chance& chance) {
             return without(bench, chance,
                            [](const Jumper& jumper) { return tiesRails(jumper) && !tiesHalves(jumper); });
         }},
        {"rail halves not tied", 2,
         [](const Bench& bench, Chance& chance) { return without(bench, chance, tiesHalves); }},
        {"rails broken in the middle", 2, railsBroken},
        {"jumper too many", 3, extraJumper},
        {"button bridged", 2, buttonBridged},
    };
}

}  // namespace tiepoint::examiner
