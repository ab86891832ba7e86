#pragma once
// An island: unknown nodes that influence each other, solved by Newton's method on a program of its own.
//
// Equations, in correction form (J dx = -F): Kirchhoff's current law at every unknown node, and for every branch whose current is
// an unknown of its own  v(from) - v(to) - r i = emf.  Such are the supplies and, with emf 0, conductors under an ohm: their
// currents then need no difference of nearly equal voltages. Whatever follows a law enters as a tangent (placed_law.h); a junction's
// has the series resistance folded in (conductance g / (1 + g Rs)), so that it needs no inner node. Every step recomputes the residual
// from the currents themselves, so each step also refines what the one before left to rounding.
// The search ends when the last correction was too small to matter: under 1e-6 of the unit of every law (nVt of a junction), which
// squares to 1e-12 of its current, and under 1e-9 elsewhere; or when corrections stop shrinking with a residual under 1e-12 A + 1e-12 of the largest
// current.
// An island in which a law may feed back has no M-matrix; there every linear solve is watched (watched_solve.h).
// Thread rule: one thread at a time.

#include "core/solve/linear_program.h"
#include "core/solve/placed_law.h"
#include "core/solve/watched_solve.h"

#include <span>
#include <vector>

namespace tiepoint {

/// Conductors above it get a current of their own.
inline constexpr double kStiffSiemens = 1;

/// Branches of one law, by index into the circuit's list.
template <class Law>
struct LawMembers {
    std::vector<int> indices;
};

/// The branches of one island by index into the circuit's lists.
struct IslandMembers {
    /// A supply at its limit drives one of its ends here; the other end may lie in another island.
    struct Injection {
        int path, node;
        double sign;  ///< +1 at `from`, -1 at `to`
    };
    std::vector<int> nodes, conductors, supplies;
    Laws::For<LawMembers> laws;
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

    /// Whether a law here may feed back, so that there may be more than one state of rest.
    bool feedsBack() const { return feedsBack_; }
    /// Nodes that move away from the state, which is one of rest here, at the smallest disturbance; none where it is stable.
    std::vector<int> leavingNodes(const SolveState& state);
    /// Solves that had to choose pivots by value.
    int pivotedCount() const { return watched_.pivotedCount(); }

protected:  // for an island that is followed through time
    /// Places in x_ (voltages) and right_ (sums of currents) of a branch's two ends.
    struct Ends {
        int voltFrom, voltTo, sumFrom, sumTo;
    };
    struct Conductor {
        Ends ends;
        double siemens;
        int path;
    };
    struct Source {  ///< a branch whose current is an unknown
        Ends ends;
        int current, equation;  ///< places in x_ and right_
        double emfVolt, ohm;
        int path;
    };
    struct Injection {
        int sum, path;
        double sign;
        double ampere = 0;  ///< of the path
    };
    struct Unknown {
        int node, place, sum;
    };
    struct Constant {
        int node, place;
    };
    class Builder;

    void gather(const SolveState& state);
    void scatter(SolveState& state) const;
    void load(const Drive& drive);
    int worstNode(const Drive& drive);
    bool isBalanced(double defectAmpere) const;
    StepMeasure correct();

    /// Takes the step; false where the matrix is singular. Watched: as exactly as can be, where laws feed back too.
    bool findStep(bool watched = true);
    /// Solves for other right-hand sides (in right_) with the matrix of the last step; false where it is singular.
    bool solveAgain();

    LinearProgram program_;
    WatchedSolve watched_;  ///< of the program, where laws feed back
    bool feedsBack_ = false;
    std::vector<int> activeNodes_;  ///< unknowns_ at which laws may feed back
    std::vector<Unknown> unknowns_;
    std::vector<Constant> constants_;
    std::vector<Conductor> conductors_;
    std::vector<Source> sources_;
    std::vector<Injection> injections_;
    Laws::For<PlacedLaws> laws_;
    int windingCount_ = 0;
    std::vector<double> baseValues_, values_;  ///< by slot; the last 16 are dumps for stamps at known nodes
    std::vector<double> x_;                    ///< unknowns by position, then the known voltages
    std::vector<double> right_;                ///< by position, then one dump for sums at known nodes
};

}  // namespace tiepoint
