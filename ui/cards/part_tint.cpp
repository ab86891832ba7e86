#include "ui/cards/part_tint.h"

#include "ui/tray/sample.h"

#include <QImage>

#include <algorithm>
#include <map>
#include <string>

namespace tiepoint::ui {
namespace {

constexpr int kPixels = 48;
constexpr double kTintPixelsPerMm = 8;
constexpr int kSolid = 250;        // shadows and edges are left out
constexpr int kInkLightness = 50;  // outlines are left out too
// A wash of the part's colour, light enough for dark words on it in every theme.
constexpr float kLightness = 0.73F;
constexpr float kMoreColour = 1.25F;

QColor meanColour(const QImage& image, const QColor& fallback) {
    double red = 0, green = 0, blue = 0, weight = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor pixel = image.pixelColor(x, y);
            if (pixel.alpha() < kSolid || pixel.lightness() < kInkLightness) continue;
            const double w = 0.02 + pixel.hslSaturationF();  // bare leads say nothing about the part
            red += w * pixel.redF();
            green += w * pixel.greenF();
            blue += w * pixel.blueF();
            weight += w;
        }
    }
    if (weight <= 0) return fallback;
    const QColor mean = QColor::fromRgbF(static_cast<float>(red / weight), static_cast<float>(green / weight),
                                         static_cast<float>(blue / weight));
    const float saturation = std::min(1.0F, mean.hslSaturationF() * kMoreColour);
    return QColor::fromHslF(std::max(0.0F, mean.hslHueF()), saturation, kLightness);
}

QColor computeTint(const Theme& theme, const Part& part) {
    QImage image(kPixels, kPixels, QImage::Format_ARGB32);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    TrayItem item;
    item.part = part;
    paintItem(painter, theme, item, QRectF(image.rect()), kTintPixelsPerMm);
    painter.end();
    return meanColour(image, theme.cardEdge);
}

}  // namespace

QColor partTint(const Theme& theme, const Part& part) {
    static std::map<std::string, QColor> known;
    std::string appearance = part.kind->name + '/' + std::to_string(static_cast<int>(theme.name));
    for (std::size_t i = 0; i < part.kind->values.size(); ++i)  // choices colour a body; numbers hardly do
        if (part.kind->values[i].type == ValueType::Choice)
            appearance += '/' + std::to_string(static_cast<int>(part.value(static_cast<int>(i))));
    const auto found = known.find(appearance);
    if (found != known.end()) return found->second;
    return known[appearance] = computeTint(theme, part);
}

}  // namespace tiepoint::ui
