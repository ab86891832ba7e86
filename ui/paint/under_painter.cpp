// The live layers under the parts: metal, lit nets, beds, halos.

#include "core/snapshot/readings.h"
#include "ui/paint/board_back.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tiepoint::ui {
namespace {

constexpr double kBedOpacity = 0.38, kBedOpacityDark = 0.26;
constexpr double kHoverGlowMm = 0.75, kHoverRimMm = 0.36;
constexpr double kMouthFade = 0.55;
constexpr double kMouthMm = 1.04, kMouthRimMm = 0.24;                               ///< of a lit hole
constexpr QMarginsF kMetalRoom(0.3, 0.3, 0.3, 0.3), kGlowRoom(1.1, 1.1, 1.1, 1.1);  ///< rims beyond a frame

/// Visits the centres of the holes of a strip, which stand in pitches, in rails with gaps between fives.
template <class Visit>
void forEachHoleOf(const Picture& picture, int strip, Visit visit) {
    const Layout& layout = *picture.layout;
    for (std::size_t b = 0; b < picture.bench().boards.size(); ++b) {
        if (strip < layout.boardFirstStrip[b] || strip >= layout.boardFirstStrip[b + 1]) continue;
        for (int hole = layout.boardFirstHole[b]; hole < layout.boardFirstHole[b + 1]; ++hole) {
            if (layout.stripOfHole[static_cast<std::size_t>(hole)] == strip)
                visit(toQt(picture.seenAt(layout.holeAt(hole))));
        }
    }
}

enum class UnderMark { InVolts, SeenThrough, Lit, Bed, Halo };

/// Folds where a strip's holes are in its patch, so that strips of the same holes look the same wherever they lie.
PatchLook withHoles(PatchLook look, const Picture& picture, int strip, QPointF corner) {
    forEachHoleOf(picture, strip, [&](QPointF hole) {
        look << std::lround((hole.x() - corner.x()) * 1e3) << std::lround((hole.y() - corner.y()) * 1e3);
    });
    return look;
}

void addInVolts(Patches& patches, const Picture& picture, const Snapshot& live) {
    const Layout& layout = *picture.layout;
    const VoltScale scale = voltScale(live);
    const auto spans = stripSpans(picture);
    for (int strip = 0; strip < static_cast<int>(spans.size()); ++strip) {
        const auto s = static_cast<std::size_t>(strip);
        const auto net = static_cast<std::size_t>(layout.netOfStrip[s]);
        if (!layout.netUsed[net]) continue;
        const QRectF frame = stripFrame(spans[s].first, spans[s].last);
        const double volt = live.solution.netVoltage[net];
        const bool floating = std::isnan(volt);
        const QColor colour = floating ? QColor() : voltColour(scale.share(volt));
        const QRectF mm = frame.marginsAdded(kMetalRoom);
        patches.push_back(
            {mm, withHoles(PatchLook() << UnderMark::InVolts << floating << colour, picture, strip, mm.topLeft()),
             [&picture, strip, frame, floating, colour](QPainter& painter) {
                 if (floating) {
                     paintMetalFloating(painter, *picture.theme, frame);
                 } else {
                     paintMetalInColour(painter, *picture.theme, frame, colour);
                 }
                 forEachHoleOf(picture, strip,
                               [&](QPointF hole) { paintMouth(painter, hole, faded(Qt::black, kMouthFade)); });
             }});
        patches.back().movable = true;
    }
}

/// Columns that carry current show whole; of a rail shows what lies between the holes that carry some.
void addSeenThrough(Patches& patches, const Picture& picture, const Snapshot& live) {
    const Layout& layout = *picture.layout;
    std::vector<StripSpan> carrying(layout.netOfStrip.size());
    std::vector<char> carries(carrying.size(), 0);
    const auto centre = [&](int joint) {
        return toQt(picture.seenAt(layout.holeAt(layout.joints[static_cast<std::size_t>(joint)].hole)));
    };
    for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
        const Piece& piece = layout.pieces[i];
        if (piece.kind != PieceKind::Strip || std::abs(live.pieceCurrent[i]) < kNoCurrentAmpere) continue;
        const auto strip = static_cast<std::size_t>(piece.owner);
        const QPointF from = centre(piece.from), to = centre(piece.to);
        QRectF reach = QRectF(from, to).normalized();
        if (carries[strip])
            reach = QRectF(QPointF(std::min(reach.left(), carrying[strip].first.x()),
                                   std::min(reach.top(), carrying[strip].first.y())),
                           QPointF(std::max(reach.right(), carrying[strip].last.x()),
                                   std::max(reach.bottom(), carrying[strip].last.y())));
        carrying[strip] = {reach.topLeft(), reach.bottomRight(), false};
        carries[strip] = 1;
    }
    const auto spans = stripSpans(picture);
    for (std::size_t strip = 0; strip < carrying.size(); ++strip) {
        if (!carries[strip]) continue;
        const StripSpan& span = spans[strip].rail ? carrying[strip] : spans[strip];
        const QRectF frame = stripFrame(span.first, span.last);
        patches.push_back(
            {frame.marginsAdded(kMetalRoom), PatchLook() << UnderMark::SeenThrough,
             [&picture, frame](QPainter& painter) { paintMetalSeenThrough(painter, *picture.theme, frame); }});
    }
}

