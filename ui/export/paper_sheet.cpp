#include "ui/export/paper_sheet.h"

#include "ui/export/flat_gradient.h"
#include "ui/theme/theme.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {

/// Passes everything on to a painter on the writer, which has the same state.
class PaperSheet::Engine : public PathEngine {
public:
    explicit Engine(QPagedPaintDevice& writer) : writer_(writer) {}

    bool begin(QPaintDevice*) override { return paper_.begin(&writer_); }
    bool end() override { return paper_.end(); }

    void updateState(const QPaintEngineState& now) override {
        PathEngine::updateState(now);
        updateClip(now);
        const DirtyFlags dirty = now.state();
        if (dirty & DirtyTransform) paper_.setTransform(now.transform());
        if (dirty & DirtyFont) paper_.setFont(now.font());
        if (dirty & DirtyClipPath) paper_.setClipPath(now.clipPath(), now.clipOperation());
        if (dirty & DirtyClipRegion) paper_.setClipRegion(now.clipRegion(), now.clipOperation());
        if (dirty & DirtyClipEnabled) paper_.setClipping(now.isClipEnabled());
    }

    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        if (!isOnPage({at.x(), at.y() - item.ascent(), item.width(), item.ascent() + item.descent()})) return;
        paper_.setOpacity(opacity());
        paper_.setPen(pen());
        paper_.drawTextItem(at, item);
    }
    void drawPixmap(const QRectF& target, const QPixmap& pixmap, const QRectF& source) override {
        paper_.setOpacity(opacity());
        paper_.drawPixmap(target, pixmap, source);
    }
    void drawImage(const QRectF& target, const QImage& image, const QRectF& source,
                   Qt::ImageConversionFlags flags) override {
        paper_.setOpacity(opacity());
        paper_.drawImage(target, image, source, flags);
    }

protected:
    void draw(const QPainterPath& path, bool isFilled) override {
        const double half = pen().style() == Qt::NoPen ? 0 : pen().widthF();  // corners reach out further than half
        if (!isOnPage(path.boundingRect().adjusted(-half, -half, half, half))) return;
        paper_.setOpacity(opacity());
        if (isFilled && brush().style() != Qt::NoBrush) fill(path);
        if (pen().style() != Qt::NoPen) paper_.strokePath(path, pen());
    }

private:
    /// What lies wholly outside of the clip doesn't go into the file: nobody would see it, but a search would find its words.
    bool isOnPage(const QRectF& inUnits) const {
        const QRectF there = toDevice().mapRect(inUnits);
        return std::ranges::all_of(clip(), [&](const QPainterPath& path) {
            const QRectF shown = path.boundingRect();
            return there.left() <= shown.right() && there.right() >= shown.left() && there.top() <= shown.bottom() &&
                   there.bottom() >= shown.top();
        });
    }

    void fill(const QPainterPath& path) {
        if (!fadesAlong(brush())) return paper_.fillPath(path, brush());
        paper_.save();
        paper_.setClipPath(path, Qt::IntersectClip);
        for (const FlatShape& shape : flatShapes(brush(), path.boundingRect()))
            paper_.fillPath(shape.area, shape.colour);
        paper_.restore();
    }

    QPagedPaintDevice& writer_;
    QPainter paper_;
};

PaperSheet::PaperSheet(QPagedPaintDevice& writer) : RelayDevice(writer, std::make_unique<Engine>(writer)) {}

/// Each letter where the line has it, so that the picture is the screen's; whoever reads the file joins neighbours to words.
void PaperSheet::drawLetters(QPainter& painter, const LetterLine& line, QPointF baseline) {
    const double scale = line.lettering.sizeMm / kDrawnPx;
    painter.save();
    painter.translate(baseline);
    painter.scale(scale, scale);
    painter.setFont(uiFont(kDrawnPx, line.lettering.weight));
    painter.setPen(line.colour);
    for (const PlacedLetter& letter : line.letters) painter.drawText(QPointF(letter.leftMm / scale, 0), letter.letter);
    painter.restore();
}

}  // namespace tiepoint::ui
