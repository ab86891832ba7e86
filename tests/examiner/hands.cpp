#include "examiner/hands.h"

#include "core/edit/placement.h"

#include <algorithm>
#include <cassert>

namespace tiepoint::examiner {

std::vector<Pin> pinsOf(const Bench& bench) {
    auto pins = pinsOf(bench, false);
    std::ranges::copy(pinsOf(bench, true), std::back_inserter(pins));
    return pins;
}

std::vector<Pin> pinsOf(const Bench& bench, bool jumpers) {
    std::vector<Pin> pins;
    if (!jumpers) {
        for (const Part& part : bench.parts) {
            for (int lead = 0; lead < std::ssize(part.leads); ++lead) {
                if (part.leads[lead]) pins.push_back({part.id, lead, false, *part.leads[lead]});
            }
        }
        return pins;
    }
    for (const Jumper& jumper : bench.jumpers) {
        for (int end = 0; end < 2; ++end) {
            if (const Hole* hole = std::get_if<Hole>(&jumper.ends[end])) pins.push_back({jumper.id, end, true, *hole});
        }
    }
    return pins;
}

std::string nameOf(const Bench& bench, const Pin& pin) {
    if (pin.jumper) return pin.id + (pin.lead == 0 ? ", first end" : ", second end");
    return pin.id + "." + bench.findPart(pin.id)->kind->leads[pin.lead].name;
}

void put(Bench& bench, const Pin& pin, const Hole& to) {
    if (pin.jumper) {
        bench.jumpers[bench.jumperIndex(pin.id)].ends[pin.lead] = to;
    } else {
        partOf(bench, pin.id).leads[pin.lead] = to;
    }
}

Part& partOf(Bench& bench, const std::string& id) {
    const int index = bench.partIndex(id);
    assert(index >= 0);
    return bench.parts[index];
}

bool exists(const Bench& bench, const Hole& hole) {
    const Board* board = bench.findBoard(hole.board);
    return board && board->kind->has(hole.line, hole.number);
}

bool isTaken(const Bench& bench, const Hole& hole) { return occupantOf(bench, hole).has_value(); }

bool sameStrip(const Bench& bench, const Hole& one, const Hole& other) {
    if (one.board != other.board || !exists(bench, one) || !exists(bench, other)) return false;
    const Board& board = *bench.findBoard(one.board);
    return board.kind->stripIndex(board.rails, one.line, one.number) ==
           board.kind->stripIndex(board.rails, other.line, other.number);
}

std::optional<Hole> besideIn(const Bench& bench, const Hole& hole, Chance& chance) {
    const Board& board = *bench.findBoard(hole.board);
    std::vector<Hole> holes;
    for (int line = 0; line < kLineCount; ++line) {
        for (int number = 1; number <= board.kind->holesOf(static_cast<Line>(line)); ++number) {
            const Hole other{hole.board, static_cast<Line>(line), number};
            if (other != hole && sameStrip(bench, hole, other)) holes.push_back(other);
        }
    }
    return pick(holes, chance, [&](const Hole& other) { return !isTaken(bench, other); });
}

std::vector<Pin> othersIn(const Bench& bench, const Hole& hole, const std::string& except) {
    auto pins = pinsOf(bench);
    std::erase_if(pins, [&](const Pin& pin) { return pin.id == except || !sameStrip(bench, pin.hole, hole); });
    return pins;
}

Slip changedPart(const Bench& before, const Part& after, std::string words) {
    Slip slip;
    slip.words = std::move(words);
    slip.things = {after.id};
    slip.bench = before;
    const Part old = *before.findPart(after.id);
    for (std::size_t lead = 0; lead < old.leads.size(); ++lead) {
        if (old.leads[lead] == after.leads[lead]) continue;
        if (old.leads[lead]) slip.holes.push_back(*old.leads[lead]);
        if (after.leads[lead]) slip.holes.push_back(*after.leads[lead]);
    }
    partOf(slip.bench, after.id) = after;
    return slip;
}

Slip movedPin(const Bench& before, const Pin& pin, const Hole& to) {
    Slip slip;
    slip.words = nameOf(before, pin) + " from " + toString(pin.hole) + " to " + toString(to);
    slip.things = {pin.id};
    slip.holes = {pin.hole, to};
    slip.bench = before;
    put(slip.bench, pin, to);
    return slip;
}

}  // namespace tiepoint::examiner
