#pragma once
// What an element of any number of terminals tells the solver: the contract of a law. One header a law (junction_law.h,
// transistor_law.h, ...), with the description of its element in it, and one line in the list of laws.h. No virtual calls: the solver's
// loops are instantiated for each law of the list and walk flat lists of branches of one law.
//
// Terminals have numbers in the order of the description. A law is functions of *port* voltages (between two of its terminals) that
// give *path* currents (from one terminal to another, through the element), so that what enters a law leaves it, whatever its figures.
//
//   tangentAt   currents and their derivatives at a point, as a tangent: i = ampere + siemens * (v - lineVolt). The point ("touch") is
//               the voltages of the law's own variables, one for each port. Where a resistance in series is folded in, these are inner
//               voltages, and lineVolt is what stands between the terminals there.
//   touched     where on the curve the point of a tangent lies at given voltages between the terminals
//   limited     the law's own limiting: the touch at which the search goes on, one port at a time
//   perUnitVolt the unit in which steps of a port are judged; 0: they don't matter (a law that is a straight line)
//   startVolts, resumed   where a search begins, cold, and with the touch that the part had in the circuit before an edit
//   beginVolts, beginAmpere   what its charges and windings hold where nobody knows better
//   canBeOff, offVolts    whether it may be on in one state of rest and off in another, and where a search begins with it off
//   kTies       which terminals it ties together: what it drives out at one comes back at the other, so that neither floats apart
//               from the other
//   kRising     its matrix is that of conductances: symmetric, nothing positive off the diagonal. The order of elimination
//               follows from the structure alone and needs no watching where all laws are so.
//   kFeeds      it may drive current where no supply does
//   longestSecond  the longest step through time that it bears: of what is driven from within, a small part of a period
//   toldAt      optional: what a view may know of what goes on inside it: a speed, whether an armature is pulled in
//   kCountsRises   optional: what it tells is how often its first bit rises in a second
//   kTurns      optional: its first port is a speed
//
// Bits of state (comparators, latches, contacts that a current moves): kBits of them, held while currents are solved. Bit b flips
// when eventAt(b, ...) rises through 0, delaySecond(b) later if it still stands above 0; at rest a bit flips while its event is
// positive. startBits is what power-up finds. eventAt is continuous in the voltages and currents.
// Stores of charge: kCharges paths (kChargeEnds); chargesAt gives the charge of each as a function of the port voltages, with its
// derivatives. At rest no current flows there; in time its rate of change flows along the path. Stores of flux: kFluxes windings
// (kFluxEnds), the flux through each a function of all their currents; what is between a winding's ends is its rate of change and what
// its wire drops (windingOhm). What stands in series with a charge (chargeOhm) is folded in: the charge then follows from what is left
// of the voltage.
// Currents of charges and windings run along ways of the element of their own, behind its paths, but where a path has the same ends.
// Units: volt, ampere, siemens, coulomb, farad, weber, henry, second. Thread rule: plain values and pure functions.

#include "core/circuit/description.h"

#include <array>
#include <cstddef>
#include <limits>
#include <span>

namespace tiepoint {

/// Two terminals of a law, by number.
struct TerminalPair {
    int from, to;
    bool operator==(const TerminalPair&) const = default;
};

/// Values with their derivatives by the port voltages.
template <int kPorts, int kPaths>
struct LawTangent {
    std::array<double, kPaths> ampere{};
    std::array<std::array<double, kPorts>, kPaths> siemens{};  ///< by path, then port
    std::array<double, kPorts> lineVolt{};                     ///< between the terminals where the tangent touches
};

/// The sizes of a law, and what it needs to say only where it differs.
template <int kTerminalCount, int kPortCount, int kPathCount>
struct LawShape {
    static constexpr int kTerminals = kTerminalCount, kPorts = kPortCount, kPaths = kPathCount;
    static constexpr int kBits = 0, kCharges = 0, kFluxes = 0;
    static constexpr bool kRising = true, kFeeds = false;
    using Volts = std::array<double, kPorts>;    ///< by port
    using Amperes = std::array<double, kPaths>;  ///< by path
    using Tangent = LawTangent<kPorts, kPaths>;

