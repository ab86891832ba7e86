#include "ui/paint/pixel_sheet.h"

#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace tiepoint::ui {

/// Passes everything on to a painter that stays in pixels.
class PixelSheet::Engine : public QPaintEngine {
public:
    explicit Engine(QImage& image) : QPaintEngine(AllFeatures), image_(image) {}

    Type type() const override { return User; }
    bool begin(QPaintDevice*) override { return pixels_.begin(&image_); }
    bool end() override { return pixels_.end(); }

    void updateState(const QPaintEngineState& now) override {
        const DirtyFlags dirty = now.state();
        if (dirty & DirtyTransform) {
            toPixels_ = now.transform();
            pixelsPerUnit_ = std::sqrt(std::abs(toPixels_.determinant()));
        }
        if (dirty & DirtyPen) pen_ = now.pen();
        if (dirty & DirtyBrush) brush_ = now.brush();
        if (dirty & DirtyHints) {
            pixels_.setRenderHints(pixels_.renderHints(), false);
            pixels_.setRenderHints(now.renderHints());
        }
        if (dirty & DirtyOpacity) pixels_.setOpacity(now.opacity());
        if (dirty & DirtyCompositionMode) pixels_.setCompositionMode(now.compositionMode());
        if (dirty & DirtyClipPath) pixels_.setClipPath(toPixels_.map(now.clipPath()), now.clipOperation());
        if (dirty & DirtyClipRegion) pixels_.setClipRegion(toPixels_.map(now.clipRegion()), now.clipOperation());
        if (dirty & DirtyClipEnabled) pixels_.setClipping(now.isClipEnabled());
    }

    void drawPath(const QPainterPath& path) override {
        const QPainterPath mapped = toPixels_.map(path);
        if (brush_.style() != Qt::NoBrush) pixels_.fillPath(mapped, inPixels(brush_));
        if (pen_.style() != Qt::NoPen) pixels_.strokePath(mapped, inPixels(pen_));
    }
    void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
        QPainterPath path;
        path.addPolygon(QPolygonF(QList<QPointF>(points, points + count)));
        path.setFillRule(mode == WindingMode ? Qt::WindingFill : Qt::OddEvenFill);
        if (mode != PolylineMode) path.closeSubpath();
        const QBrush brush = mode == PolylineMode ? std::exchange(brush_, QBrush()) : brush_;
        drawPath(path);
        brush_ = brush;
    }
    void drawLines(const QLineF* lines, int count) override {
        QPainterPath path;
        for (int i = 0; i < count; ++i) path.moveTo(lines[i].p1()), path.lineTo(lines[i].p2());
        if (pen_.style() != Qt::NoPen) pixels_.strokePath(toPixels_.map(path), inPixels(pen_));
    }
    void drawRects(const QRectF* rects, int count) override {
        for (int i = 0; i < count; ++i) {
            QPainterPath path;
            path.addRect(rects[i]);
            drawPath(path);
        }
    }
    void drawEllipse(const QRectF& rect) override {
        QPainterPath path;
        path.addEllipse(rect);
        drawPath(path);
    }
    void drawPixmap(const QRectF& target, const QPixmap& pixmap, const QRectF& source) override {
        pixels_.setTransform(toPixels_);
        pixels_.drawPixmap(target, pixmap, source);
        pixels_.resetTransform();
    }
    void drawImage(const QRectF& target, const QImage& image, const QRectF& source,
                   Qt::ImageConversionFlags flags) override {
        pixels_.setTransform(toPixels_);
        pixels_.drawImage(target, image, source, flags);
        pixels_.resetTransform();
    }

private:
    QBrush inPixels(QBrush brush) const {
        if (brush.style() != Qt::SolidPattern) brush.setTransform(brush.transform() * toPixels_);
        return brush;
    }
    QPen inPixels(QPen pen) const {
        if (!pen.isCosmetic()) pen.setWidthF(pen.widthF() * pixelsPerUnit_);
        if (pen.brush().style() != Qt::SolidPattern) pen.setBrush(inPixels(pen.brush()));
        return pen;
    }

    QImage& image_;
    QPainter pixels_;
    QTransform toPixels_;
    double pixelsPerUnit_ = 1;
    QPen pen_;
    QBrush brush_;
};

PixelSheet::PixelSheet(QImage& image) : image_(image), engine_(std::make_unique<Engine>(image)) {}

PixelSheet::~PixelSheet() = default;

QPaintEngine* PixelSheet::paintEngine() const { return engine_.get(); }

int PixelSheet::metric(PaintDeviceMetric metric) const {
    switch (metric) {
        case PdmWidth:
            return image_.width();
        case PdmHeight:
            return image_.height();
        case PdmWidthMM:
            return image_.widthMM();
        case PdmHeightMM:
            return image_.heightMM();
        case PdmNumColors:
            return image_.colorCount();
        case PdmDepth:
            return image_.depth();
        case PdmDpiX:
        case PdmPhysicalDpiX:
            return image_.physicalDpiX();
        case PdmDpiY:
        case PdmPhysicalDpiY:
            return image_.physicalDpiY();
        case PdmDevicePixelRatio:
            return 1;  // the painter's own transform carries the ratio
        case PdmDevicePixelRatioScaled:
            return static_cast<int>(devicePixelRatioFScale());
        default:
            return QPaintDevice::metric(metric);
    }
}

}  // namespace tiepoint::ui
