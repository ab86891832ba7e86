#pragma once
// Measures pictures: contrast as an eye meets it, and what is left of a picture in eyes that see two kinds of cone only.

#include <QColor>
#include <QImage>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <vector>

namespace tiepoint::ui {

/// Linear light of an sRGB value 0..1 (IEC 61966-2-1).
inline double linearOf(double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); }
inline double encoded(double v) { return v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1 / 2.4) - 0.055; }

/// Relative luminance and contrast ratio as defined by WCAG 2.2 (W3C Recommendation, 2023).
inline double luminanceOf(QRgb c) {
    return 0.2126 * linearOf(qRed(c) / 255.0) + 0.7152 * linearOf(qGreen(c) / 255.0) +
           0.0722 * linearOf(qBlue(c) / 255.0);
}
inline double contrastOf(QRgb a, QRgb b) {
    const double la = luminanceOf(a), lb = luminanceOf(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

/// How the ink in a box stands off from what it lies on: against the colour that fills most of the box, the contrast that the strongest
/// `share` of its pixels reach.
inline double inkContrast(const QImage& image, const QRect& where, double share) {
    const QRect box = where & image.rect();
    struct Shade {
        int count = 0, red = 0, green = 0, blue = 0;
    };
    std::map<QRgb, Shade> shades;  // alike to five bits, so that a gradient is one ground
    for (int y = box.top(); y <= box.bottom(); ++y)
        for (int x = box.left(); x <= box.right(); ++x) {
            const QRgb colour = image.pixel(x, y);
            Shade& shade = shades[colour & 0xfff8f8f8];
            ++shade.count, shade.red += qRed(colour), shade.green += qGreen(colour), shade.blue += qBlue(colour);
        }
    if (shades.empty()) return 0;
    const Shade& most =
        std::ranges::max_element(shades, {}, [](const auto& entry) { return entry.second.count; })->second;
    const QRgb ground = qRgb(most.red / most.count, most.green / most.count, most.blue / most.count);
    std::vector<double> contrasts;
    for (int y = box.top(); y <= box.bottom(); ++y)
        for (int x = box.left(); x <= box.right(); ++x) contrasts.push_back(contrastOf(image.pixel(x, y), ground));
    const auto rank = static_cast<std::ptrdiff_t>(share * static_cast<double>(contrasts.size()));
    std::ranges::nth_element(contrasts, contrasts.begin() + rank, std::greater());
    return contrasts[static_cast<std::size_t>(rank)];
}

/// How a mark stands off from what it hides: of the pixels that it changes, the contrast with what was there before that the strongest
/// `share` of them reach. 0 if it changes nothing.
inline double markContrast(const QImage& with, const QImage& without, double share) {
    std::vector<double> contrasts;
    for (int y = 0; y < with.height(); ++y)
        for (int x = 0; x < with.width(); ++x) {
            const QRgb a = with.pixel(x, y), b = without.pixel(x, y);
            if (a != b) contrasts.push_back(contrastOf(a, b));
        }
    if (contrasts.empty()) return 0;
    const auto rank = static_cast<std::ptrdiff_t>(share * static_cast<double>(contrasts.size()));
    std::ranges::nth_element(contrasts, contrasts.begin() + rank, std::greater());
    return contrasts[static_cast<std::size_t>(rank)];
}

/// Eyes without one kind of cone. The matrices work on linear RGB: Machado, Oliveira and Fernandes, "A physiologically-based model for
/// simulation of color vision deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (2009), severity 1. Figures from
/// memory; that their rows add up to 1, so that greys stay grey, is tested.
struct Eyes {
    const char* name;
    std::array<std::array<double, 3>, 3> matrix;
};
inline constexpr std::array<Eyes, 3> kDichromats{
    {{"protanopia",
      {{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}}},
     {"deuteranopia",
      {{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}}},
     {"tritanopia",
      {{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}}}}};

inline QRgb seenBy(const Eyes& eyes, QRgb colour) {
    const std::array<double, 3> light{linearOf(qRed(colour) / 255.0), linearOf(qGreen(colour) / 255.0),
                                      linearOf(qBlue(colour) / 255.0)};
    std::array<int, 3> seen{};
    for (std::size_t row = 0; row < 3; ++row) {
        double sum = 0;
        for (std::size_t column = 0; column < 3; ++column) sum += eyes.matrix[row][column] * light[column];
        seen[row] = static_cast<int>(std::lround(255 * encoded(std::clamp(sum, 0.0, 1.0))));
    }
    return qRgb(seen[0], seen[1], seen[2]);
}

inline QImage seenBy(const Eyes& eyes, const QImage& image) {
    QImage seen = image.convertToFormat(QImage::Format_RGB32);
    std::map<QRgb, QRgb> known;
    for (int y = 0; y < seen.height(); ++y)
        for (int x = 0; x < seen.width(); ++x) {
            const QRgb colour = seen.pixel(x, y);
            const auto [entry, added] = known.try_emplace(colour, 0);
            if (added) entry->second = seenBy(eyes, colour);
            seen.setPixel(x, y, entry->second);
        }
    return seen;
}

}  // namespace tiepoint::ui
