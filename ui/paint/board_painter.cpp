// The table top and a bare board: body, trough, printed lines, signs, letters and numbers, and its holes.

#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/board_layer.h"
#include "ui/paint/lettering.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr Lettering kBoardLetter{2.5, QFont::Bold};
constexpr double kBoardLetterHighMm = 3.1, kBoardLetterAwayMm = 0.7;

constexpr double kCornerMm = 1.2;
constexpr double kRowLetterMm = 1.8;     ///< from either short edge
constexpr double kNumberAboveMm = 1.81;  ///< column numbers over row a
constexpr double kNumberBelowMm = 1.65;  ///< and under row j
constexpr Lettering kPrint{1.62, QFont::Normal};
constexpr double kGapHeightMm = 2.9;
constexpr double kGapMarginMm = 1.6;
constexpr double kGapRadiusMm = 0.45;
constexpr double kSeamMm = 10.56;       ///< between rails and rows, from the long edge
constexpr double kRailLineMm = 1.8;     ///< printed line, outside its rail's holes
constexpr double kRailLineEndMm = 1.3;  ///< beyond the last hole
constexpr double kRailLineBreadthMm = 0.36;
constexpr double kSignMm = 1.65;  ///< plus and minus signs, from either short edge
constexpr double kSignHalfMm = 0.95;
constexpr double kSignBreadthMm = 0.44;
constexpr int kNumberEvery = 5;

constexpr double kShadowRoomMm = 3.5;  ///< shadows fall inside of this beyond a board
constexpr double kRailPrintMm = 2.4;   ///< signs and lines lie within this of a rail's holes
constexpr double kHoleRoomMm = 0.2;
constexpr int kFive = 5;
constexpr Line kRails[] = {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};

/// What is painted in a board's own frame.
struct BoardSheet {
    QPainter& painter;
    const Theme& theme;
    const BoardKind& kind;
};

void paintBody(const BoardSheet& s) {
    const QRectF frame(0, 0, s.kind.widthMm, s.kind.heightMm);
    const QPainterPath body = roundedBox(frame, kCornerMm);
    drawSoftShadow(s.painter, s.theme, frame, kCornerMm, {1.5, 1.7}, 1.5);
    s.painter.setBrush(shadeDown(s.theme, frame, s.theme.boardTop, s.theme.boardBottom));
    s.painter.setPen(outlinePen(s.theme.boardEdge, s.theme.outlineMm));
    s.painter.drawPath(body);
    if (s.theme.flat) return;
    const double inset = 1.2 * s.theme.outlineMm;
    s.painter.setPen(outlinePen(faded(s.theme.bevelLight, s.theme.dark ? 0.18 : 0.9), s.theme.outlineMm));
    s.painter.drawLine(QPointF(kCornerMm, inset), QPointF(frame.right() - kCornerMm, inset));
}

/// The long groove where the rails' part is hung on: a dark line with a lit one below.
void paintSeam(const BoardSheet& s, double y) {
    s.painter.setPen(QPen(s.theme.flat ? faded(s.theme.hole, 0.8) : faded(s.theme.boardEdge, 0.8), s.theme.outlineMm));
    s.painter.drawLine(QPointF(s.theme.outlineMm / 2, y), QPointF(s.kind.widthMm - s.theme.outlineMm / 2, y));
    if (s.theme.flat) return;
    s.painter.setPen(QPen(faded(s.theme.bevelLight, s.theme.dark ? 0.24 : 1), s.theme.outlineMm));
    s.painter.drawLine(QPointF(s.theme.outlineMm, y + s.theme.outlineMm),
                       QPointF(s.kind.widthMm - s.theme.outlineMm, y + s.theme.outlineMm));
}

