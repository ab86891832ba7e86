#include "ui/paint/legend_painter.h"

#include "ui/paint/arrow_marks.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr int kBlue = 2;  ///< index of the sample's jumper colour
constexpr double kSampleWireMm = 1.62;

void drawAlong(QPainter& painter, const Theme& theme, double lengthMm, double share, bool electrons) {
    const double left = std::fmod(lengthMm / 2, kArrowSpacingMm);
    for (double x = left > kArrowSpacingMm * 0.3 ? left - kArrowSpacingMm * 0.25 : left + kArrowSpacingMm * 0.5;
         x < lengthMm - 1; x += kArrowSpacingMm) {
        ArrowMark mark;
        mark.at = {x, 0};
        mark.angle = electrons ? std::numbers::pi : 0;
        mark.breadthMm = arrowBreadthMm(share);
        drawMark(painter, theme, mark, electrons);
    }
}

}  // namespace

void paintArrowSample(QPainter& painter, const Theme& theme, double lengthMm, double share, bool electrons) {
    const QColor colour = theme.jumpers[kBlue];
    painter.setPen(outlinePen(theme.flat ? theme.furnishing.ink : blend(colour, Qt::black, 0.5), theme.outlineMm));
    painter.setBrush(colour);
    painter.drawRect(QRectF(0, -kSampleWireMm / 2, lengthMm, kSampleWireMm));
    drawAlong(painter, theme, lengthMm, share, electrons);
}

void paintStripArrowSample(QPainter& painter, const Theme& theme, double lengthMm, double share, bool electrons) {
    paintMetalSeenThrough(painter, theme, stripFrame({1, 0}, {lengthMm - 1, 0}));
    const double bed = bedBreadthMm(share);
    painter.fillRect(QRectF(0.5, -bed / 2, lengthMm - 1, bed), bedColour(theme));
    drawAlong(painter, theme, lengthMm, share, electrons);
}

void paintVoltBar(QPainter& painter, const Theme& theme, const QRectF& frame) {
    QLinearGradient scale(frame.topLeft(), frame.topRight());
    for (int i = 0; i < kVoltSteps; ++i) scale.setColorAt(i / (kVoltSteps - 1.0), voltColour(i / (kVoltSteps - 1.0)));
    painter.setBrush(scale);
    painter.setPen(outlinePen(theme.text, theme.outlineMm));
    painter.drawPath(roundedBox(frame, 0.25));
}

void paintStripsIcon(QPainter& painter, const Theme& theme) {
    for (const double x : {-kPitchMm, 0.0, kPitchMm}) {
        paintMetal(painter, theme, stripFrame({x, -kPitchMm}, {x, kPitchMm}));
        for (const double y : {-kPitchMm, 0.0, kPitchMm}) paintMouth(painter, {x, y}, theme.hole);
    }
}

void paintReadingIcon(QPainter& painter, const Theme& theme, const QString& text) {
    constexpr Lettering kLettering{2.1, QFont::Medium};
    const double width = textWidthMm(text, kLettering) + 1.5;
    paintTag(painter, theme, QRectF(-width / 2, -1.45, width, 2.9), text, kLettering,
             theme.flat ? theme.boardEdge : theme.label, theme.text);
}

}  // namespace tiepoint::ui
