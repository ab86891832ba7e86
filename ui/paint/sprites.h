#pragma once
// Pre-rendered arrows and lights for a moving screen: keyed by level and angle, made once for a theme and a
// zoom, then only stamped. A cache object belongs to its caller (a view); make a new one when theme, zoom or
// device pixel ratio change. One thread.

#include "ui/paint/arrow_marks.h"
#include "ui/paint/picture.h"

#include <QHash>
#include <QPainter>
#include <QPixmap>

#include <vector>

namespace tiepoint::ui {

/// Where a picture's millimetres lie on the device.
struct SpriteScale {
    double pixelsPerMm = 8;  ///< in logical pixels of the painter
    double devicePixelRatio = 1;
    friend bool operator==(const SpriteScale&, const SpriteScale&) = default;
};

class ArrowSprites {
public:
    ArrowSprites(const Theme& theme, SpriteScale scale, bool electrons);

    /// Makes the sprites of the four ways along rows and columns, at most so many; call until it returns 0.
    int prewarm(int most);
    /// Stamps marks. `painter` is in logical pixels; `toPixels` maps mm there. Makes at most `mostNew`
    /// sprites; the rest is drawn as vectors.
    void draw(QPainter& painter, const QTransform& toPixels, const std::vector<ArrowMark>& marks,
              int mostNew = 8);

private:
    QPixmap make(const ArrowMark& mark) const;

    const Theme& theme_;
    SpriteScale scale_;
    bool electrons_;
    QHash<int, QPixmap> sprites_;
    int warmed_ = 0;
};

class LightSprites {
public:
    LightSprites(const Theme& theme, SpriteScale scale);

    /// Halos under the parts. `painter` is in logical pixels.
    void drawHalos(QPainter& painter, const QTransform& toPixels, const Picture& picture);
    /// Lit bodies and their ink rays over the parts.
    void drawDomes(QPainter& painter, const QTransform& toPixels, const Picture& picture);

private:
    const Theme& theme_;
    SpriteScale scale_;
    QHash<quint64, QPixmap> halos_, domes_;
};

}  // namespace tiepoint::ui
