#pragma once
// The compiled circuit: nodes by number and flat lists of branches, nothing else. It knows no board, no part and no limit of
// voltage; the layers above give it meaning.
//
// Every element has one number, in the order of adding, and one branch of one of four laws: a conductor, a junction, a filament, or a supply.
// Currents count from `from` to `to` through the element. Units: volt, ampere, ohm. Plain values; not shared while being built.

#include "core/circuit/filament_law.h"
#include "core/circuit/junction_law.h"

#include <limits>
#include <vector>

namespace tiepoint {

/// Resistances and switch contacts.
struct ConductorBranch {
    int element, from, to;
    double siemens;
};

struct JunctionBranch {
    int element, from, to;
    JunctionLaw law;
};

struct FilamentBranch {
    int element, from, to;
    FilamentLaw law;
};

/// An electromotive force from `to` (minus) to `from` (plus) with a series resistance, while |current| <= limit, sourcing or sinking;
/// beyond it a constant-current source.
struct SupplyBranch {
    int element, from, to;
    double emfVolt;
    double seriesOhm;    ///< 0: ideal
    double limitAmpere;  ///< infinity: none
};

struct Circuit {
    struct Terminals {
        int from, to;
    };

    int nodeCount = 0;
    std::vector<Terminals> terminals;  ///< by element
    std::vector<ConductorBranch> conductors;
    std::vector<JunctionBranch> junctions;
    std::vector<FilamentBranch> filaments;
    std::vector<SupplyBranch> supplies;

    int elementCount() const { return static_cast<int>(terminals.size()); }
    int addNode() { return nodeCount++; }

    /// Each adds one element and returns its number.
    int addConductor(int from, int to, double ohm) {
        conductors.push_back({elementCount(), from, to, 1 / ohm});
        return addTerminals(from, to);
    }
    int addJunction(int from, int to, const JunctionLaw& law) {
        junctions.push_back({elementCount(), from, to, law});
        return addTerminals(from, to);
    }
    int addFilament(int from, int to, const FilamentLaw& law) {
        filaments.push_back({elementCount(), from, to, law});
        return addTerminals(from, to);
    }
    int addSupply(int from, int to, double emfVolt, double seriesOhm = 0,
                  double limitAmpere = std::numeric_limits<double>::infinity()) {
        supplies.push_back({elementCount(), from, to, emfVolt, seriesOhm, limitAmpere});
        return addTerminals(from, to);
    }

private:
    int addTerminals(int from, int to) {
        terminals.push_back({from, to});
        return elementCount() - 1;
    }
};

}  // namespace tiepoint
