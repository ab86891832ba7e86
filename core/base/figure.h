#pragma once
// Figures as they are shown: whole numbers of steps of one unit. Sums and differences of what is printed are exact, whatever was
// rounded to get there. Plain values; safe from any thread.

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

/// How all figures of one quantity are printed: in one unit, down to one step.
struct FigureScale {
    std::string_view unit;  ///< "V", "A" or "W"
    int stepExponent = 0;   ///< a step is ten to this power of the SI unit
    int unitExponent = 0;   ///< of the printed unit: -3 for mA; never below the step's
    friend bool operator==(const FigureScale&, const FigureScale&) = default;

    double step() const;  ///< in the SI unit
    /// Under this a magnitude is nothing: the solver's own leaks make as much.
    double nothing() const;
};

/// The scale on which the largest of several figures has three digits. Where `smallest` (0: none) would get fewer, steps are
/// finer by a tenth, and by a hundredth where it would still have but one. Volts are shown to hundredths at least. `lastDigit`: the power of ten that somebody shows besides.
FigureScale scaleFor(std::string_view unit, double largest, double smallest = 0, std::optional<int> lastDigit = {});

/// One figure on a scale; unknown where there is nothing to be read.
class Figure {
public:
    Figure() = default;
    /// `steps` stands for the value `exact` (SI).
    Figure(const FigureScale& scale, std::int64_t steps, double exact) : scale_(scale), steps_(steps), exact_(exact) {}
    /// The value rounded to the nearest step; unknown for NaN.
    static Figure nearest(const FigureScale& scale, double exact);

    bool isKnown() const { return exact_ == exact_; }
    bool isZero() const { return steps_ == 0; }  ///< as printed
    std::int64_t steps() const { return steps_; }
    const FigureScale& scale() const { return scale_; }
    double exact() const { return exact_; }                                         ///< SI, unrounded; NaN: unknown
    double printed() const { return static_cast<double>(steps_) * scale_.step(); }  ///< SI, as rounded

    /// "9.37 mA", "−0.50 V" with U+2212; "0 A" where there is nothing at all, "0.00 V" where it is less than a step; "no value".
    std::string text() const;
    /// The same with no more digits than a display has, as far as they stand behind the point: "17.52 mA" of 17.519 mA.
    std::string onDisplay(int most) const;

    Figure operator-() const { return {scale_, -steps_, -exact_}; }
    Figure magnitude() const { return steps_ < 0 || (steps_ == 0 && exact_ < 0) ? -*this : *this; }
    /// Both on one scale; unknown if either is.
    friend Figure operator+(const Figure& a, const Figure& b);
    friend Figure operator-(const Figure& a, const Figure& b) { return a + -b; }

private:
    std::string digits() const;

    FigureScale scale_;
    std::int64_t steps_ = 0;
    double exact_ = std::numeric_limits<double>::quiet_NaN();
};

/// A set value (SI) in the unit of the figure that it is told beside, as short as it is exact: 0.03 A beside "59.0 mA" is "30 mA".
std::string besideFigure(const Figure& figure, double value);

}  // namespace tiepoint
