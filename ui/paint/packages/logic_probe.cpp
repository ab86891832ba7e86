// The logic probe on the table: three lamps that say high, low and pulse, and sockets for its tip and its two clips towards the boards.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/face_parts.h"
#include "ui/paint/packages/socket_box.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <array>

namespace tiepoint::ui {
namespace {

constexpr double kProbeFrameMm = 2.4, kProbeLampX = 20, kProbeLampMm = 1.9, kProbeWordX = 24;
constexpr double kProbeKnobMm = 2.9, kProbeKnobWordMm = 2;
constexpr QPointF kLevelsAt(37.6, 12);
/// In the order of the bits that its law tells: high, low, changed of late.
struct ProbeLamp {
    int bit;
    double y;
    const char* word;
    QRgb colour;
};
constexpr std::array kProbeLamps{ProbeLamp{1, 8, "high", 0xffe5352b}, ProbeLamp{2, 14.5, "low", 0xff2fa84f},
                                 ProbeLamp{4, 21, "pulse", 0xfff2a31b}};

class LogicProbePainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        painter.save();
        painter.translate(cornerMm(scene));
        paintSocketBox(painter, scene, kProbeFrameMm);
        for (const ProbeLamp& lamp : kProbeLamps) paintLamp(painter, scene, lamp, false);
        paintFaceKnob(painter, scene, levelsKnob(scene), kProbeKnobWordMm);
        paintNamedSocket(painter, scene, 0, QStringLiteral("tip"), scene.theme.jumpers[3]);
        paintNamedSocket(painter, scene, 1, QStringLiteral("+"), scene.theme.jumpers[0]);
        paintNamedSocket(painter, scene, 2, QStringLiteral("\u2212"), scene.theme.jumpers[1]);
        painter.restore();
    }

    std::vector<FaceKnob> faceKnobs(const PartScene& scene) const override {
        FaceKnob knob = levelsKnob(scene);
        knob.at += cornerMm(scene);
        return {knob};
    }

    QRectF figures(const PartScene& scene) const override {
        return faced(scene, QRectF(kProbeLampX - 3, 5, 22, 19)).translated(cornerMm(scene));
    }
    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int) const override {
        if (instant.status() != Status::Solved) return std::nullopt;
        for (const ElementState element : instant.solution.elements())
            if (element.part == part && element.told > 0)
                return DisplayFigures{{}, {}, {}, {}, static_cast<int>(element.told)};
        return std::nullopt;
    }
    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        painter.save();
        painter.translate(cornerMm(scene));
        for (const ProbeLamp& lamp : kProbeLamps)
            if ((shown.beat & lamp.bit) != 0) paintLamp(painter, scene, lamp, true);
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene&) const override { return {}; }
    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kProbeFrameMm));
    }

private:
    static FaceKnob levelsKnob(const PartScene& scene) {
        return {faced(scene, kLevelsAt), kProbeKnobMm, scene.choice("logic") == "ttl" ? "TTL" : "CMOS", "logic"};
    }

    /// Lit it has a ring of its light too, and its word is bold, so that it is told without colour.
    static void paintLamp(QPainter& painter, const PartScene& scene, const ProbeLamp& lamp, bool lit) {
        const Furnishing& f = scene.theme.furnishing;
        const QColor colour = QColor::fromRgb(lamp.colour);
        const QPointF at = faced(scene, QPointF(kProbeLampX, lamp.y));
        if (lit) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(faded(colour, 0.35));
            painter.drawPath(disc(at, kProbeLampMm + 1));
        }
        painter.setPen(outlinePen(f.ink, scene.theme.outlineMm));
        painter.setBrush(lit ? shadeRound(scene.theme, at, kProbeLampMm, blend(colour, Qt::white, 0.5), colour)
                             : QBrush(darkenedTo(colour, 34)));
        painter.drawPath(disc(at, kProbeLampMm));
        drawText(painter, QString::fromUtf8(lamp.word), faced(scene, QPointF(kProbeWordX, lamp.y)),
                 {2.5, lit ? QFont::Bold : QFont::Normal}, lit ? f.panelInk : f.panelDim,
                 scene.place.mirrored ? Qt::AlignRight : Qt::AlignLeft);
    }
};

}  // namespace

const PackagePainter& logicProbePainter() {
    static const LogicProbePainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
