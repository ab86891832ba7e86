#pragma once
// A frame the plain way: a painter draws the table and every patch of every layer, in their order, each time anew. Nothing is kept, so that
// nothing can be out of date: what the kept pixels show is held against this, and TIEPOINT_PAINTING=plain shows it on the screen.
//
// Things lie where the kept ones lie (movable patches on half or whole pixels, arrows on whole ones, in steps of their angle and breadth). What
// differs is rounding: here each stroke is laid on the frame itself, there on a sprite that is laid on the frame.

#include "ui/paint/arrow_marks.h"
#include "ui/paint/patch.h"
#include "ui/theme/theme.h"

#include <QImage>

#include <span>
#include <vector>

namespace tiepoint::ui {

class PlainFrame {
public:
    /// On an image as large as the viewport. `table`: its colour in each row; `origin`: of the bench.
    PlainFrame(QImage& target, const Theme& theme, double pixelsPerMm, QPoint origin);

    void paintTable(const std::vector<QRgb>& rows);
    void paintPatches(const Patches& patches);
    void paintArrows(const std::vector<ArrowMark>& marks, bool electrons);

private:
    void paintTogether(const Patch& patch, QPointF zero, const QRect& rect);
    void paintDrawing(QImage& on, const Patch& patch, QPointF zero) const;

    QImage& target_;
    const Theme& theme_;
    double pixelsPerMm_;
    QPoint origin_;
};

}  // namespace tiepoint::ui
