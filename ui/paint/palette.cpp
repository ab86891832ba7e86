#include "ui/paint/palette.h"

#include "ui/paint/shade.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kDullLightness = 37.5;  ///< of 38 allowed

struct NamedLight {
    std::string_view name;
    unsigned hex;
};
// The ten named colours of light; deep red, pure green and infrared follow their neighbours.
constexpr std::array<NamedLight, 8> kLights{{{"red", 0xe5352b},
                                             {"deep-red", 0xcf1f2e},
                                             {"amber", 0xf2a31b},
                                             {"green", 0x2fa84f},
                                             {"pure-green", 0x18b874},
                                             {"blue", 0x2f7de0},
                                             {"white", 0xf3f0e6},
                                             {"infrared", 0x6a4a78}}};

constexpr std::array<unsigned, kVoltSteps> kVolts{0x440154, 0x482475, 0x414487, 0x355f8d, 0x2a788e, 0x21918c,
                                                  0x22a884, 0x44bf70, 0x7ad151, 0xbddf26, 0xfde725};

constexpr std::array<unsigned, 13> kBands{0x23211f, 0x6b4228, 0xc4291f, 0xe0731e, 0xe8c22c, 0x3d8b46, 0x2f62b0,
                                          0x7a4aa0, 0x8a8a88, 0xf2efe6, 0xb8923c, 0xb9bcc0, 0xe9a6b4};

constexpr std::string_view kCapLetters = "ASDFGH";
constexpr std::array<unsigned, 6> kCaps{0xd39a1e, 0x2f6aa8, 0x4b7f52, 0xb23a2e, 0x7a5a96, 0xe9e4d6};
constexpr unsigned kPlainCap = 0x2f6aa8;

}  // namespace

LedColours ledColours(std::string_view choice) {
    const auto found =
        std::find_if(kLights.begin(), kLights.end(), [&](const NamedLight& l) { return l.name == choice; });
    const QColor light = QColor::fromRgb(found == kLights.end() ? kLights.front().hex : found->hex);
    // Plastic without light is greyer than its light as well as darker.
    constexpr double kGreyer = 0.18;
    const int grey = qGray(light.rgb());
    return {light, darkenedTo(blend(light, QColor(grey, grey, grey), kGreyer), kDullLightness)};
}

QColor bandColour(BandColour colour) { return QColor::fromRgb(kBands[static_cast<std::size_t>(colour)]); }

QColor capColour(std::string_view letter) {
    const std::size_t place = letter.size() == 1 ? kCapLetters.find(letter.front()) : std::string_view::npos;
    return QColor::fromRgb(place == std::string_view::npos ? kPlainCap : kCaps[place]);
}

QColor voltColour(double share) {
    const double place = std::clamp(share, 0.0, 1.0) * (kVoltSteps - 1);
    const int below = std::min(static_cast<int>(place), kVoltSteps - 2);
    return blend(QColor::fromRgb(kVolts[below]), QColor::fromRgb(kVolts[below + 1]), place - below);
}

}  // namespace tiepoint::ui
