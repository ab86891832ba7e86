#pragma once
// The tip of a meter's test lead, as it stands in a hole. In millimetres of the bench.

#include "ui/theme/theme.h"

#include <QPainter>

namespace tiepoint::ui {

inline constexpr double kProbeLengthMm = 9;  ///< from its tip to where the lead begins

/// Bare tip, a guard for the fingers, a slim handle; along the way that the lead ends.
void paintProbe(QPainter& painter, const Theme& theme, QPointF begin, QPointF tip, const QColor& colour);

}  // namespace tiepoint::ui
