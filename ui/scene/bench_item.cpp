#include "ui/scene/bench_item.h"

namespace tiepoint::ui {

BenchItem::BenchItem(const Picture& picture, std::string id) : picture_(picture), id_(std::move(id)) {
    setAcceptedMouseButtons(Qt::NoButton);
}

void BenchItem::lie(const QRectF& bounds, Level level, int index) {
    constexpr double kMostThings = 1 << 20;  // no list is longer
    setZValue(static_cast<double>(level) + index / kMostThings);
    if (bounds == bounds_) return;
    prepareGeometryChange();
    bounds_ = bounds;
}

void BenchItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    Patches patches;
    addPatches(patches);
    paintPatches(*painter, *picture_.theme, patches);
}

}  // namespace tiepoint::ui
