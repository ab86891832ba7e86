#include "ui/paint/board_back.h"

#include "ui/paint/label_painter.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/shade.h"
#include "ui/paint/tag_ground.h"

#include <algorithm>
#include <array>

namespace tiepoint::ui {
namespace {

constexpr double kBackCornerMm = 1.2;
constexpr double kEdgeLetterMm = 1.8;
constexpr double kNumberAwayMm = 2.0;  ///< beyond rows a and j, clear of the open metal
constexpr Lettering kBackPrint{1.62, QFont::Normal}, kRailSign{3, QFont::Bold};
constexpr int kBackNumberEvery = 5;
constexpr double kSlotMm = 0.34, kSlotLongMm = 0.9;  ///< the mouth of a clip, seen from below
constexpr double kTipMm = 0.52, kTipRimMm = 0.24;    ///< radius of a lead's end
constexpr double kFlapLeastMm = 2.2, kFlapMostMm = 9.5, kFlapLeanMm = 8, kFlapRollMm = 3.2, kFlapClearMm = 2;
constexpr double kSignEm = 1.5;
const QString kTurnedWords = QStringLiteral("Underside: columns run from right to left. Key 5 turns it back.");
const std::array kBackRails{Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};

/// Where a hole is seen, in the frame of the board's own back.
Point holeBehind(const BoardKind& kind, Line line, int number) {
    const Point front = kind.holeMm(line, number);
    return {kind.widthMm - front.x, front.y};
}

struct BackBodyMark {
    const BoardKind* kind;
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF frame(0, 0, kind->widthMm, kind->heightMm);
        drawSoftShadow(painter, theme, frame, kBackCornerMm, {1.5, 1.7}, 1.5);
        painter.setBrush(shadeDown(theme, frame, theme.boardBottom, blend(theme.boardBottom, theme.boardEdge, 0.18)));
        painter.setPen(outlinePen(theme.boardEdge, theme.outlineMm));
        painter.drawPath(roundedBox(frame, kBackCornerMm));
    }
    friend bool operator==(const BackBodyMark&, const BackBodyMark&) = default;
};

/// The clips of one strip: the bent sheet with a mouth for each hole.
struct ClipsMark {
    std::vector<Point> holes;  ///< from the first
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF frame = stripFrame(toQt(holes.front()), toQt(holes.back()));
        paintMetal(painter, theme, frame);
        const bool lies = frame.width() > frame.height();
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(theme.hole, 0.85));
        const QSizeF slot = lies ? QSizeF(kSlotLongMm, kSlotMm) : QSizeF(kSlotMm, kSlotLongMm);
        for (const Point at : holes)
            painter.drawPath(
                roundedBox(QRectF(toQt(at) - QPointF(slot.width(), slot.height()) / 2, slot), kSlotMm / 2));
    }
    friend bool operator==(const ClipsMark&, const ClipsMark&) = default;
};

enum class BackInk { Label, Plus, Minus };

struct BackWordMark {
    QString word;
    BackInk ink = BackInk::Label;
    void paint(QPainter& painter, const Theme& theme) const {
        drawText(painter, word, {0, 0}, ink == BackInk::Label ? kBackPrint : kRailSign,
                 ink == BackInk::Label  ? theme.label
                 : ink == BackInk::Plus ? theme.plusLine
                                        : theme.minusLine);
    }
    friend bool operator==(const BackWordMark&, const BackWordMark&) = default;
};

void addClips(Patches& patches, Point corner, const std::vector<Point>& holes) {
    if (holes.empty()) return;
    constexpr double kRoomMm = 0.2;
    ClipsMark mark;
    for (const Point hole : holes) mark.holes.push_back(placeFrom(holes.front(), hole));
    const QRectF frame = stripFrame(toQt(mark.holes.front()), toQt(mark.holes.back()));
    patches.push_back(
        movablePatch(corner + holes.front(), frame.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm), std::move(mark)));
}

