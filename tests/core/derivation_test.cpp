// Figures that a kind's file derives from others. Usual currents and voltages of LEDs: T. R. Kuphaldt, Lessons in Electric Circuits, Vol. III,
// ch. 3. Thermal voltage at 298.15 K: computed from the exact SI k and q.
#include "core/parts/derivation.h"

#include "core/base/constants.h"
#include "core/bench/bench.h"
#include "core/bench/resolve.h"
#include "support/kinds_by_name.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace tiepoint {
namespace {

using test::kindOf;
using test::parameterOf;

TEST(Derivation, ThermalVoltageIsThatOf25Degrees) { EXPECT_NEAR(kThermalVoltage, 0.02569257912109, 0.5e-14); }

/// The saturation current put into the junction's law gives back the test current at the stated voltage.
TEST(Derivation, SaturationCurrentReproducesTheForwardVoltage) {
    const PartKind& led = kindOf("led");
    for (std::size_t i = 0; i < led.values[0].choices.size(); ++i) {
        Part part = makePart(led, "D1");
        part.values[0] = static_cast<double>(i);
        const ElementSpec& junction = led.model[0];
        const double saturation = resolve(parameterOf(junction, "saturationCurrent"), part);
        const double ideality = resolve(parameterOf(junction, "ideality"), part);
        const double series = resolve(parameterOf(junction, "seriesResistance"), part);
        const double test = 0.020;
        const double volt = ideality * kThermalVoltage * std::log1p(test / saturation) + test * series;
        EXPECT_NEAR(volt, led.values[0].choices[i].constants.at("forwardVoltage"), 1e-12) << i;
    }
}

/// Common practice: a red LED with 330 ohm on 5 V takes about 9.4 mA; here by bisection of the loop's own
/// equation.
TEST(Derivation, RedLedOn330OhmTakesNineMilliamperes) {
    const Part part = makePart(kindOf("led"), "D1");
    const double saturation = resolve(parameterOf(part.kind->model[0], "saturationCurrent"), part);
    const double emf = 5, ohm = 330 + 5, ideality = 2;
    double low = 0, high = emf / ohm;
    for (int i = 0; i < 200; ++i) {
        const double middle = (low + high) / 2;
        const double volt = ideality * kThermalVoltage * std::log1p(middle / saturation) + middle * ohm;
        (volt < emf ? low : high) = middle;
    }
    EXPECT_NEAR(low, 9.37e-3, 0.005e-3);
    EXPECT_NEAR(emf - 330 * low, 1.91, 0.005);
}

TEST(Derivation, TracksAddUpToTheWhole) {
    Part part = makePart(kindOf("potentiometer"), "RV1");
    const auto& model = part.kind->model;
    const auto tracks = [&](double turn) {
        part.state[0] = turn;
        return std::pair(resolve(parameterOf(model[0], "resistance"), part),
                         resolve(parameterOf(model[1], "resistance"), part));
    };
    for (const double turn : {0.1, 0.25, 0.5, 0.8}) {
        const auto [start, end] = tracks(turn);
        EXPECT_NEAR(start, 10e3 * turn, 1e-9);
        EXPECT_NEAR(start + end, 10e3, 1e-9);
    }
    EXPECT_EQ(tracks(0).first, 1);  // the wiper never quite reaches an end
    EXPECT_EQ(tracks(1).second, 1);
}

TEST(Derivation, CellsAddUp) {
    Part part = makePart(kindOf("cells"), "PS1");
    const ElementSpec& supply = part.kind->model[0];
    EXPECT_DOUBLE_EQ(resolve(parameterOf(supply, "voltage"), part), 3.2);
    part.values[part.kind->valueIndex("count")] = 4;
    part.values[part.kind->valueIndex("condition")] = 2;
    EXPECT_DOUBLE_EQ(resolve(parameterOf(supply, "voltage"), part), 4.0);
    EXPECT_DOUBLE_EQ(resolve(parameterOf(supply, "seriesResistance"), part), 4.0);
}

TEST(Derivation, EachIsUsedByAKind) {
    std::set<std::string> used;
    for (const PartKind& kind : catalogue()) {
        for (const ElementSpec& element : kind.model) {
            for (const auto& [name, parameter] : element.parameters) {
                if (const auto* derived = std::get_if<Parameter::Derived>(&parameter.source))
                    used.insert(derived->name);
            }
        }
    }
    for (const std::string_view name : derivationNames()) EXPECT_TRUE(used.contains(std::string(name))) << name;
}

}  // namespace
}  // namespace tiepoint
