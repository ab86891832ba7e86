#pragma once
// One bench solved again and again with other figures: the structure is compiled once, and each answer starts where the nominal one rests.
// A solve builds the branches anew from their figures, since a law's constants follow from them; on a lesson's bench that takes some ten
// microseconds.
// Thread rule: one thread at a time. Internal to core/spread.

#include "core/circuit/compile.h"
#include "core/circuit/element.h"
#include "core/flow/flow.h"
#include "core/snapshot/snapshot.h"
#include "core/solve/circuit_solver.h"

#include <memory>
#include <vector>

namespace tiepoint {

/// The figures of every element of a circuit, by element.
using Figures = std::vector<std::vector<double>>;

class FiguredCircuit {
public:
    /// `nominal` is the bench solved as printed.
    explicit FiguredCircuit(std::shared_ptr<const Snapshot> nominal);

    const Figures& printed() const { return printed_; }
    /// The element of the circuit that an element of a part's model is.
    int elementOf(int part, int spec) const;

    /// False where no solution is found.
    bool solve(const Figures& figures);

    // Of the last solve.
    double volt(int net) const;  ///< NaN where floating
    double elementAmpere(int element) const { return solution_->elementAmpere[static_cast<std::size_t>(element)]; }
    /// By lead: into the part; for jumpers by jumper. The flow is reckoned at the first question after a solve.
    double leadAmpere(int lead);
    double jumperAmpere(int jumper);

private:
    void solveFlow();

    std::shared_ptr<const Layout> layout_;
    CompiledCircuit compiled_;
    std::vector<char> present_;
    std::vector<Surroundings> around_;  ///< by element
    int reference_ = -1;
    Figures printed_;
    std::vector<double> warm_;
    CircuitSolver solver_;
    const CircuitSolution* solution_ = nullptr;
    Flow flow_;
    std::vector<double> injection_, pieces_;
    bool flowKnown_ = false;
};

}  // namespace tiepoint
