#include "ui/paint/ghost_painter.h"

#include "ui/paint/board_back.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kDashBreadthMm = 0.2;
constexpr double kWireMm = 1.3, kLeadMm = 0.6;
constexpr double kPressedMm = 0.42, kPressedAwayMm = 0.38;
constexpr double kWashOpacity = 0.34;

/// Dark on bright metal and bright on dark: the ghost's line.
QPen dashedPen(const Theme& theme) {
    QPen pen(theme.dark ? theme.arrow : theme.furnishing.ink, kDashBreadthMm * (theme.flat ? 1.4 : 1), Qt::SolidLine,
             Qt::FlatCap);
    pen.setDashPattern({4.5, 2.6});
    return pen;
}

void paintOutline(QPainter& painter, const Theme& theme, const QPainterPath& shape) {
    painter.fillPath(shape, faded(blend(theme.boardTop, theme.boardBottom, 0.5), kWashOpacity));
    painter.strokePath(shape, dashedPen(theme));
}

QPainterPath broad(const QPainterPath& line, double breadthMm) {
    QPainterPathStroker stroker;
    stroker.setWidth(breadthMm);
    stroker.setCapStyle(Qt::RoundCap);
    return stroker.createStroke(line);
}

QPainterPath boardsOf(const Picture& picture) {
    QPainterPath boards;
    for (const QRectF& board : hiddenAreas(picture)) boards.addRect(board);
    return boards;
}

}  // namespace

void paintGhost(QPainter& painter, const PartScene& scene, const PackagePainter& look) {
    for (std::size_t i = 0; i < scene.place.leadsMm.size(); ++i) {
        QPainterPath lead(toQt(scene.place.exitsMm[i]));
        lead.lineTo(toQt(scene.place.leadsMm[i]));
        if (lead.length() > kLeadMm) paintOutline(painter, scene.theme, broad(lead, kLeadMm));
    }
    paintOutline(painter, scene.theme, look.body(scene));
    const QPainterPath control = look.control(scene);
    if (!control.isEmpty()) painter.strokePath(control, dashedPen(scene.theme));
}

void paintGhostWire(QPainter& painter, const Theme& theme, const QPainterPath& line) {
    paintOutline(painter, theme, broad(line, kWireMm));
}

void addPressedGhosts(Patches& patches, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartScene scene = sceneOf(picture, part);
        if (!scene.held || !picture.isBehind(part)) continue;
        const QPainterPath body = findPackagePainter(scene.part.kind->package->name)->body(scene);
        const QPainterPath frame = broad(body, 2 * kPressedAwayMm).united(body);
        const QPen pen = outlinePen(picture.theme->accent, kPressedMm);
        patches.push_back({frame.boundingRect().adjusted(-kPressedMm, -kPressedMm, kPressedMm, kPressedMm),
                           PatchLook() << "pressed behind" << scene.place.pose.angle,
                           [frame, pen](QPainter& painter) { painter.strokePath(frame, pen); }});
    }
}

void paintHiddenLeads(QPainter& painter, const Picture& picture, const PartScene& scene, const PackagePainter& look) {
    painter.save();
    painter.setClipPath(boardsOf(picture), Qt::IntersectClip);
    for (const PartPath& path : look.paths(scene)) paintGhostWire(painter, scene.theme, path.line);
    painter.restore();
    clipToTable(painter, picture);
}

void clipToTable(QPainter& painter, const Picture& picture) {
    constexpr double kEverywhereMm = 1000;
    QPainterPath table;
    table.addRect(toQt(picture.table->allMm).adjusted(-kEverywhereMm, -kEverywhereMm, kEverywhereMm, kEverywhereMm));
    painter.setClipPath(table.subtracted(boardsOf(picture)), Qt::IntersectClip);
}

}  // namespace tiepoint::ui
