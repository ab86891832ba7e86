#pragma once
// Where a view looks: zoom in steps about a point, pan, fit. While zooming, a picture of the view is scaled in place of the bench;
// the bench is drawn anew shortly after the last step.

#include "core/base/geometry.h"

#include <QGraphicsView>
#include <QImage>
#include <QTimer>

namespace tiepoint::ui {

class Camera : public QObject {
    Q_OBJECT
public:
    explicit Camera(QGraphicsView& view);

    /// Shows an area (mm) as large as it fits, and keeps doing so when the view changes its size, until the next zoom or pan.
    void fit(const QRectF& areaMm);
    /// The same for another area, if it still does so.
    void refit(const QRectF& areaMm);
    bool isFitted() const { return fitted_; }
    /// The bench now fills this area: while fitted, and if it no longer is in sight, fits it.
    void include(const QRectF& areaMm);
    /// Zooms so that the point under `at` (viewport pixels) stays there. The zoom is that of the next step once it settles.
    void zoomAt(QPointF at, double factor);
    void panBy(QPointF pixels);

    /// Pixels for a millimetre at which an area just fits.
    double scaleToFit(const QRectF& areaMm) const;
    double pixelsPerMm() const { return view_.transform().m11(); }
    /// Between places of the viewport, in logical pixels, and of the bench.
    Point toMm(QPointF inView) const;
    QPointF fromMm(Point mm) const;
    QRectF sight() const { return view_.viewport()->rect(); }  ///< all of the viewport, in logical pixels
    bool isZooming() const { return !still_.isNull(); }
    /// Draws the scaled picture of the bench while zooming.
    void paintStill(QPainter& painter) const;
    /// Ends the zoom at once.
    void settle();

Q_SIGNALS:
    void moved();    ///< another zoom or place
    void settled();  ///< after a zoom

private:
    void setScale(double pixelsPerMm);
    void holdAt(QPointF at, QPointF mm);

    QGraphicsView& view_;
    QRectF area_;
    bool fitted_ = true;
    QImage still_;
    QTransform stillFrom_;  ///< viewport transform when it was taken
    QPointF zoomAt_;
    QTimer settling_;
};

}  // namespace tiepoint::ui
