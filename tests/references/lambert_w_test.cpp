// LED and diode circuits against the exact solution of a source, a resistance and an exponential junction:
//
//     I = (n Vt / R) W0( (Is R / (n Vt)) exp((V + Is R) / (n Vt)) ) - Is
//
// T. C. Banwell, A. Jayakumar, "Exact analytical solution for current flow through diode with series resistance", Electronics
// Letters 36(4), 291-292 (2000). W0 comes from Boost.Math; the junction's and the supply's own resistance count into R.

#include "core/base/constants.h"
#include "core/snapshot/snapshot.h"
#include "support/lay_out.h"

#include <boost/math/special_functions/lambert_w.hpp>
#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

constexpr double kRelative = 1e-9;
constexpr double kSupplyOhm = 0.01;
/// Below it the solver's leak across every junction is part of the answer.
constexpr double kSmallAmpere = 1e-6;
constexpr double kLeakAmpere = 1e-10;

double closedForm(double volt, double ohm, double saturationAmpere, double ideality) {
    const double emissionVolt = ideality * kThermalVoltage;
    const double factor = saturationAmpere * ohm / emissionVolt;
    const double w = boost::math::lambert_w0(factor * std::exp((volt + saturationAmpere * ohm) / emissionVolt));
    return emissionVolt * w / ohm - saturationAmpere;
}

double constant(const ElementState& state, std::string_view name) {
    for (const auto& [key, value] : state.constants) {
        if (key == name) return value;
    }
    ADD_FAILURE() << "the junction has no " << name;
    return 0;
}

/// Solves supply, resistor and one junction on a board and compares the current. Returns whether it was large enough to compare.
bool compare(double volt, double ohm, const test::Piece2& junction) {
    const test::Piece2 supply{"PS1",
                              "bench-supply",
                              "plus",
                              "minus",
                              {{"voltage", volt}, {"seriesResistance", kSupplyOhm}, {"currentLimit", 30}}};
    const test::Piece2 resistor{"R1", "resistor", "plus", "middle", {{"resistance", ohm}}};
    const auto snapshot = evaluate(std::make_shared<const Bench>(test::layOut({supply, resistor, junction})));
    EXPECT_EQ(snapshot->status(), Status::Solved);
    const ElementState state = snapshot->solution.elements().back();
    const double total = ohm + kSupplyOhm + constant(state, "seriesResistance");
    const double expected = closedForm(volt, total, constant(state, "saturationCurrent"), constant(state, "ideality"));
    const double current = snapshot->leadCurrent[snapshot->layout->leadIndex(2, 0)];
    EXPECT_NEAR(current, expected, expected < kSmallAmpere ? kLeakAmpere : kRelative * expected);
    EXPECT_EQ(state.currentAmpere, current);
    return expected >= kSmallAmpere;
}

constexpr double kTriedVolts[] = {1.5, 3, 4.5, 5, 9, 12, 24};
constexpr double kTriedOhms[] = {47, 100, 220, 330, 1e3, 4.7e3, 1e4, 1e5, 1e6};

TEST(LambertW, LedsOfEveryColour) {
    const PartKind& led = *findKind("led");
    const auto& colours = led.values[led.valueIndex("colour")].choices;
    int compared = 0;
    for (std::size_t colour = 0; colour < colours.size(); ++colour) {
        for (double volt : kTriedVolts) {
            for (double ohm : kTriedOhms) {
                SCOPED_TRACE(fmt::format("{} at {} V over {} ohm", colours[colour].name, volt, ohm));
                compared +=
                    compare(volt, ohm, {"D1", "led", "middle", "minus", {{"colour", static_cast<double>(colour)}}});
            }
        }
    }
    EXPECT_GE(compared, 350) << "most circuits should carry more than a microampere";
}

TEST(LambertW, DiodesOfAllSorts) {
    int compared = 0;
    for (double saturation : {1e-15, 1e-12, 2.5e-9, 1e-6}) {
        for (double ideality : {1.0, 1.5, 2.0}) {
            for (double series : {0.0, 0.6, 10.0}) {
                for (double volt : {0.8, 1.5, 5.0, 9.0}) {
                    for (double ohm : {10.0, 1e3, 1e5}) {
                        SCOPED_TRACE(fmt::format("Is {} n {} Rs {} at {} V over {} ohm", saturation, ideality, series,
                                                 volt, ohm));
                        compared += compare(volt, ohm,
                                            {"D1",
                                             "diode",
                                             "middle",
                                             "minus",
                                             {{"saturationCurrent", saturation},
                                              {"ideality", ideality},
                                              {"seriesResistance", series}}});
                    }
                }
            }
        }
    }
    EXPECT_GE(compared, 300);
}

}  // namespace
}  // namespace tiepoint
