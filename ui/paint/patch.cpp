#include "ui/paint/patch.h"

namespace tiepoint::ui {

void paintPatch(QPainter& painter, const Patch& patch) {
    const double before = painter.opacity();
    painter.setOpacity(before * patch.opacity);
    patch.paint(painter);
    painter.setOpacity(before);
}

void paintPatches(QPainter& painter, const Patches& patches) {
    for (const Patch& patch : patches) paintPatch(painter, patch);
}

}  // namespace tiepoint::ui