void paintGap(const BoardSheet& s) {
    const double middle = (s.kind.holeMm(Line::E, 1).y + s.kind.holeMm(Line::F, 1).y) / 2;
    const QRectF gap(kGapMarginMm, middle - kGapHeightMm / 2, s.kind.widthMm - 2 * kGapMarginMm, kGapHeightMm);
    if (s.theme.flat) {
        s.painter.setPen(QPen(faded(s.theme.hole, 0.8), s.theme.outlineMm));
        s.painter.drawLine(gap.topLeft(), gap.topRight());
        s.painter.drawLine(gap.bottomLeft(), gap.bottomRight());
        return;
    }
    s.painter.setPen(Qt::NoPen);
    s.painter.setBrush(faded(s.theme.bevelLight, s.theme.dark ? 0.2 : 0.9));
    s.painter.drawPath(roundedBox(gap.translated(0, 0.16), kGapRadiusMm));
    s.painter.setBrush(shadeDown(s.theme, gap, s.theme.furnishing.gapTop, s.theme.furnishing.gapBottom));
    s.painter.drawPath(roundedBox(gap, kGapRadiusMm));
    s.painter.setPen(QPen(faded(s.theme.bevelDark, 0.8), s.theme.outlineMm));
    s.painter.drawLine(gap.topLeft() + QPointF(kGapRadiusMm, 0), gap.topRight() - QPointF(kGapRadiusMm, 0));
}

void paintSign(const BoardSheet& s, QPointF at, bool plus) {
    s.painter.setPen(outlinePen(plus ? s.theme.plusLine : s.theme.minusLine, kSignBreadthMm));
    s.painter.drawLine(at - QPointF(kSignHalfMm, 0), at + QPointF(kSignHalfMm, 0));
    if (plus) s.painter.drawLine(at - QPointF(0, kSignHalfMm), at + QPointF(0, kSignHalfMm));
}

/// One printed stroke from rail hole `first` to rail hole `last`.
void paintRailStroke(const BoardSheet& s, Line line, int first, int last, double y) {
    const double from = s.kind.holeMm(line, first).x - kRailLineEndMm,
                 to = s.kind.holeMm(line, last).x + kRailLineEndMm;
    s.painter.drawLine(QPointF(from, y), QPointF(to, y));
}

void paintRail(const BoardSheet& s, Line line, Rails rails) {
    const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
    const double rail = s.kind.holeMm(line, 1).y;
    const double y = rail + (plus ? -kRailLineMm : kRailLineMm);
    s.painter.setPen(
        outlinePen(plus ? s.theme.plusLine : s.theme.minusLine, kRailLineBreadthMm * (s.theme.flat ? 1.4 : 1)));
    const int holes = s.kind.railHoles;
    if (rails == Rails::Split) {
        paintRailStroke(s, line, 1, holes / 2, y);
        paintRailStroke(s, line, holes / 2 + 1, holes, y);
    } else {
        paintRailStroke(s, line, 1, holes, y);
    }
    const double signY = rail + (plus ? -0.35 : 0.3);
    paintSign(s, {kSignMm, signY}, plus);
    paintSign(s, {s.kind.widthMm - kSignMm, signY}, plus);
}

/// The holes from one of a line to a later one, with the metal under them in the strips view.
struct HoleRun {
    Line firstLine, lastLine;
    int firstNumber, lastNumber;
};

/// Columns' halves and rails; a rail's holes in fives, its metal as long as it is.
std::vector<HoleRun> holeRuns(const BoardSeen& board) {
    std::vector<HoleRun> runs;
    const BoardKind& kind = *board.kind;
    for (const Line first : {Line::A, Line::F}) {
        const Line last = static_cast<Line>(static_cast<int>(first) + kRowCount / 2 - 1);
        for (int column = 1; column <= kind.columns; ++column) runs.push_back({first, last, column, column});
    }
    if (!kind.hasRails()) return runs;
    const int half = kind.railHoles / 2;
    for (const Line line : kRails) {
        for (int first = 1; first <= kind.railHoles;) {
            const int metalEnd = board.rails == Rails::Split && first <= half ? half : kind.railHoles;
            const int last = board.strips ? metalEnd : std::min(first + kFive - 1, kind.railHoles);
            runs.push_back({line, line, first, last});
            first = last + 1;
        }
    }
    return runs;
}

