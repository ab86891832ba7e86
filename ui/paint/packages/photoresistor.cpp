// A photoresistor from above: a round ceramic wafer with two straight sides, and on it the sensitive track that winds between two combs of
// metal.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kStraightShare = 0.86;  ///< of the radius: from the middle to the straight sides
constexpr QRgb kWaferLight = 0xffe9dcc4, kWaferDark = 0xffb9a584, kFaceLight = 0xfff6efe2, kFaceDark = 0xffdccdb2;
constexpr QRgb kSensitive = 0xffc9521f, kCellSolder = 0xff8d9298;

QPainterPath wafer(double radius) {
    QPainterPath straight;
    straight.addRect(-radius, -radius * kStraightShare, 2 * radius, 2 * radius * kStraightShare);
    return disc({0, 0}, radius).intersected(straight);
}

/// The sensitive track: up and down across the face.
QPainterPath meander(double halfX, double halfY, int strokes) {
    QPainterPath path;
    const double step = 2 * halfX / (strokes - 1);
    for (int i = 0; i < strokes; ++i) {
        const double x = -halfX + i * step, from = i % 2 == 0 ? halfY : -halfY;
        if (i == 0)
            path.moveTo(x, from);
        else
            path.lineTo(x, from);
        path.lineTo(x, -from);
    }
    return path;
}

class PhotoresistorPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const double radius = scene.bodyRect().width() / 2;
        drawSoftShadow(painter, theme, {0, 0}, radius, fallInBody(scene, {0.6, 0.8}), 0.6);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, radius, QColor::fromRgb(kWaferLight), QColor::fromRgb(kWaferDark)));
        painter.drawPath(wafer(radius));
        const QPainterPath face = wafer(radius * 0.8);
        painter.setPen(Qt::NoPen);
        painter.setBrush(
            shadeDown(theme, face.boundingRect(), QColor::fromRgb(kFaceLight), QColor::fromRgb(kFaceDark)));
        painter.drawPath(face);
        constexpr int kStrokes = 6;
        constexpr double kTrackMm = 0.36;
        painter.setBrush(Qt::NoBrush);
        QPen track = outlinePen(QColor::fromRgb(kSensitive), kTrackMm);
        track.setJoinStyle(Qt::RoundJoin);
        painter.setPen(track);
        painter.drawPath(meander(radius * 0.48, radius * 0.42, kStrokes));
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm * 0.7));
        painter.setBrush(QColor::fromRgb(kCellSolder));
        for (const double side : {-1.0, 1.0}) painter.drawPath(disc({side * radius * 0.72, 0}, radius * 0.13));
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(wafer(scene.bodyRect().width() / 2));
    }
};

}  // namespace

const PackagePainter& photoresistorPainter() {
    static const PhotoresistorPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
