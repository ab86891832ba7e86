#pragma once
// Pre-rendered arrows for a moving screen: keyed by level and angle, made once for a theme and a zoom, then only
// laid down. A cache object belongs to its caller (a view); make a new one when theme or zoom change. One thread.

#include "ui/paint/arrow_marks.h"

#include <QHash>
#include <QImage>
#include <QTransform>

#include <functional>
#include <span>
#include <vector>

namespace tiepoint::ui {

/// A picture, and where its corner goes in pixels.
struct PlacedSprite {
    QPoint at;
    QImage picture;
    QRect rect() const { return {at, picture.size()}; }
};

/// A mark at 0,0 as its sprite shows it: in steps of its angle and breadth.
ArrowMark asSprite(const ArrowMark& mark);

class ArrowSprites {
public:
    ArrowSprites(const Theme& theme, double pixelsPerMm, bool electrons);

    /// Makes the sprites of the four ways along rows and columns, at most so many; call until it returns 0.
    int prewarm(int most);
    /// Work that makes the sprites which these marks lack, to be done in whatever threads before anything else is asked for. Each costs as
    /// much as drawing its mark once.
    std::vector<std::function<void()>> prepare(std::span<const std::vector<ArrowMark>> layers);
    /// Where the sprites of these marks, made before, go. `toPixels` maps mm to the target's pixels.
    std::vector<PlacedSprite> place(const QTransform& toPixels, const std::vector<ArrowMark>& marks) const;

private:
    /// Cut to what isn't empty; `corner` from the mark's place, whole or half pixels.
    struct Sprite {
        QImage picture;
        QPointF corner;
    };
    Sprite make(const ArrowMark& mark) const;

    const Theme& theme_;
    double pixelsPerMm_;
    bool electrons_;
    QHash<int, Sprite> sprites_;
    int warmed_ = 0;
};

}  // namespace tiepoint::ui
