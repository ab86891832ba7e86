// TO-92 from above: a black D, its flat side towards the one who reads its legs from left to right. Along the flat stand the first letters of
// its leads, over their legs: E B C, or D G S. No real part is so kind; without them nobody sees which of two families lies there.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

/// A circle as broad as the body, cut off by the flat.
QPainterPath letterD(const QRectF& box, double insetMm = 0) {
    const double radius = box.width() / 2, middle = box.top() + radius, flat = box.bottom() - insetMm;
    const double half = std::acos((flat - middle) / (radius - insetMm)) * 180 / std::numbers::pi;
    const QRectF ring(-radius + insetMm, middle - radius + insetMm, 2 * (radius - insetMm), 2 * (radius - insetMm));
    QPainterPath path;
    path.arcMoveTo(ring, -90 + half);
    path.arcTo(ring, -90 + half, 360 - 2 * half);
    path.closeSubpath();
    return path;
}

class To92Painter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        for (const Point tip : scene.place.leadsMm) paintBareLead(painter, theme, toQt(legTop(scene, tip)), toQt(tip));
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, box.height() / 2, fallInBody(scene, {0.75, 0.95}), 0.7);
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, f.plasticLight, f.plasticDark));
        painter.drawPath(letterD(box));
        constexpr double kChamferMm = 0.38;
        painter.setPen(outlinePen(faded(Qt::white, theme.flat ? 0.3 : 0.16), theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, blend(f.plasticLight, Qt::white, 0.08), f.plasticDark));
        painter.drawPath(letterD(box, kChamferMm));
        paintLetters(painter, scene, box);
    }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        const int count = static_cast<int>(scene.place.leadsMm.size());
        std::vector<PartPath> ways;
        for (int lead = 0; lead < count; ++lead) {
            QPainterPath line(toQt(scene.place.leadsMm[static_cast<std::size_t>(lead)]));
            // Behind the letters, so that arrows leave them to be read; the middle leg's way shows too.
            line.lineTo(bodyTransform(scene).map(QPointF(0, -kAsideMm)));
            ways.push_back({line, {lead}, PathLook::OverBody, lead, count});
        }
        return ways;
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(letterD(scene.bodyRect()));
    }

private:
    static constexpr double kAsideMm = 1.4;

    /// Upright however the body is turned.
    static void paintLetters(QPainter& painter, const PartScene& scene, const QRectF& box) {
        constexpr double kEmMm = 1.35, kMostEmMm = 1.6, kStepMm = 1.3, kAboveFlatMm = 1.0;
        constexpr double kTypeMm = 1.15, kTypeEmMm = 1.15;
        const QTransform toBody = bodyTransform(scene).inverted();
        for (std::size_t lead = 0; lead < scene.place.leadsMm.size(); ++lead) {
            const std::string& name = scene.part.kind->leads[lead].name;
            const double leg = toBody.map(toQt(scene.place.leadsMm[lead])).x();
            painter.save();
            painter.translate(std::clamp(leg, -kStepMm, kStepMm), box.bottom() - kAboveFlatMm);
            painter.rotate(-scene.place.pose.angle * 180 / std::numbers::pi);
            drawText(painter, QString(QChar(name.front())).toUpper(), {0, 0},
                     {scene.wordMm(kEmMm, kMostEmMm), QFont::Bold}, Qt::white);
            painter.restore();
        }
        // What sort it is, as types are printed: the first word of its name, to the hyphen.
        const std::string& label = scene.part.kind->label;
        painter.save();
        painter.translate(0, box.top() + kTypeMm);
        painter.rotate(-scene.place.pose.angle * 180 / std::numbers::pi);
        drawText(painter, QString::fromStdString(label.substr(0, label.find_first_of(" -"))), {0, 0},
                 {scene.wordMm(kTypeEmMm, kTypeEmMm), QFont::Medium}, faded(Qt::white, 0.8));
        painter.restore();
    }

    /// Legs come out of the body's middle line, 1.27 mm apart.
    static Point legTop(const PartScene& scene, Point tip) {
        const QPointF local = bodyTransform(scene).inverted().map(toQt(tip));
        const QPointF top = bodyTransform(scene).map(QPointF(std::clamp(local.x(), -1.27, 1.27), 0));
        return {top.x(), top.y()};
    }
};

}  // namespace

const PackagePainter& to92Painter() {
    static const To92Painter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
