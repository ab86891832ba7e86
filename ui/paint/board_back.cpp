#include "ui/paint/board_back.h"

#include "ui/paint/label_painter.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <array>

namespace tiepoint::ui {
namespace {

constexpr double kBackCornerMm = 1.2;
constexpr double kEdgeLetterMm = 1.8;
constexpr double kNumberAwayMm = 2.0;  ///< beyond rows a and j, clear of the open metal
constexpr Lettering kBackPrint{1.62, QFont::Normal};
constexpr int kBackNumberEvery = 5;
constexpr double kSlotMm = 0.34, kSlotLongMm = 0.9;  ///< the mouth of a clip, seen from below
constexpr double kTipMm = 0.52, kTipRimMm = 0.24;    ///< radius of a lead's end
constexpr double kFlapLeastMm = 2.2, kFlapMostMm = 9.5, kFlapLeanMm = 8, kFlapRollMm = 3.2, kFlapClearMm = 2;
constexpr double kSignAwayMm = 3.8;
const QString kTurnedWords = QStringLiteral("Underside: columns run from right to left. Key 5 turns it back.");
const std::array kBackRails{Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};

Lettering signLettering(const Picture& picture) { return {picture.sizes.wordsMm, QFont::Medium}; }

/// One board in the frame of its own back.
struct Back {
    QPainter& painter;
    const Picture& picture;
    const Theme& theme;
    const Board& board;
    const BoardKind& kind;

