#pragma once
// Ink: what a hand draws over the bench. Strokes are anchored to the boards in mm, so that they stay on their holes while the view
// pans, zooms or turns the boards. Never saved. Belongs to the window's thread.

#include "ui/paint/picture.h"

#include <QPainterPath>
#include <QPixmap>

#include <cstdint>
#include <vector>

namespace tiepoint::ui {

class Ink {
public:
    void begin(Point at);
    /// Continues the last stroke.
    void extend(Point at);
    /// The last stroke is whole, and kept as pixels from now on.
    void end() { underWay_ = false, ++version_, ++changes_; }
    /// Takes the stroke under way back.
    void drop();
    void wipe();
    bool isEmpty() const { return strokes_.empty(); }
    /// Counts what has changed the ink's look.
    std::uint64_t changes() const { return changes_; }
    const std::vector<std::vector<Point>>& strokes() const { return strokes_; }

    /// `painter` is in logical pixels of the viewport, `toPixels` maps mm there.
    void draw(QPainter& painter, const Picture& picture, const QTransform& toPixels, QSize viewport);

private:
    QPainterPath path(const Picture& picture, const QTransform& toPixels, std::size_t stroke) const;
    void keep(const Picture& picture, const QTransform& toPixels, QSize viewport, double ratio, std::size_t whole);

    std::vector<std::vector<Point>> strokes_;  ///< as on boards that aren't turned
    bool underWay_ = false;                    ///< the last stroke still grows
    int version_ = 0;
    std::uint64_t changes_ = 0;
    QPixmap kept_;  ///< whole strokes within keptAt_, for one key
    QRect keptAt_;
    QByteArray key_;
};

}  // namespace tiepoint::ui
