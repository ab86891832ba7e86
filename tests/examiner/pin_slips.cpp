// A lead or an end in a wrong hole.
#include "examiner/hands.h"

#include <algorithm>
#include <array>

namespace tiepoint::examiner {
namespace {

using Maybe = std::optional<Slip>;
/// Where a pin goes instead; nothing where it can't.
using Way = std::optional<Hole> (*)(const Bench&, const Hole&, Chance&);

bool isUpper(Line line) { return line <= Line::E; }

std::optional<Hole> byColumns(const Bench&, const Hole& hole, Chance& chance) {
    Hole to = hole;
    if (isRail(hole.line)) return {};  // a rail's neighbour is the same metal
    to.number += (chance.happens(0.75) ? 1 : 2) * (chance.happens(0.5) ? 1 : -1);
    // Slantwise at times.
    if (chance.happens(0.3))
        to.line =
            static_cast<Line>(std::clamp(static_cast<int>(to.line) + (chance.happens(0.5) ? 1 : -1), 0, kRowCount - 1));
    return to;
}

std::optional<Hole> acrossGap(const Bench&, const Hole& hole, Chance& chance) {
    if (isRail(hole.line)) return {};
    const bool upper = isUpper(hole.line);
    // Mirrored, or one or two rows too far.
    if (chance.happens(0.5))
        return Hole{hole.board, static_cast<Line>(kRowCount - 1 - static_cast<int>(hole.line)), hole.number};
    return Hole{hole.board, static_cast<Line>(upper ? 5 + chance.below(2) : 4 - chance.below(2)), hole.number};
}

std::optional<Hole> intoRail(const Bench& bench, const Hole& hole, Chance& chance) {
    const BoardKind& kind = *bench.findBoard(hole.board)->kind;
    if (isRail(hole.line) || !kind.hasRails()) return {};
    const bool plus = chance.happens(0.5);
    const Line rail =
        isUpper(hole.line) ? (plus ? Line::TopPlus : Line::TopMinus) : (plus ? Line::BottomPlus : Line::BottomMinus);
    int best = 1;
    for (int number = 1; number <= kind.railHoles; ++number) {
        if (std::abs(kind.railColumn(number) - hole.number) < std::abs(kind.railColumn(best) - hole.number))
            best = number;
    }
    return Hole{hole.board, rail, best};
}

std::optional<Hole> otherRail(const Bench&, const Hole& hole, Chance& chance) {
    if (!isRail(hole.line)) return {};
    constexpr std::array kRails{Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};
    constexpr std::array kBeside{Line::TopMinus, Line::TopPlus, Line::BottomMinus, Line::BottomPlus};
    constexpr std::array kFarther{Line::BottomPlus, Line::BottomMinus, Line::TopPlus, Line::TopMinus};
    const auto at = std::ranges::find(kRails, hole.line) - kRails.begin();
    return Hole{hole.board, chance.happens(0.7) ? kBeside[at] : kFarther[at], hole.number};
}

std::optional<Hole> besideRail(const Bench& bench, const Hole& hole, Chance&) {
    if (!isRail(hole.line)) return {};
    const Line row = hole.line <= Line::TopMinus ? Line::A : Line::J;
    return Hole{hole.board, row, bench.findBoard(hole.board)->kind->railColumn(hole.number)};
}

auto pinSlip(bool jumpers, Way way) {
    return [jumpers, way](const Bench& bench, Chance& chance) -> Maybe {
        auto pins = pinsOf(bench, jumpers);
        // Legs of rigid parts don't move on their own.
        std::erase_if(pins, [&](const Pin& pin) {
            return !jumpers && bench.findPart(pin.id)->kind->package->reach == Reach::Rigid;
        });
        if (pins.empty()) return {};
        const Pin& pin = chance.oneOf(pins);
        const auto to = way(bench, pin.hole, chance);
        if (!to || !exists(bench, *to)) return {};
        return movedPin(bench, pin, *to);
    };
}

Maybe legsInOneColumn(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) {
        return each.kind->package->reach == Reach::Bending && each.leads[0] && each.leads[1];
    });
    if (!part) return {};
    const int lead = chance.below(2);
    const auto to = besideIn(bench, *part->leads[1 - lead], chance);
    if (!to) return {};
    return movedPin(bench, {part->id, lead, false, *part->leads[lead]}, *to);
}

Maybe legsExchanged(const Bench& bench, Chance& chance) {
    const auto pins = pinsOf(bench);
    const Pin one = chance.oneOf(pins), other = chance.oneOf(pins);
    if (one.id == other.id || sameStrip(bench, one.hole, other.hole) || one.hole.board != other.hole.board) return {};
    // Near ones get mixed up.
    if (std::abs(one.hole.number - other.hole.number) > 4) return {};
    Slip slip = movedPin(bench, one, other.hole);
    put(slip.bench, other, one.hole);
    slip.words = nameOf(bench, one) + " and " + nameOf(bench, other) + " exchanged";
    slip.things.push_back(other.id);
    return slip;
}

}  // namespace

std::vector<SlipKind> pinSlips() {
    return {
        {"leg off by columns", 9, pinSlip(false, byColumns)},   {"end off by columns", 9, pinSlip(true, byColumns)},
        {"leg across the gap", 2, pinSlip(false, acrossGap)},   {"end across the gap", 3, pinSlip(true, acrossGap)},
        {"leg into a rail", 1.5, pinSlip(false, intoRail)},     {"end into a rail", 2, pinSlip(true, intoRail)},
        {"leg in another rail", 3, pinSlip(false, otherRail)},  {"end in another rail", 5, pinSlip(true, otherRail)},
        {"leg beside its rail", 1, pinSlip(false, besideRail)}, {"end beside its rail", 1.5, pinSlip(true, besideRail)},
        {"two legs in one column", 3, legsInOneColumn},         {"legs of two exchanged", 2, legsExchanged},
    };
}

}  // namespace tiepoint::examiner
