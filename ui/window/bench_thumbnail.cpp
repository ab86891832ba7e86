#include "ui/window/bench_thumbnail.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/pixel_sheet.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

Inputs everyCapHeld(const Bench& bench) {
    Inputs inputs;
    for (const Part& part : bench.parts)
        if (part.kind->hasCap) inputs.held.insert(part.id);
    return inputs;
}

Picture pictureOf(const std::shared_ptr<const Bench>& bench, const Theme& theme) {
    Picture picture;
    picture.snapshot = evaluate(bench, everyCapHeld(*bench));
    picture.layout = picture.snapshot->layout;
    picture.table = std::make_shared<const Table>(arrange(*bench));
    picture.theme = &theme;
    picture.views.readings = false;
    return picture;
}

}  // namespace

QPixmap benchThumbnail(const std::shared_ptr<const Bench>& bench, const Theme& theme, QSize size, double ratio) {
    QImage image(size * ratio, QImage::Format_RGB32);
    image.fill(theme.benchTop);
    Picture picture = pictureOf(bench, theme);
    const Rect all = picture.table->allMm;
    const double scale = std::min(size.width() / all.width, size.height() / all.height);
    picture.pixelsPerMm = scale * ratio;
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(image.width() / 2.0, image.height() / 2.0);
    painter.scale(picture.pixelsPerMm, picture.pixelsPerMm);
    painter.translate(-(all.left + all.width / 2), -(all.top + all.height / 2));
    paintBench(painter, picture);
    painter.end();
    QPixmap pixmap = QPixmap::fromImage(image);
    pixmap.setDevicePixelRatio(ratio);
    return pixmap;
}

}  // namespace tiepoint::ui
