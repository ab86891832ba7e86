#pragma once
// An island followed through time, with steps of its own.
//
// Method: what the island stores (charges and fluxes) obeys dQ/dt = K, where the rates K are the currents into charges and the voltages
// across windings. Each stage of a step is the resting problem of solve/island.h with the stores as companions: a store's rate is (what
// it holds - what it would hold if it stood still) * perSecond. So Kirchhoff's laws hold at every stage, and charge is kept as charge.
// Error: the difference of the two orders, as charge, sent once more through the matrix of the step: what it would move of the voltages and
// windings' currents (L. F. Shampine's filter: stiff parts of the difference, which the step has damped, don't count).
// Start: wherever something jumps, two steps of backward Euler, far shorter than anything that a bench does, from what is stored: the
// first puts right what can't stand side by side (unequal capacitors that were joined), the second finds the rates. An operating point
// of nodes that hang on capacitors alone doesn't exist, and is never asked for. Where the search fails at that pace, as between two transistors
// that both get all that an inrush drives, the steps are shorter: the smallest charges then hold every node nearly where it was.
// Reading inside a step: a cubic through both ends and two instants between, which are solved when first asked for: from charges by
// Hermite's interpolation. A cubic of currents that balance balances too.
// A stage's search begins where the stages before it point to, by a parabola: it takes one step less. Where laws feed back only the last stage,
// which is the step's result and whose factors the error is sent through, is solved to the last digit at once (watched_solve.h); in
// others the next step of the search puts right what rounding has left; where steps fail again and again they are solved so too.
// Tried and rejected: cubics of voltages through the stages, which are of order two only.
// Thread rule: one thread at a time.

#include "core/solve/island.h"
#include "core/time/tableau.h"

#include <limits>
#include <span>
#include <vector>

namespace tiepoint {

/// How exactly a circuit is followed.
struct Tolerance {
    double relative = 2e-6;  ///< of each voltage, and of each winding's current
    double volt = 1e-7, ampere = 1e-10;
    double mostSecond = std::numeric_limits<double>::infinity();  ///< the longest step
};

class MovingIsland : private Island {
public:
    MovingIsland(const Circuit& circuit, const IslandMembers& members, std::span<const int> localOfNode,
                 const Tolerance& tolerance);

    /// Goes on from what the state holds (stored, known voltages, bits; the rest is a first guess), which jumped at that time.
    [[nodiscard]] bool begin(const SolveState& state, double second);
    /// One step, not past that time. False where no step is found, however short.
    [[nodiscard]] bool step(double notPast);
    /// Ends the last step earlier, at a time inside it.
    void stopAt(double second);

    double beginSecond() const { return begin_.second; }
    double endSecond() const { return end_.second; }
    /// What it stores, by store of the circuit.
    const std::vector<int>& stores() const { return storeOf_; }
    /// How much there is to do in each step: about as many numbers as a stage moves.
    int size() const { return static_cast<int>(unknowns_.size() + storeOf_.size()); }
    /// Writes the island's share of the state at a time inside the last step.
    void read(double second, SolveState& state);
    /// Whether nothing changes any more: a step of many seconds moved nothing.
    bool isSteady() const;
    int stepCount() const { return stepCount_; }
    int rejectedCount() const { return rejectedCount_; }
    /// A node where the last search failed, or -1.
    int troubleNode() const { return troubleNode_; }

    /// What may happen by itself: a bit that flips, a supply that changes its role.
    struct Watch {
        int bitsAt = -1, bit = -1;  ///< a bit of a branch with bits; or
        int supply = -1;            ///< a supply with a limit
        double delaySecond = 0;
        double atBegin = 0, atEnd = 0;  ///< above 0: it stands, at the ends of the last step
    };
    const std::vector<Watch>& watches() const { return watches_; }
    /// The time in the last step after which a watch that stood not at its begin and stands at its end stands.
    double crossing(int watch);

private:
    /// One instant: x and the currents of laws, one after the other, and what is stored.
    struct Moment {
        double second = 0;
        std::vector<double> x, ampere, touch, stored, storing;
    };

    void placeStores(const Circuit& circuit);
    void placeWatches(const Circuit& circuit, const IslandMembers& members);
    bool converge(const Drive& drive, int mostIterations, double curveSettled, bool watched = true);
    void foretell(int stage, double length);
    bool converged(const Drive& drive);
    bool attempt(double length, bool watched = false);
    double errorShare(double perSecond);
    bool startFrom(const SolveState& state, double firstSecond);
    void keep(Moment& moment, double second);
    void resume(const Moment& moment);
    void keepTouches(std::vector<double>& touch) const;
    void takeTouches(const std::vector<double>& touch);
    void readWatches(const std::vector<double>& x, const std::vector<double>& ampere, bool atEnd);
    template <class Visit>
    void eachWatch(const std::vector<double>& x, const std::vector<double>& ampere, Visit visit) const;
    double watchAt(int watch, double share);
    void fillInside();
    bool solveInside(double share, Moment& moment);
    /// Weights of the four instants that a reading is made of.
    std::array<double, 4> weightsAt(double second) const;

    /// Where the voltage of a node stands, or what it is.
    struct VoltPlace {
        int place = -1, node = -1;
        double constant = 0;
    };
    struct SupplyWatch {
        int supply;
        VoltPlace from, to;
        int current;  ///< place in x, or -1 where it is at its limit
        double emfVolt, seriesOhm, limitAmpere, givenAmpere;
    };

    const Tableau& tableau_;
    Tolerance tolerance_;
    std::vector<int> storeOf_;  ///< by store of the island: that of the circuit
    int ampereCount_ = 0, touchCount_ = 0;
    bool isLinear_ = true;
    double largestFarad_ = 0;
    std::vector<SupplyWatch> supplyWatches_;
    std::vector<Watch> watches_;
    Moment begin_, end_, inside_[2];
    bool insideKnown_ = false;
    Pace pace_;
    double nextSecond_ = 0;
    int young_ = 0;  ///< steps since the last jump
    int stepCount_ = 0, rejectedCount_ = 0, troubleNode_ = -1;
    bool stood_ = false;  ///< the last step moved nothing
    std::vector<double> still_, more_;
    std::array<std::vector<double>, Tableau::kMostStages> storing_;
    std::vector<double> scratchX_, scratchAmpere_;
    std::array<std::vector<double>, Tableau::kMostStages> stageTouch_;  ///< where laws were touched in each stage
};

}  // namespace tiepoint
