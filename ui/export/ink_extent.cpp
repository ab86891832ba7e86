#include "ui/export/ink_extent.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/path_engine.h"

namespace tiepoint::ui {
namespace {

/// Draws nothing and remembers where it would have been. Its units are millimetres.
class ExtentEngine final : public PathEngine {
public:
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState& now) override {
        PathEngine::updateState(now);
        updateClip(now);
    }
    void drawPixmap(const QRectF& target, const QPixmap&, const QRectF&) override { take(toDevice().mapRect(target)); }
    void drawImage(const QRectF& target, const QImage&, const QRectF&, Qt::ImageConversionFlags) override {
        take(toDevice().mapRect(target));
    }

    const QRectF& extent() const { return extent_; }

protected:
    void draw(const QPainterPath& path, bool isFilled) override {
        const bool strokes = pen().style() != Qt::NoPen && shows(pen().brush());
        if (!strokes && !(isFilled && shows(brush()))) return;
        const double half = strokes ? pen().widthF() / 2 * deviceUnitsPerUnit() : 0;
        take(toDevice().map(path).boundingRect().adjusted(-half, -half, half, half));
    }

private:
    static bool shows(const QBrush& brush) {
        return brush.style() != Qt::NoBrush && (brush.gradient() || brush.color().alpha() > 0);
    }

    void take(QRectF drawn) {
        for (const QPainterPath& path : clip()) drawn &= path.boundingRect();
        if (drawn.width() > 0 || drawn.height() > 0) extent_ |= drawn;
    }

    QRectF extent_;
};

class ExtentSheet final : public QPaintDevice {
public:
    QPaintEngine* paintEngine() const override { return &engine_; }
    const QRectF& extent() const { return engine_.extent(); }

protected:
    int metric(PaintDeviceMetric metric) const override {
        constexpr int kAnything = 1 << 14;  // a table is never so large, and nothing is cut off at the edge
        const bool isRatio = metric == PdmDevicePixelRatio || metric == PdmDevicePixelRatioScaled;
        return isRatio ? QPaintDevice::metric(metric) : kAnything;
    }

private:
    mutable ExtentEngine engine_;
};

}  // namespace

QRectF inkExtent(const Picture& picture) {
    ExtentSheet sheet;
    QPainter painter(&sheet);
    paintBench(painter, picture);
    painter.end();
    return sheet.extent();
}

}  // namespace tiepoint::ui
