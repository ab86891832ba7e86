#pragma once
// The law of a DC motor with brushes: the wire of its armature, what it pushes back while it turns, and what turns.
//
//     v = R i + k w        J dw/dt = k i - T tanh(w / w0)
//
// The shaft is a terminal: its "voltage" above `to` is the speed w in radians a second, its "currents" are torques in newton metres, and
// its inertia J is a charge. Nothing flows there in the end: the torques balance. k is both constants at once, torque by current and
// voltage by speed. Friction is dry, smoothed through standstill, so that a motor that gets too little stands but for a creep.
// The winding's inductance is an element of its own, in series.
// Units: volt, ampere, ohm, rad/s, N m, kg m2. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

#include <cmath>

namespace tiepoint {

class MotorLaw : public LawShape<3, 2, 2> {
public:
    static constexpr std::string_view kTerminalNames[] = {"from", "to", "shaft"};
    static constexpr ElementParameter kParameters[] = {
        {"resistance"}, {"torqueConstant"}, {"inertia"}, {"friction"}, {"startSpeed", 0}};
    static constexpr ElementDescription kElement{"rotor", kTerminalNames, kParameters};
    enum Port { kTurning, kDriving };
    static constexpr std::array<TerminalPair, 2> kPortEnds{{{2, 1}, {0, 1}}}, kPathEnds = kPortEnds, kTies = kPortEnds;
    static constexpr int kCharges = 1;
    static constexpr std::array<TerminalPair, 1> kChargeEnds{{{2, 1}}};
    static constexpr bool kTurns = true, kRising = false;

    explicit MotorLaw(std::span<const double> figures)
        : siemens_(1 / figures[0]),
          constant_(figures[1]),
          inertia_(figures[2]),
          friction_(figures[3]),
          startSpeed_(figures[4]) {}

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double leakSiemens) const {
        const double share = std::tanh(touch[kTurning] / kSmoothSpeed);
        const double ampere = siemens_ * (touch[kDriving] - constant_ * touch[kTurning]);
        const double steep = friction_ * (1 - share * share) / kSmoothSpeed;
        const double back = siemens_ * constant_;
        return {{friction_ * share - constant_ * ampere + leakSiemens * touch[kTurning], ampere},
                {{{steep + back * constant_ + leakSiemens, -back}, {-back, siemens_}}},
                touch};
    }
    /// Friction turns round at standstill: no step passes it.
    double limited(int port, double fromSpeed, double toSpeed) const {
        return port == kTurning && fromSpeed * toSpeed < 0 ? 0 : toSpeed;
    }
    double perUnitVolt(int port) const { return port == kTurning ? 1 / kSmoothSpeed : 0; }

    Volts beginVolts() const { return {startSpeed_, 0}; }
    LawCharges<2, 1> chargesAt(const Volts& across) const { return {{inertia_ * across[kTurning]}, {{{inertia_, 0}}}}; }
    /// The speed of its shaft, rad/s.
    double toldAt(const Volts& across, unsigned /*bits*/) const { return across[kTurning]; }

private:
    static constexpr double kSmoothSpeed = 10;  ///< rad/s, about a hundredth of what it runs at
    double siemens_, constant_, inertia_, friction_, startSpeed_;
};

}  // namespace tiepoint
