#pragma once
// An island: unknown nodes that influence each other, solved by Newton's method on a program of its own.
//
// Equations, in correction form (J dx = -F): Kirchhoff's current law at every unknown node, and for every branch whose current is
// an unknown of its own  v(from) - v(to) - r i = emf.  Such are the supplies and, with emf 0, conductors under an ohm: their
// currents then need no difference of nearly equal voltages. A junction enters as the tangent of its law with the series resistance
// folded in (conductance g / (1 + g Rs)), so that it needs no inner node; so does a filament, whose law has no such resistance. Every step recomputes the residual from the currents
// themselves, so each step also refines what the one before left to rounding.
// The search ends when the last correction was too small to matter: under 1e-6 of nVt at every junction, which squares to 1e-12
// of its current, and under 1e-9 elsewhere; or when corrections stop shrinking with a residual under 1e-12 A + 1e-12 of the largest
// current.
// Thread rule: one thread at a time.

#include "core/solve/linear_program.h"
#include "core/solve/solve_state.h"

#include <span>
#include <vector>

namespace tiepoint {

/// The branches of one island by index into the circuit's lists.
struct IslandMembers {
    /// A supply at its limit drives one of its ends here; the other end may lie in another island.
    struct Injection {
        int element, node;
        double sign;  ///< +1 at `from`, -1 at `to`
    };
    std::vector<int> nodes, conductors, junctions, filaments, supplies;
    std::vector<Injection> injections;
};

class Island {
public:
    /// localOfNode: by node of the circuit, the place in members.nodes, or -1 where the voltage is known.
    Island(const Circuit& circuit, const IslandMembers& members, std::span<const int> localOfNode);

    struct Outcome {
        bool converged = false;
        int iterations = 0;
        int troubleNode = -1;  ///< where it failed worst; -1 of an island without unknown nodes
    };

    /// Brings this island's part of the state to its solution; voltages of known nodes and limited currents are taken from the state.
    Outcome solve(SolveState& state, const Drive& drive);

private:
    /// Places in x_ (voltages) and right_ (sums of currents) of a branch's two ends.
    struct Ends {
        int voltFrom, voltTo, sumFrom, sumTo;
    };
    struct Conductor {
        Ends ends;
        double siemens;
        int element;
    };
    struct Source {  ///< a branch whose current is an unknown
        Ends ends;
        int current, equation;  ///< places in x_ and right_
        double emfVolt, ohm;
        int element;
    };
    struct Injection {
        int sum, element;
        double sign;
    };
    /// A branch whose current is a curve of its voltage, replaced by a tangent in every step.
    template <class Law>
    struct Curve {
        Ends ends;
        int slots[4];  ///< from-from, to-to, from-to, to-from
        Law law;
        int index, element;
        double innerVolt = 0;  ///< where the tangent touches
        double pointAmpere = 0, tangentSiemens = 0, lineVolt = 0;
    };
    struct Unknown {
        int node, place, sum;
    };
    struct Constant {
        int node, place;
    };
    /// Sizes of one step's corrections and of what they correct.
    struct Measure {
        double curveStep = 0, lawDefectAmpere = 0;
        double voltStep = 0, largestVolt = 0, ampereStep = 0, largestAmpere = 0;
        bool settled() const;
    };

    class Builder;

    void gather(const SolveState& state);
    void scatter(SolveState& state) const;
    void load(const SolveState& state, const Drive& drive);
    template <class Law>
    void loadCurves(std::vector<Curve<Law>>& curves, const Drive& drive);
    template <class Law>
    void scatterCurves(const std::vector<Curve<Law>>& curves, std::vector<double>& innerVolt,
                       std::vector<double>& elementAmpere) const;
    int worstNode(const SolveState& state, const Drive& drive);
    bool isBalanced(const SolveState& state, double defectAmpere) const;
    Measure correct();
    template <class Law>
    void moveCurves(std::vector<Curve<Law>>& curves, Measure& measure);

    LinearProgram program_;
    std::vector<Unknown> unknowns_;
    std::vector<Constant> constants_;
    std::vector<Conductor> conductors_;
    std::vector<Source> sources_;
    std::vector<Injection> injections_;
    std::vector<Curve<JunctionLaw>> junctions_;
    std::vector<Curve<FilamentLaw>> filaments_;
    std::vector<double> baseValues_, values_;  ///< by slot; the last 16 are dumps for stamps at known nodes
    std::vector<double> x_;                    ///< unknowns by position, then the known voltages
    std::vector<double> right_;                ///< by position, then one dump for sums at known nodes
};

}  // namespace tiepoint
