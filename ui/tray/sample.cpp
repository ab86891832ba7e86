#include "ui/tray/sample.h"

#include "ui/paint/bench_painter.h"

#include <QPicture>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kJumperMm = 17;
constexpr double kRecordScale = 64;  // a recorded picture knows its bounds in whole units only

void paintInMm(QPainter& painter, const Theme& theme, const TrayItem& item) {
    if (item.part)
        paintSample(painter, theme, *item.part);
    else
        paintJumperSample(painter, theme, item.jumperColour, kJumperMm);
}

}  // namespace

QRectF itemExtentMm(const Theme& theme, const TrayItem& item) {
    QPicture record;
    QPainter painter(&record);
    painter.scale(kRecordScale, kRecordScale);
    paintInMm(painter, theme, item);
    painter.end();
    const QRectF bounds = record.boundingRect();
    return {bounds.topLeft() / kRecordScale, bounds.size() / kRecordScale};
}

void paintItem(QPainter& painter, const Theme& theme, const TrayItem& item, const QRectF& box,
               double largestPixelsPerMm) {
    const QRectF extent = itemExtentMm(theme, item);
    if (extent.isEmpty()) return;
    const double scale = std::min({box.width() / extent.width(), box.height() / extent.height(), largestPixelsPerMm});
    painter.save();
    painter.translate(box.center());
    painter.scale(scale, scale);
    painter.translate(-extent.center());
    paintInMm(painter, theme, item);
    painter.restore();
}

}  // namespace tiepoint::ui
