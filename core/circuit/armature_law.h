#pragma once
// The law of a relay: the wire of its coil, the armature that the coil's current pulls in, and the changeover contact that it moves.
//
// The armature is a bit. It is pulled in some milliseconds after the current, either way round, has risen to `pullIn`, and drops out as long
// after it has fallen to `dropOut`. Dropped out `common` is joined to `closed`, pulled in to `open`; what isn't joined leaks as a
// junction does. The coil's inductance is an element of its own, in series; the air between the contacts another.
// Units: volt, ampere, ohm, second. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"

#include <cmath>

namespace tiepoint {

class ArmatureLaw : public LawShape<5, 3, 3> {
public:
    static constexpr std::string_view kTerminalNames[] = {"from", "to", "common", "open", "closed"};
    static constexpr ElementParameter kParameters[] = {
        {"coilResistance"}, {"pullIn"}, {"dropOut"}, {"contactResistance"}, {"delay", 0}};
    static constexpr ElementDescription kElement{"armature", kTerminalNames, kParameters};
    enum Port { kCoil, kOpen, kClosed };
    static constexpr std::array<TerminalPair, 3> kPortEnds{{{0, 1}, {2, 3}, {2, 4}}}, kPathEnds = kPortEnds,
                                                                                      kTies = kPortEnds;
    static constexpr int kBits = 1;

    explicit ArmatureLaw(std::span<const double> figures)
        : coilSiemens_(1 / figures[0]),
          pullInAmpere_(figures[1]),
          dropOutAmpere_(std::min(figures[2], figures[1])),
          contactSiemens_(1 / figures[3]),
          delaySecond_(figures[4]) {}

    Tangent tangentAt(const Volts& touch, unsigned bits, double leakSiemens) const {
        const bool pulled = (bits & 1U) != 0;
        const std::array<double, kPaths> siemens{coilSiemens_, pulled ? contactSiemens_ : leakSiemens,
                                                 pulled ? leakSiemens : contactSiemens_};
        Tangent tangent;
        for (int path = 0; path < kPaths; ++path) {
            tangent.siemens[path][path] = siemens[path];
            tangent.ampere[path] = siemens[path] * touch[path];
        }
        tangent.lineVolt = touch;
        return tangent;
    }
    double eventAt(int /*bit*/, const Volts& across, const Amperes& /*amperes*/, unsigned bits) const {
        const double ampere = std::abs(across[kCoil]) * coilSiemens_;
        return (bits & 1U) != 0 ? dropOutAmpere_ - ampere : ampere - pullInAmpere_;
    }
    double delaySecond(int /*bit*/) const { return delaySecond_; }
    /// 1 while it is pulled in.
    double toldAt(const Volts& /*across*/, unsigned bits) const { return bits & 1U; }

private:
    double coilSiemens_, pullInAmpere_, dropOutAmpere_, contactSiemens_, delaySecond_;
};

}  // namespace tiepoint