void paintLitStrip(QPainter& painter, const Picture& picture, int strip, const StripSpan& span, bool solid) {
    const Theme& theme = *picture.theme;
    const QRectF frame = stripFrame(span.first, span.last);
    painter.setPen(Qt::NoPen);
    painter.setBrush(faded(theme.hover, solid ? 0.30 : 0.16));
    painter.drawPath(roundedBox(frame.adjusted(-kHoverGlowMm, -kHoverGlowMm, kHoverGlowMm, kHoverGlowMm), 1.1));
    paintMetal(painter, theme, frame);
    painter.setBrush(Qt::NoBrush);
    QPen rim = outlinePen(theme.hover, kHoverRimMm);
    if (!solid) rim.setDashPattern({2.4, 1.6}), rim.setCapStyle(Qt::FlatCap);
    painter.setPen(rim);
    painter.drawPath(roundedBox(frame, 0.5));
    const QColor mouthRim = theme.dark ? QColor(0x08090b) : QColor(Qt::white);
    // A layer paints what has changed of a strip, not the whole: holes elsewhere are left out.
    const QRectF sight = painter.hasClipping() ? painter.clipBoundingRect() : QRectF();
    forEachHoleOf(picture, strip, [&](QPointF hole) {
        const auto box = [hole](double half) { return QRectF(hole.x() - half, hole.y() - half, 2 * half, 2 * half); };
        if (painter.hasClipping() && !sight.intersects(box(kMouthMm / 2 + kMouthRimMm))) return;
        painter.fillPath(roundedBox(box((kMouthMm + kMouthRimMm) / 2), 0.16 + kMouthRimMm / 2),
                         solid ? mouthRim : theme.hover);
        painter.fillPath(roundedBox(box((kMouthMm - kMouthRimMm) / 2), 0.1), solid ? theme.hover : mouthRim);
    });
}

/// Strips whose holes stand alike look alike.

}  // namespace

QColor bedColour(const Theme& theme) { return faded(theme.arrow, theme.dark ? kBedOpacityDark : kBedOpacity); }

void addMetal(Patches& patches, const Picture& picture) {
    const Snapshot* live = picture.live();
    if (live && picture.views.voltage) {
        addInVolts(patches, picture, *live);
    } else if (live && picture.views.arrows != Arrows::Off && !picture.views.strips && !picture.table->turned) {
        addSeenThrough(patches, picture, *live);
    }
    if (picture.table->turned) addLeadTips(patches, picture);
}

void addLitNet(Patches& patches, const Picture& picture, int lit) {
    if (lit < 0) return;
    const auto byPress = netsByPress(picture, lit);
    const auto spans = stripSpans(picture);
    for (int strip = 0; strip < static_cast<int>(spans.size()); ++strip) {
        const StripSpan span = spans[static_cast<std::size_t>(strip)];
        const int net = picture.layout->netOfStrip[static_cast<std::size_t>(strip)];
        const bool joined = net == lit;
        if (!joined && std::find(byPress.begin(), byPress.end(), net) == byPress.end()) continue;
        const QRectF frame = stripFrame(span.first, span.last).marginsAdded(kGlowRoom);
        patches.push_back({frame, withHoles(PatchLook() << UnderMark::Lit << joined, picture, strip, frame.topLeft()),
                           [&picture, strip, span, joined](QPainter& painter) {
                               paintLitStrip(painter, picture, strip, span, joined);
                           }});
        patches.back().movable = true;
    }
}

void addBeds(Patches& patches, const Picture& picture, const FlowPaths& paths) {
    const Snapshot* live = picture.live();
    if (!live || picture.views.voltage || picture.views.arrows == Arrows::Off) return;
    const double fullScale = fullScaleAmpere(picture);
    // One fill for all stripes of a strip, so that those that meet don't darken each other.
    struct Bed {
        QPainterPath path;
        PatchLook look;
    };
    std::map<int, Bed> beds;
    for (const FlowPaths::Way& way : paths.ways()) {
        if (way.layer != Layer::UnderParts || way.line.isEmpty()) continue;
        const double current = std::abs(paths.currentOf(way, *live));
        if (current < kThreadShare * fullScale) continue;
        const double half = bedBreadthMm(std::min(1.0, current / fullScale)) / 2;
        const QRectF line = QRectF(way.line.points().front(), way.line.points().back()).normalized();
        const int strip = picture.layout->pieces[static_cast<std::size_t>(way.piece)].owner;
        Bed& bed = beds[strip];
        bed.path.setFillRule(Qt::WindingFill);
        bed.path.addRect(line.width() > line.height() ? line.adjusted(0, -half, 0, half)
                                                      : line.adjusted(-half, 0, half, 0));
        bed.look << line.topLeft() << line.bottomRight() << seenLength(picture, half);
    }
    const QColor colour = bedColour(*picture.theme);
    for (auto& [strip, bed] : beds) {
        patches.push_back(
            {bed.path.boundingRect(), bed.look << UnderMark::Bed,
             [path = std::move(bed.path), colour](QPainter& painter) { painter.fillPath(path, colour); }});
    }
}

void addHalos(Patches& patches, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const double brightness = brightnessOf(picture, part);
        if (brightness <= 0) continue;
        const PartScene scene = sceneOf(picture, part);
        const QColor light = findPackagePainter(scene.part.kind->package->name)->light(scene);
        const QPointF centre = toQt(scene.place.pose.centre);
        const double radius = haloRadiusMm(brightness);
        patches.push_back(
            {QRectF(centre - QPointF(radius, radius), centre + QPointF(radius, radius)),
             PatchLook() << UnderMark::Halo << light << seenBrightness(brightness) << picture.views.voltage,
             [&picture, light, centre, brightness](QPainter& painter) {
                 painter.save();
                 painter.translate(centre);
                 paintHalo(painter, *picture.theme, light, brightness, picture.views.voltage);
                 painter.restore();
             }});
    }
}

}  // namespace tiepoint::ui
