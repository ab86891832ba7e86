// Geometry of the boards. Published figures are named beside each check; the millimetres of lines and columns
// within a board are the program's own drawing, which those figures fix up to the margins.

#include "core/board/board_kind.h"
#include "core/board/hole.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <string>
#include <vector>

namespace tiepoint {
namespace {

constexpr double kExactMm = 1e-9;
constexpr Line kLines[] = {Line::A,       Line::B,        Line::C,          Line::D,          Line::E,
                           Line::F,       Line::G,        Line::H,          Line::I,          Line::J,
                           Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};

struct HoleAtMm {
    Line line;
    int number;
};

std::vector<HoleAtMm> holesOf(const BoardKind& kind) {
    std::vector<HoleAtMm> holes;
    for (const Line line : kLines) {
        for (int number = 1; kind.has(line, number); ++number) holes.push_back({line, number});
    }
    return holes;
}

const BoardKind& boardNamed(std::string_view name) {
    const BoardKind* kind = findBoardKind(name);
    if (!kind) throw std::invalid_argument(std::string(name));
    return *kind;
}

TEST(BoardKind, HasTheTiePointsItIsNamedFor) {
    // Classes of 170 and 400 tie points, and 2.54 mm pitch: G. McComb, Robot Builder's Bonanza, pp. 408-409
    // (published). 830 = 63 x 10 + 4 x 50: the 63 columns from memory; makers differ.
    const std::pair<std::string_view, int> table[] = {{"full", 830}, {"half", 400}, {"mini", 170}};
    ASSERT_EQ(boardKinds().size(), std::size(table));
    for (const auto& [name, tiePoints] : table) {
        SCOPED_TRACE(name);
        const BoardKind& kind = boardNamed(name);
        EXPECT_EQ(kind.tiePoints, tiePoints);
        EXPECT_EQ(kind.holeCount(), tiePoints);
        EXPECT_EQ(holesOf(kind).size(), static_cast<std::size_t>(tiePoints));
    }
    EXPECT_EQ(findBoardKind("double"), nullptr);
    EXPECT_EQ(findBoardKind(""), nullptr);
}

TEST(BoardKind, HasRealSizes) {
    // Half about 83 x 55 mm, full about 165 x 55 mm: dealers' pages (published, secondary). Mini: from
    // memory.
    EXPECT_EQ(boardNamed("full").widthMm, 165);
    EXPECT_EQ(boardNamed("full").heightMm, 55);
    EXPECT_EQ(boardNamed("half").widthMm, 83);
    EXPECT_EQ(boardNamed("half").heightMm, 55);
    EXPECT_EQ(boardNamed("mini").widthMm, 47);
    EXPECT_EQ(boardNamed("mini").heightMm, 35);
}

TEST(BoardKind, NeighboursAreOnePitchApartAndTheGapIsThree) {
    // 0.1 in pitch; a 0.3 in DIP stands in rows e and f (JEDEC spacing, published; e to f in mm from memory).
    for (const BoardKind& kind : boardKinds()) {
        SCOPED_TRACE(kind.name);
        for (int row = 0; row + 1 < kRowCount; ++row) {
            const auto line = static_cast<Line>(row), next = static_cast<Line>(row + 1);
            const double apart = kind.holeMm(next, 1).y - kind.holeMm(line, 1).y;
            EXPECT_NEAR(apart, line == Line::E ? 7.62 : 2.54, kExactMm) << lineName(line);
        }
        for (int column = 1; column < kind.columns; ++column) {
            EXPECT_NEAR(kind.holeMm(Line::A, column + 1).x - kind.holeMm(Line::A, column).x, 2.54, kExactMm);
        }
    }
}

TEST(BoardKind, LinesLieWhereTheDrawingHasThem) {
    struct Row {
        std::string_view kind;
        Line line;
        double yMm;
    };
    const Row table[] = {
        {"full", Line::TopPlus, 4.60},     {"full", Line::TopMinus, 7.14},     {"full", Line::A, 13.53},
        {"full", Line::E, 23.69},          {"full", Line::F, 31.31},           {"full", Line::J, 41.47},
        {"full", Line::BottomPlus, 47.86}, {"full", Line::BottomMinus, 50.40}, {"half", Line::A, 13.53},
        {"half", Line::J, 41.47},          {"half", Line::BottomMinus, 50.40}, {"mini", Line::A, 3.53},
        {"mini", Line::E, 13.69},          {"mini", Line::F, 21.31},           {"mini", Line::J, 31.47},
    };
    for (const Row& row : table) {
        EXPECT_NEAR(boardNamed(row.kind).holeMm(row.line, 1).y, row.yMm, kExactMm)
            << row.kind << ' ' << lineName(row.line);
    }
    EXPECT_NEAR(boardNamed("full").holeMm(Line::A, 1).x, 3.76, kExactMm);
}

TEST(BoardKind, ColumnsAndRowsAreCentred) {
    for (const BoardKind& kind : boardKinds()) {
        SCOPED_TRACE(kind.name);
        const Point first = kind.holeMm(Line::A, 1), last = kind.holeMm(Line::J, kind.columns);
        EXPECT_NEAR(first.x, kind.widthMm - last.x, kExactMm);
        EXPECT_NEAR(first.y, kind.heightMm - last.y, kExactMm);
    }
}

TEST(BoardKind, RailsStandInGroupsOfFiveOverTheColumns) {
    // Groups of five; half 5 groups, full 10 groups: from memory, and the counts agree with 400 and 830.
    struct Row {
        std::string_view kind;
        int number;
        int column;
    };
    const Row table[] = {{"full", 1, 3}, {"full", 5, 7}, {"full", 6, 9}, {"full", 50, 61},
                         {"half", 1, 1}, {"half", 5, 5}, {"half", 6, 7}, {"half", 25, 29}};
    for (const Row& row : table) {
        const BoardKind& kind = boardNamed(row.kind);
        SCOPED_TRACE(std::string(row.kind) + " " + std::to_string(row.number));
        EXPECT_EQ(kind.railColumn(row.number), row.column);
        for (const Line rail : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
            EXPECT_NEAR(kind.holeMm(rail, row.number).x, kind.holeMm(Line::A, row.column).x, kExactMm);
        }
    }
    EXPECT_FALSE(boardNamed("mini").hasRails());
}

TEST(BoardKind, NumbersHolesDensely) {
    for (const BoardKind& kind : boardKinds()) {
        SCOPED_TRACE(kind.name);
        std::set<int> indices;
        for (const auto& [line, number] : holesOf(kind)) indices.insert(kind.holeIndex(line, number));
        EXPECT_EQ(indices.size(), static_cast<std::size_t>(kind.holeCount()));
        EXPECT_EQ(*indices.begin(), 0);
        EXPECT_EQ(*indices.rbegin(), kind.holeCount() - 1);
    }
}

TEST(BoardKind, KeepsHolesOnTheBoardAndApart) {
    for (const BoardKind& kind : boardKinds()) {
        SCOPED_TRACE(kind.name);
        std::set<std::pair<long, long>> places;
        for (const auto& [line, number] : holesOf(kind)) {
            const Point at = kind.holeMm(line, number);
            EXPECT_TRUE((Rect{1, 1, kind.widthMm - 2, kind.heightMm - 2}.contains(at))) << lineName(line) << number;
            places.insert({std::lround(at.x * 100), std::lround(at.y * 100)});
        }
        EXPECT_EQ(places.size(), static_cast<std::size_t>(kind.holeCount()));
    }
}

TEST(BoardKind, JoinsFiveHolesOfAColumnAndNothingElse) {
    // Five holes a clip; a-e and f-j isolated across the centre channel (published, common to all makers).
    for (const BoardKind& kind : boardKinds()) {
        for (const Rails rails : {Rails::Through, Rails::Split}) {
            SCOPED_TRACE(kind.name);
            std::vector<std::vector<HoleAtMm>> strips(kind.stripCount(rails));
            for (const HoleAtMm& hole : holesOf(kind))
                strips.at(kind.stripIndex(rails, hole.line, hole.number)).push_back(hole);
            for (const auto& strip : strips) {
                ASSERT_FALSE(strip.empty());
                const HoleAtMm& first = strip.front();
                for (const HoleAtMm& hole : strip) {
                    EXPECT_EQ(isRail(hole.line), isRail(first.line));
                    EXPECT_EQ(isRail(first.line) ? hole.line == first.line : hole.number == first.number, true);
                }
                if (!isRail(first.line)) {
                    EXPECT_EQ(strip.size(), 5u);
                    EXPECT_EQ(strip.front().line <= Line::E, strip.back().line <= Line::E);
                }
            }
        }
    }
}

TEST(BoardKind, BreaksSplitRailsInTheMiddle) {
    // Many full boards break each rail in the middle; 25 terminals are one piece (published). Half: 12 and
    // 13, our choice.
    const std::pair<std::string_view, int> table[] = {{"full", 25}, {"half", 12}};
    for (const auto& [name, last] : table) {
        SCOPED_TRACE(name);
        const BoardKind& kind = boardNamed(name);
        for (const Line rail : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
            const auto strip = [&](Rails rails, int number) { return kind.stripIndex(rails, rail, number); };
            EXPECT_EQ(strip(Rails::Through, 1), strip(Rails::Through, kind.railHoles));
            EXPECT_EQ(strip(Rails::Split, 1), strip(Rails::Split, last));
            EXPECT_NE(strip(Rails::Split, last), strip(Rails::Split, last + 1));
            EXPECT_EQ(strip(Rails::Split, last + 1), strip(Rails::Split, kind.railHoles));
        }
    }
    EXPECT_EQ(boardNamed("mini").stripCount(Rails::Split), boardNamed("mini").stripCount(Rails::Through));
}

TEST(Hole, NamesEveryHoleAndReadsItBack) {
    for (const BoardKind& kind : boardKinds()) {
        for (const auto& [line, number] : holesOf(kind)) {
            const Hole hole{"A", line, number};
            EXPECT_EQ(parseHole(toString(hole)), hole) << toString(hole);
        }
    }
    EXPECT_EQ(toString(Hole{"A", Line::E, 12}), "A.e12");
    EXPECT_EQ(toString(Hole{"Left_2", Line::TopPlus, 7}), "Left_2.top+7");
    EXPECT_EQ(shortName(Hole{"A", Line::BottomMinus, 3}), "bottom-3");
}

TEST(Hole, RefusesWhatIsNoAddress) {
    for (const char* text : {"",         "A",      "A.",    "A.e",    ".e12",    "A.e0",   "A.e012",  "A.e-1",
                             "A.e+1",    "A.k1",   "A.E1",  "A.top7", "A.top*7", "A.e12 ", " A.e12x", "A.e1.2",
                             "A.e99999", "A.B.e1", "A.ee1", "A.e1e",  "A.+7",    "A.top+", "e12"}) {
        EXPECT_FALSE(parseHole(text).has_value()) << text;
    }
    EXPECT_FALSE(parseHole(std::string_view("A.e1\0", 5)).has_value());
}

}  // namespace
}  // namespace tiepoint
