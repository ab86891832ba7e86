#pragma once
// The law of a signal source: a sine, a square or a triangle behind a resistance, about 0 V between `out` and `back`.
//
// Its clock is a charge that a steady current drives to and fro between -1 and 1, so that its phase is remembered like any charge and stays
// through edits. Turning points are events of a bit, located as all events are: the frequency is as exact as the arithmetic. A sine is
// the sine of the phase. Steps are no longer than a fortieth of a period, without which rectifiers miss peaks.
// At rest it finds no place to stay.
// Units: volt, ampere, ohm, hertz. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace tiepoint {

class WaveLaw : public LawShape<3, 2, 2> {
public:
    static constexpr std::string_view kTerminalNames[] = {"out", "back", "phase"};
    static constexpr ElementParameter kParameters[] = {{"amplitude"}, {"frequency"}, {"outputResistance"}, {"shape"}};
    static constexpr ElementDescription kElement{"wave", kTerminalNames, kParameters};
    enum Port { kPhase, kOutput };
    enum class Shape { Sine, Square, Triangle };
    static constexpr std::array<TerminalPair, 2> kPortEnds{{{2, 1}, {0, 1}}}, kPathEnds = kPortEnds, kTies = kPortEnds;
    static constexpr int kCharges = 1, kBits = 1;
    static constexpr std::array<TerminalPair, 1> kChargeEnds{{{2, 1}}};
    static constexpr bool kFeeds = true, kRising = false;

    explicit WaveLaw(std::span<const double> figures)
        : amplitudeVolt_(figures[0]),
          hertz_(figures[1]),
          siemens_(1 / figures[2]),
          shape_(static_cast<Shape>(static_cast<int>(figures[3]))) {}

    Tangent tangentAt(const Volts& touch, unsigned bits, double /*leakSiemens*/) const {
        const double phase = touch[kPhase], way = falls(bits) ? 1 : -1;
        const Level level = levelAt(phase, bits);
        return {{kClockAmpere * (way + kDamping * phase), siemens_ * (touch[kOutput] - level.volt)},
                {{{kClockAmpere * kDamping, 0}, {-siemens_ * level.perPhase, siemens_}}},
                touch};
    }
    double eventAt(int /*bit*/, const Volts& across, const Amperes& /*amperes*/, unsigned bits) const {
        return (falls(bits) ? -across[kPhase] : across[kPhase]) - 1;
    }
    double delaySecond(int /*bit*/) const { return 0; }
    double perUnitVolt(int port) const { return port == kPhase && shape_ == Shape::Sine ? 1 : 0; }
    double longestSecond() const {
        return shape_ == Shape::Square ? std::numeric_limits<double>::infinity() : 1 / (kStepsAPeriod * hertz_);
    }
    LawCharges<2, 1> chargesAt(const Volts& across) const {
        const double farad = kClockAmpere / (4 * hertz_);  // from -1 to 1 in half a period
        return {{farad * across[kPhase]}, {{{farad, 0}}}};
    }

private:
    struct Level {
        double volt, perPhase;
    };
    static bool falls(unsigned bits) { return (bits & 1U) != 0; }
    Level levelAt(double phase, unsigned bits) const {
        constexpr double kQuarter = std::numbers::pi / 2;
        switch (shape_) {
            case Shape::Square:
                return {falls(bits) ? -amplitudeVolt_ : amplitudeVolt_, 0};
            case Shape::Triangle:
                return {amplitudeVolt_ * phase, amplitudeVolt_};
            case Shape::Sine:
                break;
        }
        return {amplitudeVolt_ * std::sin(kQuarter * phase), amplitudeVolt_ * kQuarter * std::cos(kQuarter * phase)};
    }

    static constexpr double kClockAmpere = 1e-6;
    static constexpr double kDamping = 1e-6;  ///< gives the clock's node a conductance; moves the period by 1e-13
    static constexpr double kStepsAPeriod = 40;
    double amplitudeVolt_, hertz_, siemens_;
    Shape shape_;
};

}  // namespace tiepoint
