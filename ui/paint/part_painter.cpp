// Parts and jumpers at rest, their bounds and what a pointer hits: the table of packages put to work.

#include "core/bench/resolve.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/ghost_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/rest_patch.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kWallLeadMm = 11;                  ///< so far a lead to the wall reaches from a box
constexpr double kPartShadowMm = 4.5;               ///< shadows fall inside of this beyond a body or a wire
constexpr double kGrabMm = 1.2;                     ///< half breadth of a wire for a pointer
constexpr int kBrightnesses = 255, kColours = 255;  ///< steps that eight bits of a colour can show

Cubic cubicOf(const Picture& picture, int index) {
    const Jumper& jumper = picture.bench().jumpers[static_cast<std::size_t>(index)];
    const Point first = endMm(picture.bench(), *picture.table, jumper.ends[0]);
    const Point second = endMm(picture.bench(), *picture.table, jumper.ends[1]);
    return jumperCubic(first, second, picture.table->jumperArcs[static_cast<std::size_t>(index)]);
}

const PackagePainter& painterOf(const PartScene& scene) {
    const PackagePainter* painter = findPackagePainter(scene.part.kind->package->name);
    Q_ASSERT(painter);
    return *painter;
}

/// Where the leads of a kind lie when it is shown on its own, its middle at 0,0.
PartPlace samplePlace(const Part& part) {
    const Package& package = packageOf(part);
    PartPlace place;
    place.pose.body = {package.shape, {}, 0, package.bodyLengthMm / 2, package.bodyWidthMm / 2};
    std::vector<Point> tips;
    if (package.reach == Reach::Bending) {
        const double half = std::max(package.defaultSpan * kPitchMm, package.bodyLengthMm + 3) / 2;
        tips = {{-half, 0}, {half, 0}};
    } else {
        const bool flying = package.reach == Reach::Flying;
        Point middle{package.bodyLengthMm / 2, package.bodyWidthMm / 2};
        if (!flying) {
            Point first, last;
            for (const Point leg : package.footprint) {
                first = {std::min(first.x, leg.x), std::min(first.y, leg.y)};
                last = {std::max(last.x, leg.x), std::max(last.y, leg.y)};
            }
            middle = (first + last) * (kPitchMm / 2);
        }
        for (const Point leg : package.footprint) tips.push_back((flying ? leg : leg * kPitchMm) - middle);
    }
    for (const Point tip : tips) {
        place.leadsMm.push_back(tip);
        place.exitsMm.push_back({std::clamp(tip.x, -package.bodyLengthMm / 2, package.bodyLengthMm / 2),
                                 std::clamp(tip.y, -package.bodyWidthMm / 2, package.bodyWidthMm / 2)});
    }
    return place;
}

}  // namespace

int beatOf(const Picture& picture) {
    constexpr double kBeatMm = 8;  // full-scale arrows run 24 mm/s
    return static_cast<int>(picture.phaseMm / kBeatMm);
}

double middleYOf(const Picture& picture) { return picture.table->boardsMm.top + picture.table->boardsMm.height / 2; }

PartScene sceneOf(const Picture& picture, int part) {
    const auto i = static_cast<std::size_t>(part);
    const Part& which = picture.bench().parts[i];
    const bool held = picture.held() && picture.held()->held.contains(which.id);
    PartScene scene{*picture.theme, which, picture.table->parts[i], held};
    if (picture.sizes.numberMm > 0)
        scene.leastWordMm = picture.sizes.wordsMm, scene.leastFigureMm = picture.sizes.readingMm;
    return scene;
}

bool showsInside(const Picture& picture, int part) {
    const Part& which = picture.bench().parts[static_cast<std::size_t>(part)];
    const PackagePainter* painter = findPackagePainter(which.kind->package->name);
    if (!painter || !painter->hasInside()) return false;
    if (picture.views.strips || picture.marks.hoverPart == which.id) return true;
    if (picture.marks.hoverNet < 0) return false;
    for (int lead = 0; lead < static_cast<int>(which.leads.size()); ++lead) {
        if (picture.layout->netOfLead[static_cast<std::size_t>(picture.layout->leadIndex(part, lead))] ==
            picture.marks.hoverNet)
            return true;
    }
    return false;
}

