#include "ui/scene/part_item.h"

#include "core/bench/turned_table.h"
#include "core/edit/placement.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/rest_patch.h"
#include "ui/paint/shade.h"

#include <QTransform>

#include <algorithm>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kPinReachMm = 0.9;  ///< about the pin of a lead in its hole
constexpr double kSocketReachMm = 3.0;
constexpr double kCableReachMm = 1.45;  ///< half breadth of a lead for a hand
constexpr double kPlugReachMm = 2.4;    ///< about the middle of a plug
constexpr double kProbeReachMm = 11;    ///< from the tip: the coloured body at its end

QPainterPath bodyPath(const Outline& body) {
    QPainterPath path;
    if (body.shape == BodyShape::Round) {
        path.addEllipse(toQt(body.centre), body.halfLength, body.halfLength);
        return path;
    }
    path.addRect({-body.halfLength, -body.halfWidth, 2 * body.halfLength, 2 * body.halfWidth});
    QTransform turned = QTransform::fromTranslate(body.centre.x, body.centre.y);
    turned.rotate(body.angle * 180 / std::numbers::pi);
    return turned.map(path);
}

/// As broad as the handle of a probe, and the plug where it leaves the case.
QPainterPath cablePath(const WireCurve& cable, Point exit) {
    QPainterPathStroker stroker;
    stroker.setWidth(2 * kCableReachMm);
    stroker.setCapStyle(Qt::RoundCap);
    QPainterPath line(toQt(cable.a));
    line.cubicTo(toQt(cable.b), toQt(cable.c), toQt(cable.d));
    return stroker.createStroke(line).united(disc(toQt(exit), kPlugReachMm));
}

bool isFlying(const Part& part) { return part.kind->package->reach == Reach::Flying; }

/// Index of the lead whose tip is nearest.
int nearestLead(const PartPlace& place, Point at) {
    const auto nearer = [at](Point a, Point b) { return distance(a, at) < distance(b, at); };
    return static_cast<int>(std::min_element(place.leadsMm.begin(), place.leadsMm.end(), nearer) -
                            place.leadsMm.begin());
}

}  // namespace

BenchItem::Level PartItem::level() const { return picture().isBehind(index_) ? Level::BehindParts : Level::Parts; }

void PartItem::follow(int index, bool restyled) {
    index_ = index;
    std::vector<Point> points = place().leadsMm;
    points.push_back(place().pose.centre);
    for (const auto* curves : {&place().cablesMm, &place().detoursMm})
        for (const WireCurve& curve : *curves) points.insert(points.end(), {curve.b, curve.c});
    const QRectF bounds = partBounds(picture(), index);
    const bool same = part() == known_ && points == knownPoints_ && bounds == boundingRect();
    known_ = part();
    knownPoints_ = std::move(points);
    lie(bounds, level(), index);
    patch_ = restPatch(picture(), index);
    if (same && !restyled) return;
    outlines_.reset();
}

void PartItem::addPatches(Patches& patches) const {
    patches.push_back(patch_);
    patches.back().opacity = opacity();
}

const PartItem::Outlines& PartItem::outline() const {
    if (!outlines_) outlines_ = makeOutlines();
    return *outlines_;
}

PartItem::Outlines PartItem::makeOutlines() const {
    Outlines made{bodyPath(place().pose.body), controlShape(picture(), index_), partShape(picture(), index_), {}, {}};
    for (std::size_t lead = 0; lead < place().cablesMm.size(); ++lead)
        made.cables.push_back(cablePath(place().cablesMm[lead], place().exitsMm[lead]));
    made.all = made.body.united(made.control).united(made.reach);
    for (std::size_t lead = 0; lead < part().leads.size(); ++lead)
        made.all |= disc(toQt(place().leadsMm[lead]), part().kind->leads[lead].socket ? kSocketReachMm : kPinReachMm);
    return made;
}

bool PartItem::meet(Point at, Under& under) const {
    const Outlines& outlines = outline();
    if (under.control.empty() && outlines.control.contains(toQt(at))) under.control = id();
    const bool onBody = outlines.body.contains(toQt(at));
    if (onBody && under.body.empty()) under.body = id();
    if (!place().leadsMm.empty()) meetLead(at, onBody, under);
    return false;
}

void PartItem::meetSocket(int lead, double away, Point at, Under& under) const {
    if (away > kSocketReachMm || under.socket) return;
    under.socket = Socket{id(), lead};
    if (under.net >= 0) return;
    const Layout& layout = *picture().layout;
    under.net = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(index_, lead))];
    under.netAt = at;
}

/// The cable of a supply or a meter, from the plug at its case to the tip; where it only passes over a hole the hole is meant.
void PartItem::meetCable(Point at, Under& under) const {
    const auto& cables = outline().cables;
    for (int lead = 0; lead < static_cast<int>(cables.size()); ++lead) {
        const auto index = static_cast<std::size_t>(lead);
        if (!cables[index].contains(toQt(at))) continue;
        const bool byItsBody = distance(at, place().leadsMm[index]) <= kProbeReachMm;
        if (!byItsBody && nearestHole(picture().bench(), picture().table->seen(at), kOpeningMm)) continue;
        const End end{id(), lead, false};
        if (!under.lead) under.lead = end;
        if (!under.grip) under.grip = end;
        return;
    }
}

/// Whether a press within reach of a leg's hole means the leg: always beside the body, and under it on the side of the hole that is away
/// from its middle.
bool PartItem::meansLeg(int lead, Point at) const {
    constexpr double kInwardsMm = 0.25;
    const Point middle = place().pose.body.centre;
    const double tip = distance(place().leadsMm[static_cast<std::size_t>(lead)], middle);
    return tip > kInwardsMm && distance(at, middle) > tip - kInwardsMm;
}

/// An end can be gripped at its hole at once: a drag from there moves it, and one from a free hole draws a jumper. Legs of stiff parts
/// go with their body.
void PartItem::meetLead(Point at, bool onBody, Under& under) const {
    const int lead = nearestLead(place(), at);
    const double away = distance(place().leadsMm[static_cast<std::size_t>(lead)], at);
    if (part().kind->leads[static_cast<std::size_t>(lead)].socket) return meetSocket(lead, away, at, under);
    if (isFlying(part())) return meetCable(at, under);
    const bool atTip = away <= kPinReachMm;
    const End end{id(), lead, false};
    const bool onLead = !onBody && (atTip || outline().reach.contains(toQt(at)));
    if (onLead && !under.lead) under.lead = end;
    const bool bends = bendsLegs(*part().kind->package);
    const bool isOnBoard = std::ranges::any_of(part().leads, [](const auto& hole) { return hole.has_value(); });
    const bool grips = bends && isOnBoard && atTip && (!onBody || meansLeg(lead, at));
    if (grips && !under.grip) under.grip = end;
}

}  // namespace tiepoint::ui
