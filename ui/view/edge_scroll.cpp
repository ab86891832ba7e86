#include "ui/view/edge_scroll.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kScrollTickMs = 16;
constexpr double kEdgePixels = 2;  ///< a window that fills the screen has nothing beyond its edge
constexpr double kSlowest = 4, kFastest = 24, kFasterPerPixel = 0.15;

/// Of a pointer at `at`, between two edges: how far what is seen is to move.
double stepBetween(double first, double last, double at) {
    const double before = first + kEdgePixels - at, beyond = at - (last - kEdgePixels);
    const double out = std::max(before, beyond);
    if (out <= 0) return 0;
    const double step = std::min(kFastest, kSlowest + kFasterPerPixel * out);
    return before > beyond ? step : -step;
}

}  // namespace

EdgeScroll::EdgeScroll(QWidget& viewport) : viewport_(viewport) {
    connect(&ticking_, &QTimer::timeout, this, &EdgeScroll::tick);
}

QPointF EdgeScroll::stepAt(QPointF pointer) const {
    const QRectF room = viewport_.rect();
    return {stepBetween(room.left(), room.right(), pointer.x()), stepBetween(room.top(), room.bottom(), pointer.y())};
}

void EdgeScroll::follow(QPointF pointer) {
    pointer_ = pointer;
    if (stepAt(pointer).isNull())
        ticking_.stop();
    else if (!ticking_.isActive())
        ticking_.start(kPauseMs);
}

void EdgeScroll::tick() {
    ticking_.setInterval(kScrollTickMs);
    Q_EMIT scrolled(stepAt(pointer_));
}

}  // namespace tiepoint::ui
