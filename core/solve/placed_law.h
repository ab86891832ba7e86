#pragma once
// The branches of one law in one island: places of their terminals in the island's arrays, slots of their conductances, and the loops
// over them. Each loop is compiled for its law; nothing in it is looked up by kind.
//
// In every step a branch is replaced by the tangent of its law. Its currents are read off that tangent at the end: there they balance
// the others to rounding, and differ from the law by the square of the last step only.
// Thread rule: one thread at a time.

#include "core/solve/solve_state.h"

#include <cmath>
#include <vector>

namespace tiepoint {

/// Sizes of one step's corrections and of what they correct.
struct StepMeasure {
    double curveStep = 0;        ///< in the laws' own units
    double lawDefectAmpere = 0;  ///< what a step that was cut short leaves between a tangent and its law
    double voltStep = 0, largestVolt = 0, ampereStep = 0, largestAmpere = 0;
};

/// At rest a winding is its wire, and one without resistance next to none: so that a ring of them has one answer.
inline constexpr double kRestingWindingOhm = 1e-6;

template <class Law>
class PlacedLaws {
public:
    static constexpr auto kCouples = couplingOf<Law>();
    static constexpr LawWays<Law> kWays = waysOf<Law>();
    static constexpr bool kHasCharges = Law::kCharges > 0, kHasFluxes = Law::kFluxes > 0;
    using WayAmperes = std::array<double, kWays.ends.size()>;  ///< the first kWays.count of them

    /// A terminal's places: of its voltage in x, of its sum of currents in the right-hand sides.
    struct Place {
        int volt, sum;
    };
    /// A winding's places: of its current in x, of its equation in the right-hand sides, of what other windings' currents do to it.
    struct Winding {
        int current = 0, equation = 0;
        std::array<int, Law::kFluxes> slots{};
    };
    struct Placed {
        std::array<Place, Law::kTerminals> places;
        std::array<std::array<int, Law::kTerminals>, Law::kTerminals> slots;  ///< where the law couples
        Law law;
        int index;  ///< in the circuit's list
        int touchAt, bitsAt, pathsAt, storesAt;
        typename Law::Volts touch{};
        typename Law::Tangent tangent{};
        unsigned bits = 0;
        std::array<Winding, Law::kFluxes> windings{};
        LawCharges<Law::kPorts, Law::kCharges> charges{};  ///< where the tangent touches
    };

    void add(const Placed& placed) { placed_.push_back(placed); }
    bool empty() const { return placed_.empty(); }
    const std::vector<Placed>& all() const { return placed_; }
    std::vector<Placed>& all() { return placed_; }

    void gather(const SolveState& state, std::vector<double>& x) {
        for (Placed& p : placed_) {
            for (int port = 0; port < Law::kPorts; ++port) p.touch[port] = state.touchVolt[p.touchAt + port];
            if constexpr (Law::kBits > 0) p.bits = state.bits[p.bitsAt];
            for (int k = 0; k < Law::kFluxes; ++k)
                x[p.windings[k].current] = state.pathAmpere[p.pathsAt + kWays.ofFlux[k]];
        }
    }

    void scatter(const std::vector<double>& x, SolveState& state) const {
        for (const Placed& p : placed_) {
            const WayAmperes amperes = amperesAt(p, x, {});
            for (int way = 0; way < kWays.count; ++way) state.pathAmpere[p.pathsAt + way] = amperes[way];
            for (int port = 0; port < Law::kPorts; ++port) state.touchVolt[p.touchAt + port] = p.touch[port];
        }
    }

    /// What the stores hold and how that changes, by store.
    void readStores(const std::vector<double>& x, const Pace& pace, double* stored, double* storing) const {
        if constexpr (kHasCharges || kHasFluxes) {
            for (const Placed& p : placed_) readStores(p, x, pace, stored, storing);
        }
    }

    /// Puts each branch's tangent into the matrix and its currents into the sums.
    void load(const std::vector<double>& x, std::vector<double>& right, std::vector<double>& values,
              const Drive& drive) {
        for (Placed& p : placed_) {
            p.tangent = p.law.tangentAt(p.touch, p.bits, drive.leakSiemens);
            if constexpr (kHasCharges) {
                if (drive.pace.perSecond > 0) p.charges = p.law.chargesAt(p.tangent.lineVolt);
            }
            const WayAmperes amperes = amperesAt(p, x, drive.pace);
            for (int way = 0; way < kWays.count; ++way) {
                right[p.places[kWays.ends[way].from].sum] -= amperes[way];
                right[p.places[kWays.ends[way].to].sum] += amperes[way];
            }
            stamp(p, values, drive.pace);
            if constexpr (kHasFluxes) loadWindings(p, x, right, values, drive.pace);
        }
    }

