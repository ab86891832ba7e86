// The live layers over the parts, but for labels: light, inner metal, pressed caps, figures, stripes of
// volts.

#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/ghost_painter.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kRimAroundMm = 1.1, kRimMm = 0.28;
constexpr double kCoreMm = 0.74, kCoreRimMm = 1.08;

constexpr double kDomeRoomMm = 5.1;  ///< a dome with its rays
constexpr double kBodyRoomMm = 1;    ///< accent frames and outlines beyond a body

enum class OverMark { Dome, Inside, Pressed, Display, InnerBed, VoltCore, Rays, CapLetter };

template <class Visit>
void forEachPart(const Picture& picture, Visit visit) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        if (picture.isBehind(part)) continue;
        const PartScene scene = sceneOf(picture, part);
        if (const PackagePainter* look = findPackagePainter(scene.part.kind->package->name)) visit(part, scene, *look);
    }
}

/// The stripe of volts in a wire, between its bare ends.
void paintCore(QPainter& painter, const Picture& picture, const QPainterPath& coat, int net) {
    const double volt = picture.live()->solution.netVoltage[static_cast<std::size_t>(net)];
    const QPen rim(QColor(0xfffdf6), kCoreRimMm, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    painter.strokePath(coat, rim);
    if (!std::isnan(volt)) {
        painter.strokePath(
            coat, QPen(voltColour(voltScale(*picture.live()).share(volt)), kCoreMm, Qt::SolidLine, Qt::FlatCap));
        return;
    }
    QPainterPathStroker stroker;
    stroker.setWidth(kCoreRimMm);
    stroker.setCapStyle(Qt::FlatCap);
    const QPainterPath core = stroker.createStroke(coat);
    painter.fillPath(core, picture.theme->dark ? QColor(0x8b8f94) : QColor(0xc6c4bf));
    paintCrossHatch(painter, *picture.theme, core);
}

/// The rim of the hovered net around its metal inside a part.
void paintHoverRims(QPainter& painter, const Picture& picture, int part, const std::vector<PartPath>& paths) {
    if (picture.marks.hoverNet < 0) return;
    const Layout& layout = *picture.layout;
    const int leads =
        layout.firstLead[static_cast<std::size_t>(part) + 1] - layout.firstLead[static_cast<std::size_t>(part)];
    QPainterPathStroker stroker;
    stroker.setWidth(kRimAroundMm);
    stroker.setCapStyle(Qt::RoundCap);
    for (const PartPath& path : paths) {
        if (path.fromNode >= leads) continue;
        const int lead = layout.leadIndex(part, path.fromNode);
        if (layout.netOfLead[static_cast<std::size_t>(lead)] != picture.marks.hoverNet) continue;
        const QPainterPath rim = stroker.createStroke(path.line);
        painter.fillPath(rim, faded(picture.theme->hover, 0.22));
        painter.strokePath(rim, outlinePen(picture.theme->hover, kRimMm));
    }
}

QRectF bodyRoom(const PartScene& scene, const PackagePainter& look) {
    return look.body(scene).boundingRect().adjusted(-kBodyRoomMm, -kBodyRoomMm, kBodyRoomMm, kBodyRoomMm);
}

/// How a part lies and what its controls are set to.
PatchLook lookOf(OverMark mark, const PartScene& scene) {
    PatchLook look;
    look << mark << scene.part.kind->name << scene.place.pose.angle << scene.held << scene.part.cap;
    for (std::size_t i = 0; i < scene.part.kind->state.size(); ++i) look << scene.part.stateValue(static_cast<int>(i));
    return look;
}

void addCore(Patches& patches, const Picture& picture, const QPainterPath& coat, int net) {
    const double volt = picture.live()->solution.netVoltage[static_cast<std::size_t>(net)];
    const double share = std::isnan(volt) ? -1 : voltScale(*picture.live()).share(volt);
    patches.push_back({coat.boundingRect().adjusted(-kCoreRimMm, -kCoreRimMm, kCoreRimMm, kCoreRimMm),
                       PatchLook() << OverMark::VoltCore << seenBrightness(share) << coat.pointAtPercent(0.5),
                       [&picture, coat, net](QPainter& painter) {
                           painter.save();
                           if (picture.table->turned) clipToTable(painter, picture);
                           paintCore(painter, picture, coat, net);
                           painter.restore();
                       }});
}

Cubic leadCubic(const QPainterPath& line) {
    return {QPointF(line.elementAt(0)), QPointF(line.elementAt(1)), QPointF(line.elementAt(2)),
            QPointF(line.elementAt(3))};
}

}  // namespace

void addLitDomes(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        const double brightness = brightnessOf(picture, part);
        if (brightness <= 0) return;
        patches.push_back(
            {aboutPart(scene, kDomeRoomMm),
             lookOf(OverMark::Dome, scene) << look.light(scene) << seenBrightness(brightness),
             [scene, &look, brightness](QPainter& painter) { look.paintLit(painter, scene, brightness); }});
        patches.back().movable = true;
    });
}