    QPointF hole(Line line, int number) const {
        const Point front = kind.holeMm(line, number);
        return {kind.widthMm - front.x, front.y};
    }
};

void paintBackBody(const Back& b) {
    const QRectF frame(0, 0, b.kind.widthMm, b.kind.heightMm);
    drawSoftShadow(b.painter, b.theme, frame, kBackCornerMm, {1.5, 1.7}, 1.5);
    b.painter.setBrush(
        shadeDown(b.theme, frame, b.theme.boardBottom, blend(b.theme.boardBottom, b.theme.boardEdge, 0.18)));
    b.painter.setPen(outlinePen(b.theme.boardEdge, b.theme.outlineMm));
    b.painter.drawPath(roundedBox(frame, kBackCornerMm));
}

/// The clips of one strip: the bent sheet with a mouth for each hole.
void paintClips(const Back& b, const std::vector<QPointF>& holes) {
    if (holes.empty()) return;
    const QRectF frame = stripFrame(holes.front(), holes.back());
    paintMetal(b.painter, b.theme, frame);
    const bool lies = frame.width() > frame.height();
    b.painter.setPen(Qt::NoPen);
    b.painter.setBrush(faded(b.theme.hole, 0.85));
    for (const QPointF at : holes) {
        const QSizeF slot = lies ? QSizeF(kSlotLongMm, kSlotMm) : QSizeF(kSlotMm, kSlotLongMm);
        b.painter.drawPath(roundedBox(QRectF(at - QPointF(slot.width(), slot.height()) / 2, slot), kSlotMm / 2));
    }
}

void paintColumns(const Back& b) {
    constexpr int kHalf = kRowCount / 2;
    for (int column = 1; column <= b.kind.columns; ++column) {
        for (const int first : {0, kHalf}) {
            std::vector<QPointF> holes;
            for (int row = first; row < first + kHalf; ++row) holes.push_back(b.hole(static_cast<Line>(row), column));
            paintClips(b, holes);
        }
    }
}

void paintRails(const Back& b) {
    for (const Line line : kBackRails) {
        std::vector<QPointF> holes;
        int strip = -1;
        for (int number = 1; b.kind.has(line, number); ++number) {
            const int here = b.kind.stripIndex(b.board.rails, line, number);
            if (here != strip) {
                paintClips(b, holes);
                holes.clear();
            }
            strip = here;
            holes.push_back(b.hole(line, number));
        }
        paintClips(b, holes);
    }
}

void paintPrinting(const Back& b) {
    for (int column = 1; column <= b.kind.columns; ++column) {
        if (column != 1 && column % kBackNumberEvery != 0) continue;
        const QString number = QString::number(column);
        drawText(b.painter, number, b.hole(Line::A, column) - QPointF(0, kNumberAwayMm), kBackPrint, b.theme.label);
        drawText(b.painter, number, b.hole(Line::J, column) + QPointF(0, kNumberAwayMm), kBackPrint, b.theme.label);
    }
    const double right = b.kind.widthMm - kEdgeLetterMm;
    for (int row = 0; row < kRowCount; ++row) {
        const int printed = b.board.labels == Labels::ATop ? row : kRowCount - 1 - row;
        drawText(b.painter, QString(QChar(u'a' + printed)), {right, b.hole(static_cast<Line>(row), 1).y()}, kBackPrint,
                 b.theme.label);
    }
    for (const Line line : kBackRails) {
        if (!b.kind.hasRails()) break;
        const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
        drawText(b.painter, plus ? QStringLiteral("+") : QString(QChar(0x2212)), {right, b.hole(line, 1).y()},
                 {3, QFont::Bold}, plus ? b.theme.plusLine : b.theme.minusLine);
    }
}

/// How far from the left edge the backing may lie without hiding a hole in use.
double freeAtLeftMm(const Back& b, int board) {
    double free = b.kind.widthMm;
    const Layout& layout = *b.picture.layout;
    const auto i = static_cast<std::size_t>(board);
    for (int hole = layout.boardFirstHole[i]; hole < layout.boardFirstHole[i + 1]; ++hole) {
        if (layout.jointOfHole[static_cast<std::size_t>(hole)] < 0) continue;
        const Hole at = layout.holeAt(hole);
        free = std::min(free, b.hole(at.line, at.number).x());
    }
    return free;
}

/// What is left of the peeled backing: paper on the board at the left, rolled up along a slanting edge.
void paintFlap(const Back& b, int board) {
    const double height = b.kind.heightMm;
    const double room = freeAtLeftMm(b, board) - kFlapClearMm - kFlapRollMm;
    const double top = std::clamp(room - kFlapLeanMm, kFlapLeastMm, kFlapMostMm);
    const double bottom = top + std::clamp(room - top, 0.0, kFlapLeanMm);
    const QColor paper = b.theme.dark   ? blend(b.theme.card, Qt::white, 0.22)
                         : b.theme.flat ? b.theme.card
                                        : QColor(0xf4ead0);
    const QColor edge = b.theme.flat || b.theme.dark ? b.theme.boardEdge : blend(paper, Qt::black, 0.45);
    const auto shape = [&](double from, double to, double fromLow, double toLow) {
        QPainterPath path(QPointF(from, 0));
        path.lineTo(to, 0);
        path.lineTo(toLow, height);
        path.lineTo(fromLow, height);
        path.closeSubpath();
        return path;
    };
    b.painter.save();
    b.painter.setClipPath(roundedBox(QRectF(0, 0, b.kind.widthMm, height), kBackCornerMm), Qt::IntersectClip);
    b.painter.setPen(outlinePen(edge, b.theme.outlineMm));
    b.painter.setBrush(paper);
    b.painter.drawPath(shape(-1, top, -1, bottom));
    b.painter.setBrush(shadeAlong(b.theme, {top, height / 2}, {bottom + kFlapRollMm, height / 2},
                                  blend(paper, Qt::white, 0.6), blend(paper, Qt::black, 0.28)));
    b.painter.drawPath(shape(top, top + kFlapRollMm * 0.3, bottom, bottom + kFlapRollMm));
    b.painter.restore();
}

void paintBoardBack(QPainter& painter, const Picture& picture, int board, QPointF corner) {
    const Board& which = picture.bench().boards[static_cast<std::size_t>(board)];
    const Back back{painter, picture, *picture.theme, which, *which.kind};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(corner);
    paintBackBody(back);
    paintColumns(back);
    paintRails(back);
    paintPrinting(back);
    paintFlap(back, board);
    painter.restore();
}

void paintLeadTips(QPainter& painter, const Picture& picture) {
    const Theme& theme = *picture.theme;
    for (const Joint& joint : picture.layout->joints) {
        if (joint.hole < 0) continue;
        const QPointF at = toQt(picture.seenAt(picture.layout->holeAt(joint.hole)));
        painter.setPen(QPen(theme.dark ? QColor(0x08090b) : theme.furnishing.ink, kTipRimMm));
        painter.setBrush(theme.furnishing.steelLight);
        painter.drawEllipse(at, kTipMm, kTipMm);
    }
}

void paintTurnSign(QPainter& painter, const Picture& picture) {
    const Rect& boards = picture.table->boardsMm;
    drawText(painter, kTurnedWords, {boards.left + boards.width / 2, boards.bottom() + kSignAwayMm},
             signLettering(picture), picture.theme->dimTextOnBench);
}

}  // namespace

std::vector<QRectF> seenBoards(const Picture& picture) {
    std::vector<QRectF> frames;
    for (const Board& board : picture.bench().boards) {
        const Rect frame = board.frameMm();
        frames.push_back(QRectF(toQt(picture.table->seen({frame.left, frame.top})),
                                toQt(picture.table->seen({frame.right(), frame.bottom()})))
                             .normalized());
    }
    return frames;
}

std::vector<QRectF> hiddenAreas(const Picture& picture) {
    constexpr double kArcMm = 8;
    std::vector<QRectF> areas = seenBoards(picture);
    for (QRectF& area : areas) area.adjust(0, -kArcMm, 0, kArcMm);
    return areas;
}

void addBoardBack(Patches& patches, const Picture& picture, int board) {
    constexpr double kRoomMm = 5;  // shadow and flap
    const QRectF frame = seenBoards(picture)[static_cast<std::size_t>(board)];
    const Board& which = picture.bench().boards[static_cast<std::size_t>(board)];
    patches.push_back({frame.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm),
                       PatchLook() << "back" << std::string_view(which.kind->name) << which.rails << which.labels
                                   << picture.views.strips,
                       [&picture, board, corner = frame.topLeft()](QPainter& painter) {
                           paintBoardBack(painter, picture, board, corner);
                       }});
}

void addLeadTips(Patches& patches, const Picture& picture) {
    PatchLook look;
    for (const Joint& joint : picture.layout->joints) look << joint.hole;
    patches.push_back({toQt(picture.table->boardsMm), look << "tips",
                       [&picture](QPainter& painter) { paintLeadTips(painter, picture); }});
}

void addTurnSign(Patches& patches, const Picture& picture) {
    const Rect& boards = picture.table->boardsMm;
    const double half = textWidthMm(kTurnedWords, signLettering(picture)) / 2, middle = boards.left + boards.width / 2;
    patches.push_back({QRectF(middle - half, boards.bottom() + kSignAwayMm - picture.sizes.wordsMm, 2 * half,
                              2 * picture.sizes.wordsMm),
                       PatchLook() << kTurnedWords,
                       [&picture](QPainter& painter) { paintTurnSign(painter, picture); }});
}

}  // namespace tiepoint::ui
