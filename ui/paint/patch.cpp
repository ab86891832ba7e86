#include "ui/paint/patch.h"

namespace tiepoint::ui {

void paintPatches(QPainter& painter, const Patches& patches) {
    for (const Patch& patch : patches) patch.paint(painter);
}

}  // namespace tiepoint::ui
