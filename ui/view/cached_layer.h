#pragma once
// A layer of the bench kept as pixels: painted once for a key (what it shows) and a scale, then only stamped while the view pans or
// arrows move. Holds what is in sight and a margin around it. Empty tiles are thrown away, so that sparse layers cost little to stamp.

#include <QPainter>
#include <QPixmap>

#include <functional>
#include <vector>

namespace tiepoint::ui {

/// Where the bench lies in the viewport for one frame.
struct Frame {
    double pixelsPerMm = 8;  ///< logical pixels
    QPoint origin;           ///< of the bench (0,0 mm) in the viewport; whole pixels, so that stamps stay sharp
    QSize viewport;
    double devicePixelRatio = 1;
    QRectF contentMm;        ///< nothing is drawn outside of it

    QTransform toPixels() const { return QTransform(pixelsPerMm, 0, 0, pixelsPerMm, origin.x(), origin.y()); }
    QRectF visibleMm() const {
        return QRectF(-origin.x() / pixelsPerMm, -origin.y() / pixelsPerMm, viewport.width() / pixelsPerMm, viewport.height() / pixelsPerMm);
    }
};

class CachedLayer {
public:
    /// Stamps the layer; `paint` draws it in millimetres and is called only if the layer isn't at hand. `painter` is in logical
    /// pixels of the viewport.
    void draw(QPainter& painter, const Frame& frame, const QByteArray& key, const std::function<void(QPainter&)>& paint);
    void clear() { tiles_.clear(), key_.clear(); }
    /// How often the layer was painted, for tests and benchmarks.
    int paintings() const { return paintings_; }

private:
    struct Tile {
        QPoint at;  ///< logical pixels from the bench's origin
        QPixmap pixels;
    };
    void rebuild(const Frame& frame, const std::function<void(QPainter&)>& paint);

    std::vector<Tile> tiles_;
    QRect area_;  ///< logical pixels from the bench's origin
    QByteArray key_;
    double pixelsPerMm_ = 0, devicePixelRatio_ = 0;
    int paintings_ = 0;
};

}  // namespace tiepoint::ui