struct BoardBodyMark {
    const BoardKind* kind;
    void paint(QPainter& painter, const Theme& theme) const {
        const BoardSheet sheet{painter, theme, *kind};
        paintBody(sheet);
        paintGap(sheet);
        if (!kind->hasRails()) return;
        paintSeam(sheet, kSeamMm);
        paintSeam(sheet, kind->heightMm - kSeamMm);
    }
    friend bool operator==(const BoardBodyMark&, const BoardBodyMark&) = default;
};

struct RailPrintMark {
    const BoardKind* kind;
    Rails rails;
    Line line;
    void paint(QPainter& painter, const Theme& theme) const { paintRail({painter, theme, *kind}, line, rails); }
    friend bool operator==(const RailPrintMark&, const RailPrintMark&) = default;
};

struct PrintedWordMark {
    QString word;
    void paint(QPainter& painter, const Theme& theme) const { drawText(painter, word, {0, 0}, kPrint, theme.label); }
    friend bool operator==(const PrintedWordMark&, const PrintedWordMark&) = default;
};

struct HoleRunMark {
    std::vector<Point> holes;  ///< from the first
    bool strips;
    void paint(QPainter& painter, const Theme& theme) const {
        if (strips) paintMetal(painter, theme, stripFrame(toQt(holes.front()), toQt(holes.back())));
        for (const Point hole : holes) {
            if (strips) {
                paintMouth(painter, toQt(hole), faded(theme.hole, 0.9));
            } else {
                paintHole(painter, theme, toQt(hole));
            }
        }
    }
    friend bool operator==(const HoleRunMark&, const HoleRunMark&) = default;
};

void addRun(Patches& patches, const BoardSeen& board, const HoleRun& run) {
    const Point first = board.kind->holeMm(run.firstLine, run.firstNumber);
    HoleRunMark mark{{}, board.strips};
    for (int line = static_cast<int>(run.firstLine); line <= static_cast<int>(run.lastLine); ++line) {
        for (int number = run.firstNumber; number <= run.lastNumber; ++number)
            mark.holes.push_back(placeFrom(first, board.kind->holeMm(static_cast<Line>(line), number)));
    }
    const QRectF frame = stripFrame(toQt(mark.holes.front()), toQt(mark.holes.back()));
    patches.push_back(movablePatch(
        board.corner + first, frame.adjusted(-kHoleRoomMm, -kHoleRoomMm, kHoleRoomMm, kHoleRoomMm), std::move(mark)));
}

void addPrint(Patches& patches, const BoardSeen& board) {
    const BoardKind& kind = *board.kind;
    const auto addWord = [&](const QString& word, Point at) {
        constexpr QRectF kRoom(-kPrint.sizeMm, -kPrint.sizeMm, 2 * kPrint.sizeMm, 2 * kPrint.sizeMm);
        patches.push_back(movablePatch(board.corner + at, kRoom, PrintedWordMark{word}));
    };
    const double above = kind.holeMm(Line::A, 1).y - kNumberAboveMm, below = kind.holeMm(Line::J, 1).y + kNumberBelowMm;
    for (int column = 1; column <= kind.columns; ++column) {
        if (column != 1 && column % kNumberEvery != 0) continue;
        const double x = kind.holeMm(Line::A, column).x;
        for (const double y : {above, below}) addWord(QString::number(column), {x, y});
    }
    for (int row = 0; row < kRowCount; ++row) {
        const int printed = board.labels == Labels::ATop ? row : kRowCount - 1 - row;
        const double y = kind.holeMm(static_cast<Line>(row), 1).y;
        for (const double x : {kRowLetterMm, kind.widthMm - kRowLetterMm})
            addWord(QString(QChar(u'a' + printed)), {x, y});
    }
}

