#include "ui/cards/legend_samples.h"

#include "ui/paint/legend_painter.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

// Pixels of the 1080-line layout for a millimetre of the board in a sample: as large as a full bench shows it.
constexpr double kPixelsPerMm = 11.5;
constexpr double kVoltBarHeight = 16;
constexpr double kStripsHeight = 26;
constexpr double kStripsMm = 7.6;
constexpr double kTagPixelsPerMm = 7.4;

/// Runs `draw` with the painter in millimetres, its origin at a point of the widget.
template <class Draw>
void inMm(QPainter& painter, QPointF origin, double pixelsPerMm, const Draw& draw) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(origin);
    painter.scale(pixelsPerMm, pixelsPerMm);
    draw();
    painter.restore();
}

}  // namespace

void paintArrowSample(QPainter& painter, const Look& look, const QRectF& box, double share, Arrows arrows,
                      SampleBed bed) {
    const double scale = look.px(kPixelsPerMm);
    const double shown = arrows == Arrows::Off ? 0 : std::min(share, 1.0);
    const auto sample = bed == SampleBed::Jumper
                            ? static_cast<void (*)(QPainter&, const Theme&, double, double, bool)>(paintArrowSample)
                            : paintStripArrowSample;
    inMm(painter, QPointF(box.left(), box.center().y()), scale,
         [&] { sample(painter, *look.theme, box.width() / scale, shown, arrows == Arrows::Electrons); });
}

void paintVoltageSample(QPainter& painter, const Look& look, const QRectF& box) {
    const double scale = look.px(kPixelsPerMm);
    const double height = std::min(box.height(), look.px(kVoltBarHeight)) / scale;
    inMm(painter, QPointF(box.left(), box.center().y()), scale,
         [&] { paintVoltBar(painter, *look.theme, QRectF(0, -height / 2, box.width() / scale, height)); });
}

void paintStripsSample(QPainter& painter, const Look& look, const QRectF& box) {
    inMm(painter, box.center(), look.px(kStripsHeight) / kStripsMm, [&] { paintStripsIcon(painter, *look.theme); });
}

void paintReadingSample(QPainter& painter, const Look& look, const QRectF& box) {
    inMm(painter, box.center(), look.px(kTagPixelsPerMm),
         [&] { paintReadingIcon(painter, *look.theme, QStringLiteral("1.98 V")); });
}

}  // namespace tiepoint::ui
