// The live layers under the parts: metal, lit nets, beds, halos.

#include "core/snapshot/readings.h"
#include "ui/paint/board_back.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/mixed_light.h"
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

constexpr int kFloating = -1;

QRectF spanning(const QRectF& a, const QRectF& b) {
    return {QPointF(std::min(a.left(), b.left()), std::min(a.top(), b.top())),
            QPointF(std::max(a.right(), b.right()), std::max(a.bottom(), b.bottom()))};
}

/// Something about the holes of a strip, seen from the first of them, so that strips of the same holes look the same.
struct HolesSeen {
    std::vector<Point> holes;
    QRectF frame() const { return stripFrame(toQt(holes.front()), toQt(holes.back())); }
    friend bool operator==(const HolesSeen&, const HolesSeen&) = default;

    static HolesSeen of(const StripSpan& span) {
        HolesSeen seen;
        for (const Point hole : span.holes) seen.holes.push_back(placeFrom(span.holes.front(), hole));
        return seen;
    }
};

struct VoltStripMark {
    HolesSeen strip;
    int step;  ///< of the colours, or kFloating
    void paint(QPainter& painter, const Theme& theme) const {
        if (step == kFloating) {
            paintMetalFloating(painter, theme, strip.frame());
        } else {
            paintMetalInColour(painter, theme, strip.frame(), voltColour(colourShare(step)));
        }
        for (const Point hole : strip.holes) paintMouth(painter, toQt(hole), faded(Qt::black, kMouthFade));
    }
    friend bool operator==(const VoltStripMark&, const VoltStripMark&) = default;
};

void addInVolts(Patches& patches, const Picture& picture, const std::vector<StripSpan>& spans, const Snapshot& live) {
    const Layout& layout = *picture.layout;
    const VoltScale scale = voltScale(live);
    for (std::size_t strip = 0; strip < spans.size(); ++strip) {
        const auto net = static_cast<std::size_t>(layout.netOfStrip[strip]);
        if (!layout.netUsed[net]) continue;
        const double volt = live.solution.netVoltage[net];
        VoltStripMark mark{HolesSeen::of(spans[strip]), std::isnan(volt) ? kFloating : colourStep(scale.share(volt))};
        const QRectF room = mark.strip.frame().marginsAdded(kMetalRoom);
        patches.push_back(movablePatch(spans[strip].holes.front(), room, std::move(mark)));
    }
}

struct SeenThroughMark {
    Point last;  ///< hole of the piece, from its first
    void paint(QPainter& painter, const Theme& theme) const {
        paintMetalSeenThrough(painter, theme, stripFrame({0, 0}, toQt(last)));
    }
    friend bool operator==(const SeenThroughMark&, const SeenThroughMark&) = default;
};

/// Columns that carry current show whole; of a rail shows what lies between the holes that carry some.
void addSeenThrough(Patches& patches, const Picture& picture, const std::vector<StripSpan>& spans,
                    const Snapshot& live) {
    const Layout& layout = *picture.layout;
    std::vector<QRectF> carrying(layout.netOfStrip.size());
    std::vector<char> carries(carrying.size(), 0);
    const auto centre = [&](int joint) {
        return toQt(picture.seenAt(layout.holeAt(layout.joints[static_cast<std::size_t>(joint)].hole)));
    };
    for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
        const Piece& piece = layout.pieces[i];
        if (piece.kind != PieceKind::Strip || std::abs(live.flowOfPiece(i)) < kNoCurrentAmpere) continue;
        const auto strip = static_cast<std::size_t>(piece.owner);
        const QPointF from = centre(piece.from), to = centre(piece.to);
        const QRectF reach = QRectF(from, to).normalized();
        carrying[strip] = carries[strip] ? spanning(carrying[strip], reach) : reach;
        carries[strip] = 1;
    }
    for (std::size_t strip = 0; strip < carrying.size(); ++strip) {
        if (!carries[strip]) continue;
        const StripSpan& span = spans[strip];
        const Point first = span.rail ? fromQt(carrying[strip].topLeft()) : fromQt(span.first);
        const Point last = span.rail ? fromQt(carrying[strip].bottomRight()) : fromQt(span.last);
        const SeenThroughMark mark{placeFrom(first, last)};
        patches.push_back(movablePatch(first, stripFrame({0, 0}, toQt(mark.last)).marginsAdded(kMetalRoom), mark));
    }
}