    Volts startVolts() const { return {}; }
    Volts resumed(const Volts& kept) const { return kept; }
    bool canBeOff() const { return false; }
    Volts offVolts() const { return {}; }
    Volts touched(const Volts& /*touch*/, const Tangent& /*tangent*/, const Volts& across) const { return across; }
    double limited(int /*port*/, double /*fromVolt*/, double toVolt) const { return toVolt; }
    double perUnitVolt(int /*port*/) const { return 0; }
    unsigned startBits() const { return 0; }
    double windingOhm(int /*winding*/) const { return 0; }
    double chargeOhm(int /*charge*/) const { return 0; }
    Volts beginVolts() const { return {}; }
    double beginAmpere(int /*winding*/) const { return 0; }
    double longestSecond() const { return std::numeric_limits<double>::infinity(); }
};

/// What a law with something to tell adds.
template <class Law>
concept Tells = requires(const Law& law, const typename Law::Volts& across) {
    { law.toldAt(across, 0U) } -> std::convertible_to<double>;
};
template <class Law>
concept CountsRises = Law::kCountsRises;
template <class Law>
concept Turns = Law::kTurns;

/// What a law with bits adds.
template <class Law>
concept HasBits = Law::kBits >
0 && requires(const Law& law, const typename Law::Volts& volts, const typename Law::Amperes& amperes) {
    { law.eventAt(0, volts, amperes, 0U) } -> std::convertible_to<double>;
    { law.delaySecond(0) } -> std::convertible_to<double>;
};

/// Whether time changes it by itself: it stores something, has bits, or feeds back, so that there may be several states of rest.
template <class Law>
inline constexpr bool kMovesByItself = Law::kCharges + Law::kFluxes + Law::kBits > 0 || !Law::kRising;

/// Charges along paths, with their derivatives by the port voltages.
template <int kPorts, int kCharges>
struct LawCharges {
    std::array<double, kCharges> coulomb{};
    std::array<std::array<double, kPorts>, kCharges> farad{};
};
template <class Law>
concept StoresCharge = requires(const Law& law, const typename Law::Volts& across) {
    { law.chargesAt(across) } -> std::same_as<LawCharges<Law::kPorts, Law::kCharges>>;
    { Law::kChargeEnds[0] } -> std::convertible_to<TerminalPair>;
};

/// Fluxes through windings, with their derivatives by the windings' currents.
template <int kFluxes>
struct LawFluxes {
    std::array<double, kFluxes> weber{};
    std::array<std::array<double, kFluxes>, kFluxes> henry{};
};
template <class Law>
concept StoresFlux = requires(const Law& law, const std::array<double, Law::kFluxes>& amperes) {
    { law.fluxesAt(amperes) } -> std::same_as<LawFluxes<Law::kFluxes>>;
    { Law::kFluxEnds[0] } -> std::convertible_to<TerminalPair>;
};

/// The ways of an element's currents: its paths, then what charges and windings need beside them.
template <class Law>
struct LawWays {
    std::array<TerminalPair, Law::kPaths + Law::kCharges + Law::kFluxes> ends{};
    int count = 0;
    std::array<int, Law::kCharges> ofCharge{};  ///< by charge
    std::array<int, Law::kFluxes> ofFlux{};     ///< by winding
};
template <class Law>
constexpr LawWays<Law> waysOf() {
    LawWays<Law> ways;
    for (const TerminalPair& path : Law::kPathEnds) ways.ends[ways.count++] = path;
    if constexpr (Law::kCharges > 0) {
        for (int k = 0; k < Law::kCharges; ++k) {
            int way = 0;
            while (way < ways.count && !(ways.ends[way] == Law::kChargeEnds[k])) ++way;
            if (way == ways.count) ways.ends[ways.count++] = Law::kChargeEnds[k];
            ways.ofCharge[k] = way;
        }
    }
    if constexpr (Law::kFluxes > 0) {
        for (int k = 0; k < Law::kFluxes; ++k) {
            ways.ofFlux[k] = ways.count;
            ways.ends[ways.count++] = Law::kFluxEnds[k];
        }
    }
    return ways;
}

/// Which currents depend on which voltages: by terminal of the current, then of the voltage.
template <class Law>
constexpr auto couplingOf() {
    std::array<std::array<bool, Law::kTerminals>, Law::kTerminals> couples{};
    const auto couple = [&](const TerminalPair& path) {
        for (const TerminalPair& port : Law::kPortEnds) {
            for (int row : {path.from, path.to})
                for (int column : {port.from, port.to}) couples[row][column] = true;
        }
    };
    for (const TerminalPair& path : Law::kPathEnds) couple(path);
    if constexpr (Law::kCharges > 0) {
        for (const TerminalPair& path : Law::kChargeEnds) couple(path);
    }
    return couples;
}

}  // namespace tiepoint
