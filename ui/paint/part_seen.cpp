#include "ui/paint/part_seen.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

double roundedAngle(double radians) {
    constexpr double kPerRadian = 1e9;
    return std::round(radians * kPerRadian) / kPerRadian;
}

}  // namespace

PartScene PartSeen::scene(const Theme& theme) const {
    PartScene scene{theme, part, place, held};
    scene.leastWordMm = leastWordMm;
    scene.leastFigureMm = leastFigureMm;
    scene.light = light;
    return scene;
}

const PackagePainter& PartSeen::painter() const { return *findPackagePainter(part.kind->package->name); }

PartSeen PartSeen::aboutItself() const {
    PartSeen seen = *this;
    const Point middle = place.pose.centre;
    seen.part.leads.assign(part.leads.size(), std::nullopt);
    seen.part.at.reset();
    seen.part.extras = {};
    if (part.kind->package->reach != Reach::Flying) seen.part.id.clear();
    Pose& pose = seen.place.pose;
    pose.body.centre = placeFrom(middle, pose.body.centre);
    pose.centre = {};
    pose.angle = roundedAngle(pose.angle);
    pose.body.angle = roundedAngle(pose.body.angle);
    for (Point& lead : seen.place.leadsMm) lead = placeFrom(middle, lead);
    for (Point& exit : seen.place.exitsMm) exit = placeFrom(middle, exit);
    for (auto* curves : {&seen.place.cablesMm, &seen.place.detoursMm}) {
        for (WireCurve& curve : *curves) {
            for (Point* point : {&curve.a, &curve.b, &curve.c, &curve.d}) *point = placeFrom(middle, *point);
        }
    }
    return seen;
}

PartSeen PartSeen::body() const {
    PartSeen seen = *this;
    seen.place.leadsMm = seen.place.exitsMm;
    for (WireCurve& detour : seen.place.detoursMm) detour = {detour.a, detour.a, detour.a, detour.a};
    seen.place.cablesMm = seen.place.detoursMm;
    return seen;
}

PartSeen partSeen(const Picture& picture, int part) {
    const PartScene scene = sceneOf(picture, part);
    return {scene.part, scene.place, scene.held, scene.leastWordMm, scene.leastFigureMm, scene.light};
}

CurveSeen CurveSeen::of(const Cubic& cubic) {
    return {{fromQt(cubic.a), fromQt(cubic.b), fromQt(cubic.c), fromQt(cubic.d)}};
}

Cubic CurveSeen::cubic() const { return {toQt(points[0]), toQt(points[1]), toQt(points[2]), toQt(points[3])}; }

CurveSeen CurveSeen::from(Point origin) const {
    CurveSeen moved = *this;
    for (Point& point : moved.points) point = placeFrom(origin, point);
    return moved;
}

CurveSeen jumperSeen(const Picture& picture, int jumper) {
    const QPainterPath line = jumperLine(picture, jumper);
    CurveSeen seen;
    for (int i = 0; i < 4; ++i) seen.points[static_cast<std::size_t>(i)] = fromQt(QPointF(line.elementAt(i)));
    return seen;
}

}  // namespace tiepoint::ui
