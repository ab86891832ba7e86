// The table top and a bare board: body, trough, printed lines, signs, letters and numbers, and its holes.

#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/lettering.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

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

struct BoardSheet {
    QPainter& painter;
    const Theme& theme;
    const Board& board;
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
    s.painter.setPen(outlinePen(faded(s.theme.bevelLight, s.theme.dark ? 0.45 : 0.9), s.theme.outlineMm));
    s.painter.drawLine(QPointF(kCornerMm, inset), QPointF(frame.right() - kCornerMm, inset));
}

/// The long groove where the rails' part is hung on: a dark line with a lit one below.
void paintSeam(const BoardSheet& s, double y) {
    s.painter.setPen(
        QPen(s.theme.flat ? faded(s.theme.hole, 0.8) : faded(s.theme.boardEdge, 0.8), s.theme.outlineMm));
    s.painter.drawLine(QPointF(s.theme.outlineMm / 2, y), QPointF(s.kind.widthMm - s.theme.outlineMm / 2, y));
    if (s.theme.flat) return;
    s.painter.setPen(QPen(faded(s.theme.bevelLight, s.theme.dark ? 0.6 : 1), s.theme.outlineMm));
    s.painter.drawLine(QPointF(s.theme.outlineMm, y + s.theme.outlineMm),
                       QPointF(s.kind.widthMm - s.theme.outlineMm, y + s.theme.outlineMm));
}

void paintGap(const BoardSheet& s) {
    const double middle = (s.kind.holeMm(Line::E, 1).y + s.kind.holeMm(Line::F, 1).y) / 2;
    const QRectF gap(kGapMarginMm, middle - kGapHeightMm / 2, s.kind.widthMm - 2 * kGapMarginMm,
                     kGapHeightMm);
    if (s.theme.flat) {
        s.painter.setPen(QPen(faded(s.theme.hole, 0.8), s.theme.outlineMm));
        s.painter.drawLine(gap.topLeft(), gap.topRight());
        s.painter.drawLine(gap.bottomLeft(), gap.bottomRight());
        return;
    }
    s.painter.setPen(Qt::NoPen);
    s.painter.setBrush(faded(s.theme.bevelLight, s.theme.dark ? 0.5 : 0.9));
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

void paintRail(const BoardSheet& s, Line line) {
    const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
    const double rail = s.kind.holeMm(line, 1).y;
    const double y = rail + (plus ? -kRailLineMm : kRailLineMm);
    s.painter.setPen(outlinePen(plus ? s.theme.plusLine : s.theme.minusLine,
                                kRailLineBreadthMm * (s.theme.flat ? 1.4 : 1)));
    const int holes = s.kind.railHoles;
    if (s.board.rails == Rails::Split) {
        paintRailStroke(s, line, 1, holes / 2, y);
        paintRailStroke(s, line, holes / 2 + 1, holes, y);
    } else {
        paintRailStroke(s, line, 1, holes, y);
    }
    const double signY = rail + (plus ? -0.35 : 0.3);
    paintSign(s, {kSignMm, signY}, plus);
    paintSign(s, {s.kind.widthMm - kSignMm, signY}, plus);
}

void paintNumbers(const BoardSheet& s) {
    const double above = s.kind.holeMm(Line::A, 1).y - kNumberAboveMm,
                 below = s.kind.holeMm(Line::J, 1).y + kNumberBelowMm;
    for (int column = 1; column <= s.kind.columns; ++column) {
        if (column != 1 && column % kNumberEvery != 0) continue;
        const double x = s.kind.holeMm(Line::A, column).x;
        const QString number = QString::number(column);
        drawText(s.painter, number, {x, above}, kPrint, s.theme.label);
        drawText(s.painter, number, {x, below}, kPrint, s.theme.label);
    }
}

void paintRowLetters(const BoardSheet& s) {
    for (int row = 0; row < kRowCount; ++row) {
        const int printed = s.board.labels == Labels::ATop ? row : kRowCount - 1 - row;
        const QString letter(QChar(u'a' + printed));
        const double y = s.kind.holeMm(static_cast<Line>(row), 1).y;
        drawText(s.painter, letter, {kRowLetterMm, y}, kPrint, s.theme.label);
        drawText(s.painter, letter, {s.kind.widthMm - kRowLetterMm, y}, kPrint, s.theme.label);
    }
}

template <class Visit>
void forEachHole(const BoardKind& kind, Visit visit) {
    for (int line = 0; line <= static_cast<int>(Line::BottomMinus); ++line) {
        for (int number = 1; kind.has(static_cast<Line>(line), number); ++number)
            visit(kind.holeMm(static_cast<Line>(line), number));
    }
}

/// Stamps of the metal's whole length under all holes, for the strips view.
void paintAllMetal(const BoardSheet& s) {
    for (int row : {0, kRowCount / 2}) {
        for (int column = 1; column <= s.kind.columns; ++column) {
            const Point first = s.kind.holeMm(static_cast<Line>(row), column),
                        last = s.kind.holeMm(static_cast<Line>(row + kRowCount / 2 - 1), column);
            paintMetal(s.painter, s.theme, stripFrame(toQt(first), toQt(last)));
        }
    }
    for (Line line : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
        const int holes = s.kind.railHoles;
        const bool split = s.board.rails == Rails::Split;
        for (int first = 1; first <= holes;) {
            const int last = split && first <= holes / 2 ? holes / 2 : holes;
            paintMetal(s.painter, s.theme,
                       stripFrame(toQt(s.kind.holeMm(line, first)), toQt(s.kind.holeMm(line, last))));
            first = last + 1;
        }
    }
}

}  // namespace

void paintTableTop(QPainter& painter, const Theme& theme, const QRectF& area) {
    painter.fillRect(area, shadeDown(theme, area, theme.benchTop, theme.benchBottom));
}

void paintBoard(QPainter& painter, const Picture& picture, int board) {
    if (picture.table->turned) return paintBoardBack(painter, picture, board);
    const Board& which = picture.bench().boards[static_cast<std::size_t>(board)];
    const BoardSheet sheet{painter, *picture.theme, which, *which.kind};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(toQt(which.cornerMm()));
    paintBody(sheet);
    paintGap(sheet);
    if (which.kind->hasRails()) {
        paintSeam(sheet, kSeamMm);
        paintSeam(sheet, which.kind->heightMm - kSeamMm);
        for (Line line : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus})
            paintRail(sheet, line);
    }
    paintNumbers(sheet);
    paintRowLetters(sheet);
    if (!picture.views.strips) {
        forEachHole(*which.kind, [&](Point hole) { paintHole(painter, *picture.theme, toQt(hole)); });
    } else {
        paintAllMetal(sheet);
        forEachHole(*which.kind,
                    [&](Point hole) { paintMouth(painter, toQt(hole), faded(picture.theme->hole, 0.9)); });
    }
    painter.restore();
}

}  // namespace tiepoint::ui
