// Round cells in an open holder of one size: as many as there are, in up to two columns, plus ends
// alternating as in a real one.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr QRectF kTrough(2, 2, 24.4, 54);
constexpr QRectF kHolderSwitch(27.6, 25.6, 2.8, 6);
constexpr double kTallCellMm = 12.0;  ///< breadth of a cell lying across the holder at most
constexpr QRgb kSleeveLight = 0xff5f8a6a, kSleeveDark = 0xff2f5a3e, kCapLight = 0xffe6e7e9, kCapDark = 0xff9a9da2;

/// One cell lying across: its plus end with the nub at the left or the right.
void paintCell(QPainter& painter, const Theme& theme, const QRectF& cell, bool plusLeft) {
    painter.save();
    if (plusLeft) {
        painter.translate(2 * cell.center().x(), 0);
        painter.scale(-1, 1);
    }
    const QRectF sleeve = cell.adjusted(cell.width() * 0.06, 0, -cell.width() * 0.1, 0);
    const QRectF nub(sleeve.right(), cell.center().y() - cell.height() * 0.17, cell.width() * 0.07,
                     cell.height() * 0.34);
    painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
    painter.setBrush(shadeDown(theme, nub, QColor::fromRgb(kCapLight), QColor::fromRgb(kCapDark)));
    painter.drawRect(nub);
    painter.drawPath(roundedBox(cell.adjusted(cell.width() * 0.02, 0.3, -cell.width() * 0.9, -0.3), 0.3));
    painter.setBrush(shadeDown(theme, sleeve, QColor::fromRgb(kSleeveLight), QColor::fromRgb(kSleeveDark)));
    painter.drawPath(roundedBox(sleeve, 0.5));
    const QRectF collar(sleeve.right() - sleeve.width() * 0.22, sleeve.top(), sleeve.width() * 0.22, sleeve.height());
    painter.setBrush(shadeDown(theme, collar, QColor(0xe0b860), QColor(0x93702a)));
    painter.drawPath(roundedBox(collar, 0.4));
    if (!theme.flat) {
        painter.setPen(outlinePen(faded(Qt::white, 0.4), 0.22));
        painter.drawLine(QPointF(sleeve.left() + 0.8, sleeve.top() + sleeve.height() * 0.2),
                         QPointF(sleeve.right() - 0.8, sleeve.top() + sleeve.height() * 0.2));
    }
    const double half = std::min(0.75, cell.height() * 0.12);
    painter.setPen(outlinePen(QColor(0x23211c), half * 0.42));
    const QPointF sign = collar.center();
    painter.drawLine(sign - QPointF(half, 0), sign + QPointF(half, 0));
    painter.drawLine(sign - QPointF(0, half), sign + QPointF(0, half));
    painter.setPen(outlinePen(Qt::white, half * 0.42));
    const QPointF minus(sleeve.left() + half * 2, cell.center().y());
    painter.drawLine(minus - QPointF(half, 0), minus + QPointF(half, 0));
    painter.restore();
}

class CellsPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        paintBatteryLeads(painter, scene);
        painter.save();
        painter.translate(cornerMm(scene));
        const QRectF box(QPointF(0, 0), scene.bodyRect().size());
        drawSoftShadow(painter, theme, box, 1.2, {1.3, 1.6}, 1.4);
        painter.setPen(outlinePen(f.ink, theme.outlineMm * 1.2));
        painter.setBrush(shadeDown(theme, box, f.plasticLight, f.plasticDark));
        painter.drawPath(roundedBox(box, 1.2));
        painter.setBrush(blend(f.plasticDark, Qt::black, 0.45));
        const QRectF trough = faced(scene, kTrough);
        painter.drawPath(roundedBox(trough, 0.8));
        const int count = std::max(1, static_cast<int>(scene.value("count")));
        const double pitch = trough.height() / count, height = std::min(kTallCellMm, pitch - 0.5);
        for (int i = 0; i < count; ++i) {
            const double middle = trough.top() + pitch * (i + 0.5);
            paintCell(painter, theme, QRectF(trough.left() + 0.8, middle - height / 2, trough.width() - 1.6, height),
                      i % 2 == 1);
        }
        const QColor print = theme.flat ? QColor(Qt::white) : QColor(0xe8e6e0);
        paintSmallSwitch(painter, scene, faced(scene, kHolderSwitch), print);
        painter.setPen(outlinePen(print, 0.4));
        const double x = faced(scene, 29.0);
        painter.drawLine(QPointF(x - 1, 10), QPointF(x + 1, 10));
        painter.drawLine(QPointF(x, 9), QPointF(x, 11));
        painter.drawLine(QPointF(x - 1, 48), QPointF(x + 1, 48));
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }
    QPainterPath control(const PartScene& scene) const override {
        return roundedBox(faced(scene, kHolderSwitch).adjusted(-0.8, -2.4, 0.8, 2.4), 0.5).translated(cornerMm(scene));
    }
};

}  // namespace

const PackagePainter& cellsPainter() {
    static const CellsPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
