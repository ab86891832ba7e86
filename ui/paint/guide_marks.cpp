#include "ui/paint/guide_marks.h"

#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kGuideRingMm = 1.5, kBreadthMm = 0.42, kGuideCasingMm = 0.6;
constexpr double kArrowFromMm = 2.6, kArrowToMm = 0.5, kHeadMm = 0.85;

QPainterPath markAt(QPointF at) {
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

}  // namespace

void addGuideMarks(Patches& patches, const Picture& picture) {
    constexpr double kRoomMm = kBreadthMm + kGuideCasingMm;
    for (const Hole& hole : picture.marks.guide) {
        if (!holeMm(picture.bench(), hole)) continue;
        const QPainterPath mark = markAt(toQt(picture.seenAt(hole)));
        patches.push_back({mark.boundingRect().adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm), PatchLook() << "guide",
                           [&picture, mark](QPainter& painter) {
                               painter.setBrush(Qt::NoBrush);
                               painter.strokePath(mark,
                                                  outlinePen(picture.theme->arrowCasing, kBreadthMm + kGuideCasingMm));
                               painter.strokePath(mark, outlinePen(picture.theme->accent, kBreadthMm));
                           }});
    }
}

}  // namespace tiepoint::ui
