#include "ui/paint/pixel_sheet.h"

#include <QPainter>

namespace tiepoint::ui {

/// Passes everything on to a painter that stays in pixels.
class PixelSheet::Engine : public PathEngine {
public:
    explicit Engine(QImage& image) : image_(image) {}

    bool begin(QPaintDevice*) override { return pixels_.begin(&image_); }
    bool end() override { return pixels_.end(); }

    void updateState(const QPaintEngineState& now) override {
        PathEngine::updateState(now);
        const DirtyFlags dirty = now.state();
        if (dirty & DirtyHints) {
            pixels_.setRenderHints(pixels_.renderHints(), false);
            pixels_.setRenderHints(now.renderHints());
        }
        if (dirty & DirtyOpacity) pixels_.setOpacity(now.opacity());
        if (dirty & DirtyCompositionMode) pixels_.setCompositionMode(now.compositionMode());
        if (dirty & DirtyClipPath) pixels_.setClipPath(toDevice().map(now.clipPath()), now.clipOperation());
        if (dirty & DirtyClipRegion) pixels_.setClipRegion(toDevice().map(now.clipRegion()), now.clipOperation());
        if (dirty & DirtyClipEnabled) pixels_.setClipping(now.isClipEnabled());
    }

    void drawPixmap(const QRectF& target, const QPixmap& pixmap, const QRectF& source) override {
        pixels_.setTransform(toDevice());
        pixels_.drawPixmap(target, pixmap, source);
        pixels_.resetTransform();
    }
    void drawImage(const QRectF& target, const QImage& image, const QRectF& source,
                   Qt::ImageConversionFlags flags) override {
        pixels_.setTransform(toDevice());
        pixels_.drawImage(target, image, source, flags);
        pixels_.resetTransform();
    }

protected:
    void draw(const QPainterPath& path, bool isFilled) override {
        const QPainterPath mapped = toDevice().map(path);
        if (isFilled && brush().style() != Qt::NoBrush) pixels_.fillPath(mapped, mappedBrush(brush(), toDevice()));
        if (pen().style() != Qt::NoPen) stroke(mapped);
    }

private:
    void stroke(const QPainterPath& mapped) {
        const QPen pen = inPixels(this->pen());
        if (pen.style() == Qt::SolidLine) return pixels_.strokePath(mapped, pen);
        // The raster engine leaves out dashes beyond the image and begins anew at its edge: where they lie mustn't depend on what of a
        // line is painted.
        pixels_.fillPath(QPainterPathStroker(pen).createStroke(mapped), pen.brush());
    }
    QPen inPixels(QPen pen) const {
        if (!pen.isCosmetic()) pen.setWidthF(pen.widthF() * deviceUnitsPerUnit());
        if (pen.brush().style() != Qt::SolidPattern) pen.setBrush(mappedBrush(pen.brush(), toDevice()));
        return pen;
    }

    QImage& image_;
    QPainter pixels_;
};

PixelSheet::PixelSheet(QImage& image) : RelayDevice(image, std::make_unique<Engine>(image)) {}

}  // namespace tiepoint::ui
