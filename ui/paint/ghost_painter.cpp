#include "ui/paint/ghost_painter.h"

#include "ui/paint/board_back.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/part_seen.h"
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

QPainterPath pathOfAll(const std::vector<Rect>& rects) {
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);  // docked boards reach into each other
    for (const Rect& rect : rects) path.addRect(toQt(rect));
    return path;
}

QPainterPath pressedFrame(const PartSeen& part, const Theme& theme) {
    const QPainterPath body = part.painter().body(part.scene(theme));
    return broad(body, 2 * kPressedAwayMm).united(body);
}

/// The accent frame of a pressed button behind a board.
struct PressedGhostMark {
    PartSeen part;
    void paint(QPainter& painter, const Theme& theme) const {
        painter.strokePath(pressedFrame(part, theme), outlinePen(theme.accent, kPressedMm));
    }
    friend bool operator==(const PressedGhostMark&, const PressedGhostMark&) = default;
};

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
        PressedGhostMark mark{partSeen(picture, part).aboutItself().body()};
        const QRectF room = pressedFrame(mark.part, *picture.theme).boundingRect();
        patches.push_back(movablePatch(
            scene.place.pose.centre, room.adjusted(-kPressedMm, -kPressedMm, kPressedMm, kPressedMm), std::move(mark)));
    }
}

void paintHiddenLeads(QPainter& painter, const std::vector<Rect>& hidden, const PartScene& scene,
                      const PackagePainter& look) {
    painter.save();
    painter.setClipPath(pathOfAll(hidden), Qt::IntersectClip);
    for (const PartPath& path : look.paths(scene)) paintGhostWire(painter, scene.theme, path.line);
    painter.restore();
    clipToTable(painter, hidden);
}

void clipToTable(QPainter& painter, const std::vector<Rect>& hidden) {
    constexpr double kEverywhereMm = 1000;
    const QPainterPath boards = pathOfAll(hidden);
    QPainterPath table;
    table.addRect(boards.boundingRect().adjusted(-kEverywhereMm, -kEverywhereMm, kEverywhereMm, kEverywhereMm));
    painter.setClipPath(table.subtracted(boards), Qt::IntersectClip);
}

}  // namespace tiepoint::ui
