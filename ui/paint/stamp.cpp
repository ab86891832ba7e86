#include "ui/paint/stamp.h"

namespace tiepoint::ui {
namespace {

/// Porter and Duff's "over" for premultiplied colours, two channels at a time; rounds as division by 255 does.
inline QRgb over(QRgb above, QRgb below) {
    constexpr QRgb kTwo = 0x00ff00ff, kHalf = 0x00800080;
    const QRgb through = 255 - (above >> 24);
    QRgb low = (below & kTwo) * through, high = ((below >> 8) & kTwo) * through;
    low = ((low + ((low >> 8) & kTwo) + kHalf) >> 8) & kTwo;
    high = (high + ((high >> 8) & kTwo) + kHalf) & ~kTwo;
    return above + (low | high);
}

}  // namespace

void stampOver(QImage& target, QPoint at, const QImage& stamp) {
    const QRect rect = QRect(at, stamp.size()) & target.rect();
    for (int y = rect.top(); y <= rect.bottom(); ++y) {
        const QRgb* from = reinterpret_cast<const QRgb*>(stamp.constScanLine(y - at.y())) + (rect.left() - at.x());
        QRgb* to = reinterpret_cast<QRgb*>(target.scanLine(y)) + rect.left();
        for (int x = 0; x < rect.width(); ++x) {
            if (from[x] != 0) to[x] = over(from[x], to[x]);
        }
    }
}

}  // namespace tiepoint::ui