void addColumns(Patches& patches, const BoardSeen& board) {
    constexpr int kHalf = kRowCount / 2;
    for (int column = 1; column <= board.kind->columns; ++column) {
        for (const int first : {0, kHalf}) {
            std::vector<Point> holes;
            for (int row = first; row < first + kHalf; ++row)
                holes.push_back(holeBehind(*board.kind, static_cast<Line>(row), column));
            addClips(patches, board.corner, holes);
        }
    }
}

void addRails(Patches& patches, const BoardSeen& board) {
    for (const Line line : kBackRails) {
        std::vector<Point> holes;
        int strip = -1;
        for (int number = 1; board.kind->has(line, number); ++number) {
            const int here = board.kind->stripIndex(board.rails, line, number);
            if (here != strip) {
                addClips(patches, board.corner, holes);
                holes.clear();
            }
            strip = here;
            holes.push_back(holeBehind(*board.kind, line, number));
        }
        addClips(patches, board.corner, holes);
    }
}

void addPrinting(Patches& patches, const BoardSeen& board) {
    const BoardKind& kind = *board.kind;
    const auto add = [&](const QString& word, Point at, BackInk ink = BackInk::Label) {
        const double half = ink == BackInk::Label ? kBackPrint.sizeMm : kRailSign.sizeMm;
        patches.push_back(movablePatch(board.corner + at, {-half, -half, 2 * half, 2 * half}, BackWordMark{word, ink}));
    };
    for (int column = 1; column <= kind.columns; ++column) {
        if (column != 1 && column % kBackNumberEvery != 0) continue;
        const QString number = QString::number(column);
        add(number, holeBehind(kind, Line::A, column) - Point{0, kNumberAwayMm});
        add(number, holeBehind(kind, Line::J, column) + Point{0, kNumberAwayMm});
    }
    const double right = kind.widthMm - kEdgeLetterMm;
    for (int row = 0; row < kRowCount; ++row) {
        const int printed = board.labels == Labels::ATop ? row : kRowCount - 1 - row;
        add(QString(QChar(u'a' + printed)), {right, holeBehind(kind, static_cast<Line>(row), 1).y});
    }
    for (const Line line : kBackRails) {
        if (!kind.hasRails()) break;
        const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
        add(plus ? QStringLiteral("+") : QString(QChar(0x2212)), {right, holeBehind(kind, line, 1).y},
            plus ? BackInk::Plus : BackInk::Minus);
    }
}

/// What is left of the peeled backing: paper on the board at the left, rolled up along a slanting edge.
struct FlapMark {
    const BoardKind* kind;
    double freeAtLeftMm;

    double topMm() const { return std::clamp(roomMm() - kFlapLeanMm, kFlapLeastMm, kFlapMostMm); }
    double bottomMm() const { return topMm() + std::clamp(roomMm() - topMm(), 0.0, kFlapLeanMm); }
    void paint(QPainter& painter, const Theme& theme) const {
        const double height = kind->heightMm, top = topMm(), bottom = bottomMm();
        const QColor paper = theme.dark   ? blend(theme.card, Qt::white, 0.22)
                             : theme.flat ? theme.card
                                          : QColor(0xf4ead0);
        const QColor edge = theme.flat || theme.dark ? theme.boardEdge : blend(paper, Qt::black, 0.45);
        const auto shape = [&](double from, double to, double fromLow, double toLow) {
            QPainterPath path(QPointF(from, 0));
            path.lineTo(to, 0);
            path.lineTo(toLow, height);
            path.lineTo(fromLow, height);
            path.closeSubpath();
            return path;
        };
        painter.save();
        painter.setClipPath(roundedBox(QRectF(0, 0, kind->widthMm, height), kBackCornerMm), Qt::IntersectClip);
        painter.setPen(outlinePen(edge, theme.outlineMm));
        painter.setBrush(paper);
        painter.drawPath(shape(-1, top, -1, bottom));
        painter.setBrush(shadeAlong(theme, {top, height / 2}, {bottom + kFlapRollMm, height / 2},
                                    blend(paper, Qt::white, 0.6), blend(paper, Qt::black, 0.28)));
        painter.drawPath(shape(top, top + kFlapRollMm * 0.3, bottom, bottom + kFlapRollMm));
        painter.restore();
    }
    friend bool operator==(const FlapMark&, const FlapMark&) = default;

private:
    double roomMm() const { return freeAtLeftMm - kFlapClearMm - kFlapRollMm; }
};