double brightnessOf(const Picture& picture, int part) {
    const Snapshot* live = picture.live();
    return live ? live->brightness(part) : 0;
}

int brightnessStep(double brightness) { return static_cast<int>(std::ceil(brightness * kBrightnesses)); }

double brightnessOfStep(int step) { return static_cast<double>(step) / kBrightnesses; }

int colourStep(double share) { return static_cast<int>(std::lround(share * kColours)); }

double colourShare(int step) { return static_cast<double>(step) / kColours; }

double drawnBreadth(double mm) {
    constexpr double kPerMm = 100;
    return std::round(mm * kPerMm) / kPerMm;
}

void paintPart(QPainter& painter, const Picture& picture, int part) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintPatch(painter, *picture.theme, restPatch(picture, part));
    painter.restore();
}

void paintJumper(QPainter& painter, const Picture& picture, int jumper) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintPatch(painter, *picture.theme, restPatchOfJumper(picture, jumper));
    painter.restore();
}

QRectF partBounds(const Picture& picture, int part) { return partBounds(sceneOf(picture, part)); }

QRectF partBounds(const PartScene& scene) {
    QRectF bounds = painterOf(scene).body(scene).boundingRect();
    for (const Point lead : scene.place.leadsMm) bounds = bounds.united(QRectF(toQt(lead), QSizeF(0.01, 0.01)));
    for (const PartPath& path : painterOf(scene).paths(scene)) bounds = bounds.united(path.line.boundingRect());
    // The lead of a box to the wall is no lead of the part.
    const double room = standsOnTable(scene.part) ? kWallLeadMm : kPartShadowMm;
    return bounds.adjusted(-room, -room, room, room);
}

QRectF jumperBounds(const Picture& picture, int jumper) { return wireBounds(cubicOf(picture, jumper)); }

QPainterPath partShape(const Picture& picture, int part) {
    const PartScene scene = sceneOf(picture, part);
    QPainterPath shape = painterOf(scene).body(scene);
    QPainterPathStroker stroker;
    stroker.setWidth(2 * kGrabMm);
    for (const PartPath& path : painterOf(scene).paths(scene)) shape = shape.united(stroker.createStroke(path.line));
    return shape;
}

QPainterPath jumperShape(const Picture& picture, int jumper) {
    QPainterPathStroker stroker;
    stroker.setWidth(2 * kGrabMm);
    stroker.setCapStyle(Qt::RoundCap);
    return stroker.createStroke(jumperLine(picture, jumper));
}

QPainterPath jumperLine(const Picture& picture, int jumper) { return cubicOf(picture, jumper).path(); }

QPainterPath controlShape(const Picture& picture, int part) {
    const PartScene scene = sceneOf(picture, part);
    QPainterPath shape = painterOf(scene).control(scene);
    for (const FaceKnob& knob : painterOf(scene).faceKnobs(scene)) shape.addPath(disc(knob.at, knob.radiusMm));
    return shape;
}

std::vector<FaceKnob> faceKnobsOf(const Picture& picture, int part) {
    const PartScene scene = sceneOf(picture, part);
    return painterOf(scene).faceKnobs(scene);
}

std::optional<int> dialPositionAt(const Picture& picture, int part, Point at) {
    const PartScene scene = sceneOf(picture, part);
    return painterOf(scene).dialPosition(scene, toQt(at));
}

void paintSample(QPainter& painter, const Theme& theme, const PartKind& kind) {
    paintSample(painter, theme, makePart(kind, ""));
}

void paintSample(QPainter& painter, const Theme& theme, const Part& part) {
    const PartPlace place = samplePlace(part);
    PartScene scene{theme, part, place};
    scene.compact = true;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painterOf(scene).paint(painter, scene);
    painter.restore();
}

void paintJumperSample(QPainter& painter, const Theme& theme, int colour, double lengthMm) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Point left{-lengthMm / 2, lengthMm * 0.08}, right{lengthMm / 2, lengthMm * 0.08};
    paintWire(painter, theme, jumperCubic(left, right, {jumperBow(lengthMm), 0}),
              jumperLook(theme, colour, lengthMm, false));
    painter.restore();
}

}  // namespace tiepoint::ui
