#pragma once
// The law of a comparator: one bit says which of its inputs is higher, and the output stands at one of two voltages above `common`
// behind a resistance. The inputs draw nothing.
//
// The bit rises when plus passes minus by half the hysteresis, and falls when it is as much below, each time after a delay.
// Units: volt, ampere, ohm, second. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class ComparatorLaw : public LawShape<4, 2, 1> {
public:
    static constexpr std::string_view kTerminalNames[] = {"out", "common", "plus", "minus"};
    static constexpr ElementParameter kParameters[] = {
        {"highVoltage"}, {"lowVoltage", 0}, {"outputResistance"}, {"hysteresis", 0}, {"delay", 0}};
    static constexpr ElementDescription kElement{"comparator", kTerminalNames, kParameters};
    enum Port { kOutput, kInput };
    static constexpr std::array<TerminalPair, 2> kPortEnds{{{0, 1}, {2, 3}}};
    static constexpr std::array<TerminalPair, 1> kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};
    static constexpr int kBits = 1;
    static constexpr bool kFeeds = true;

    explicit ComparatorLaw(std::span<const double> figures)
        : high_(figures[0]),
          low_(figures[1]),
          siemens_(1 / figures[2]),
          hysteresis_(figures[3]),
          delaySecond_(figures[4]) {}

    Tangent tangentAt(const Volts& touch, unsigned bits, double /*leakSiemens*/) const {
        const double stands = (bits & 1U) ? high_ : low_;
        return {{siemens_ * (touch[kOutput] - stands)}, {{{siemens_, 0}}}, touch};
    }
    double eventAt(int /*bit*/, const Volts& across, const Amperes& /*amperes*/, unsigned bits) const {
        const double above = (bits & 1U) ? -across[kInput] : across[kInput];
        return above - hysteresis_ / 2;
    }
    double delaySecond(int /*bit*/) const { return delaySecond_; }

private:
    double high_, low_, siemens_, hysteresis_, delaySecond_;
};

}  // namespace tiepoint
