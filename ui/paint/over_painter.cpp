// The live layers over the parts, but for labels: light, inner metal, pressed caps, figures, stripes of
// volts.

#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/sounds.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/ghost_painter.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/mixed_light.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/part_seen.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kRimAroundMm = 1.1, kRimMm = 0.28;
constexpr double kCoreMm = 0.74, kCoreRimMm = 1.08;

constexpr QRectF kDomeRoom(-5.1, -5.1, 10.2, 10.2);  ///< a dome with its rays
constexpr int kNoVolts = -1;
constexpr double kBodyRoomMm = 1;  ///< accent frames and outlines beyond a body

template <class Visit>
void forEachPart(const Picture& picture, Visit visit) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        if (picture.isBehind(part)) continue;
        const PartScene scene = sceneOf(picture, part);
        if (const PackagePainter* look = findPackagePainter(scene.part.kind->package->name)) visit(part, scene, *look);
    }
}

/// A part on its board that isn't hidden, about itself.
PartSeen seenAlone(const Picture& picture, int part) { return partSeen(picture, part).aboutItself(); }

QRectF bodyRoom(const PartSeen& part, const Theme& theme) {
    return part.painter()
        .body(part.scene(theme))
        .boundingRect()
        .adjusted(-kBodyRoomMm, -kBodyRoomMm, kBodyRoomMm, kBodyRoomMm);
}

struct DomeMark {
    PartSeen part;
    int step;  ///< of brightness
    void paint(QPainter& painter, const Theme& theme) const {
        part.painter().paintLit(painter, part.scene(theme), brightnessOfStep(step));
    }
    friend bool operator==(const DomeMark&, const DomeMark&) = default;
};

struct InsideMark {
    PartSeen part;
    std::vector<int> lit;  ///< paths whose metal is part of the hovered net
    void paint(QPainter& painter, const Theme& theme) const {
        const PartScene scene = part.scene(theme);
        part.painter().paintInside(painter, scene);
        QPainterPathStroker stroker;
        stroker.setWidth(kRimAroundMm);
        stroker.setCapStyle(Qt::RoundCap);
        const auto paths = part.painter().paths(scene);
        for (const int path : lit) {
            const QPainterPath rim = stroker.createStroke(paths[static_cast<std::size_t>(path)].line);
            painter.fillPath(rim, faded(theme.hover, 0.22));
            painter.strokePath(rim, outlinePen(theme.hover, kRimMm));
        }
    }
    friend bool operator==(const InsideMark&, const InsideMark&) = default;
};

struct PressedMark {
    PartSeen part;
    void paint(QPainter& painter, const Theme& theme) const { part.painter().paintPressed(painter, part.scene(theme)); }
    friend bool operator==(const PressedMark&, const PressedMark&) = default;
};

struct CapLetterMark {
    PartSeen part;
    void paint(QPainter& painter, const Theme& theme) const {
        part.painter().paintCapLetter(painter, part.scene(theme));
    }
    friend bool operator==(const CapLetterMark&, const CapLetterMark&) = default;
};

struct DisplayMark {
    PartSeen part;
    DisplayFigures figures;
    void paint(QPainter& painter, const Theme& theme) const {
        part.painter().paintFigures(painter, part.scene(theme), figures);
    }
    friend bool operator==(const DisplayMark&, const DisplayMark&) = default;
};

