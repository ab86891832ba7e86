#include "ui/paint/patch.h"

#include <cmath>

namespace tiepoint::ui {

Point placeFrom(Point origin, Point at) {
    constexpr double kPerMm = 1e6;
    const auto rounded = [](double mm) { return std::round(mm * kPerMm) / kPerMm; };
    return {rounded(at.x - origin.x), rounded(at.y - origin.y)};
}

void paintPatch(QPainter& painter, const Theme& theme, const Patch& patch) {
    const double opacity = painter.opacity();
    const QTransform transform = painter.transform();
    painter.setOpacity(opacity * patch.opacity);
    painter.translate(patch.at.x, patch.at.y);
    patch.drawing->paint(painter, theme);
    painter.setTransform(transform);
    painter.setOpacity(opacity);
}

void paintPatches(QPainter& painter, const Theme& theme, const Patches& patches) {
    for (const Patch& patch : patches) paintPatch(painter, theme, patch);
}

}  // namespace tiepoint::ui
