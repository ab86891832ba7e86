#pragma once
// Insulated wire: jumpers, and the leads of supplies. A cubic with its shadow, a dark edge, a highlight and
// bare ends.

#include "core/bench/table.h"
#include "ui/paint/curve.h"
#include "ui/theme/theme.h"

#include <QPainter>

namespace tiepoint::ui {

/// What a wire is made of.
struct WireLook {
    QColor colour;
    double breadthMm = 1.62;
    double liftMm = 1;         ///< how high its middle stands over the board; its shadow falls that far
    double bareFromMm = 1.15;  ///< bare metal at the beginning; 0 where it ends in a plug
    double bareToMm = 1.15;
};

/// A way of the table, as painters take it.
Cubic toQt(const WireCurve& curve);
/// A jumper between two places (see core/bench/jumper_routes.h).
Cubic jumperCubic(Point first, Point second, const Arc& arc);
/// What a jumper looks like; a flat one lies on the board and casts hardly a shadow.
WireLook jumperLook(const Theme& theme, int colour, double lengthMm, bool flat);
double jumperLiftMm(double lengthMm);

void paintWireShadow(QPainter& painter, const Theme& theme, const Cubic& wire, const WireLook& look);
void paintWire(QPainter& painter, const Theme& theme, const Cubic& wire, const WireLook& look);
void paintWire(QPainter& painter, const Theme& theme, const CubicChain& wire, const WireLook& look);
/// Everything that paintWire draws of a jumper, its shadow included.
QRectF wireBounds(const Cubic& wire);
/// The insulated part of a wire.
Cubic insulated(const Cubic& wire, const WireLook& look);

/// A bare lead of bright metal, straight.
void paintBareLead(QPainter& painter, const Theme& theme, QPointF from, QPointF to);

}  // namespace tiepoint::ui
