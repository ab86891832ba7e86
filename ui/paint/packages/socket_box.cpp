#include "ui/paint/packages/socket_box.h"

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {

void paintSocketBox(QPainter& painter, const PartScene& scene, double radiusMm) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    const QRectF box(QPointF(0, 0), scene.bodyRect().size());
    drawSoftShadow(painter, theme, box, radiusMm, {1.5, 1.9}, 1.7);
    painter.setPen(outlinePen(f.caseEdge, theme.outlineMm * 1.2));
    painter.setBrush(shadeDown(theme, box, f.caseTop, f.caseBottom));
    painter.drawPath(roundedBox(box, radiusMm));
    const QRectF face = box.adjusted(1.6, 1.6, -1.6, -1.6);
    painter.setBrush(shadeDown(theme, face, f.panelTop, f.panelBottom));
    painter.drawPath(roundedBox(face, radiusMm - 0.6));
    drawText(painter, QString::fromStdString(scene.part.id),
             faced(scene, QPointF(box.right() - 3.4, box.bottom() - 3.6)), {1.7, QFont::Medium}, f.panelDim,
             scene.place.mirrored ? Qt::AlignLeft : Qt::AlignRight);
}

void paintNamedSocket(QPainter& painter, const PartScene& scene, std::size_t lead, const QString& name,
                      const QColor& colour) {
    constexpr double kSocketMm = 2.3, kRingMm = 2.75, kNameAwayMm = 4.6;
    const QPointF at = faced(scene, toQt(scene.part.kind->package->footprint[lead]));
    painter.setPen(outlinePen(scene.theme.furnishing.ink, scene.theme.outlineMm));
    painter.setBrush(colour);
    painter.drawPath(disc(at, kRingMm));
    paintSocket(painter, scene.theme, at, kSocketMm);
    const double side = scene.place.mirrored ? -1 : 1;
    drawText(painter, name, at + QPointF(side * kNameAwayMm, 0), {2.4, QFont::DemiBold},
             scene.theme.furnishing.panelInk);
}

}  // namespace tiepoint::ui
