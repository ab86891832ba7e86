// A small solar cell from above: a blue wafer in a pale frame, silver fingers across it that two bars gather, and its two wires.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr QRgb kCellFrameLight = 0xfff1f1ec, kCellFrameDark = 0xffc9cac4, kWaferBlue = 0xff2a4f9e,
               kWaferDeep = 0xff14275c;
constexpr QRgb kCellSilver = 0xffc3cad4, kCellWords = 0xff2b2f36;
constexpr double kCellFrameMm = 3, kCellFrameRightMm = 8;

class SolarCellPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        paintBatteryLeads(painter, scene);
        painter.save();
        painter.translate(cornerMm(scene));
        const QRectF box(QPointF(0, 0), scene.bodyRect().size());
        drawSoftShadow(painter, theme, box, 1.2, {0.8, 1}, 0.9);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm * 1.2));
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(kCellFrameLight), QColor::fromRgb(kCellFrameDark)));
        painter.drawPath(roundedBox(box, 1.2));
        paintWafer(painter, theme,
                   faced(scene, box.adjusted(kCellFrameMm, kCellFrameMm, -kCellFrameRightMm, -kCellFrameMm)));
        const auto exits = scene.part.kind->package->footprint;
        for (const std::size_t lead : {std::size_t{0}, std::size_t{1}}) {
            constexpr double kInsideMm = 4, kSignMm = 1.1;
            const QPointF at = faced(scene, QPointF(exits[lead].x - kInsideMm, exits[lead].y));
            paintSupplySign(painter, theme, at, lead == 0, kSignMm);
        }
        drawText(painter, QString::fromStdString(scene.part.id),
                 faced(scene, QPointF(box.right() - kCellFrameRightMm / 2, box.bottom() - 2)), {1.7, QFont::Medium},
                 QColor::fromRgb(kCellWords));
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }

private:
    static void paintWafer(QPainter& painter, const Theme& theme, const QRectF& wafer) {
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(shadeAlong(theme, wafer.topLeft(), wafer.bottomRight(), QColor::fromRgb(kWaferBlue),
                                    QColor::fromRgb(kWaferDeep)));
        painter.drawRect(wafer);
        constexpr int kFingers = 16;
        QPen finger = outlinePen(QColor::fromRgb(kCellSilver), 0.16);
        finger.setCapStyle(Qt::FlatCap);
        painter.setPen(finger);
        for (int i = 1; i < kFingers; ++i) {
            const double x = wafer.left() + i * wafer.width() / kFingers;
            painter.drawLine(QPointF(x, wafer.top() + 0.8), QPointF(x, wafer.bottom() - 0.8));
        }
        for (const double share : {0.28, 0.72}) {
            const double y = wafer.top() + share * wafer.height();
            painter.fillRect(QRectF(wafer.left() + 0.6, y - 0.4, wafer.width() - 1.2, 0.8),
                             QColor::fromRgb(kCellSilver));
        }
        if (theme.flat) return;
        QPainterPath gleam(wafer.topLeft() + QPointF(wafer.width() * 0.12, 0));
        gleam.lineTo(wafer.topLeft() + QPointF(wafer.width() * 0.34, 0));
        gleam.lineTo(wafer.bottomLeft() + QPointF(wafer.width() * 0.16, 0));
        gleam.lineTo(wafer.bottomLeft() - QPointF(0, wafer.height() * 0.3));
        gleam.closeSubpath();
        painter.fillPath(gleam, faded(Qt::white, 0.1));
    }
};

}  // namespace

const PackagePainter& solarCellPainter() {
    static const SolarCellPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
