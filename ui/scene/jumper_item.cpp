#include "ui/scene/jumper_item.h"

#include "core/edit/placement.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/rest_patch.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kWireEndReachMm = 0.9;  ///< about the pin of a jumper in its hole

}  // namespace

void JumperItem::follow(int index, bool restyled) {
    index_ = index;
    const Table& table = *picture().table;
    const std::array<Point, 2> ends{endMm(picture().bench(), table, jumper().ends[0]),
                                    endMm(picture().bench(), table, jumper().ends[1])};
    const QRectF bounds = jumperBounds(picture(), index);
    const Arc arc = table.jumperArcs[static_cast<std::size_t>(index)];
    const bool same = jumper() == known_ && ends == ends_ && arc == arc_ && bounds == boundingRect();
    known_ = jumper();
    ends_ = ends;
    arc_ = arc;
    lie(bounds, table.turned ? Level::BehindJumpers : Level::Jumpers, index);
    patch_ = restPatchOfJumper(picture(), index);
    if (same && !restyled) return;
    shape_.reset();
}

void JumperItem::addPatches(Patches& patches) const {
    patches.push_back(patch_);
    patches.back().opacity = opacity();
}

QPainterPath JumperItem::shape() const {
    if (!shape_) shape_ = jumperShape(picture(), index_);
    return *shape_;
}

bool JumperItem::isTouched(const QRectF& band) const {
    const QPainterPath line = jumperLine(picture(), index_);
    return band.contains(toQt(ends_[0])) || band.contains(toQt(ends_[1])) || band.contains(line.boundingRect());
}

/// Whether a hole is meant over which the arc only passes. A wire that lies flat covers its holes.
bool JumperItem::passesOverHole(Point at) const {
    if (jumper().flat) return false;
    const auto hole = nearestHole(picture().bench(), picture().table->seen(at), kOpeningMm);
    return hole.has_value();
}

bool JumperItem::meet(Point at, Under& under) const {
    for (int end = 0; end < 2; ++end) {
        if (distance(ends_[static_cast<std::size_t>(end)], at) > kWireEndReachMm) continue;
        if (!under.grip) under.grip = End{id(), end, true};
        return false;  // the pin is the hole's
    }
    if (!under.wire.empty() || !shape().contains(toQt(at)) || passesOverHole(at)) return false;
    under.wire = id();
    if (under.net >= 0) return false;
    const Layout& layout = *picture().layout;
    const int joint = layout.jumperJoints[static_cast<std::size_t>(index_)][0];
    under.net = layout.joints[static_cast<std::size_t>(joint)].net;
    under.netAt = at;
    return false;
}

}  // namespace tiepoint::ui
