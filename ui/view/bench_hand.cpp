#include "ui/view/bench_hand.h"

namespace tiepoint::ui {

QStringList BenchHand::touchedBy(const QRectF& band) const {
    QStringList ids;
    for (const std::string& id : needs_.scene.touchedBy(band)) ids << QString::fromStdString(id);
    return ids;
}

void BenchHand::releaseAll() {
    latched_.clear();
    needs_.live.releaseAll();
}

}  // namespace tiepoint::ui
