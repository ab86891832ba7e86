// The signal source on the table: its waveform drawn in a window as it is set, with frequency and volts beside it, and two sockets towards
// the boards.

#include "core/base/quantity.h"
#include "ui/paint/lettering.h"
#include "ui/paint/packages/face_parts.h"
#include "ui/paint/packages/socket_box.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr QRectF kSourceWindow(4.5, 4.5, 37, 17);
constexpr QRectF kSourceWave(7, 7.5, 15, 11);
constexpr double kSourceFrameMm = 2.4;
constexpr double kSourceKnobMm = 3.2, kSourceWordMm = 1.95;
struct SourceKnob {
    QPointF at;
    const char *word, *value;
};
constexpr SourceKnob kSourceKnobs[] = {{{23.5, 27.6}, "wave", "waveform"},
                                       {{37, 27.6}, "hertz", "frequency"},
                                       {{23.5, 39.6}, "volts", "amplitude"},
                                       {{37, 39.6}, "offset", "offset"}};

/// Two periods of it, in a room whose height is twice the amplitude.
QPainterPath wavePath(std::string_view shape, const QRectF& room) {
    constexpr int kSourcePoints = 64, kSourcePeriods = 2;
    QPainterPath path;
    for (int k = 0; k <= kSourcePoints; ++k) {
        const double at = static_cast<double>(k) / kSourcePoints, phase = std::fmod(at * kSourcePeriods, 1.0);
        double level = std::sin(2 * std::numbers::pi * phase);
        if (shape == "square") level = phase < 0.5 ? 1 : -1;
        if (shape == "triangle") level = phase < 0.25 ? 4 * phase : phase < 0.75 ? 2 - 4 * phase : 4 * phase - 4;
        const QPointF point(room.left() + at * room.width(), room.center().y() - level * room.height() / 2);
        if (k == 0)
            path.moveTo(point);
        else if (shape == "square" && point.y() != path.currentPosition().y())
            path.lineTo(point.x(), path.currentPosition().y()), path.lineTo(point);
        else
            path.lineTo(point);
    }
    return path;
}

class SignalSourcePainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        painter.save();
        painter.translate(cornerMm(scene));
        paintSocketBox(painter, scene, kSourceFrameMm);
        painter.setPen(outlinePen(blend(f.display, Qt::black, 0.5), theme.outlineMm * 1.6));
        painter.setBrush(shadeDown(theme, kSourceWindow, f.display, f.displayLow));
        painter.drawPath(roundedBox(kSourceWindow, 1));
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(f.digits, 0.5));
        painter.drawPath(wavePath(scene.choice("waveform"), kSourceWave));
        const double right = kSourceWindow.right() - 1.8;
        drawText(painter, QString::fromStdString(formatQuantity(scene.value("frequency"), "Hz")), {right, 9.4},
                 {3.4, QFont::DemiBold}, f.digits, Qt::AlignRight);
        drawText(painter,
                 QStringLiteral("\u00b1") + QString::fromStdString(formatQuantity(scene.value("amplitude"), "V")),
                 {right, 14.1}, {2.3, QFont::Medium}, f.digits, Qt::AlignRight);
        drawText(painter, QStringLiteral("about ") + QString::fromStdString(formatQuantity(scene.value("offset"), "V")),
                 {right, 17.8}, {1.9, QFont::Normal}, f.digitsDim, Qt::AlignRight);
        paintNamedSocket(painter, scene, 0, QStringLiteral("out"), theme.jumpers[3]);
        paintNamedSocket(painter, scene, 1, QStringLiteral("\u2212"), theme.jumpers[1]);
        for (const FaceKnob& knob : onFace(scene)) paintFaceKnob(painter, scene, knob, kSourceWordMm);
        painter.restore();
    }

    std::vector<FaceKnob> faceKnobs(const PartScene& scene) const override {
        std::vector<FaceKnob> knobs = onFace(scene);
        for (FaceKnob& knob : knobs) knob.at += cornerMm(scene);
        return knobs;
    }

    std::vector<PartPath> paths(const PartScene&) const override { return {}; }
    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kSourceFrameMm));
    }

private:
    static std::vector<FaceKnob> onFace(const PartScene& scene) {
        std::vector<FaceKnob> knobs;
        for (const SourceKnob& each : kSourceKnobs)
            knobs.push_back({faced(scene, each.at), kSourceKnobMm, each.word, each.value});
        return knobs;
    }
};

}  // namespace

const PackagePainter& signalSourcePainter() {
    static const SignalSourcePainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