void addInsides(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (!showsInside(picture, part)) return;
        const auto paths = look.paths(scene);
        QRectF room = bodyRoom(scene, look);
        for (const PartPath& path : paths)
            room |= path.line.boundingRect().adjusted(-kRimAroundMm, -kRimAroundMm, kRimAroundMm, kRimAroundMm);
        patches.push_back({room, lookOf(OverMark::Inside, scene) << picture.marks.hoverNet,
                           [&picture, part, scene, &look, paths](QPainter& painter) {
                               look.paintInside(painter, scene);
                               paintHoverRims(painter, picture, part, paths);
                           }});
    });
}

void addPressed(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (!scene.held || showsInside(picture, part)) return;
        patches.push_back({bodyRoom(scene, look), lookOf(OverMark::Pressed, scene),
                           [scene, &look](QPainter& painter) { look.paintPressed(painter, scene); }});
    });
    if (picture.table->turned) addPressedGhosts(patches, picture);
}

void addCapLetters(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (!scene.held || showsInside(picture, part)) return;
        patches.push_back({look.body(scene).boundingRect(), lookOf(OverMark::CapLetter, scene),
                           [scene, &look](QPainter& painter) { look.paintCapLetter(painter, scene); }});
    });
}

void addDisplays(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (!scene.instant || look.figures(scene).isEmpty()) return;
        PatchLook figures = lookOf(OverMark::Display, scene);
        const Layout& layout = *picture.layout;
        if (const auto reading = meterReading(*scene.instant, part))
            figures << reading->text() << reading->why << (reading->beeps ? scene.beat : -1);
        for (int lead = layout.firstLead[static_cast<std::size_t>(part)];
             lead < layout.firstLead[static_cast<std::size_t>(part) + 1]; ++lead)
            figures << scene.instant->shown().leadCurrent(lead).text();
        patches.push_back(
            {look.figures(scene), figures, [scene, &look](QPainter& painter) { look.paintFigures(painter, scene); }});
    });
}

int soundingBeat(const Picture& picture) {
    for (int part = 0; picture.snapshot && part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const auto reading = meterReading(*picture.snapshot, part);
        if (reading && reading->beeps) return beatOf(picture);
    }
    return -1;
}

void addInnerBeds(Patches& patches, const Picture& picture, const FlowPaths& paths) {
    const Snapshot* live = picture.live();
    if (!live || picture.views.voltage || picture.views.arrows == Arrows::Off || picture.table->turned) return;
    const double fullScale = fullScaleAmpere(picture);
    for (const FlowPaths::Way& way : paths.ways()) {
        const double current = std::abs(paths.currentOf(way, *live));
        // The cap of a pressed button keeps its colour: there the ghost of an arrow is enough.
        const bool underCap = way.look == MarkLook::Ghost && !picture.views.strips;
        if (!way.inner || underCap || current < kThreadShare * fullScale || way.line.isEmpty()) continue;
        QPainterPath line;
        line.addPolygon(QPolygonF(QList<QPointF>(way.line.points().begin(), way.line.points().end())));
        const double breadth = bedBreadthMm(std::min(1.0, current / fullScale));
        const QPen pen(bedColour(*picture.theme), breadth, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
        patches.push_back({line.boundingRect().adjusted(-breadth, -breadth, breadth, breadth),
                           PatchLook() << OverMark::InnerBed << seenLength(picture, breadth),
                           [line, pen](QPainter& painter) { painter.strokePath(line, pen); }});
    }
}

void addVoltCores(Patches& patches, const Picture& picture) {
    if (!picture.live() || !picture.views.voltage) return;
    const Layout& layout = *picture.layout;
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper) {
        const int joint = layout.jumperJoints[static_cast<std::size_t>(jumper)][0];
        const QPainterPath coat = insulated(leadCubic(jumperLine(picture, jumper)), WireLook{}).path();
        addCore(patches, picture, coat, layout.joints[static_cast<std::size_t>(joint)].net);
    }
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (scene.part.kind->package->reach != Reach::Flying) return;
        for (const PartPath& path : look.paths(scene)) {
            constexpr double kPlugMm = 6;  // the core shows where the insulation does
            const Cubic lead = supplyLead(scene, path.fromNode);
            const QPainterPath coat = lead.between(kPlugMm, lead.lengthMm() - WireLook{}.bareToMm).path();
            addCore(patches, picture, coat,
                    layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(part, path.fromNode))]);
        }
    });
}

void addLightRays(Patches& patches, const Picture& picture) {
    if (picture.views.voltage) return;
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter&) {
        const double brightness = brightnessOf(picture, part);
        const int rays = rayCount(brightness);
        if (rays == 0) return;
        patches.push_back({aboutPart(scene, kDomeRoomMm),
                           PatchLook() << OverMark::Rays << rays << scene.place.pose.angle,
                           [scene, brightness](QPainter& painter) {
                               const BodyFrame frame(painter, scene);
                               paintRays(painter, scene.theme, brightness);
                           }});
    });
}

}  // namespace tiepoint::ui
