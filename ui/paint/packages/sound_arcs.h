#pragma once
// A sound, drawn: arcs that spread from a point, one of them strong, so that it runs outwards while it lasts. Pure painting, in mm.

#include <QColor>
#include <QPainter>
#include <QPointF>

namespace tiepoint::ui {

inline constexpr int kSoundArcs = 3;
/// How far the arcs reach, as a multiple of the scale.
inline constexpr double kSoundReach = 2.9;

/// towards: degrees against the clock from the right, as Qt counts. strong: which arc is the strong one; -1: none.
void paintSoundArcs(QPainter& painter, QPointF from, double scaleMm, double towards, int strong, const QColor& colour);

}  // namespace tiepoint::ui
