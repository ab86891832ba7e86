#pragma once
// The legend's samples fitted into boxes of a widget's pixels. What they show is the painters' own.

#include "ui/paint/picture.h"
#include "ui/theme/look.h"

#include <QPainter>

namespace tiepoint::ui {

enum class SampleBed { Jumper, Strip };

/// A length of jumper or strip with the arrows of that share of full scale.
void paintArrowSample(QPainter& painter, const Look& look, const QRectF& box, double share, Arrows arrows,
                      SampleBed bed);
/// The scale of the voltage view from left (lowest) to right.
void paintVoltageSample(QPainter& painter, const Look& look, const QRectF& box);
/// Three strips of bare metal.
void paintStripsSample(QPainter& painter, const Look& look, const QRectF& box);
/// Nothing: the button's word says it all.
inline void paintNoSample(QPainter&, const Look&, const QRectF&) {}
/// A tag with volts as it stands on the board.
void paintReadingSample(QPainter& painter, const Look& look, const QRectF& box);

}  // namespace tiepoint::ui
