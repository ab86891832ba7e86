// Figures as they are shown: one unit and one step for all of a quantity, exact sums, and what counts as nothing.

#include "core/base/figure.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

std::string shownAs(std::string_view unit, double largest, double smallest, double value) {
    return Figure::nearest(scaleFor(unit, largest, smallest), value).text();
}

TEST(Figure, TheLargestHasThreeDigits) {
    struct Row {
        std::string_view unit;
        double largest, smallest, value;
        const char* text;
    };
    const Row rows[] = {
        {"A", 9.366e-3, 0, 9.366e-3, "9.37 mA"},
        {"A", 13.94e-3, 13.94e-3, 13.94e-3, "13.9 mA"},
        {"A", 9.996e-3, 0, 9.996e-3, "10.0 mA"},
        {"A", 0.5, 0, 0.5, "500 mA"},
        {"A", 0.5, 0.44e-3, 0.44e-3, "0.44 mA"},  // a hundredth finer, for two digits of the smallest
        {"A", 0.5, 0.44e-3, 0.5, "500.00 mA"},
        {"A", 1.2, 9.4e-3, 9.4e-3, "9.4 mA"},  // not 0.0094 A
        {"A", 31e-6, 31e-6, 31e-6, "31.0 \u00b5A"},
        {"A", 5e-9, 0, 5e-9, "5 nA"},
        {"V", 5, 0, 1.9096, "1.91 V"},
        {"V", 24, 0, 1.9096, "1.91 V"},  // hundredths at least
        {"V", 24, 0, 24, "24.00 V"},
        {"V", 0.47, 0, 0.47, "470 mV"},
        {"V", 5, 0, -0.5, "\u22120.50 V"},
        {"V", 5, 0, 468e-6, "0.00 V"},
        {"W", 46.8e-3, 0, 28.96e-3, "29.0 mW"},
    };
    for (const Row& row : rows) EXPECT_EQ(shownAs(row.unit, row.largest, row.smallest, row.value), row.text);
}

TEST(Figure, AFifthDigitOnlyWhereASmallOneCouldNotBeReadWithout) {
    EXPECT_EQ(shownAs("A", 17.519e-3, 0.59e-3, 17.519e-3), "17.52 mA");
    EXPECT_EQ(shownAs("A", 17.519e-3, 0.59e-3, 0.59e-3), "0.59 mA") << "two digits can be read";
    EXPECT_EQ(shownAs("A", 17.519e-3, 0.011e-3, 0.011e-3), "0.011 mA");
    EXPECT_EQ(shownAs("A", 17.519e-3, 0.011e-3, 17.519e-3), "17.519 mA");
}

TEST(Figure, ADisplayHasSoManyDigits) {
    struct Row {
        double largest, smallest, value;
        const char* text;
    };
    for (const Row& row :
         {Row{17.519e-3, 0.011e-3, 17.519e-3, "17.52 mA"}, Row{17.519e-3, 0.011e-3, -17.519e-3, "\u221217.52 mA"},
          Row{0.5, 0.44e-3, 0.5, "500.0 mA"}, Row{9.37e-3, 0, 9.37e-3, "9.37 mA"}, Row{0.5, 0, 0.5, "500 mA"},
          Row{99.996e-3, 0.011e-3, 99.996e-3, "100.0 mA"}}) {
        EXPECT_EQ(Figure::nearest(scaleFor("A", row.largest, row.smallest), row.value).onDisplay(4), row.text);
    }
    EXPECT_EQ(Figure().onDisplay(4), "no value");
}

TEST(Figure, WhatTheSolverLeaksIsNothing) {
    EXPECT_EQ(shownAs("V", 720e-12, 0, 720e-12), "0 V");
    EXPECT_EQ(shownAs("V", 0.4e-6, 0, 0.4e-6), "0 V");
    EXPECT_EQ(shownAs("V", 3e-6, 0, 3e-6), "3 \u00b5V");
    EXPECT_EQ(shownAs("A", 30e-12, 0, 30e-12), "0 A");
    EXPECT_EQ(shownAs("A", 5e-3, 0, 30e-12), "0 A");
    EXPECT_EQ(shownAs("A", 5e-3, 0, 0.5e-6), "0.00 mA") << "less than a step, but not nothing";
    EXPECT_EQ(shownAs("W", 1e-9, 0, 1e-9), "0 W");
}

TEST(Figure, SumsAreThoseOfWhatIsPrinted) {
    const FigureScale scale = scaleFor("V", 5);
    const Figure top = Figure::nearest(scale, 4.996), middle = Figure::nearest(scale, 2.404),
                 low = Figure::nearest(scale, 0);
    EXPECT_EQ((top - middle).text(), "2.60 V") << "5.00 - 2.40, though 2.592 is nearer to 2.59";
    EXPECT_EQ(((top - middle) + (middle - low)).text(), (top - low).text());
    EXPECT_EQ((-top).text(), "\u22125.00 V");
    EXPECT_EQ((-top).magnitude().text(), "5.00 V");
}

TEST(Figure, UnknownStaysUnknown) {
    const FigureScale scale = scaleFor("V", 5);
    const Figure unknown = Figure::nearest(scale, std::numeric_limits<double>::quiet_NaN());
    EXPECT_FALSE(unknown.isKnown());
    EXPECT_FALSE((unknown - Figure::nearest(scale, 1)).isKnown());
    EXPECT_EQ(unknown.text(), "no value");
}

TEST(Figure, ALimitIsToldInTheUnitOfItsFigure) {
    EXPECT_EQ(besideFigure(Figure::nearest(scaleFor("W", 1.44), 1.44), 0.25), "0.25 W");
    EXPECT_EQ(besideFigure(Figure::nearest(scaleFor("W", 0.48), 0.48), 0.25), "250 mW");
    EXPECT_EQ(besideFigure(Figure::nearest(scaleFor("A", 0.059), 0.059), 0.030), "30 mA");
}

}  // namespace
}  // namespace tiepoint
