#pragma once
// The law of a bipolar transistor: Ebers and Moll in the transport form.
//
//     Icc = Is (exp(Vbe / nVt) - 1)        Iec = Is (exp(Vbc / nVt) - 1)
//     from collector to emitter  Icc - Iec,  from base to emitter  Icc / bF,  from base to collector  Iec / bR
//
// So of an NPN; with polarity -1 all voltages and currents count the other way (a PNP).
// Each of the two junctions has the leak that every junction has (junction_law.h). Charge: in each junction what its capacitance holds
// and what is under way through the base, TF Icc and TR Iec. Capacitances are taken as steady, whatever the voltage.
// Source of the form: J. J. Ebers and J. L. Moll, Proc. IRE 42 (1954) 1761-1772; reciprocity of the two saturation currents: there.
// Units: volt, ampere, siemens, coulomb, farad, second. Thread rule: plain values and pure functions.

#include "core/circuit/junction_law.h"

namespace tiepoint {

class TransistorLaw : public LawShape<3, 2, 3> {
public:
    static constexpr std::string_view kTerminalNames[] = {"collector", "base", "emitter"};
    static constexpr ElementParameter kParameters[] = {
        {"gain"},           {"reverseGain", 1},        {"saturationCurrent"},     {"ideality", 1},
        {"transitTime", 0}, {"reverseTransitTime", 0}, {"emitterCapacitance", 0}, {"collectorCapacitance", 0},
        {"polarity", 1}};
    static constexpr ElementDescription kElement{"transistor", kTerminalNames, kParameters};
    enum Terminal { kCollector, kBase, kEmitter };
    enum Port { kBaseEmitter, kBaseCollector };
    static constexpr std::array<TerminalPair, 2> kPortEnds{{{kBase, kEmitter}, {kBase, kCollector}}};
    static constexpr std::array<TerminalPair, 3> kPathEnds{
        {{kCollector, kEmitter}, {kBase, kEmitter}, {kBase, kCollector}}};
    static constexpr std::array<TerminalPair, 2> kTies = kPortEnds;
    static constexpr bool kRising = false;

    explicit TransistorLaw(std::span<const double> figures)
        : transport_(figures[2], figures[3]),
          perGain_(1 / figures[0]),
          perReverseGain_(1 / figures[1]),
          transitSecond_{figures[4], figures[5]},
          farad_{figures[6], figures[7]},
          sign_(figures.size() > 8 && figures[8] < 0 ? -1 : 1) {}

    /// On, as an amplifier is; a search for other states of rest begins with it off.
    Volts startVolts() const { return {sign_ * transport_.criticalVolt(), 0}; }
    bool canBeOff() const { return true; }
    Volts offVolts() const { return {0, 0}; }
    Volts resumed(const Volts& kept) const {
        const auto held = [&](double volt) { return sign_ * std::min(sign_ * volt, transport_.criticalVolt()); };
        return {held(kept[0]), held(kept[1])};
    }

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double leakSiemens) const {
        const double baseEmitter = sign_ * touch[kBaseEmitter], baseCollector = sign_ * touch[kBaseCollector];
        const auto there = transport_.exponentialAt(baseEmitter);
        const auto back = transport_.exponentialAt(baseCollector);
        const auto emitter = transport_.withLeak(there, perGain_, baseEmitter, leakSiemens);
        const auto collector = transport_.withLeak(back, perReverseGain_, baseCollector, leakSiemens);
        return {{sign_ * (there.ampere - back.ampere), sign_ * emitter.ampere, sign_ * collector.ampere},
                {{{there.siemens, -back.siemens}, {emitter.siemens, 0}, {0, collector.siemens}}},
                touch};
    }
    double limited(int /*port*/, double fromVolt, double toVolt) const {
        return sign_ * transport_.limitedStep(sign_ * fromVolt, sign_ * toVolt);
    }
    double perUnitVolt(int /*port*/) const { return transport_.perUnitVolt(); }

    static constexpr int kCharges = 2;
    static constexpr std::array<TerminalPair, 2> kChargeEnds = kPortEnds;
    LawCharges<2, 2> chargesAt(const Volts& across) const {
        LawCharges<2, 2> charges;
        for (int port = 0; port < kPorts; ++port) {
            // Nothing is under way where that takes no time.
            const auto under =
                transitSecond_[port] > 0 ? transport_.exponentialAt(sign_ * across[port]) : JunctionLaw::Point{};
            charges.coulomb[port] = farad_[port] * across[port] + sign_ * transitSecond_[port] * under.ampere;
            charges.farad[port][port] = farad_[port] + transitSecond_[port] * under.siemens;
        }
        return charges;
    }

private:
    JunctionLaw transport_;
    double perGain_, perReverseGain_;
    std::array<double, 2> transitSecond_, farad_;
    double sign_;
};

}  // namespace tiepoint
