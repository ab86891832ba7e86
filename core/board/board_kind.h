#pragma once
// The kinds of solderless board, and the geometry of their holes and hidden metal.
//
// Inside one board holes and strips are numbered densely, in the order in which the eye reads a board:
// rail top+, rail top-, then the columns (each a..e, then f..j), then rail bottom+, rail bottom-.
// A strip is one piece of spring metal: half a column, or a rail (or half a rail where rails are split).
// Pure functions of the kind; safe from any thread.

#include "core/base/geometry.h"

#include <cstdint>
#include <span>
#include <string_view>

namespace tiepoint {

/// Rows a..j, then the four rails from the top edge down.
enum class Line : std::uint8_t { A, B, C, D, E, F, G, H, I, J, TopPlus, TopMinus, BottomPlus, BottomMinus };

inline constexpr int kRowCount = 10;
inline constexpr int kRailCount = 4;
inline constexpr int kLineCount = kRowCount + kRailCount;
inline bool isRail(Line line) { return line >= Line::TopPlus; }

/// Whether each rail runs through or is broken after floor(n/2) holes.
enum class Rails : std::uint8_t { Through, Split };

/// Which long edge the row letters are printed from; changes the printing only.
enum class Labels : std::uint8_t { ATop, ABottom };

/// One kind of board. Instances live as long as the program; compare by address.
struct BoardKind {
    std::string_view name;
    int columns;
    int railHoles;        ///< holes of one rail; 0 without rails
    int railFirstColumn;  ///< the column over which rail hole 1 stands
    int tiePoints;
    double widthMm, heightMm;
    double firstColumnMm;  ///< x of column 1
    double rowAMm;         ///< y of row a

    bool hasRails() const { return railHoles > 0; }
    int holesOf(Line line) const { return isRail(line) ? railHoles : columns; }
    int holeCount() const { return columns * kRowCount + kRailCount * railHoles; }
    int stripCount(Rails rails) const;
    /// Whether the line has a hole of that number (from 1).
    bool has(Line line, int number) const;
    /// Dense hole number in this board; requires has(line, number).
    int holeIndex(Line line, int number) const;
    /// Dense strip number in this board of a hole; requires has(line, number).
    int stripIndex(Rails rails, Line line, int number) const;
    /// Centre of a hole from the board's top left corner; requires has(line, number).
    Point holeMm(Line line, int number) const;
    /// Column over which a rail hole stands (may lie between 1 and columns).
    int railColumn(int number) const;
};

std::span<const BoardKind> boardKinds();
/// The kind of that name ("full", "half", "mini"), or null.
const BoardKind* findBoardKind(std::string_view name);

/// "a".."j", "top+", "top-", "bottom+", "bottom-".
std::string_view lineName(Line line);

}  // namespace tiepoint
