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

template <class Law>
class PlacedLaws {
public:
    static constexpr auto kCouples = couplingOf<Law>();

    /// A terminal's places: of its voltage in x, of its sum of currents in the right-hand sides.
    struct Place {
        int volt, sum;
    };
    struct Placed {
        std::array<Place, Law::kTerminals> places;
        std::array<std::array<int, Law::kTerminals>, Law::kTerminals> slots;  ///< where the law couples
        Law law;
        int index;  ///< in the circuit's list
        int touchAt, bitsAt, pathsAt;
        typename Law::Volts touch{};
        typename Law::Tangent tangent{};
        unsigned bits = 0;
    };

    void add(const Placed& placed) { placed_.push_back(placed); }
    bool empty() const { return placed_.empty(); }
    const std::vector<Placed>& all() const { return placed_; }

    void gather(const SolveState& state) {
        for (Placed& p : placed_) {
            for (int port = 0; port < Law::kPorts; ++port) p.touch[port] = state.touchVolt[p.touchAt + port];
            if constexpr (Law::kBits > 0) p.bits = state.bits[p.bitsAt];
        }
    }

    void scatter(const std::vector<double>& x, SolveState& state) const {
        for (const Placed& p : placed_) {
            const auto amperes = amperesAt(p, across(p, x));
            for (int path = 0; path < Law::kPaths; ++path) state.pathAmpere[p.pathsAt + path] = amperes[path];
            for (int port = 0; port < Law::kPorts; ++port) state.touchVolt[p.touchAt + port] = p.touch[port];
        }
    }

    /// Puts each branch's tangent into the matrix and its currents into the sums.
    void load(const std::vector<double>& x, std::vector<double>& right, std::vector<double>& values,
              double leakSiemens) {
        for (Placed& p : placed_) {
            p.tangent = p.law.tangentAt(p.touch, p.bits, leakSiemens);
            const auto amperes = amperesAt(p, across(p, x));
            for (int path = 0; path < Law::kPaths; ++path) {
                right[p.places[Law::kPathEnds[path].from].sum] -= amperes[path];
                right[p.places[Law::kPathEnds[path].to].sum] += amperes[path];
            }
            stamp(p, values);
        }
    }

    void move(const std::vector<double>& x, StepMeasure& measure) {
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
        }
    }

    double largestAmpere(double atLeast) const {
        for (const Placed& p : placed_)
            for (const double ampere : p.tangent.ampere) atLeast = std::max(atLeast, std::abs(ampere));
        return atLeast;
    }

    static typename Law::Volts across(const Placed& p, const std::vector<double>& x) {
        typename Law::Volts volts{};
        for (int port = 0; port < Law::kPorts; ++port)
            volts[port] = x[p.places[Law::kPortEnds[port].from].volt] - x[p.places[Law::kPortEnds[port].to].volt];
        return volts;
    }

private:
    static typename Law::Amperes amperesAt(const Placed& p, const typename Law::Volts& volts) {
        typename Law::Amperes amperes{};
        for (int path = 0; path < Law::kPaths; ++path) {
            amperes[path] = p.tangent.ampere[path];
            for (int port = 0; port < Law::kPorts; ++port)
                amperes[path] += p.tangent.siemens[path][port] * (volts[port] - p.tangent.lineVolt[port]);
        }
        return amperes;
    }

    static void stamp(const Placed& p, std::vector<double>& values) {
        for (int path = 0; path < Law::kPaths; ++path) {
            const TerminalPair way = Law::kPathEnds[path];
            for (int port = 0; port < Law::kPorts; ++port) {
                const TerminalPair drive = Law::kPortEnds[port];
                const double siemens = p.tangent.siemens[path][port];
                values[p.slots[way.from][drive.from]] += siemens;
                values[p.slots[way.to][drive.to]] += siemens;
                values[p.slots[way.from][drive.to]] -= siemens;
                values[p.slots[way.to][drive.from]] -= siemens;
            }
        }
    }

    std::vector<Placed> placed_;
};

}  // namespace tiepoint
