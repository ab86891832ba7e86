#include "ui/export/svg_sheet.h"

#include "ui/export/svg_text.h"
#include "ui/paint/path_engine.h"

#include <QBuffer>
#include <QPainter>

#include <map>

namespace tiepoint::ui {

/// Writes each shape as one element. What several elements refer to (clips, gradients) is written once, in front of the first of them.
class SvgSheet::Engine : public PathEngine {
public:
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }

    void updateState(const QPaintEngineState& now) override {
        PathEngine::updateState(now);
        updateClip(now);
    }

    void drawPixmap(const QRectF& target, const QPixmap& pixmap, const QRectF& source) override {
        drawImage(target, pixmap.toImage(), source, Qt::AutoColor);
    }
    void drawImage(const QRectF& target, const QImage& image, const QRectF& source, Qt::ImageConversionFlags) override {
        QByteArray png;
        QBuffer buffer(&png);
        image.copy(source.toAlignedRect()).save(&buffer, "PNG");
        const QTransform place = QTransform(target.width(), 0, 0, target.height(), target.x(), target.y()) * toDevice();
        element("<image width=\"1\" height=\"1\" preserveAspectRatio=\"none\" transform=\"" + svg::matrix(place) +
                "\" opacity=\"" + svg::number(opacity()) + "\" href=\"data:image/png;base64," + png.toBase64() +
                "\"/>");
    }

    /// The words of letters that were drawn just before.
    void writeWords(const LetterLine& line, QPointF baseline) {
        const Lettering& letters = line.lettering;
        const QTransform place = QTransform::fromTranslate(baseline.x(), baseline.y()) * toDevice();
        element("<text xml:space=\"preserve\" transform=\"" + svg::matrix(place) + "\" font-family=\"" +
                svg::words(uiFont(1).family().toStdString()) + ", sans-serif\" font-size=\"" +
                svg::number(letters.sizeMm) + "\" font-weight=\"" + QByteArray::number(letters.weight) +
                "\" textLength=\"" + svg::number(line.widthMm) + "\" fill-opacity=\"0\">" +
                svg::words(line.text.toStdString()) + "</text>");
    }

    const QByteArray& elements() const { return elements_; }

protected:
    void draw(const QPainterPath& path, bool isFilled) override {
        const bool fills = isFilled && brush().style() != Qt::NoBrush, strokes = pen().style() != Qt::NoPen;
        if ((!fills && !strokes) || path.isEmpty()) return;
        const QByteArray data = svg::data(toDevice().map(path));
        QByteArray look = fills ? filled("fill", brush()) : QByteArray(" fill=\"none\"");
        if (fills && path.fillRule() == Qt::OddEvenFill) look += " fill-rule=\"evenodd\"";
        if (strokes) look += filled("stroke", pen().brush()) + svg::stroke(pen(), deviceUnitsPerUnit());
        element("<path d=\"" + data + '"' + look + "/>");
    }

private:
    /// A fill or a stroke in a colour, or in a gradient that is written on the way.
    QByteArray filled(const char* name, const QBrush& brush) {
        if (!brush.gradient()) return svg::paint(name, brush.color(), opacity());
        const QBrush mapped = mappedBrush(brush, toDevice());
        const QByteArray id = shared("g", [&](const QByteArray& as) { return svg::gradient(mapped, as, opacity()); });
        return QByteArray(" ") + name + "=\"url(#" + id + ")\"";
    }

    /// In a group for each clip, one within the other: not every reader heeds the clip of a clip.
    QByteArray clipped(const QByteArray& whole) {
        QByteArray result = whole;
        for (const QPainterPath& path : clip()) {
            const QByteArray id = shared("c", [&](const QByteArray& as) {
                const QByteArray rule = path.fillRule() == Qt::OddEvenFill ? " clip-rule=\"evenodd\"" : "";
                return "<clipPath id=\"" + as + "\"><path d=\"" + svg::data(path) + '"' + rule + "/></clipPath>";
            });
            result = "<g clip-path=\"url(#" + id + ")\">" + result + "</g>";
        }
        return result;
    }

    /// The id of something that is referred to; what looks the same is the same.
    template <class Write>
    QByteArray shared(const char* letter, Write write) {
        const QByteArray content = write(QByteArray());
        const auto found = shared_.find(content);
        if (found != shared_.end()) return found->second;
        QByteArray id = letter + QByteArray::number(static_cast<int>(shared_.size()) + 1);
        shared_.emplace(content, id);
        elements_ += "<defs>" + write(id) + "</defs>\n";
        return id;
    }

    void element(const QByteArray& whole) {
        // A clip of the element itself would lie in the units of its own transform.
        const QByteArray wrapped = clipped(whole);  // writes what it refers to first
        elements_ += wrapped + '\n';
    }

    QByteArray elements_;
    std::map<QByteArray, QByteArray> shared_;
};

SvgSheet::SvgSheet(QSize pixels) : pixels_(pixels), engine_(std::make_unique<Engine>()) {}

SvgSheet::~SvgSheet() = default;

QPaintEngine* SvgSheet::paintEngine() const { return engine_.get(); }

QByteArray SvgSheet::file(const std::string& title) const {
    const QByteArray width = QByteArray::number(pixels_.width()), height = QByteArray::number(pixels_.height());
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width +
           "\" height=\"" + height + "\" viewBox=\"0 0 " + width + ' ' + height + "\">\n<title>" + svg::words(title) +
           "</title>\n" + engine_->elements() + "</svg>\n";
}

void SvgSheet::drawLetters(QPainter& painter, const LetterLine& line, QPointF baseline) {
    painter.fillPath(textPath(line.text, baseline, line.lettering), line.colour);
    engine_->writeWords(line, baseline);  // the engine knows the painter's state since it drew
}

int SvgSheet::metric(PaintDeviceMetric metric) const {
    constexpr double kDotsPerInch = 96, kMmPerInch = 25.4;
    switch (metric) {
        case PdmWidth:
            return pixels_.width();
        case PdmHeight:
            return pixels_.height();
        case PdmWidthMM:
            return static_cast<int>(pixels_.width() / kDotsPerInch * kMmPerInch);
        case PdmHeightMM:
            return static_cast<int>(pixels_.height() / kDotsPerInch * kMmPerInch);
        case PdmDpiX:
        case PdmDpiY:
        case PdmPhysicalDpiX:
        case PdmPhysicalDpiY:
            return static_cast<int>(kDotsPerInch);
        case PdmNumColors:
            return 1 << 24;
        case PdmDepth:
            return 24;
        case PdmDevicePixelRatio:
            return 1;
        default:
            return QPaintDevice::metric(metric);
    }
}

}  // namespace tiepoint::ui
