// Why figures under a bound are nothing: across every junction the solver keeps 1e-12 S, so that a blocked net has a voltage. At 30 V,
// the most that a bench has, that is 30 pA a junction, and less than a nanoampere for thirty of them. Through the ohms around it such a
// leak makes less than a microvolt (30 pA x 10 kohm = 0.3 µV), and with 30 V some ten nanowatts.

#include "core/base/figure.h"

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstdlib>

namespace tiepoint {
namespace {

struct Finest {
    std::string_view unit;
    int stepExponent;   ///< nothing finer is shown
    int roughExponent;  ///< nothing rougher either
};
constexpr std::array kFinest{Finest{"V", -6, -2}, Finest{"A", -9, 0}, Finest{"W", -8, 0}};

const Finest& finestOf(std::string_view unit) {
    const auto found = std::ranges::find(kFinest, unit, &Finest::unit);
    assert(found != kFinest.end() && "volts, amperes and watts are shown");
    return *found;
}

constexpr int kLargestDigits = 3;  ///< of the largest figure
/// Below so many steps the smallest figure asks for a finer scale: for a decade to have three digits too, for another one to have two, so that
/// the largest has a fifth digit only where a small one could hardly be read without.
constexpr std::array kLeastSteps{100, 10};
constexpr int kMostDecimals = 3;  ///< more are hard to read: then the unit is a thousandth
constexpr int kUnitDecades = 3;   ///< from one unit to the next

/// The exponent of the first digit once the number is rounded to three.
int exponentOf(double magnitude) {
    const std::string text = fmt::format("{:.{}e}", magnitude, kLargestDigits - 1);
    return std::atoi(text.c_str() + text.find('e') + 1);
}

int floorToUnit(int exponent) {
    const int over = ((exponent % kUnitDecades) + kUnitDecades) % kUnitDecades;
    return exponent - over;
}

}  // namespace

double FigureScale::step() const { return std::pow(10.0, stepExponent); }

double FigureScale::nothing() const {
    constexpr double kHalf = 0.5;
    return unit.empty() ? 0 : kHalf * std::pow(10.0, finestOf(unit).stepExponent);
}

FigureScale scaleFor(std::string_view unit, double largest, double smallest, std::optional<int> lastDigit) {
    const Finest& finest = finestOf(unit);
    FigureScale scale{unit, finest.stepExponent, 0};
    if (!(std::abs(largest) > scale.nothing())) return scale;
    const int exponent = exponentOf(std::abs(largest));
    scale.stepExponent = std::min(exponent - kLargestDigits + 1, finest.roughExponent);
    for (const int least : kLeastSteps) {
        if (!(smallest > 0 && smallest < least * scale.step())) break;
        --scale.stepExponent;
    }
    if (lastDigit) scale.stepExponent = std::min(scale.stepExponent, *lastDigit);
    scale.stepExponent = std::max(scale.stepExponent, finest.stepExponent);
    scale.unitExponent = std::max(floorToUnit(exponent), -floorToUnit(-scale.stepExponent));
    if (scale.unitExponent - scale.stepExponent > kMostDecimals) scale.unitExponent -= kUnitDecades;
    return scale;
}

Figure Figure::nearest(const FigureScale& scale, double exact) {
    return std::isnan(exact) ? Figure() : Figure(scale, std::llround(exact / scale.step()), exact);
}

Figure operator+(const Figure& a, const Figure& b) {
    if (!a.isKnown() || !b.isKnown()) return {};
    assert(a.scale() == b.scale() && "only figures of one snapshot and quantity add up");
    return {a.scale(), a.steps() + b.steps(), a.exact() + b.exact()};
}

std::string Figure::text() const {
    if (!isKnown()) return "no value";
    if (steps_ == 0 && std::abs(exact_) <= scale_.nothing()) return fmt::format("0 {}", scale_.unit);
    return digits();
}

std::string Figure::onDisplay(int most) const {
    if (!isKnown()) return text();
    Figure shown = *this;
    const auto digitsOf = [](const Figure& figure) {
        return static_cast<int>(std::to_string(std::abs(figure.steps_)).size());
    };
    while (digitsOf(shown) > most && shown.scale_.stepExponent < shown.scale_.unitExponent) {
        ++shown.scale_.stepExponent;
        shown.steps_ = std::llround(printed() / shown.scale_.step());
    }
    return shown.text();
}

std::string Figure::digits() const {
    const int decimals = scale_.unitExponent - scale_.stepExponent;
    std::string digits = fmt::format("{:0{}}", std::abs(steps_), decimals + 1);
    if (decimals > 0) digits.insert(digits.size() - static_cast<std::size_t>(decimals), ".");
    return fmt::format("{}{} {}{}", steps_ < 0 ? "\u2212" : "", digits, unitPrefix(scale_.unitExponent), scale_.unit);
}

std::string besideFigure(const Figure& figure, double value) {
    constexpr int kDigits = 9;  // division blurs what follows
    const int exponent = figure.scale().unitExponent;
    return fmt::format("{:.{}g} {}{}", value / std::pow(10.0, exponent), kDigits, unitPrefix(exponent),
                       figure.scale().unit);
}

}  // namespace tiepoint
