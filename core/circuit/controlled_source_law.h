#pragma once
// The law of a linear controlled source: a current from `out` to `back` in proportion to the voltage from `plus` to `minus`. Its input
// draws nothing, its output holds no voltage by itself.
// Units: volt, ampere, siemens. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class ControlledSourceLaw : public LawShape<4, 1, 1> {
public:
    static constexpr std::string_view kTerminalNames[] = {"out", "back", "plus", "minus"};
    static constexpr ElementParameter kParameters[] = {{"transconductance"}};
    static constexpr ElementDescription kElement{"controlled-source", kTerminalNames, kParameters};
    static constexpr std::array<TerminalPair, 1> kPathEnds{{{0, 1}}}, kPortEnds{{{2, 3}}};
    /// What its output drives comes back to it, so that the voltage there may follow from the input alone.
    static constexpr std::array<TerminalPair, 1> kTies = kPathEnds;
    static constexpr bool kRising = false, kFeeds = true;

    explicit ControlledSourceLaw(std::span<const double> figures) : siemens_(figures[0]) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        return {{siemens_ * touch[0]}, {{{siemens_}}}, touch};
    }

private:
    double siemens_;
};

}  // namespace tiepoint
