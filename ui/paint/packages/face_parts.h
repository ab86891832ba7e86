#pragma once
// What the faces of boxes share: the case with its ivory panel, and knobs of which each turns a value of the part. In the frame of the
// body's top left corner.

#include "ui/paint/packages/package_painter.h"

namespace tiepoint::ui {

/// The case with its panel and four screws.
void paintFaceCase(QPainter& painter, const PartScene& scene, const QRectF& panel);
/// A knob that points at where its value stands, with its word below.
void paintFaceKnob(QPainter& painter, const PartScene& scene, const FaceKnob& knob, double wordMm);

}  // namespace tiepoint::ui
