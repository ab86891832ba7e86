#include "ui/sheet/board_on_paper.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/miniature.h"
#include "ui/sheet/pages.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kAroundMm = 1;  ///< of the table, so that the board's own edge is whole
constexpr double kPrintedPixelsPerMm = 47;
constexpr double kLabelHighMm = 4.6, kLabelAwayMm = 2.4;

QRectF shownArea(const Bench& bench) {
    const Rect frame = boardsFrameMm(bench);
    return QRectF(frame.left, frame.top, frame.width, frame.height)
        .adjusted(-kAroundMm, -kAroundMm, kAroundMm, kAroundMm);
}

/// The flat look with marks in ink: no colour of it means anything.
const Theme& paperTheme() {
    static const Theme kTheme = [] {
        Theme of = theme(ThemeName::Projector);
        of.accent = paper::ink();
        return of;
    }();
    return kTheme;
}

bool isAbove(const BoardOnPaper& board, const BoardOnPaper::Label& label) {
    const QRectF area = shownArea(*board.bench);
    return holeMm(*board.bench, label.at)->y < area.center().y();
}
/// Room for labels above and below.
double labelRoom(const BoardOnPaper& board, bool above) {
    const bool any = std::ranges::any_of(board.labels, [&](const auto& each) { return isAbove(board, each) == above; });
    return any ? kLabelHighMm + kLabelAwayMm : 0;
}

/// A frame with words, and a line to a ring round the hole. The painter's unit is a millimetre of the table.
void paintLabel(QPainter& painter, const BoardOnPaper& board, const BoardOnPaper::Label& label) {
    const QRectF area = shownArea(*board.bench);
    const Point hole = *holeMm(*board.bench, label.at);
    constexpr double kRingMm = 1.1, kPadMm = 1.4;
    const bool above = isAbove(board, label);
    const double width = textWidthMm(label.words, paper::kSmall) + 2 * kPadMm;
    const double left = std::clamp(hole.x - width / 2, area.left(), std::max(area.left(), area.right() - width));
    const double top = above ? area.top() - kLabelAwayMm - kLabelHighMm : area.bottom() + kLabelAwayMm;
    const QRectF frame(left, top, width, kLabelHighMm);
    painter.setPen(QPen(paper::ink(), 0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(hole.x, hole.y), kRingMm, kRingMm);
    const double from = above ? frame.bottom() : frame.top(), to = hole.y + (above ? -kRingMm : kRingMm);
    painter.drawLine(QPointF(hole.x, from), QPointF(hole.x, to));
    painter.drawRoundedRect(frame, 0.8, 0.8);
    drawText(painter, label.words, frame.center(), paper::kSmall, paper::ink());
}

}  // namespace

QSizeF sizeOnPaper(const BoardOnPaper& board) {
    const double labels = labelRoom(board, true) + labelRoom(board, false);
    return (shownArea(*board.bench).size() + QSizeF(0, labels)) * board.scale;
}

void paintOnPaper(QPainter& painter, QPointF topLeft, const BoardOnPaper& board) {
    Picture picture;
    picture.layout = buildLayout(board.bench);
    picture.theme = &paperTheme();
    picture.views.arrows = Arrows::Off;
    picture.views.readings = false;
    picture.marks.selected = board.bracketed;
    picture.marks.guide = board.ringed;
    picture.isOnPaper = true;
    picture.pixelsPerMm = kPrintedPixelsPerMm;
    picture.arrangeTable();
    const QRectF area = shownArea(*board.bench);
    painter.save();
    painter.translate(topLeft);
    painter.scale(board.scale, board.scale);
    painter.translate(-area.left(), labelRoom(board, true) - area.top());
    painter.setClipRect(area);
    paintBench(painter, picture);
    painter.setClipping(false);
    for (const BoardOnPaper::Label& label : board.labels) paintLabel(painter, board, label);
    painter.restore();
}

Bench onlyThese(const Bench& bench, const std::vector<std::string>& ids) {
    const auto goes = [&](const auto& each) { return std::ranges::find(ids, each.id) == ids.end(); };
    Bench some = bench;
    some.notes.clear();
    some.pinned.clear();
    std::erase_if(some.parts, goes);
    std::erase_if(some.jumpers, [&](const Jumper& jumper) {
        if (goes(jumper)) return true;
        return std::ranges::any_of(jumper.ends, [&](const JumperEnd& end) {  // of a supply that isn't there yet
            const Socket* socket = std::get_if<Socket>(&end);
            return socket != nullptr && some.findPart(socket->part) == nullptr;
        });
    });
    return some;
}

}  // namespace tiepoint::ui
