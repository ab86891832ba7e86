// The colour code of IEC 60062.

#include "core/parts/preferred.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

/// What one colour means; nothing where it has no such meaning.
struct Meaning {
    BandColour colour;
    std::string_view name;
    std::optional<int> digit;
    int exponent;
    std::optional<double> tolerance;
};

// Grey as a tolerance differs between editions; this is the 2016 one.
constexpr std::array kMeanings = {
    Meaning{BandColour::Black, "black", 0, 0, std::nullopt},
    Meaning{BandColour::Brown, "brown", 1, 1, 0.01},
    Meaning{BandColour::Red, "red", 2, 2, 0.02},
    Meaning{BandColour::Orange, "orange", 3, 3, 0.0005},
    Meaning{BandColour::Yellow, "yellow", 4, 4, 0.0002},
    Meaning{BandColour::Green, "green", 5, 5, 0.005},
    Meaning{BandColour::Blue, "blue", 6, 6, 0.0025},
    Meaning{BandColour::Violet, "violet", 7, 7, 0.001},
    Meaning{BandColour::Grey, "grey", 8, 8, 0.0001},
    Meaning{BandColour::White, "white", 9, 9, std::nullopt},
    Meaning{BandColour::Gold, "gold", std::nullopt, -1, 0.05},
    Meaning{BandColour::Silver, "silver", std::nullopt, -2, 0.1},
    Meaning{BandColour::Pink, "pink", std::nullopt, -3, std::nullopt},
};

constexpr double kNoBandTolerance = 0.2;
constexpr double kTwoDigitTolerance = 0.02;  ///< from here on two digits say all there is to say
constexpr double kRounding = 1e-9;
constexpr std::size_t kFourBands = 4;
constexpr std::size_t kFiveBands = 5;

const Meaning& meaningOf(BandColour colour) { return kMeanings[static_cast<std::size_t>(colour)]; }

bool isSameValue(double a, double b) { return std::abs(a - b) <= kRounding * std::abs(b); }

std::optional<BandColour> toleranceBand(double tolerance) {
    for (const Meaning& meaning : kMeanings) {
        if (meaning.tolerance && isSameValue(tolerance, *meaning.tolerance)) return meaning.colour;
    }
    return std::nullopt;
}

std::optional<BandColour> multiplierBand(int exponent) {
    for (const Meaning& meaning : kMeanings) {
        if (meaning.exponent == exponent) return meaning.colour;
    }
    return std::nullopt;
}

BandColour digitBand(int digit) { return kMeanings[static_cast<std::size_t>(digit)].colour; }

struct Digits {
    int number;
    int exponent;
};

/// The value as a whole number of exactly `count` digits times a power of ten, if it is one.
std::optional<Digits> asDigits(double ohm, int count) {
    const int most = static_cast<int>(std::pow(10, count));
    int exponent = static_cast<int>(std::floor(std::log10(ohm))) - count + 1;
    int number = static_cast<int>(std::lround(ohm / std::pow(10.0, exponent)));
    if (number == most) {
        number /= 10;
        ++exponent;
    }
    if (!isSameValue(number * std::pow(10.0, exponent), ohm)) return std::nullopt;
    return Digits{number, exponent};
}

/// The bands of digits and multiplier.
std::optional<std::vector<BandColour>> valueBands(double ohm, int count) {
    const auto digits = asDigits(ohm, count);
    const auto multiplier = digits ? multiplierBand(digits->exponent) : std::nullopt;
    if (!multiplier) return std::nullopt;
    std::vector<BandColour> bands(static_cast<std::size_t>(count));
    int rest = digits->number;
    for (auto band = bands.rbegin(); band != bands.rend(); ++band, rest /= 10) *band = digitBand(rest % 10);
    bands.push_back(*multiplier);
    return bands;
}

}  // namespace

std::string_view bandName(BandColour colour) { return meaningOf(colour).name; }

std::optional<std::vector<BandColour>> colourBands(double ohm, double tolerance) {
    if (!(ohm > 0) || !std::isfinite(ohm)) return std::nullopt;
    const bool wide = tolerance >= kTwoDigitTolerance * (1 - kRounding);
    auto bands = wide ? valueBands(ohm, 2) : std::nullopt;
    if (isSameValue(tolerance, kNoBandTolerance)) return bands;
    if (!bands) bands = valueBands(ohm, 3);
    const auto last = toleranceBand(tolerance);
    if (!bands || !last) return std::nullopt;
    bands->push_back(*last);
    return bands;
}

std::optional<BandReading> readBands(std::span<const BandColour> bands) {
    const std::size_t count = bands.size();
    if (count < kFourBands - 1 || count > kFiveBands) return std::nullopt;
    const std::size_t digits = count == kFiveBands ? 3 : 2;
    int number = 0;
    for (const BandColour band : bands.first(digits)) {
        if (!meaningOf(band).digit) return std::nullopt;
        number = number * 10 + *meaningOf(band).digit;
    }
    if (number == 0) return std::nullopt;
    const int exponent = meaningOf(bands[digits]).exponent;
    // Dividing rounds once: 52 / 10 is the double nearest to 5.2.
    const double ohm = exponent < 0 ? number / std::pow(10.0, -exponent) : number * std::pow(10.0, exponent);
    if (count < kFourBands) return BandReading{ohm, kNoBandTolerance};
    const auto tolerance = meaningOf(bands.back()).tolerance;
    if (!tolerance) return std::nullopt;
    return BandReading{ohm, *tolerance};
}

}  // namespace tiepoint