struct LeadTipMark {
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setPen(QPen(theme.dark ? QColor(0x08090b) : theme.furnishing.ink, kTipRimMm));
        painter.setBrush(theme.furnishing.steelLight);
        painter.drawEllipse(QPointF(0, 0), kTipMm, kTipMm);
    }
    friend bool operator==(const LeadTipMark&, const LeadTipMark&) = default;
};

struct TurnSignMark {
    double wordsMm;
    void paint(QPainter& painter, const Theme& theme) const {
        drawText(painter, kTurnedWords, {0, 0}, {wordsMm, QFont::Medium}, theme.dimTextOnBench);
    }
    friend bool operator==(const TurnSignMark&, const TurnSignMark&) = default;
};

}  // namespace

double freeAtLeftMm(const Picture& picture, int board) {
    const Layout& layout = *picture.layout;
    const auto i = static_cast<std::size_t>(board);
    const BoardKind& kind = *picture.bench().boards[i].kind;
    double free = kind.widthMm;
    for (int hole = layout.boardFirstHole[i]; hole < layout.boardFirstHole[i + 1]; ++hole) {
        if (layout.jointOfHole[static_cast<std::size_t>(hole)] < 0) continue;
        const Hole at = layout.holeAt(hole);
        free = std::min(free, holeBehind(kind, at.line, at.number).x);
    }
    return free;
}

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

std::vector<Rect> hiddenFrames(const Picture& picture) {
    std::vector<Rect> frames;
    if (!picture.table->turned) return frames;
    for (const QRectF& area : hiddenAreas(picture)) frames.push_back(fromQt(area));
    return frames;
}

void addBoardBack(Patches& patches, const BoardSeen& board) {
    constexpr double kRoomMm = 5;  // shadow
    const QRectF frame(0, 0, board.kind->widthMm, board.kind->heightMm);
    patches.push_back(
        movablePatch(board.corner, frame.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm), BackBodyMark{board.kind}));
    patches.back().opaque = fromQt(frame.adjusted(kBackCornerMm, kBackCornerMm, -kBackCornerMm, -kBackCornerMm));
    addColumns(patches, board);
    addRails(patches, board);
    addPrinting(patches, board);
    const FlapMark flap{board.kind, board.freeAtLeftMm};
    const double width = std::max(flap.topMm(), flap.bottomMm()) + kFlapRollMm + 1;
    patches.push_back(movablePatch(board.corner, {0, 0, width, board.kind->heightMm}, flap));
}

void addLeadTips(Patches& patches, const Picture& picture) {
    constexpr double kReachMm = kTipMm + kTipRimMm;
    for (const Joint& joint : picture.layout->joints) {
        if (joint.hole < 0) continue;
        patches.push_back(movablePatch(picture.seenAt(picture.layout->holeAt(joint.hole)),
                                       {-kReachMm, -kReachMm, 2 * kReachMm, 2 * kReachMm}, LeadTipMark{}));
    }
}

double turnSignMm(const WordSizes& sizes) { return kSignEm * sizes.wordsMm; }

void addTurnSign(Patches& patches, const Rect& boards, const WordSizes& sizes) {
    const double em = sizes.wordsMm, half = textWidthMm(kTurnedWords, {em, QFont::Medium}) / 2;
    const double y = boards.bottom() + tagBandMm(sizes.readingMm) + turnSignMm(sizes) / 2;
    patches.push_back(
        movablePatch({boards.left + boards.width / 2, y}, {-half, -em, 2 * half, 2 * em}, TurnSignMark{em}));
}

}  // namespace tiepoint::ui
