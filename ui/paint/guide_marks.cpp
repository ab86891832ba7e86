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

constexpr double kOpenRingMm = 1.45, kOpenBreadthMm = 0.3, kOpenCasingMm = 0.5;

struct OpenMark {
    void paint(QPainter& painter, const Theme& theme) const {
        const QPainterPath ring = brokenRing({}, kOpenRingMm);
        painter.setBrush(Qt::NoBrush);
        QPen pen = outlinePen(theme.arrowCasing, kOpenBreadthMm + kOpenCasingMm);
        painter.strokePath(ring, pen);
        pen = outlinePen(theme.text, kOpenBreadthMm);
        pen.setCapStyle(Qt::FlatCap);
        painter.strokePath(ring, pen);
    }
    friend bool operator==(const OpenMark&, const OpenMark&) = default;
};

}  // namespace

QPainterPath brokenRing(QPointF centre, double radius) {
    constexpr int kPieces = 4;
    constexpr double kQuarter = 90, kGap = 30;
    const QRectF around(centre - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius));
    QPainterPath ring;
    for (int piece = 0; piece < kPieces; ++piece) {
        const double from = piece * kQuarter + kGap / 2;
        ring.arcMoveTo(around, from);
        ring.arcTo(around, from, kQuarter - kGap);
    }
    return ring;
}

void addGuideMarks(Patches& patches, const Picture& picture) {
    constexpr double kRoomMm = kBreadthMm + kGuideCasingMm;
    const QRectF room = guideShape().boundingRect().adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm);
    for (const Hole& hole : picture.marks.guide) {
        if (holeMm(picture.bench(), hole)) patches.push_back(movablePatch(picture.seenAt(hole), room, GuideMark{}));
    }
    if (!picture.marks.guide.empty() || picture.marks.hop)
        return;  // one thing at a time: rings of what is open would lie over the guide's
    constexpr double kOpenRoomMm = kOpenRingMm + kOpenBreadthMm + kOpenCasingMm;
    const QRectF openRoom(-kOpenRoomMm, -kOpenRoomMm, 2 * kOpenRoomMm, 2 * kOpenRoomMm);
    for (const Hole& hole : picture.marks.open) {
        if (holeMm(picture.bench(), hole)) patches.push_back(movablePatch(picture.seenAt(hole), openRoom, OpenMark{}));
    }
}

}  // namespace tiepoint::ui