void addBoardFront(Patches& patches, const BoardSeen& board) {
    const BoardKind& kind = *board.kind;
    const QRectF body(0, 0, kind.widthMm, kind.heightMm);
    patches.push_back(movablePatch(board.corner,
                                   body.adjusted(-kShadowRoomMm, -kShadowRoomMm, kShadowRoomMm, kShadowRoomMm),
                                   BoardBodyMark{&kind}));
    patches.back().opaque = fromQt(body.adjusted(kCornerMm, kCornerMm, -kCornerMm, -kCornerMm));
    if (kind.hasRails()) {
        for (const Line line : kRails) {
            const double y = kind.holeMm(line, 1).y;
            patches.push_back(movablePatch(board.corner, QRectF(0, y - kRailPrintMm, kind.widthMm, 2 * kRailPrintMm),
                                           RailPrintMark{&kind, board.rails, line}));
        }
    }
    addPrint(patches, board);
    for (const HoleRun& run : holeRuns(board)) addRun(patches, board, run);
}

/// Stands at both ends of the gap, as the letters of rows do.
struct BoardLetterMark {
    QString letter;
    double widthMm;
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setPen(outlinePen(theme.label, theme.outlineMm));
        painter.setBrush(blend(theme.boardTop, theme.boardBottom, 0.5));
        painter.drawPath(roundedBox({-widthMm / 2, -kBoardLetterHighMm / 2, widthMm, kBoardLetterHighMm}, 0.5));
        drawText(painter, letter, {0, 0}, kBoardLetter, theme.text);
    }
    friend bool operator==(const BoardLetterMark&, const BoardLetterMark&) = default;
};

void addBoardLetter(Patches& patches, const BoardSeen& board) {
    if (board.letter.empty()) return;
    const BoardKind& kind = *board.kind;
    const QString letter = QString::fromStdString(board.letter);
    const double width = std::max(kBoardLetterHighMm, textWidthMm(letter, kBoardLetter) + 1.2);
    const double middle = (kind.holeMm(Line::E, 1).y + kind.holeMm(Line::F, 1).y) / 2;
    const double half = width / 2 + 0.3, edge = kBoardLetterAwayMm + width / 2;
    for (const double x : {edge, kind.widthMm - edge})
        patches.push_back(
            movablePatch(board.corner + Point{x, middle}, {-half, -2, 2 * half, 4}, BoardLetterMark{letter, width}));
}

}  // namespace

void paintTableTop(QPainter& painter, const Theme& theme, const QRectF& area) {
    // In steps of one shade, all channels at once, which nobody sees: the rows in which a bench that is panned over it looks otherwise are few then.
    const QColor &top = theme.benchTop, &bottom = theme.benchBottom;
    const int steps = std::max({std::abs(bottom.red() - top.red()), std::abs(bottom.green() - top.green()),
                                std::abs(bottom.blue() - top.blue())});
    for (int step = 0; step <= steps; ++step) {
        const QRectF rest(QPointF(area.left(), area.top() + area.height() * step / (steps + 1)), area.bottomRight());
        painter.fillRect(rest, steps == 0 ? top : blend(top, bottom, static_cast<double>(step) / steps));
    }
}

BoardSeen boardSeen(const Picture& picture, int board) {
    const Board& which = picture.bench().boards[static_cast<std::size_t>(board)];
    BoardSeen seen{which.kind, which.rails, which.labels, which.cornerMm()};
    seen.turned = picture.table->turned;
    if (picture.bench().boards.size() > 1) seen.letter = which.id;
    seen.strips = picture.views.strips && !seen.turned;
    if (seen.turned) {
        seen.corner = fromQt(seenBoards(picture)[static_cast<std::size_t>(board)].topLeft());
        seen.freeAtLeftMm = freeAtLeftMm(picture, board);
    }
    return seen;
}

void addBoard(Patches& patches, const BoardSeen& board) {
    if (board.turned) {
        addBoardBack(patches, board);
    } else {
        addBoardFront(patches, board);
    }
    addBoardLetter(patches, board);
}

}  // namespace tiepoint::ui