struct InnerBedMark {
    std::vector<Point> line;
    double breadthMm;
    QPainterPath path() const {
        QPainterPath path(toQt(line.front()));
        for (const Point point : line) path.lineTo(toQt(point));
        return path;
    }
    void paint(QPainter& painter, const Theme& theme) const {
        painter.strokePath(path(), QPen(bedColour(theme), breadthMm, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    }
    friend bool operator==(const InnerBedMark&, const InnerBedMark&) = default;
};

/// The stripe of volts in a wire, between its bare ends.
struct VoltCoreMark {
    CurveSeen coat;
    int step;                  ///< of the colours, or kNoVolts
    std::vector<Rect> hidden;  ///< where it lies behind turned boards
    void paint(QPainter& painter, const Theme& theme) const {
        painter.save();
        if (!hidden.empty()) clipToTable(painter, hidden);
        const QPainterPath line = coat.cubic().path();
        painter.strokePath(line, QPen(QColor(0xfffdf6), kCoreRimMm, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
        if (step != kNoVolts) {
            painter.strokePath(line, QPen(voltColour(colourShare(step)), kCoreMm, Qt::SolidLine, Qt::FlatCap));
        } else {
            QPainterPathStroker stroker;
            stroker.setWidth(kCoreRimMm);
            stroker.setCapStyle(Qt::FlatCap);
            const QPainterPath core = stroker.createStroke(line);
            painter.fillPath(core, theme.dark ? QColor(0x8b8f94) : QColor(0xc6c4bf));
            paintCrossHatch(painter, theme, core);
        }
        painter.restore();
    }
    friend bool operator==(const VoltCoreMark&, const VoltCoreMark&) = default;
};

struct RaysMark {
    int rays;
    double angle;
    void paint(QPainter& painter, const Theme& theme) const {
        painter.save();
        painter.rotate(angle * 180 / std::numbers::pi);
        paintRays(painter, theme, rays);
        painter.restore();
    }
    friend bool operator==(const RaysMark&, const RaysMark&) = default;
};

void addCore(Patches& patches, const Picture& picture, const Cubic& coat, int net) {
    const double volt = picture.live()->solution.netVoltage[static_cast<std::size_t>(net)];
    const int step = std::isnan(volt) ? kNoVolts : colourStep(voltScale(*picture.live()).share(volt));
    const QRectF room = coat.path().boundingRect().adjusted(-kCoreRimMm, -kCoreRimMm, kCoreRimMm, kCoreRimMm);
    patches.push_back(fixedPatch(room, VoltCoreMark{CurveSeen::of(coat), step, hiddenFrames(picture)}));
}

}  // namespace

void addLitDomes(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter&) {
        const int step = brightnessStep(brightnessOf(picture, part));
        if (step == 0) return;
        DomeMark mark{seenAlone(picture, part).body(), step};
        mark.part.light = mixedLight(*picture.live(), part);
        patches.push_back(movablePatch(scene.place.pose.centre, kDomeRoom, std::move(mark)));
    });
}

void addInsides(Patches& patches, const Picture& picture) {
    const Layout& layout = *picture.layout;
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (!showsInside(picture, part)) return;
        InsideMark mark{seenAlone(picture, part), {}};
        QRectF room = bodyRoom(mark.part, *picture.theme);
        const auto paths = look.paths(mark.part.scene(*picture.theme));
        for (std::size_t i = 0; i < paths.size(); ++i) {
            room |= paths[i].line.boundingRect().adjusted(-kRimAroundMm, -kRimAroundMm, kRimAroundMm, kRimAroundMm);
            const bool isLead = paths[i].fromNode < static_cast<int>(scene.part.leads.size());
            if (!isLead || picture.marks.hoverNet < 0) continue;
            const int lead = layout.leadIndex(part, paths[i].fromNode);
            if (layout.netOfLead[static_cast<std::size_t>(lead)] == picture.marks.hoverNet)
                mark.lit.push_back(static_cast<int>(i));
        }
        patches.push_back(movablePatch(scene.place.pose.centre, room, std::move(mark)));
    });
}

void addPressed(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter&) {
        if (!scene.held || showsInside(picture, part)) return;
        PressedMark mark{seenAlone(picture, part).body()};
        const QRectF room = bodyRoom(mark.part, *picture.theme);
        patches.push_back(movablePatch(scene.place.pose.centre, room, std::move(mark)));
    });
    if (picture.table->turned) addPressedGhosts(patches, picture);
}

void addCapLetters(Patches& patches, const Picture& picture) {
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter&) {
        if (!scene.held || showsInside(picture, part)) return;
        CapLetterMark mark{seenAlone(picture, part).body()};
        const QRectF room = bodyRoom(mark.part, *picture.theme);
        patches.push_back(movablePatch(scene.place.pose.centre, room, std::move(mark)));
    });
}

void addDisplays(Patches& patches, const Picture& picture) {
    if (!picture.snapshot) return;
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (look.figures(scene).isEmpty()) return;
        auto figures = look.figuresAt(*picture.snapshot, part, beatOf(picture));
        if (!figures) return;
        DisplayMark mark{seenAlone(picture, part).body(), std::move(*figures)};
        const QRectF room = look.figures(mark.part.scene(*picture.theme));
        patches.push_back(movablePatch(scene.place.pose.centre, room, std::move(mark)));
    });
}

int soundingBeat(const Picture& picture) {
    if (picture.snapshot && !soundsOf(*picture.snapshot).empty()) return beatOf(picture);
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
        InnerBedMark mark{{}, drawnBreadth(bedBreadthMm(std::min(1.0, current / fullScale)))};
        for (const QPointF point : way.line.points()) mark.line.push_back(fromQt(point));
        const double room = mark.breadthMm;
        const QRectF mm = mark.path().boundingRect().adjusted(-room, -room, room, room);
        patches.push_back(fixedPatch(mm, std::move(mark)));
    }
}

void addVoltCores(Patches& patches, const Picture& picture) {
    if (!picture.live() || !picture.views.voltage) return;
    const Layout& layout = *picture.layout;
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper) {
        const int joint = layout.jumperJoints[static_cast<std::size_t>(jumper)][0];
        addCore(patches, picture, insulated(jumperSeen(picture, jumper).cubic(), WireLook{}),
                layout.joints[static_cast<std::size_t>(joint)].net);
    }
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter& look) {
        if (scene.part.kind->package->reach != Reach::Flying) return;
        for (const PartPath& path : look.paths(scene)) {
            constexpr double kPlugMm = 6;  // the core shows where the insulation does
            const CubicChain lead = supplyLead(scene, path.fromNode);
            for (const Cubic& piece : lead.between(kPlugMm, lead.lengthMm() - WireLook{}.bareToMm).pieces)
                addCore(patches, picture, piece,
                        layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(part, path.fromNode))]);
        }
    });
}

void addLightRays(Patches& patches, const Picture& picture) {
    if (picture.views.voltage) return;
    forEachPart(picture, [&](int part, const PartScene& scene, const PackagePainter&) {
        const int rays = rayCount(brightnessOf(picture, part));
        if (rays == 0) return;
        patches.push_back(movablePatch(scene.place.pose.centre, kDomeRoom,
                                       RaysMark{rays, seenAlone(picture, part).place.pose.angle}));
    });
}

}  // namespace tiepoint::ui
