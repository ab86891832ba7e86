#include "ui/paint/mixed_light.h"

#include "ui/paint/palette.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

/// Of the three colours that mix.
std::string_view nameOfWavelength(double metre) {
    constexpr double kBelowGreen = 500e-9, kAboveGreen = 590e-9;
    if (metre < kBelowGreen) return "blue";
    return metre < kAboveGreen ? "pure-green" : "red";
}

/// sRGB (IEC 61966-2-1) to light and back, as a plain power, which it is within a hundredth.
constexpr double kGamma = 2.2;
double toLight(double shade) { return std::pow(shade, kGamma); }
double toShade(double light) { return std::pow(light, 1 / kGamma); }

}  // namespace

QColor mixedLight(const Snapshot& snapshot, int part) {
    if (!snapshot.emitters || !snapshot.solution.places) return {};
    const int first = snapshot.emitters->firstOfPart[static_cast<std::size_t>(part)];
    const int end = snapshot.emitters->firstOfPart[static_cast<std::size_t>(part) + 1];
    if (end - first < 2) return {};
    std::array<double, 3> sum{};
    for (int i = first; i < end; ++i) {
        const double light = toLight(snapshot.emitterBrightness[static_cast<std::size_t>(i)]);
        const int element = snapshot.emitters->all[static_cast<std::size_t>(i)].element;
        const ElementPlace& place = (*snapshot.solution.places)[static_cast<std::size_t>(element)];
        const PartKind& kind = *snapshot.layout->bench->parts[static_cast<std::size_t>(part)].kind;
        const double metre = kind.model[static_cast<std::size_t>(place.spec)].wavelengthMetre;
        const QColor primary = ledColours(nameOfWavelength(metre)).light;
        sum[0] += light * toLight(primary.redF());
        sum[1] += light * toLight(primary.greenF());
        sum[2] += light * toLight(primary.blueF());
    }
    const double most = *std::max_element(sum.begin(), sum.end());
    if (!(most > 0)) return {};
    return QColor::fromRgbF(static_cast<float>(toShade(sum[0] / most)), static_cast<float>(toShade(sum[1] / most)),
                            static_cast<float>(toShade(sum[2] / most)));
}

}  // namespace tiepoint::ui
