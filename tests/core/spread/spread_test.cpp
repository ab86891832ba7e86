// The spread of readings against closed forms: a divider by hand, an LED with its resistor by Lambert's W (T. C. Banwell, A. Jayakumar,
// Electronics Letters 36(4), 291-292, 2000), mean and deviation by integrating those over the tolerances.

#include "core/spread/spread.h"

#include "core/base/constants.h"
#include "core/spread/tolerance.h"
#include "support/build_bench.h"
#include "support/solved_bench.h"

#include <boost/math/special_functions/lambert_w.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace tiepoint {
namespace {

using test::compactBench;
using test::holeAt;

constexpr double kExact = 1e-7;           // relative: what the solver promises and more
constexpr double kByChance = 0.02;        // of a standard deviation over 10,000 draws: its own error is 0.007
constexpr double kBenchSupplyOhm = 0.01;  // of a bench supply
constexpr double kSet = 0.01;             // of its voltage
constexpr double kResistor = 0.05, kForward = 0.1;

std::shared_ptr<const Snapshot> pinnedBench(std::string_view text, std::vector<Measurand> pinned) {
    Bench bench = compactBench(text);
    for (std::size_t i = 0; i < pinned.size(); ++i)
        bench.pinned.push_back({"P" + std::to_string(i + 1), std::move(pinned[i]), {}});
    return evaluate(std::make_shared<const Bench>(std::move(bench)));
}

const SpreadReading& readingOf(const Spread& spread, std::string_view name) {
    const auto found = std::ranges::find(spread.readings, name, &SpreadReading::name);
    if (found == spread.readings.end()) throw std::invalid_argument("no reading of " + std::string(name));
    return *found;
}

/// A red LED behind a resistor, by the constants of its kind.
double ledAmpere(double volt, double ohm, double forwardVolt) {
    constexpr double kIdeality = 2, kLedOhm = 5, kTestAmpere = 0.020;
    const double emissionVolt = kIdeality * kThermalVoltage;
    const double saturation = kTestAmpere / std::expm1((forwardVolt - kTestAmpere * kLedOhm) / emissionVolt);
    const double all = ohm + kLedOhm + kBenchSupplyOhm;
    const double w =
        boost::math::lambert_w0(saturation * all / emissionVolt * std::exp((volt + saturation * all) / emissionVolt));
    return emissionVolt * w / all - saturation;
}

TEST(Spread, DividerLiesBetweenItsCorners) {
    const auto snapshot = pinnedBench(
        "half; PS1 top+3 bottom-3 9; W1 top+8 a8 red; R1 b8 b14 1000; R2 c14 c20 2000; "
        "W2 a20 bottom-20 black",
        {VoltsAt{holeAt("A.d14")}, AmperesIn{"W1", ""}});
    const Spread spread = spreadOf(snapshot);
    const auto divided = [](double volt, double first, double second) {
        return volt * second / (first + second + kBenchSupplyOhm);
    };
    const SpreadReading& volts = readingOf(spread, "A.d14");
    EXPECT_NEAR(volts.nominal, divided(9, 1000, 2000), kExact * 6);
    EXPECT_NEAR(volts.greatest, divided(9 * (1 + kSet), 1000 * (1 - kResistor), 2000 * (1 + kResistor)), kExact * 6);
    EXPECT_NEAR(volts.least, divided(9 * (1 - kSet), 1000 * (1 + kResistor), 2000 * (1 - kResistor)), kExact * 6);
    EXPECT_EQ(volts.quantity, "voltage");
    const SpreadReading& amperes = readingOf(spread, "W1");
    EXPECT_NEAR(amperes.greatest, 9 * (1 + kSet) / (3000 * (1 - kResistor) + kBenchSupplyOhm), kExact * 3e-3);
    EXPECT_NEAR(amperes.least, 9 * (1 - kSet) / (3000 * (1 + kResistor) + kBenchSupplyOhm), kExact * 3e-3);
    EXPECT_EQ(amperes.most, "R2");  // two thirds of the resistance
    EXPECT_EQ(spread.unsolved, 0);
}

TEST(Spread, ADividersMeanAndDeviationAreThoseOfItsIntegral) {
    const auto snapshot = pinnedBench(
        "half; PS1 top+3 bottom-3 9; W1 top+8 a8 red; R1 b8 b14 1000; R2 c14 c20 2000; "
        "W2 a20 bottom-20 black",
        {VoltsAt{holeAt("A.d14")}});
    constexpr int kSteps = 60;  // midpoints along each tolerance
    const auto off = [](int step, double tolerance) { return 1 + tolerance * ((2 * step + 1.0) / kSteps - 1); };
    double sum = 0, squares = 0;
    for (int v = 0; v < kSteps; ++v) {
        for (int first = 0; first < kSteps; ++first) {
            for (int second = 0; second < kSteps; ++second) {
                const double one = 1000 * off(first, kResistor), two = 2000 * off(second, kResistor);
                const double volt = 9 * off(v, kSet) * two / (one + two + kBenchSupplyOhm);
                sum += volt;
                squares += volt * volt;
            }
        }
    }
    const double count = std::pow(kSteps, 3), mean = sum / count;
    const double deviation = std::sqrt(squares / count - mean * mean);
    const SpreadReading reading = readingOf(spreadOf(snapshot), "A.d14");
    EXPECT_NEAR(reading.mean, mean, kByChance * deviation);
    EXPECT_NEAR(reading.deviation, deviation, kByChance * deviation);
    EXPECT_EQ(std::accumulate(reading.histogram.begin(), reading.histogram.end(), 0), kSpreadDraws);
}

TEST(Spread, AnLedsCurrentLiesBetweenTheCornersOfTheClosedForm) {
    for (const double ohm : {100.0, 330.0, 1500.0}) {
        for (const double volt : {3.0, 5.0, 12.0}) {
            const auto snapshot =
                pinnedBench(fmt::format("half; PS1 top+3 bottom-3 {}; W1 top+8 a8 red; R1 b8 b14 {}; D1 c14 c15 red; "
                                        "W2 a15 bottom-15 black",
                                        volt, ohm),
                            {});
            const SpreadReading reading = readingOf(spreadOf(snapshot, 100), "D1");
            const double nominal = ledAmpere(volt, ohm, 2.0);
            EXPECT_NEAR(reading.nominal, nominal, kExact * nominal);
            EXPECT_NEAR(reading.greatest, ledAmpere(volt * (1 + kSet), ohm * (1 - kResistor), 2.0 * (1 - kForward)),
                        1e-5 * nominal);
            EXPECT_NEAR(reading.least, ledAmpere(volt * (1 - kSet), ohm * (1 + kResistor), 2.0 * (1 + kForward)),
                        1e-5 * nominal);
            // At 3 V the LED takes two volts of three and decides; at 12 V the resistor takes ten.
            EXPECT_EQ(reading.most, volt == 12.0 ? "R1" : "D1");
        }
    }
}

TEST(Spread, AnLedsMeanIsThatOfTheClosedFormOverItsTolerances) {
    const auto snapshot = pinnedBench(
        "half; PS1 top+3 bottom-3 5; W1 top+8 a8 red; R1 b8 b14 330; D1 c14 c15 red; W2 a15 bottom-15 black", {});
    constexpr int kSteps = 24;
    const auto off = [](int step, double tolerance) { return 1 + tolerance * ((2 * step + 1.0) / kSteps - 1); };
    double sum = 0, squares = 0;
    for (int v = 0; v < kSteps; ++v) {
        for (int r = 0; r < kSteps; ++r) {
            for (int d = 0; d < kSteps; ++d) {
                const double ampere = ledAmpere(5 * off(v, kSet), 330 * off(r, kResistor), 2.0 * off(d, kForward));
                sum += ampere;
                squares += ampere * ampere;
            }
        }
    }
    const double count = std::pow(kSteps, 3), mean = sum / count;
    const double deviation = std::sqrt(squares / count - mean * mean);
    const SpreadReading reading = readingOf(spreadOf(snapshot), "D1");
    EXPECT_NEAR(reading.mean, mean, kByChance * deviation);
    EXPECT_NEAR(reading.deviation, deviation, kByChance * deviation);
}

TEST(Spread, BothHalvesOfATrackMoveTogether) {
    // A divider by one knob alone: whatever the track has, the share is the same.
    const auto snapshot =
        pinnedBench("half; PS1 top+3 bottom-3 10; RV1 c8 10000 0.5; W1 top+8 a8 red; W2 a12 bottom-12 black",
                    {VoltsAt{holeAt("A.d10")}});
    const SpreadReading reading = readingOf(spreadOf(snapshot, 200), "A.d10");
    EXPECT_NEAR(reading.greatest, 5 * (1 + kSet), 1e-4);
    EXPECT_NEAR(reading.least, 5 * (1 - kSet), 1e-4);
    EXPECT_EQ(reading.most, "PS1");
}

TEST(Spread, NoDrawEverLeavesTheCorners) {
    std::mt19937 random(11);
    for (int n = 0; n < 40; ++n) {
        const auto snapshot = test::solveAtRandom(random);
        if (snapshot->status() != Status::Solved) continue;
        const Spread corners = spreadOf(snapshot, 0), drawn = spreadOf(snapshot, 300);
        for (std::size_t r = 0; r < corners.readings.size(); ++r) {
            const SpreadReading& corner = corners.readings[r];
            const SpreadReading& draw = drawn.readings[r];
            const double breadth = 1e-6 * std::abs(corner.nominal) + 1e-9;
            EXPECT_LE(draw.greatest, corner.greatest + breadth) << draw.name << " of bench " << n;
            EXPECT_GE(draw.least, corner.least - breadth) << draw.name << " of bench " << n;
            EXPECT_LE(draw.least, draw.nominal);
            EXPECT_GE(draw.greatest, draw.nominal);
        }
    }
}

TEST(Spread, SaysWhyThereIsNothingToRead) {
    EXPECT_EQ(spreadOf(pinnedBench("half; PS1 top+3 bottom-3 5 off; R1 b8 b14 330", {})).why,
              "Nothing is read while every supply is off.");
    EXPECT_EQ(spreadOf(pinnedBench("half; PS1 top+3 bottom-3 5; R1 b8 b14 330", {})).why,
              "Nothing is read here: put in a light, or pin a reading.");
}

TEST(Spread, EveryKindThatCarriesCurrentHasATolerance) {
    // Contacts, jumpers and instruments are taken as exact, and what only stores changes no reading at rest; every other kind has something
    // uncertain.
    for (const PartKind& kind : catalogue()) {
        Bench bench;
        bench.parts.push_back(makePart(kind, "X1"));
        const bool exact = std::ranges::all_of(kind.model, [](const ElementSpec& spec) {
            return spec.element == "contact" || spec.element == "capacitance" || spec.element == "inductance";
        });
        const bool instrument =
            std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return !spec.reads.empty(); });
        if (instrument || !exact) {
            EXPECT_EQ(uncertainOf(bench).empty(), instrument) << kind.name;
        }
    }
}

}  // namespace
}  // namespace tiepoint
