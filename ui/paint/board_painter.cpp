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

constexpr double kShadowRoomMm = 3.5;  ///< shadows fall inside of this beyond a board
constexpr double kRailPrintMm = 2.4;   ///< signs and lines lie within this of a rail's holes
constexpr double kHoleRoomMm = 0.2;
constexpr int kFive = 5;
constexpr Line kRails[] = {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};

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

void paintRail(const BoardSheet& s, Line line) {
    const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
    const double rail = s.kind.holeMm(line, 1).y;
    const double y = rail + (plus ? -kRailLineMm : kRailLineMm);
    s.painter.setPen(
        outlinePen(plus ? s.theme.plusLine : s.theme.minusLine, kRailLineBreadthMm * (s.theme.flat ? 1.4 : 1)));
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

/// The holes from one of a line to a later one, with the metal under them in the strips view.
struct HoleRun {
    Line firstLine, lastLine;
    int firstNumber, lastNumber;
};

void paintRun(const BoardSheet& s, const HoleRun& run, bool strips) {
    if (strips) {
        paintMetal(s.painter, s.theme,
                   stripFrame(toQt(s.kind.holeMm(run.firstLine, run.firstNumber)),
                              toQt(s.kind.holeMm(run.lastLine, run.lastNumber))));
    }
    for (int line = static_cast<int>(run.firstLine); line <= static_cast<int>(run.lastLine); ++line) {
        for (int number = run.firstNumber; number <= run.lastNumber; ++number) {
            const QPointF at = toQt(s.kind.holeMm(static_cast<Line>(line), number));
            if (strips) {
                paintMouth(s.painter, at, faded(s.theme.hole, 0.9));
            } else {
                paintHole(s.painter, s.theme, at);
            }
        }
    }
}

/// Columns' halves and rails; a rail's holes in fives, its metal as long as it is.
std::vector<HoleRun> holeRuns(const Board& board, bool strips) {
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
            const int last = strips ? metalEnd : std::min(first + kFive - 1, kind.railHoles);
            runs.push_back({line, line, first, last});
            first = last + 1;
        }
    }
    return runs;
}

/// Adds what is painted in a board's own frame.
class BoardPatches {
public:
    BoardPatches(Patches& patches, const Picture& picture, const Board& board)
        : patches_(patches),
          theme_(*picture.theme),
          board_(board),
          corner_(toQt(board.cornerMm())) {
        look_ << std::string_view(board.kind->name) << board.rails << board.labels << picture.views.strips;
    }
    template <class Paint>
    void add(const QRectF& frame, Paint paint, const QRectF& opaque = {}) {
        patches_.push_back({frame.translated(corner_), look_,
                            [&board = board_, &theme = theme_, corner = corner_, paint](QPainter& painter) {
                                painter.save();
                                painter.translate(corner);
                                paint(BoardSheet{painter, theme, board, *board.kind});
                                painter.restore();
                            },
                            opaque.isEmpty() ? QRectF() : opaque.translated(corner_)});
    }
    /// Adds what looks the same on every place of this size that has `what` on it.
    template <class Paint>
    void addAlike(const QRectF& frame, QStringView what, Paint paint) {
        add(frame, paint);
        patches_.back().look << what.toString();
        patches_.back().movable = true;
    }

private:
    Patches& patches_;
    const Theme& theme_;
    const Board& board_;
    QPointF corner_;
    PatchLook look_;
};

void addPrint(BoardPatches& sheet, const BoardKind& kind, Labels labels) {
    const auto addWord = [&](const QString& word, QPointF at) {
        sheet.addAlike(QRectF(at.x() - kPrint.sizeMm, at.y() - kPrint.sizeMm, 2 * kPrint.sizeMm, 2 * kPrint.sizeMm),
                       word, [word, at](const BoardSheet& s) { drawText(s.painter, word, at, kPrint, s.theme.label); });
    };
    const double above = kind.holeMm(Line::A, 1).y - kNumberAboveMm, below = kind.holeMm(Line::J, 1).y + kNumberBelowMm;
    for (int column = 1; column <= kind.columns; ++column) {
        if (column != 1 && column % kNumberEvery != 0) continue;
        const double x = kind.holeMm(Line::A, column).x;
        for (const double y : {above, below}) addWord(QString::number(column), {x, y});
    }
    for (int row = 0; row < kRowCount; ++row) {
        const int printed = labels == Labels::ATop ? row : kRowCount - 1 - row;
        const double y = kind.holeMm(static_cast<Line>(row), 1).y;
        for (const double x : {kRowLetterMm, kind.widthMm - kRowLetterMm})
            addWord(QString(QChar(u'a' + printed)), {x, y});
    }
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

void addBoard(Patches& patches, const Picture& picture, int board) {
    if (picture.table->turned) return addBoardBack(patches, picture, board);
    const Board& which = picture.bench().boards[static_cast<std::size_t>(board)];
    const BoardKind& kind = *which.kind;
    BoardPatches sheet(patches, picture, which);
    const QRectF body(0, 0, kind.widthMm, kind.heightMm);
    sheet.add(
        body.adjusted(-kShadowRoomMm, -kShadowRoomMm, kShadowRoomMm, kShadowRoomMm),
        [](const BoardSheet& s) {
            paintBody(s);
            paintGap(s);
            if (!s.kind.hasRails()) return;
            paintSeam(s, kSeamMm);
            paintSeam(s, s.kind.heightMm - kSeamMm);
        },
        body.adjusted(kCornerMm, kCornerMm, -kCornerMm, -kCornerMm));
    if (kind.hasRails()) {
        for (const Line line : kRails) {
            const double y = kind.holeMm(line, 1).y;
            sheet.add(QRectF(0, y - kRailPrintMm, kind.widthMm, 2 * kRailPrintMm),
                      [line](const BoardSheet& s) { paintRail(s, line); });
        }
    }
    addPrint(sheet, kind, which.labels);
    for (const HoleRun& run : holeRuns(which, picture.views.strips)) {
        const QRectF frame = stripFrame(toQt(kind.holeMm(run.firstLine, run.firstNumber)),
                                        toQt(kind.holeMm(run.lastLine, run.lastNumber)));
        sheet.addAlike(frame.adjusted(-kHoleRoomMm, -kHoleRoomMm, kHoleRoomMm, kHoleRoomMm), u"holes",
                       [run, strips = picture.views.strips](const BoardSheet& s) { paintRun(s, run, strips); });
    }
}

}  // namespace tiepoint::ui