struct LitStripMark {
    HolesSeen strip;
    bool solid;  ///< joined; else a press would join it
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF frame = strip.frame();
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
        for (const Point hole : strip.holes) {
            const auto box = [hole](double half) { return QRectF(hole.x - half, hole.y - half, 2 * half, 2 * half); };
            painter.fillPath(roundedBox(box((kMouthMm + kMouthRimMm) / 2), 0.16 + kMouthRimMm / 2),
                             solid ? mouthRim : theme.hover);
            painter.fillPath(roundedBox(box((kMouthMm - kMouthRimMm) / 2), 0.1), solid ? theme.hover : mouthRim);
        }
    }
    friend bool operator==(const LitStripMark&, const LitStripMark&) = default;
};

/// The stripes of a strip, one fill for all of them, so that those that meet don't darken each other.
struct BedMark {
    std::vector<Rect> stripes;
    QPainterPath path() const {
        QPainterPath path;
        path.setFillRule(Qt::WindingFill);
        for (const Rect& stripe : stripes) path.addRect(toQt(stripe));
        return path;
    }
    void paint(QPainter& painter, const Theme& theme) const { painter.fillPath(path(), bedColour(theme)); }
    friend bool operator==(const BedMark&, const BedMark&) = default;
};

struct HaloMark {
    QColor light;
    int step;  ///< of brightness
    bool inVolts;
    void paint(QPainter& painter, const Theme& theme) const {
        paintHalo(painter, theme, light, brightnessOfStep(step), inVolts);
    }
    friend bool operator==(const HaloMark&, const HaloMark&) = default;
};

}  // namespace

QColor bedColour(const Theme& theme) { return faded(theme.arrow, theme.dark ? kBedOpacityDark : kBedOpacity); }

void addMetal(Patches& patches, const Picture& picture) {
    const Snapshot* live = picture.live();
    if (live && picture.views.voltage) {
        addInVolts(patches, picture, stripSpans(picture), *live);
    } else if (live && picture.views.arrows != Arrows::Off && !picture.views.strips && !picture.table->turned) {
        addSeenThrough(patches, picture, stripSpans(picture), *live);
    }
    if (picture.table->turned) addLeadTips(patches, picture);
}

void addLitNet(Patches& patches, const Picture& picture, int lit) {
    if (lit < 0) return;
    const auto byPress = netsByPress(picture, lit);
    const auto spans = stripSpans(picture);
    for (std::size_t strip = 0; strip < spans.size(); ++strip) {
        const int net = picture.layout->netOfStrip[strip];
        const bool joined = net == lit;
        if (!joined && std::find(byPress.begin(), byPress.end(), net) == byPress.end()) continue;
        LitStripMark mark{HolesSeen::of(spans[strip]), joined};
        const QRectF room = mark.strip.frame().marginsAdded(kGlowRoom);
        patches.push_back(movablePatch(spans[strip].holes.front(), room, std::move(mark)));
    }
}

void addBeds(Patches& patches, const Picture& picture, const FlowPaths& paths) {
    const Snapshot* live = picture.live();
    if (!live || picture.views.voltage || picture.views.arrows == Arrows::Off) return;
    const double fullScale = fullScaleAmpere(picture);
    std::map<int, BedMark> beds;  // by strip
    for (const FlowPaths::Way& way : paths.ways()) {
        if (way.layer != Layer::UnderParts || way.line.isEmpty()) continue;
        const double current = std::abs(paths.currentOf(way, *live));
        if (current < kThreadShare * fullScale) continue;
        const double half = drawnBreadth(bedBreadthMm(std::min(1.0, current / fullScale))) / 2;
        const QRectF line = QRectF(way.line.points().front(), way.line.points().back()).normalized();
        const int strip = picture.layout->pieces[static_cast<std::size_t>(way.piece)].owner;
        beds[strip].stripes.push_back(
            fromQt(line.width() > line.height() ? line.adjusted(0, -half, 0, half) : line.adjusted(-half, 0, half, 0)));
    }
    for (auto& [strip, bed] : beds) {
        const QRectF room = bed.path().boundingRect();
        patches.push_back(fixedPatch(room, std::move(bed)));
    }
}

void addHalos(Patches& patches, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const int step = brightnessStep(brightnessOf(picture, part));
        if (step == 0) continue;
        PartScene scene = sceneOf(picture, part);
        scene.light = mixedLight(*picture.live(), part);
        const QColor light = findPackagePainter(scene.part.kind->package->name)->light(scene);
        const double radius = haloRadiusMm(brightnessOfStep(step));
        patches.push_back(movablePatch(scene.place.pose.centre, {-radius, -radius, 2 * radius, 2 * radius},
                                       HaloMark{light, step, picture.views.voltage}));
    }
}

}  // namespace tiepoint::ui
