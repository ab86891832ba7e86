#pragma once
// Light and shade for painters: mixing colours, soft shadows, gradients that turn into a flat wash in a flat
// theme. Lengths in mm. Pure functions; use from the thread that paints.

#include "ui/paint/qt_geometry.h"
#include "ui/theme/theme.h"

#include <QBrush>
#include <QPainter>
#include <QPainterPath>
#include <QPen>

namespace tiepoint::ui {

/// Between two colours: share 0 is the first, 1 the second; alpha too.
QColor blend(const QColor& first, const QColor& second, double share);
/// The colour with another alpha.
QColor faded(QColor colour, double alpha);
/// CIE 1976 lightness L* of a colour on the screen (sRGB, IEC 61966-2-1), 0..100.
double lightnessOf(const QColor& colour);
/// The colour darkened in its own hue until its L* is at most the limit.
QColor darkenedTo(const QColor& colour, double lightnessLimit);

/// From top to bottom of a rectangle; one colour in a flat theme.
QBrush shadeDown(const Theme& theme, const QRectF& rect, const QColor& top, const QColor& bottom);
/// From one point to another; one colour in a flat theme.
QBrush shadeAlong(const Theme& theme, QPointF from, QPointF to, const QColor& first, const QColor& last);
/// Round about a point, lit from the top left; one colour in a flat theme.
QBrush shadeRound(const Theme& theme, QPointF centre, double radius, const QColor& lit, const QColor& shaded);

QPen outlinePen(const QColor& colour, double widthMm);
/// The soft shadow of an opaque body, a box with rounded corners: nested boxes that grow by up to `spreadMm`,
/// moved by `offset`. What the body itself covers is left out where that saves much. Nothing in a flat theme.
void drawSoftShadow(QPainter& painter, const Theme& theme, const QRectF& box, double radiusMm, QPointF offset,
                    double spreadMm);
/// That of a round body.
void drawSoftShadow(QPainter& painter, const Theme& theme, QPointF centre, double radiusMm, QPointF offset,
                    double spreadMm);

QPainterPath roundedBox(const QRectF& rect, double radiusMm);
QPainterPath disc(QPointF centre, double radiusMm);

}  // namespace tiepoint::ui
