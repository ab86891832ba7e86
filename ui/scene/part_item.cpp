#include "ui/scene/part_item.h"

#include "core/bench/turned_table.h"
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
    Outlines made{bodyPath(place().pose.body), controlShape(picture(), index_), partShape(picture(), index_), {}};
    made.all = made.body.united(made.control).united(made.reach);
    for (std::size_t lead = 0; lead < part().leads.size(); ++lead)
        made.all |= disc(toQt(place().leadsMm[lead]), part().kind->leads[lead].socket ? kSocketReachMm : kPinReachMm);
    return made;
}

bool PartItem::isSelected() const {
    const auto& selected = picture().marks.selected;
    return std::find(selected.begin(), selected.end(), id()) != selected.end();
}

bool PartItem::meet(Point at, Under& under) const {
    const Outlines& outlines = outline();
    if (under.control.empty() && outlines.control.contains(toQt(at))) under.control = id();
    const bool onBody = outlines.body.contains(toQt(at));
    if (onBody && under.body.empty()) under.body = id();
    if (!place().leadsMm.empty()) meetLead(at, onBody, under);
    return false;
}

/// An end can be gripped where it belongs to something selected and its own body doesn't cover it; the cables of supplies always can.
/// So a drag from a free-standing hole draws a jumper, and one at the end of what the brackets mark moves that end.
void PartItem::meetLead(Point at, bool onBody, Under& under) const {
    const int lead = nearestLead(place(), at);
    const double away = distance(place().leadsMm[static_cast<std::size_t>(lead)], at);
    if (part().kind->leads[static_cast<std::size_t>(lead)].socket) {
        if (away > kSocketReachMm || under.socket) return;
        under.socket = Socket{id(), lead};
        if (under.net >= 0) return;
        const Layout& layout = *picture().layout;
        under.net = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(index_, lead))];
        under.netAt = at;
        return;
    }
    const bool atTip = away <= kPinReachMm;
    const End end{id(), lead, false};
    const bool onLead = !onBody && (atTip || outline().reach.contains(toQt(at)));
    if (onLead && !under.lead) under.lead = end;
    const bool bends = part().kind->package->reach == Reach::Bending;
    const bool grips = (isFlying(part()) && onLead) || (bends && !onBody && atTip && isSelected());
    if (grips && !under.grip) under.grip = end;
}

}  // namespace tiepoint::ui
