#include "ui/paint/ink.h"

#include "ui/paint/shade.h"

#include <QDataStream>
#include <QIODevice>
#include <QPainter>

namespace tiepoint::ui {
namespace {

constexpr int kInkPixels = 5, kRimPixels = 9;  ///< at every zoom, as a pen on the screen
constexpr double kStepMm = 0.25;               ///< points closer than this say nothing

void stroke(QPainter& painter, const Theme& theme, const QPainterPath& path) {
    painter.strokePath(path, outlinePen(theme.arrowCasing, kRimPixels));
    painter.strokePath(path, outlinePen(theme.overload, kInkPixels));
}

}  // namespace

void Ink::begin(Point at) {
    strokes_.push_back({at});
    underWay_ = true;
    ++changes_;
}

void Ink::extend(Point at) {
    if (!underWay_ || distance(strokes_.back().back(), at) < kStepMm) return;
    strokes_.back().push_back(at);
    ++changes_;
}

void Ink::drop() {
    if (underWay_) strokes_.pop_back();
    underWay_ = false;
    ++changes_;
}

void Ink::wipe() {
    strokes_.clear();
    underWay_ = false;
    ++version_, ++changes_;
}

QPainterPath Ink::path(const Picture& picture, const QTransform& toPixels, std::size_t index) const {
    const std::vector<Point>& points = strokes_[index];
    QPainterPath path(toPixels.map(toQt(picture.table->seen(points.front()))));
    for (const Point point : points) path.lineTo(toPixels.map(toQt(picture.table->seen(point))));
    return path;
}

void Ink::keep(const Picture& picture, const QTransform& toPixels, QSize viewport, double ratio, std::size_t whole) {
    QByteArray key;
    QDataStream(&key, QIODevice::WriteOnly)
        << version_ << picture.table->turned << static_cast<int>(picture.theme->name) << toPixels << viewport << ratio
        << static_cast<quint64>(whole);
    if (key == key_) return;
    key_ = key;
    QRectF around;
    for (std::size_t i = 0; i < whole; ++i)
        around |= path(picture, toPixels, i).boundingRect().adjusted(-kRimPixels, -kRimPixels, kRimPixels, kRimPixels);
    keptAt_ = around.toAlignedRect() & QRect(QPoint(0, 0), viewport);
    kept_ = QPixmap((QSizeF(keptAt_.size()) * ratio).toSize());
    if (kept_.isNull()) return;
    kept_.setDevicePixelRatio(ratio);
    kept_.fill(Qt::transparent);
    QPainter painter(&kept_);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(-keptAt_.topLeft());
    for (std::size_t i = 0; i < whole; ++i) stroke(painter, *picture.theme, path(picture, toPixels, i));
}

void Ink::draw(QPainter& painter, const Picture& picture, const QTransform& toPixels, QSize viewport) {
    if (strokes_.empty()) return;
    const std::size_t whole = strokes_.size() - (underWay_ ? 1 : 0);
    keep(picture, toPixels, viewport, painter.device()->devicePixelRatio(), whole);
    if (!kept_.isNull()) painter.drawPixmap(keptAt_.topLeft(), kept_);
    if (!underWay_) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    stroke(painter, *picture.theme, path(picture, toPixels, whole));
    painter.restore();
}

}  // namespace tiepoint::ui
