#include "ui/cards/legend_samples.h"

#include "ui/theme/panels.h"

#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

// Pixels of the 1080-line layout for a millimetre of the board in a sample.
constexpr double kSamplePixelsPerMm = 11.5;
constexpr double kSpacingMm = 5.08;

/// Viridis, eleven steps from dark to light.
constexpr std::array<QRgb, 11> kVoltageSteps{0xff440154, 0xff482475, 0xff414487, 0xff355f8d, 0xff2a788e, 0xff21918c,
                                             0xff22a884, 0xff44bf70, 0xff7ad151, 0xffbddf26, 0xfffde725};

QPainterPath chevron(double breadth) {
    const double h = breadth / 2;
    const double sweep = 0.90 * h + 0.04;
    const double thick = 0.42 + 0.20 * breadth;
    const double back = -(sweep + thick) / 2;
    QPainterPath path(QPointF(back, -h));
    path.lineTo(back + thick, -h);
    path.lineTo(back + thick + sweep, 0);
    path.lineTo(back + thick, h);
    path.lineTo(back, h);
    path.lineTo(back + sweep, 0);
    path.closeSubpath();
    return path;
}

void paintBed(QPainter& painter, const Look& look, const QRectF& box, SampleBed bed) {
    const Theme& theme = *look.theme;
    const double breadth = look.px(bed == SampleBed::Jumper ? 17 : 22);
    const QRectF strip(box.left(), box.center().y() - breadth / 2, box.width(), breadth);
    constexpr std::size_t kBlue = 2;
    const QColor face = bed == SampleBed::Jumper ? theme.jumpers[kBlue] : theme.metalDark;
    painter.setBrush(face);
    painter.setPen(QPen(bed == SampleBed::Jumper ? mix(face, QColor(Qt::black), 0.45) : theme.metalEdge, look.px(1.2)));
    const double radius = bed == SampleBed::Jumper ? 0 : look.px(5);
    painter.drawRoundedRect(strip, radius, radius);
}

void paintChevron(QPainter& painter, const Look& look, QPointF at, double breadth, Arrows arrows) {
    const Theme& theme = *look.theme;
    QPainterPath path = chevron(breadth);
    if (arrows == Arrows::Electrons) {  // turned round, with a tail bar
        const double bar = 0.42 + 0.1 * breadth;
        path.addRect(path.boundingRect().left() - bar - 0.35, -breadth / 2, bar, breadth);
        path = QTransform::fromScale(-1, 1).map(path);
    }
    painter.save();
    painter.translate(at);
    const double scale = look.px(kSamplePixelsPerMm);
    painter.scale(scale, scale);
    painter.setPen(QPen(theme.arrowCasing, theme.arrowCasingMm, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(theme.arrowCasing);
    painter.drawPath(path);
    painter.setPen(QPen(theme.arrow, 0.14, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(theme.arrow);
    painter.drawPath(path);
    painter.restore();
}

}  // namespace

QColor voltageColour(double share) {
    const double at = std::clamp(share, 0.0, 1.0) * (kVoltageSteps.size() - 1);
    const auto low = std::min(static_cast<std::size_t>(at), kVoltageSteps.size() - 2);
    return mix(QColor(kVoltageSteps[low]), QColor(kVoltageSteps[low + 1]), at - static_cast<double>(low));
}

void paintArrowSample(QPainter& painter, const Look& look, const QRectF& box, double share, Arrows arrows, SampleBed bed) {
    paintBed(painter, look, box, bed);
    if (arrows == Arrows::Off || share <= 0) return;
    const double spacing = look.px(kSpacingMm * kSamplePixelsPerMm);
    const int count = std::max(1, static_cast<int>(box.width() / spacing));
    const double breadth = 0.55 + 1.75 * std::min(share, 1.0);
    const double first = box.center().x() - spacing * (count - 1) / 2.0;
    for (int i = 0; i < count; ++i)
        paintChevron(painter, look, QPointF(first + i * spacing, box.center().y()), breadth, arrows);
}

void paintVoltageSample(QPainter& painter, const Look& look, const QRectF& box) {
    const QRectF bar(box.left(), box.center().y() - look.px(9), box.width(), look.px(18));
    QLinearGradient scale(bar.topLeft(), bar.topRight());
    for (std::size_t i = 0; i < kVoltageSteps.size(); ++i)
        scale.setColorAt(static_cast<double>(i) / (kVoltageSteps.size() - 1), QColor(kVoltageSteps[i]));
    painter.setBrush(scale);
    painter.setPen(QPen(look.theme->dark ? look.theme->cardEdge : look.theme->text, look.px(1.2)));
    painter.drawRoundedRect(bar, look.px(3), look.px(3));
}

void paintStripsSample(QPainter& painter, const Look& look, const QRectF& box) {
    const Theme& theme = *look.theme;
    constexpr int kStrips = 3;
    constexpr int kHoles = 3;
    const double breadth = look.px(13);
    const double hole = look.px(5);
    const double height = look.px(38);
    for (int strip = 0; strip < kStrips; ++strip) {
        const double left = box.left() + (box.width() - breadth) * strip / (kStrips - 1);
        const QRectF metal(left, box.center().y() - height / 2, breadth, height);
        painter.setBrush(theme.metalLight);
        painter.setPen(QPen(theme.metalEdge, look.px(1.4)));
        painter.drawRoundedRect(metal, look.px(4), look.px(4));
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.hole);
        for (int i = 0; i < kHoles; ++i) {
            const double y = metal.top() + height * (i + 0.5) / kHoles;
            painter.drawRoundedRect(QRectF(metal.center().x() - hole / 2, y - hole / 2, hole, hole), look.px(1), look.px(1));
        }
    }
}

void paintReadingSample(QPainter& painter, const Look& look, const QRectF& box) {
    const Theme& theme = *look.theme;
    const QRectF tag(box.left(), box.center().y() - look.px(15), box.width(), look.px(30));
    painter.setBrush(theme.card);
    painter.setPen(QPen(theme.flat ? theme.cardEdge : theme.dimText, look.px(1.3)));
    painter.drawRoundedRect(tag, look.px(5), look.px(5));
    painter.setFont(look.font(18, QFont::DemiBold));
    painter.setPen(theme.text);
    painter.drawText(tag, Qt::AlignCenter, QStringLiteral("1.98 V"));
}

}  // namespace tiepoint::ui
