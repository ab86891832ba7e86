#include "ui/paint/miniature.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/paint/shade.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kCornerPx = 5, kCornerBreadthPx = 1.6, kCornerAwayPx = 2;

Inputs everyCapHeld(const Bench& bench) {
    Inputs inputs;
    for (const Part& part : bench.parts)
        if (part.kind->hasCap) inputs.held.insert(part.id);
    return inputs;
}

Picture pictureOf(const Miniature& miniature) {
    Picture picture;
    if (miniature.live) {
        picture.snapshot = evaluate(miniature.bench, miniature.pressed ? everyCapHeld(*miniature.bench) : Inputs{});
        picture.layout = picture.snapshot->layout;
    } else {
        picture.layout = buildLayout(miniature.bench);
    }
    picture.theme = miniature.theme;
    picture.views = miniature.views;
    picture.views.readings = false;  // nobody could read them
    picture.marks.guide = miniature.pointed;
    picture.marks.hop = miniature.hop;
    picture.arrangeTable();
    return picture;
}

/// Around the things of a bench that are held by corners; empty without any.
QRectF aroundThings(const Picture& picture, const std::vector<std::string>& ids) {
    QRectF around;
    for (const std::string& id : ids) {
        if (const int part = picture.bench().partIndex(id); part >= 0)
            around |= partShape(picture, part).boundingRect();
        else if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0)
            around |= jumperShape(picture, jumper).boundingRect();
        else if (const Board* board = picture.bench().findBoard(id))
            around |= toQt(board->frameMm());
    }
    return around;
}

void paintCorners(QPainter& painter, const Theme& theme, const QRectF& around, double ratio) {
    const double reach = kCornerPx * ratio;
    QPainterPath corners;
    for (const auto& [corner, dx, dy] :
         {std::tuple{around.topLeft(), 1, 1}, std::tuple{around.topRight(), -1, 1},
          std::tuple{around.bottomLeft(), 1, -1}, std::tuple{around.bottomRight(), -1, -1}}) {
        corners.moveTo(corner + QPointF(dx * reach, 0));
        corners.lineTo(corner);
        corners.lineTo(corner + QPointF(0, dy * reach));
    }
    painter.setBrush(Qt::NoBrush);
    painter.strokePath(corners, outlinePen(theme.arrowCasing, 2.2 * kCornerBreadthPx * ratio));
    painter.strokePath(corners, outlinePen(theme.accent, kCornerBreadthPx * ratio));
}

}  // namespace

Rect boardsFrameMm(const Bench& bench) {
    QRectF around;
    for (const Board& board : bench.boards) around |= toQt(board.frameMm());
    if (around.isEmpty()) return makeNewBench().boards.front().frameMm();
    return fromQt(around);
}

QImage paintMiniature(const Miniature& miniature) {
    QImage image(miniature.size * miniature.ratio, QImage::Format_RGB32);
    image.fill(miniature.theme->benchTop);
    Picture picture = pictureOf(miniature);
    const Rect all = miniature.frameMm.value_or(picture.table->allMm);
    const double scale = std::min(miniature.size.width() / all.width, miniature.size.height() / all.height);
    picture.pixelsPerMm = scale * miniature.ratio;
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(image.width() / 2.0, image.height() / 2.0);
    painter.scale(picture.pixelsPerMm, picture.pixelsPerMm);
    painter.translate(-(all.left + all.width / 2), -(all.top + all.height / 2));
    paintBench(painter, picture);
    QRectF around = aroundThings(picture, miniature.cornered);
    if (around.isEmpty() && miniature.before && !miniature.cornered.empty()) {
        Miniature before = miniature;
        before.bench = miniature.before;
        around = aroundThings(pictureOf(before), miniature.cornered);
    }
    if (!around.isEmpty()) {
        const double away = kCornerAwayPx * miniature.ratio;
        const QRectF pixels = painter.transform().mapRect(around).adjusted(-away, -away, away, away);
        painter.resetTransform();
        paintCorners(painter, *miniature.theme, pixels, miniature.ratio);
    }
    painter.end();
    image.setDevicePixelRatio(miniature.ratio);
    return image;
}

}  // namespace tiepoint::ui
