#include "ui/paint/path_engine.h"

#include <QPolygonF>

#include <cmath>

namespace tiepoint::ui {

void PathEngine::updateState(const QPaintEngineState& now) {
    const DirtyFlags dirty = now.state();
    if (dirty & DirtyTransform) {
        toDevice_ = now.transform();
        scale_ = std::sqrt(std::abs(toDevice_.determinant()));
    }
    if (dirty & DirtyPen) pen_ = now.pen();
    if (dirty & DirtyBrush) brush_ = now.brush();
    if (dirty & DirtyOpacity) opacity_ = now.opacity();
}

void PathEngine::updateClip(const QPaintEngineState& now) {
    const DirtyFlags dirty = now.state();
    const auto narrow = [this](const QPainterPath& path, Qt::ClipOperation operation) {
        isClipping_ = operation != Qt::NoClip;
        if (operation != Qt::IntersectClip) clip_.clear();
        if (isClipping_) clip_.push_back(toDevice_.map(path));
    };
    if (dirty & DirtyClipPath) narrow(now.clipPath(), now.clipOperation());
    if (dirty & DirtyClipRegion) {
        QPainterPath path;
        path.addRegion(now.clipRegion());
        narrow(path, now.clipOperation());
    }
    if (dirty & DirtyClipEnabled) isClipping_ = now.isClipEnabled();
}

const std::vector<QPainterPath>& PathEngine::clip() const {
    static const std::vector<QPainterPath> kAnywhere;
    return isClipping_ ? clip_ : kAnywhere;
}

void PathEngine::drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) {
    QPainterPath path;
    path.addPolygon(QPolygonF(QList<QPointF>(points, points + count)));
    path.setFillRule(mode == WindingMode ? Qt::WindingFill : Qt::OddEvenFill);
    if (mode != PolylineMode) path.closeSubpath();
    draw(path, mode != PolylineMode);
}

void PathEngine::drawLines(const QLineF* lines, int count) {
    QPainterPath path;
    for (int i = 0; i < count; ++i) path.moveTo(lines[i].p1()), path.lineTo(lines[i].p2());
    draw(path, false);
}

void PathEngine::drawRects(const QRectF* rects, int count) {
    for (int i = 0; i < count; ++i) {
        QPainterPath path;
        path.addRect(rects[i]);
        draw(path, true);
    }
}

void PathEngine::drawEllipse(const QRectF& rect) {
    QPainterPath path;
    path.addEllipse(rect);
    draw(path, true);
}

QBrush mappedBrush(QBrush brush, const QTransform& toDevice) {
    if (brush.style() != Qt::SolidPattern) brush.setTransform(brush.transform() * toDevice);
    return brush;
}

}  // namespace tiepoint::ui
