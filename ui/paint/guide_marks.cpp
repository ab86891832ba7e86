#include "ui/paint/guide_marks.h"

#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kGuideRingMm = 1.5, kBreadthMm = 0.42, kGuideCasingMm = 0.6;
constexpr double kArrowFromMm = 2.6, kArrowToMm = 0.5, kHeadMm = 0.85;

QPainterPath guideShape() {
    constexpr QPointF at(0, 0);
    QPainterPath mark;
    mark.addEllipse(at, kGuideRingMm, kGuideRingMm);
    const QPointF tip = at - QPointF(0, kGuideRingMm + kArrowToMm);
    mark.moveTo(at - QPointF(0, kGuideRingMm + kArrowFromMm));
    mark.lineTo(tip);
    mark.moveTo(tip + QPointF(-kHeadMm, -kHeadMm));
    mark.lineTo(tip);
    mark.lineTo(tip + QPointF(kHeadMm, -kHeadMm));
    return mark;
}

struct GuideMark {
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(guideShape(), outlinePen(theme.arrowCasing, kBreadthMm + kGuideCasingMm));
        painter.strokePath(guideShape(), outlinePen(theme.accent, kBreadthMm));
    }
    friend bool operator==(const GuideMark&, const GuideMark&) = default;
};

}  // namespace

void addGuideMarks(Patches& patches, const Picture& picture) {
    constexpr double kRoomMm = kBreadthMm + kGuideCasingMm;
    const QRectF room = guideShape().boundingRect().adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm);
    for (const Hole& hole : picture.marks.guide) {
        if (holeMm(picture.bench(), hole)) patches.push_back(movablePatch(picture.seenAt(hole), room, GuideMark{}));
    }
}

}  // namespace tiepoint::ui
