#pragma once
// What the painters of supplies share: leads with plugs, sockets, screws, signs, levers. In the body's frame
// unless said otherwise.

#include "ui/paint/curve.h"
#include "ui/paint/packages/package_painter.h"

namespace tiepoint::ui {

inline constexpr double kLeadBreadthMm = 1.9;

/// The body's frame with its origin in the top left corner rather than in the middle.
QPointF cornerMm(const PartScene& scene);
/// Places on the face of a box, laid out from right to left where it is mirrored. In the frame of its top left corner.
double faced(const PartScene& scene, double x);
QPointF faced(const PartScene& scene, QPointF at);
QRectF faced(const PartScene& scene, const QRectF& area);
QColor leadColour(const Theme& theme, bool plus);
/// The way of a flying lead, of a supply or an instrument, on the bench.
CubicChain supplyLead(const PartScene& scene, int lead);
/// Draws it, on the bench; with bare metal at its far end only.
void paintSupplyLead(QPainter& painter, const PartScene& scene, int lead, bool plus);
/// Ways of current along the leads of a supply or an instrument: for two, out of plus, into minus.
std::vector<PartPath> supplyPaths(const PartScene& scene);

/// The lead of an instrument: from its plug to a probe in a hole.
struct TestLead {
    QColor colour;
    double socketMm;
    bool banded = false;  ///< told by light bands too
};
void paintTestLead(QPainter& painter, const PartScene& scene, int lead, const TestLead& look);

/// Both leads, minus first, as battery packs have them; none where nothing may end in the air.
void paintBatteryLeads(QPainter& painter, const PartScene& scene);

void paintSocket(QPainter& painter, const Theme& theme, QPointF at, double radiusMm);
/// A plug in a socket: a coloured knob, and a sleeve towards the lead.
void paintPlug(QPainter& painter, const Theme& theme, QPointF at, double radiusMm, const QColor& colour,
               double sleeveAngle);
void paintScrew(QPainter& painter, const Theme& theme, QPointF at);
void paintSupplySign(QPainter& painter, const Theme& theme, QPointF at, bool plus, double halfMm);
/// A small slide, on at the top; its words beside it.
void paintSmallSwitch(QPainter& painter, const PartScene& scene, const QRectF& slot, const QColor& ink);

}  // namespace tiepoint::ui
