#include "ui/sheet/board_on_paper.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/miniature.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kAroundMm = 1;  ///< of the table, so that the board's own edge is whole
constexpr double kPrintedPixelsPerMm = 47;

QRectF shownArea(const Bench& bench) {
    const Rect frame = boardsFrameMm(bench);
    return QRectF(frame.left, frame.top, frame.width, frame.height)
        .adjusted(-kAroundMm, -kAroundMm, kAroundMm, kAroundMm);
}

}  // namespace

QSizeF sizeOnPaper(const BoardOnPaper& board) { return shownArea(*board.bench).size() * board.scale; }

void paintOnPaper(QPainter& painter, QPointF topLeft, const BoardOnPaper& board) {
    Picture picture;
    picture.layout = buildLayout(board.bench);
    picture.theme = &theme(ThemeName::Projector);
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
    painter.translate(-area.topLeft());
    painter.setClipRect(area);
    paintBench(painter, picture);
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
