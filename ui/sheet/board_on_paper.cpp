#include "ui/sheet/board_on_paper.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/miniature.h"
#include "ui/sheet/pages.h"
#include "ui/theme/plain_text.h"

#include <algorithm>
#include <numeric>

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

/// Frames of the labels, side by side above and below the boards, each as near to its hole as its neighbours let it. The unit is a millimetre of
/// the table.
std::vector<QRectF> labelFrames(const BoardOnPaper& board) {
    constexpr double kPadMm = 1.4, kApartMm = 1;
    const QRectF area = shownArea(*board.bench);
    std::vector<std::size_t> order(board.labels.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return holeMm(*board.bench, board.labels[i].at)->x; });
    std::vector<QRectF> frames(board.labels.size());
    double rightAbove = area.left() - kApartMm, rightBelow = rightAbove;
    for (const std::size_t i : order) {
        const bool above = isAbove(board, board.labels[i]);
        double& right = above ? rightAbove : rightBelow;
        const double width = textWidthMm(board.labels[i].words, paper::kSmall) + 2 * kPadMm;
        const double wanted = holeMm(*board.bench, board.labels[i].at)->x - width / 2;
        const double left = std::max(right + kApartMm, wanted);
        frames[i] = QRectF(left, above ? area.top() - kLabelAwayMm - kLabelHighMm : area.bottom() + kLabelAwayMm, width,
                           kLabelHighMm);
        right = frames[i].right();
    }
    return frames;
}

/// A frame with words, and a line to a ring round the hole.
void paintLabel(QPainter& painter, const BoardOnPaper& board, const BoardOnPaper::Label& label, const QRectF& frame) {
    const Point hole = *holeMm(*board.bench, label.at);
    constexpr double kRingMm = 1.1;
    const bool above = isAbove(board, label);
    painter.setPen(QPen(paper::ink(), 0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(hole.x, hole.y), kRingMm, kRingMm);
    const double from = above ? frame.bottom() : frame.top(), to = hole.y + (above ? -kRingMm : kRingMm);
    painter.drawLine(QPointF(std::clamp(hole.x, frame.left() + kRingMm, frame.right() - kRingMm), from),
                     QPointF(hole.x, to));
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
    const std::vector<QRectF> frames = labelFrames(board);
    for (std::size_t i = 0; i < frames.size(); ++i) paintLabel(painter, board, board.labels[i], frames[i]);
    painter.restore();
}

BoardOnPaper boardsAlone(const Bench& bench) {
    BoardOnPaper board;
    std::vector<std::string> ids;
    for (const Part& part : bench.parts) {
        if (!standsOnTable(part)) {
            ids.push_back(part.id);
            continue;
        }
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            if (!part.leads[lead]) continue;
            const bool plus = part.kind->leads[lead].name == "+";
            const QString which = part.kind->isSupply ? plus ? QStringLiteral("red lead") : QStringLiteral("black lead")
                                                      : plainText(part.kind->leads[lead].name);
            board.labels.push_back({*part.leads[lead], QStringLiteral("%1 of %2").arg(which, plainText(part.id))});
        }
    }
    for (const Jumper& jumper : bench.jumpers) {
        ids.push_back(jumper.id);
        for (const int end : {0, 1}) {
            const Socket* socket = std::get_if<Socket>(&jumper.ends[static_cast<std::size_t>(end)]);
            const Hole* hole = std::get_if<Hole>(&jumper.ends[static_cast<std::size_t>(1 - end)]);
            const Part* box = socket ? bench.findPart(socket->part) : nullptr;
            if (!box || !hole) continue;
            board.labels.push_back(
                {*hole, QStringLiteral("%1 to %2 of %3")
                            .arg(plainText(jumper.id),
                                 plainText(box->kind->leads[static_cast<std::size_t>(socket->lead)].name),
                                 plainText(box->id))});
        }
    }
    board.bench = std::make_shared<const Bench>(onlyThese(bench, ids));
    return board;
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
