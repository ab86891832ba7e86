// A buzzer from above: a round black can with the hole that lets its sound out and a plus sign beside one leg. While it sounds, arcs spread
// beside it, and its pitch stands there.

#include "core/base/quantity.h"
#include "core/snapshot/sounds.h"
#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/packages/sound_arcs.h"
#include "ui/paint/shade.h"

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr int kBuzzerGrille = 6;
constexpr double kBuzzerGrilleMm = 2.2, kBuzzerGrilleHoleMm = 0.4;

constexpr double kBuzzerRimMm = 0.75, kBuzzerHoleMm = 0.95, kBuzzerPlusMm = 0.8, kBuzzerPlusStrokeMm = 0.34;
constexpr double kBuzzerSoundAwayMm = 9.2, kBuzzerSoundScaleMm = 1.35;
constexpr Lettering kBuzzerPitch{2.0, QFont::DemiBold};

class BuzzerPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        const BodyFrame frame(painter, scene);
        const double radius = scene.bodyRect().width() / 2;
        drawSoftShadow(painter, theme, {0, 0}, radius, fallInBody(scene, {0.9, 1.15}), 0.9);
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, radius, f.plasticLight, f.plasticDark));
        painter.drawPath(disc({0, 0}, radius));
        painter.setPen(outlinePen(faded(Qt::white, theme.flat ? 0.3 : 0.16), theme.outlineMm));
        painter.setBrush(shadeAlong(theme, {-radius, -radius}, {radius, radius}, blend(f.plasticLight, Qt::white, 0.1),
                                    f.plasticDark));
        painter.drawPath(disc({0, 0}, radius - kBuzzerRimMm));
        painter.setPen(outlinePen(faded(Qt::white, 0.35), theme.outlineMm));
        painter.setBrush(blend(f.plasticDark, Qt::black, 0.7));
        painter.drawPath(disc({0, 0}, kBuzzerHoleMm));
        // What is moved from outside has an open grille of small holes about the middle one.
        const auto& sound = scene.part.kind->sound;
        for (int hole = 0; sound && sound->follows && hole < kBuzzerGrille; ++hole) {
            const double turn = 2 * std::numbers::pi * hole / kBuzzerGrille;
            painter.drawPath(disc(QPointF(std::cos(turn), std::sin(turn)) * kBuzzerGrilleMm, kBuzzerGrilleHoleMm));
        }
        paintPlus(painter, scene, radius);
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(disc({0, 0}, scene.bodyRect().width() / 2));
    }

    QRectF figures(const PartScene& scene) const override {
        const QPointF from = soundFrom(scene);
        return QRectF(from.x() - 4.6, from.y() - 6.2, 9.2, 7.0);
    }

    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int beat) const override {
        const double hertz = pitchOf(instant, part);
        if (hertz <= 0) return std::nullopt;
        return DisplayFigures{formatQuantity(hertz, "Hz"), {}, {}, {}, beat % kSoundArcs};
    }

    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        const QPointF from = soundFrom(scene);
        paintSoundArcs(painter, from, kBuzzerSoundScaleMm, 90, shown.beat, scene.theme.accent);
        const QString pitch = QString::fromStdString(shown.figure);
        const QPointF at = from - QPointF(0, 5.2);
        const double width = textWidthMm(pitch, kBuzzerPitch) + 1.2;
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(scene.theme.boardTop, 0.92));
        painter.drawPath(roundedBox(QRectF(at.x() - width / 2, at.y() - 1.2, width, 2.4), 0.6));
        drawText(painter, pitch, at, kBuzzerPitch, scene.theme.text);
    }

private:
    static QPointF soundFrom(const PartScene& scene) {
        return toQt(scene.place.pose.centre) - QPointF(0, kBuzzerSoundAwayMm);
    }

    static void paintPlus(QPainter& painter, const PartScene& scene, double radius) {
        const int plus = scene.part.kind->leadIndex("+");
        if (plus < 0) return;
        const QPointF tip =
            bodyTransform(scene).inverted().map(toQt(scene.place.leadsMm[static_cast<std::size_t>(plus)]));
        const QPointF at((tip.x() > 0 ? 1 : -1) * radius * 0.62, 0);
        painter.setPen(QPen(faded(Qt::white, 0.9), kBuzzerPlusStrokeMm, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(at - QPointF(kBuzzerPlusMm, 0), at + QPointF(kBuzzerPlusMm, 0));
        painter.drawLine(at - QPointF(0, kBuzzerPlusMm), at + QPointF(0, kBuzzerPlusMm));
    }
};

}  // namespace

const PackagePainter& buzzerPainter() {
    static const BuzzerPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
