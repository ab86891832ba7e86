#pragma once
// Gradients whose opacity changes along the way, as shapes of one colour each. Paper knows no such gradients: Qt's PDF engine masks them
// wrongly, and what should be a soft shade prints black.
//
// A gradient of one colour that only grows fainter (or stronger) is a stack of shapes that lie inside each other: their opacities add up
// to the gradient's, and no seam shows. Any other one is cut into bands. Methods tried before: masks (wrong in the engine), small
// pictures (right, but no drawing any more).

#include <QBrush>
#include <QPainterPath>

#include <vector>

namespace tiepoint::ui {

/// One shape of the stack, in the brush's own units, and its colour with its opacity.
struct FlatShape {
    QPainterPath area;
    QColor colour;
};

/// Whether a brush is a gradient with several opacities.
bool fadesAlong(const QBrush& brush);

/// The shapes that look like the brush, the lowest first. They cover all of `area` and may reach beyond. Linear gradients, and radial
/// ones that end in a circle about their focal point; the brush's transform counts.
std::vector<FlatShape> flatShapes(const QBrush& brush, const QRectF& area);

}  // namespace tiepoint::ui
