#pragma once
// Light: how a brightness 0..1 is drawn. Halo under the parts, the dome's glow, and ink rays that say it in
// greyscale too. The laws are functions of their own, so that tests and the legend can ask them.

#include "ui/paint/palette.h"
#include "ui/theme/theme.h"

#include <QPainter>
#include <QPainterPath>

namespace tiepoint::ui {

inline constexpr double kDomeRadiusMm = 1.9;
inline constexpr double kFlangeRadiusMm = 2.9;

/// Share of the way from dull to lit: min(1, 1.25 e^0.7).
double litShare(double brightness);
/// Opacity of a halo's middle; a quarter in the voltage view. 0 without light.
double haloOpacity(const Theme& theme, double brightness, bool voltageView);
/// 4 + 6.5 e mm; 0 without light.
double haloRadiusMm(double brightness);
/// round(8 e).
int rayCount(double brightness);

/// The flange's outline about 0,0, its flat towards +x, the cathode.
QPainterPath flangeShape();
/// Flange and dome about 0,0, as bright as that.
void paintDome(QPainter& painter, const Theme& theme, const LedColours& colours, double brightness);
/// A halo about 0,0. Slow: views keep sprites of it.
void paintHalo(QPainter& painter, const Theme& theme, const QColor& light, double brightness, bool voltageView);
/// So many rays in two fans beside the axis of the leads, about 0,0, the leads along x.
void paintRays(QPainter& painter, const Theme& theme, int rays);

}  // namespace tiepoint::ui
