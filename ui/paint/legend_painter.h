#pragma once
// Samples of each view for the legend, in millimetres of the bench, by the same laws as the bench itself.

#include "ui/paint/picture.h"

#include <QPainter>

namespace tiepoint::ui {

/// A length of blue jumper from 0,0 along x, with the arrows of a share of full scale.
void paintArrowSample(QPainter& painter, const Theme& theme, double lengthMm, double shareOfFullScale, bool electrons);
/// A strip from 0,0 along x, seen through, with bed and arrows.
void paintStripArrowSample(QPainter& painter, const Theme& theme, double lengthMm, double shareOfFullScale,
                           bool electrons);
/// The scale of volts in a frame, lowest at the left.
void paintVoltBar(QPainter& painter, const Theme& theme, const QRectF& frame);
/// Three strips of three holes, centred at 0,0.
void paintStripsIcon(QPainter& painter, const Theme& theme);
/// A reading's tag, centred at 0,0.
void paintReadingIcon(QPainter& painter, const Theme& theme, const QString& text);

}  // namespace tiepoint::ui
