#include "ui/view/hovering.h"

#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

Qt::CursorShape shapeOver(const Under& under) {
    if (!under.control.empty()) return Qt::PointingHandCursor;
    if (under.grip) return Qt::SizeAllCursor;
    return under.body.empty() ? Qt::ArrowCursor : Qt::OpenHandCursor;
}

}  // namespace

int Hovering::findingAt(QPointF inView) const { return findingAt_(toQt(camera_.toMm(inView))); }

void Hovering::follow(QPointF inView) {
    if (findingAt(inView) >= 0) {
        marks_.clearHover();
        viewport_.setCursor(Qt::PointingHandCursor);
        return;
    }
    const Under found = under(inView);
    const Net net = netOf(found, camera_.toMm(inView));
    marks_.setHover(net.net, net.tag, found.thing());
    viewport_.setCursor(shapeOver(found));
}

Hovering::Net Hovering::netOf(const Under& under, Point at) const {
    const Picture& picture = hand_.picture();
    const Layout& layout = *picture.layout;
    if (!under.wire.empty()) {
        const int joint = layout.jumperJoints[static_cast<std::size_t>(picture.bench().jumperIndex(under.wire))][0];
        return {layout.joints[static_cast<std::size_t>(joint)].net, at};
    }
    if (under.socket) {
        const int lead = layout.leadIndex(picture.bench().partIndex(under.socket->part), under.socket->lead);
        return {layout.netOfLead[static_cast<std::size_t>(lead)], at};
    }
    if (under.hole && under.body.empty())
        return {layout.netOfHole(layout.holeIndex(*under.hole)), picture.seenAt(*under.hole)};
    return {-1, at};
}

}  // namespace tiepoint::ui
