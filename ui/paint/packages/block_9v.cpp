// The nine-volt block with its snap clip on top; a slide on the clip is its switch.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kClipHeightMm = 10;
constexpr QRectF kSwitch(11.6, 2.6, 3, 4.8);
constexpr QRgb kCanLight = 0xff8f9398, kCanDark = 0xff4b4f55, kLabelLight = 0xffd2a24a, kLabelDark = 0xffa87a28;

class Block9VPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        paintBatteryLeads(painter, scene);
        painter.save();
        painter.translate(cornerMm(scene));
        const QRectF box(QPointF(0, 0), scene.bodyRect().size());
        drawSoftShadow(painter, theme, box, 1.6, {1.3, 1.6}, 1.4);
        painter.setPen(outlinePen(f.ink, theme.outlineMm * 1.2));
        painter.setBrush(
            shadeAlong(theme, box.topLeft(), box.topRight(), QColor::fromRgb(kCanLight), QColor::fromRgb(kCanDark)));
        painter.drawPath(roundedBox(box, 1.6));
        const QRectF label(0, 20, box.width(), 21);
        painter.setBrush(shadeAlong(theme, label.topLeft(), label.topRight(), QColor::fromRgb(kLabelLight),
                                    QColor::fromRgb(kLabelDark)));
        painter.drawRect(label);
        drawText(painter, QStringLiteral("9 V"), label.center() - QPointF(0, 2.2), {7, QFont::Bold}, QColor(0x23211c));
        drawText(painter,
                 QString::fromUtf8(scene.choice("condition").data(),
                                   static_cast<qsizetype>(scene.choice("condition").size())),
                 label.center() + QPointF(0, 5), {2.4, QFont::Medium}, QColor(0x23211c));
        paintClip(painter, scene, QRectF(0, 0, box.width(), kClipHeightMm));
        drawText(painter, QString::fromStdString(scene.part.id), {2, 45.6}, {1.7, QFont::Medium}, Qt::white,
                 Qt::AlignLeft);
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }
    QPainterPath control(const PartScene& scene) const override {
        return roundedBox(kSwitch.adjusted(-3.4, -1.2, 3.4, 1.2), 0.5).translated(cornerMm(scene));
    }

private:
    static void paintClip(QPainter& painter, const PartScene& scene, const QRectF& clip) {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, clip, f.plasticLight, f.plasticDark));
        painter.drawPath(roundedBox(clip, 1.4));
        // Studs under the clip: the plus snap is the small round one, the minus the wide crown.
        for (const auto& [x, radius] : {std::pair{6.4, 2.5}, std::pair{20.1, 3.1}}) {
            painter.setBrush(Qt::NoBrush);
            painter.setPen(outlinePen(faded(Qt::white, 0.35), 0.25));
            painter.drawPath(disc({x, clip.center().y()}, radius));
        }
        const bool on = scene.state("on") > 0.5;
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(QColor(0x17191c));
        painter.drawPath(roundedBox(kSwitch, 0.4));
        const double half = kSwitch.height() / 2;
        const QRectF slide =
            (on ? kSwitch.adjusted(0, 0, 0, -half) : kSwitch.adjusted(0, half, 0, 0)).adjusted(0.3, 0.3, -0.3, -0.3);
        painter.setBrush(shadeDown(theme, slide, f.steelLight, f.steelDark));
        painter.drawPath(roundedBox(slide, 0.3));
        const Lettering word{1.5, QFont::Medium};
        drawText(painter, on ? QStringLiteral("on") : QStringLiteral("off"),
                 {kSwitch.center().x(), clip.bottom() - 1.15}, word, Qt::white);
    }
};

}  // namespace

const PackagePainter& block9VPainter() {
    static const Block9VPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
