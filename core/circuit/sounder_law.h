#pragma once
// The law of a coil that moves a membrane: the resistance of its wire, and a bit that says on which side of its place of rest the
// membrane is. How often the bit rises in a second is the pitch that is heard.
//
// The place of rest follows the current slowly: `rest` is a terminal whose voltage above `to` stands for it, which a charge holds and a
// large resistance lets follow. A
// current that doesn't change makes no sound, and one that changes by less than `audible` either way none worth the name.
// Units: volt, ampere, ohm. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

namespace tiepoint {

class SounderLaw : public LawShape<3, 3, 2> {
public:
    static constexpr std::string_view kTerminalNames[] = {"from", "to", "rest"};
    static constexpr ElementParameter kParameters[] = {{"resistance"}, {"audible"}};
    static constexpr ElementDescription kElement{"sounder", kTerminalNames, kParameters};
    enum Port { kRest, kCoil, kAside };
    static constexpr std::array<TerminalPair, 3> kPortEnds{{{2, 1}, {0, 1}, {0, 2}}};
    static constexpr std::array<TerminalPair, 2> kPathEnds{{{0, 1}, {0, 2}}}, kTies = kPathEnds;
    static constexpr int kCharges = 1, kBits = 1;
    static constexpr std::array<TerminalPair, 1> kChargeEnds{{{2, 1}}};
    static constexpr bool kCountsRises = true;

    explicit SounderLaw(std::span<const double> figures)
        : siemens_(1 / figures[0]),
          audibleVolt_(figures[1] * figures[0]) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        return {
            {siemens_ * touch[kCoil], kRestSiemens * touch[kAside]}, {{{0, siemens_, 0}, {0, 0, kRestSiemens}}}, touch};
    }
    double eventAt(int /*bit*/, const Volts& across, const Amperes& /*amperes*/, unsigned bits) const {
        return ((bits & 1U) != 0 ? -across[kAside] : across[kAside]) - audibleVolt_;
    }
    double delaySecond(int /*bit*/) const { return 0; }
    LawCharges<3, 1> chargesAt(const Volts& across) const {
        return {{kRestSecond * kRestSiemens * across[kRest]}, {{{kRestSecond * kRestSiemens, 0, 0}}}};
    }
    double toldAt(const Volts& /*across*/, unsigned /*bits*/) const { return 0; }

private:
    static constexpr double kRestSecond = 0.01;  ///< about a period of the lowest tone worth hearing
    static constexpr double kRestSiemens = 1e-6;
    double siemens_, audibleVolt_;
};

}  // namespace tiepoint
