#include "ui/view/hovering.h"

#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

Qt::CursorShape shapeOver(const Under& under) {
    if (!under.control.empty()) return Qt::PointingHandCursor;
    if (under.grip) return Qt::SizeAllCursor;
    const bool covered = !under.thing().empty();
    return under.body.empty() && (covered || under.board.empty()) ? Qt::ArrowCursor : Qt::OpenHandCursor;
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
    marks_.setHover(found.net, found.netAt, found.thing());
    viewport_.setCursor(shapeOver(found));
}

}  // namespace tiepoint::ui
