#pragma once
// The spring metal under the holes, and the holes: bare in the strips view, seen through where current runs,
// coloured by volts.

#include "ui/theme/theme.h"

#include <QPainter>

namespace tiepoint::ui {

/// The frame of a strip from its first hole to its last.
QRectF stripFrame(QPointF firstHole, QPointF lastHole);

/// A hole with its bevel.
void paintHole(QPainter& painter, const Theme& theme, QPointF at);
/// The square mouth of a hole alone, in a colour.
void paintMouth(QPainter& painter, QPointF at, const QColor& colour);

/// Metal laid open, with the springs of its clips.
void paintMetal(QPainter& painter, const Theme& theme, const QRectF& frame);
/// Metal seen through the plastic: pale, the holes still to be seen.
void paintMetalSeenThrough(QPainter& painter, const Theme& theme, const QRectF& frame);
/// Metal in the colour of its volts.
void paintMetalInColour(QPainter& painter, const Theme& theme, const QRectF& frame, const QColor& colour);
/// Metal that no conductor ties to the reference: grey with cross-hatch.
void paintMetalFloating(QPainter& painter, const Theme& theme, const QRectF& frame);

/// Cross-hatch for what floats, clipped to a shape.
void paintCrossHatch(QPainter& painter, const Theme& theme, const QPainterPath& shape);

}  // namespace tiepoint::ui
