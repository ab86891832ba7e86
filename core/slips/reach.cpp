#include "core/slips/reach.h"

#include <array>
#include <cstdlib>

namespace tiepoint {
namespace {

bool isTop(Line line) { return line == Line::TopPlus || line == Line::TopMinus || line <= Line::E; }

Line railAt(bool top, bool plus) {
    if (top) return plus ? Line::TopPlus : Line::TopMinus;
    return plus ? Line::BottomPlus : Line::BottomMinus;
}

void addIfThere(const Ground& ground, const Hole& hole, std::vector<Hole>& holes) {
    ground.count(1);
    if (ground.holeIndex(hole) >= 0) holes.push_back(hole);
}

/// Numbers by how far they are from one: 0, -1, 1, -2, 2.
constexpr std::array<int, 5> kNearestFirst = {0, -1, 1, -2, 2};
static_assert(kNearestFirst.size() == 2 * kAlongRail + 1);

std::vector<Hole> holesOfRail(const Ground& ground, const Hole& from, Line rail) {
    std::vector<Hole> holes;
    for (const int aside : kNearestFirst) addIfThere(ground, {from.board, rail, from.number + aside}, holes);
    return holes;
}

/// The rows from which a hand slips into the rails of their edge, the outermost first.
constexpr std::array<Line, 2> kTopRows = {Line::A, Line::B}, kBottomRows = {Line::J, Line::I};

}  // namespace

int railNumberNear(const BoardKind& kind, int column) {
    constexpr int kGroup = 6;  // five holes and a space
    const int places = column - kind.railFirstColumn;
    return places - places / kGroup + 1;
}

std::vector<Hole> holesAlong(const Ground& ground, const Hole& hole, int places) {
    std::vector<Hole> holes;
    for (const int to : {hole.number + places, hole.number - places})
        addIfThere(ground, {hole.board, hole.line, to}, holes);
    return holes;
}

std::vector<Hole> holesOverGap(const Ground& ground, const Hole& hole) {
    std::vector<Hole> holes;
    if (!isRail(hole.line))
        addIfThere(ground, {hole.board, hole.line <= Line::E ? Line::F : Line::E, hole.number}, holes);
    return holes;
}

std::vector<Hole> holesBetweenRowAndRail(const Ground& ground, const Hole& hole) {
    std::vector<Hole> holes;
    const BoardKind& kind = *ground.boardOf(hole).kind;
    if (!kind.hasRails()) return holes;
    const bool top = isTop(hole.line);
    const auto& rows = top ? kTopRows : kBottomRows;
    if (isRail(hole.line)) {
        for (const Line row : rows) {
            for (const int aside : kNearestFirst)
                addIfThere(ground, {hole.board, row, kind.railColumn(hole.number) + aside}, holes);
        }
        return holes;
    }
    if (hole.line != rows[0] && hole.line != rows[1]) return holes;
    // The nearer rail of an edge is minus at the top and plus at the bottom.
    for (const bool plus : {!top, top}) {
        const int about = railNumberNear(kind, hole.number);
        for (const int aside : kNearestFirst) {
            const int number = about + aside;
            if (number < 1 || number > kind.railHoles) continue;
            if (std::abs(kind.railColumn(number) - hole.number) > kAlongRail) continue;
            addIfThere(ground, {hole.board, railAt(top, plus), number}, holes);
        }
    }
    return holes;
}

std::vector<Hole> holesOfOtherRail(const Ground& ground, const Hole& hole) {
    if (!isRail(hole.line)) return {};
    return holesOfRail(ground, hole, railAt(isTop(hole.line), !isPlusRail(hole.line)));
}

std::vector<Hole> holesOfFarRail(const Ground& ground, const Hole& hole) {
    if (!isRail(hole.line)) return {};
    return holesOfRail(ground, hole, railAt(!isTop(hole.line), isPlusRail(hole.line)));
}

std::vector<Hole> holesInReach(const Ground& ground, const Hole& hole) {
    std::vector<Hole> all;
    const auto add = [&](const std::vector<Hole>& more) { all.insert(all.end(), more.begin(), more.end()); };
    add(holesAlong(ground, hole, 1));
    add(holesAlong(ground, hole, 2));
    add(holesOverGap(ground, hole));
    add(holesBetweenRowAndRail(ground, hole));
    return all;
}

}  // namespace tiepoint
