#pragma once
// Where the bench lies in the viewport for one frame, in device pixels.

#include <QPoint>
#include <QRectF>
#include <QSize>
#include <QTransform>

namespace tiepoint::ui {

struct Frame {
    double pixelsPerMm = 8;
    QPoint origin;  ///< of the bench (0,0 mm) in the viewport; whole pixels, so that sprites stay sharp
    QSize viewport;
    double devicePixelRatio = 1;
    QRectF contentMm;  ///< nothing is drawn outside of it

    QTransform toPixels() const { return QTransform(pixelsPerMm, 0, 0, pixelsPerMm, origin.x(), origin.y()); }
    friend bool operator==(const Frame&, const Frame&) = default;
};

}  // namespace tiepoint::ui