    void move(const std::vector<double>& x, const std::vector<double>& right, StepMeasure& measure) {
        for (Placed& p : placed_) {
            const auto target = p.law.touched(p.touch, p.tangent, across(p, x));
            for (int port = 0; port < Law::kPorts; ++port) {
                const double next = p.law.limited(port, p.touch[port], target[port]);
                const double step = std::abs(target[port] - p.touch[port]) * p.law.perUnitVolt(port);
                measure.curveStep = std::max(measure.curveStep, step);
                double siemens = 0;
                for (int path = 0; path < Law::kPaths; ++path)
                    siemens = std::max(siemens, std::abs(p.tangent.siemens[path][port]));
                measure.lawDefectAmpere = std::max(measure.lawDefectAmpere, siemens * std::abs(target[port] - next));
                p.touch[port] = next;
            }
            for (int k = 0; k < Law::kFluxes; ++k) {
                const int current = p.windings[k].current;
                measure.ampereStep = std::max(measure.ampereStep, std::abs(right[current]));
                measure.largestAmpere = std::max(measure.largestAmpere, std::abs(x[current]));
            }
        }
    }

    double largestAmpere(double atLeast, const std::vector<double>& x) const {
        for (const Placed& p : placed_) {
            for (const double ampere : p.tangent.ampere) atLeast = std::max(atLeast, std::abs(ampere));
            for (int k = 0; k < Law::kFluxes; ++k) atLeast = std::max(atLeast, std::abs(x[p.windings[k].current]));
        }
        return atLeast;
    }

    static typename Law::Volts across(const Placed& p, const std::vector<double>& x) {
        typename Law::Volts volts{};
        for (int port = 0; port < Law::kPorts; ++port)
            volts[port] = x[p.places[Law::kPortEnds[port].from].volt] - x[p.places[Law::kPortEnds[port].to].volt];
        return volts;
    }

    /// Puts what stores would have to hold more, by store, into the right-hand sides, as currents and voltages at this pace.
    void loadMore(const double* more, double perSecond, std::vector<double>& right) const {
        if constexpr (kHasCharges || kHasFluxes) {
            for (const Placed& p : placed_) {
                if constexpr (kHasCharges) {
                    for (int k = 0; k < Law::kCharges; ++k) {
                        const double ampere =
                            more[p.storesAt + k] * perSecond * shareBehindSeries(p, k, {perSecond, nullptr});
                        right[p.places[Law::kChargeEnds[k].from].sum] -= ampere;
                        right[p.places[Law::kChargeEnds[k].to].sum] += ampere;
                    }
                }
                for (int k = 0; k < Law::kFluxes; ++k)
                    right[p.windings[k].equation] += more[p.storesAt + Law::kCharges + k] * perSecond;
            }
        }
    }

    /// By way of the element, as the tangents have them.
    static WayAmperes amperesAt(const Placed& p, const std::vector<double>& x, const Pace& pace) {
        WayAmperes amperes{};
        const auto volts = across(p, x);
        for (int path = 0; path < Law::kPaths; ++path) {
            amperes[path] = p.tangent.ampere[path];
            for (int port = 0; port < Law::kPorts; ++port)
                amperes[path] += p.tangent.siemens[path][port] * (volts[port] - p.tangent.lineVolt[port]);
        }
        if constexpr (kHasCharges) {
            for (int k = 0; k < Law::kCharges && pace.perSecond > 0; ++k)
                amperes[kWays.ofCharge[k]] += chargingAt(p, k, volts, pace);
        }
        for (int k = 0; k < Law::kFluxes; ++k) amperes[kWays.ofFlux[k]] = x[p.windings[k].current];
        return amperes;
    }

private:
    static double chargingAt(const Placed& p, int k, const typename Law::Volts& volts, const Pace& pace) {
        double coulomb = p.charges.coulomb[k] - pace.still[p.storesAt + k];
        for (int port = 0; port < Law::kPorts; ++port)
            coulomb += p.charges.farad[k][port] * (volts[port] - p.tangent.lineVolt[port]);
        return coulomb * pace.perSecond * shareBehindSeries(p, k, pace);
    }

