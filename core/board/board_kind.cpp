#include "core/board/board_kind.h"

#include <array>
#include <cassert>

namespace tiepoint {
namespace {

constexpr int kRowsOfHalf = kRowCount / 2;  // a..e, and f..j
constexpr int kRailsOfEdge = kRailCount / 2;
constexpr int kRailGroup = 5;
constexpr int kGapPitches = 3;  // row e to row f: 0.3 in, so that DIPs stand astride

// Rails lie at the same distances from the edges on every board that has them.
constexpr std::array<double, kRailCount> kRailMm = {4.60, 7.14, 47.86, 50.40};

// Columns are centred between the short edges, and the rows of a board without rails between the long ones.
constexpr double centredFirst(double sizeMm, int pitches) { return (sizeMm - pitches * kPitchMm) / 2; }
constexpr int kRowPitches = 2 * (kRowsOfHalf - 1) + kGapPitches;

constexpr std::array<BoardKind, 3> kKinds = {{
    {.name = "full",
     .columns = 63,
     .railHoles = 50,
     .railFirstColumn = 3,
     .tiePoints = 830,
     .widthMm = 165,
     .heightMm = 55,
     .firstColumnMm = centredFirst(165, 62),
     .rowAMm = 13.53},
    {.name = "half",
     .columns = 30,
     .railHoles = 25,
     .railFirstColumn = 1,
     .tiePoints = 400,
     .widthMm = 83,
     .heightMm = 55,
     .firstColumnMm = centredFirst(83, 29),
     .rowAMm = 13.53},
    {.name = "mini",
     .columns = 17,
     .railHoles = 0,
     .railFirstColumn = 1,
     .tiePoints = 170,
     .widthMm = 47,
     .heightMm = 35,
     .firstColumnMm = centredFirst(47, 16),
     .rowAMm = centredFirst(35, kRowPitches)},
}};

constexpr std::array<std::string_view, kRowCount + kRailCount> kLineNames = {
    "a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "top+", "top-", "bottom+", "bottom-"};

int railOf(Line line) { return static_cast<int>(line) - static_cast<int>(Line::TopPlus); }
int rowOf(Line line) { return static_cast<int>(line); }

/// How many pieces of metal one rail is.
int railPieces(Rails rails) { return rails == Rails::Split ? 2 : 1; }

}  // namespace

int BoardKind::stripCount(Rails rails) const { return 2 * columns + (hasRails() ? kRailCount * railPieces(rails) : 0); }

bool BoardKind::has(Line line, int number) const { return number >= 1 && number <= holesOf(line); }

int BoardKind::holeIndex(Line line, int number) const {
    assert(has(line, number));
    const int topHoles = kRailsOfEdge * railHoles;
    if (!isRail(line)) return topHoles + (number - 1) * kRowCount + rowOf(line);
    const int rowHoles = railOf(line) < kRailsOfEdge ? 0 : columns * kRowCount;
    return rowHoles + railOf(line) * railHoles + number - 1;
}

int BoardKind::stripIndex(Rails rails, Line line, int number) const {
    assert(has(line, number));
    const int pieces = railPieces(rails);
    const int topStrips = hasRails() ? kRailsOfEdge * pieces : 0;
    if (!isRail(line)) return topStrips + (number - 1) * 2 + rowOf(line) / kRowsOfHalf;
    const int columnStrips = railOf(line) < kRailsOfEdge ? 0 : 2 * columns;
    const int piece = pieces == 2 && number > railHoles / 2 ? 1 : 0;
    return columnStrips + railOf(line) * pieces + piece;
}

Point BoardKind::holeMm(Line line, int number) const {
    assert(has(line, number));
    if (isRail(line)) return {firstColumnMm + (railColumn(number) - 1) * kPitchMm, kRailMm[railOf(line)]};
    const int row = rowOf(line);
    const int pitches = row < kRowsOfHalf ? row : row - 1 + kGapPitches;
    return {firstColumnMm + (number - 1) * kPitchMm, rowAMm + pitches * kPitchMm};
}

int BoardKind::railColumn(int number) const { return railFirstColumn + (number - 1) + (number - 1) / kRailGroup; }

std::span<const BoardKind> boardKinds() { return kKinds; }

const BoardKind* findBoardKind(std::string_view name) {
    for (const BoardKind& kind : kKinds) {
        if (kind.name == name) return &kind;
    }
    return nullptr;
}

std::string_view lineName(Line line) { return kLineNames[static_cast<std::size_t>(line)]; }

}  // namespace tiepoint