    /// What a resistance in series with a charge leaves of its current.
    static double shareBehindSeries(const Placed& p, int k, const Pace& pace) {
        const double ohm = p.law.chargeOhm(k);
        return ohm == 0 ? 1 : 1 / (1 + pace.perSecond * p.charges.farad[k][k] * ohm);
    }

    static double voltOfWinding(const Placed& p, int k, const std::vector<double>& x) {
        return x[p.places[Law::kFluxEnds[k].from].volt] - x[p.places[Law::kFluxEnds[k].to].volt] -
               p.law.windingOhm(k) * x[p.windings[k].current];
    }
    static std::array<double, Law::kFluxes> windingAmperes(const Placed& p, const std::vector<double>& x) {
        std::array<double, Law::kFluxes> amperes{};
        for (int k = 0; k < Law::kFluxes; ++k) amperes[k] = x[p.windings[k].current];
        return amperes;
    }

    static void readStores(const Placed& p, const std::vector<double>& x, const Pace& pace, double* stored,
                           double* storing) {
        if constexpr (kHasCharges) {
            auto volts = across(p, x);
            for (int k = 0; k < Law::kCharges; ++k) storing[p.storesAt + k] = chargingAt(p, k, volts, pace);
            for (int k = 0; k < Law::kCharges; ++k) volts[k] -= p.law.chargeOhm(k) * storing[p.storesAt + k];
            const auto charges = p.law.chargesAt(volts);
            for (int k = 0; k < Law::kCharges; ++k) stored[p.storesAt + k] = charges.coulomb[k];
        }
        if constexpr (kHasFluxes) {
            const auto fluxes = p.law.fluxesAt(windingAmperes(p, x));
            for (int k = 0; k < Law::kFluxes; ++k) {
                stored[p.storesAt + Law::kCharges + k] = fluxes.weber[k];
                storing[p.storesAt + Law::kCharges + k] = voltOfWinding(p, k, x);
            }
        }
    }

    static void loadWindings(const Placed& p, const std::vector<double>& x, std::vector<double>& right,
                             std::vector<double>& values, const Pace& pace) {
        const auto fluxes = p.law.fluxesAt(windingAmperes(p, x));
        for (int k = 0; k < Law::kFluxes; ++k) {
            const Winding& winding = p.windings[k];
            const bool rests = pace.perSecond == 0;
            const double still = rests ? 0 : pace.still[p.storesAt + Law::kCharges + k];
            const double restOhm = rests ? kRestingWindingOhm : 0;
            const double storing = (fluxes.weber[k] - still) * pace.perSecond;
            right[winding.equation] = storing + restOhm * x[winding.current] - voltOfWinding(p, k, x);
            values[winding.slots[k]] -= p.law.windingOhm(k) + restOhm;
            for (int by = 0; by < Law::kFluxes; ++by) values[winding.slots[by]] -= pace.perSecond * fluxes.henry[k][by];
        }
    }

    static void stamp(const Placed& p, std::vector<double>& values, const Pace& pace) {
        for (int path = 0; path < Law::kPaths; ++path) {
            for (int port = 0; port < Law::kPorts; ++port)
                stampOne(p, values, Law::kPathEnds[path], Law::kPortEnds[port], p.tangent.siemens[path][port]);
        }
        if constexpr (kHasCharges) {
            for (int k = 0; k < Law::kCharges && pace.perSecond > 0; ++k) {
                for (int port = 0; port < Law::kPorts; ++port)
                    stampOne(p, values, Law::kChargeEnds[k], Law::kPortEnds[port],
                             pace.perSecond * shareBehindSeries(p, k, pace) * p.charges.farad[k][port]);
            }
        }
    }

    static void stampOne(const Placed& p, std::vector<double>& values, TerminalPair way, TerminalPair drive,
                         double siemens) {
        values[p.slots[way.from][drive.from]] += siemens;
        values[p.slots[way.to][drive.to]] += siemens;
        values[p.slots[way.from][drive.to]] -= siemens;
        values[p.slots[way.to][drive.from]] -= siemens;
    }

    std::vector<Placed> placed_;
};

}  // namespace tiepoint
