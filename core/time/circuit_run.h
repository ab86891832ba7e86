#pragma once
// A circuit through time: its islands with their own steps, and what happens by itself at instants that are located: bits that flip
// (comparators, latches, contacts that a current moves) and supplies that reach or leave their limit.
//
// A bit whose event rises through 0 flips its delay later, if the event still stands; then its island starts anew from what is stored. A
// bit flips at most so often: where a law would switch back and forth without end, flips are put off, and that is told. A supply changes
// its role at once, and the circuit is planned anew.
// At an instant where contacts or supplies were switched, all islands begin there. Times only rise.
// Thread rule: one thread at a time; loops call stopIfAsked().

#include "core/circuit/surrounded.h"
#include "core/solve/circuit_reading.h"
#include "core/solve/circuit_solver.h"
#include "core/time/moving_island.h"

#include <deque>
#include <span>
#include <vector>

namespace tiepoint {

/// The shortest time between two flips of one bit: 100,000 periods a second.
inline constexpr double kLeastFlipSecond = 5e-6;

/// Whether time changes anything about a circuit by itself: it stores something, has bits, or may have several states of rest.
bool movesByItself(const Circuit& circuit);

class CircuitRun {
public:
    explicit CircuitRun(Circuit circuit = {}, const Tolerance& tolerance = {});

    const Circuit& circuit() const { return circuit_; }
    double second() const { return second_; }
    /// What time it is at the first start.
    void setSecond(double second) { second_ = second; }

    /// What is stored, by store, and the bits, by branch with bits: set before the first start, read at the present time.
    SolveState& state() { return state_; }

    /// What surrounds the elements from the next start on, by element.
    void setSurroundings(std::span<const Surroundings> byElement) { surround(circuit_, byElement); }
    /// The next start begins from what state() holds, not from where the run has come.
    void beginFromState() { started_ = false; }
    /// From the present time on these elements are present. False where the circuit has no solution then.
    bool start(std::span<const char> present, int reference);
    /// Goes on to a time. False where no solution is found before it: second() is then where it stopped.
    bool advanceTo(double second);
    /// The end of the shortest step that reaches over the present time, or that time: until then everything is smooth.
    double smoothUntil() const;
    /// When something is due to happen by itself; infinity where nothing is yet.
    double nextDue() const;
    /// Sees to it that smoothUntil() lies after the present time, unless all ends here. False as advanceTo().
    bool makeStep();
    const std::deque<MovingIsland>& islands() const { return islands_; }
    /// The present instant.
    const CircuitSolution& solution();

    bool isSteady() const;
    /// Whether flips had to be put off since the last start.
    bool wasCapped() const { return capped_; }
    long long flipCount() const { return flipCount_; }
    long long stepCount() const;
    /// How much there was to do: the numbers moved, over all steps and islands.
    long long workDone() const;

private:
    struct Pending {
        int island, watch;
        double dueSecond;
        bool certain;  ///< it needn't stand any more then
    };

    bool plan();
    bool buildIslands();
    int offendingSupply();
    void readAll(double second);
    void noteEvents(int island, bool justBegun);
    void schedule(int island, int watch, double second);
    bool handleDue();
    bool flip(const Pending& due);
    bool changeRole(const Pending& due);
    bool fail(Trouble trouble, int node);
    void tellRises();

    Circuit circuit_;
    Tolerance tolerance_;
    SolveState state_;
    std::vector<char> present_;
    int reference_ = -1;
    PlanOutline outline_;
    std::deque<MovingIsland> islands_;
    std::vector<Pending> pending_;
    std::vector<double> lastFlip_;  ///< by branch with bits and bit, 32 for each
    /// By branch with bits: when its first bit rose last and the time before.
    std::vector<std::array<double, 2>> rises_;
    double second_ = 0;
    bool started_ = false, capped_ = false, stopped_ = false, known_ = false;
    long long flipCount_ = 0, stepsBefore_ = 0, workBefore_ = 0;
    NodeSums sums_;
    CircuitSolution solution_;
};

}  // namespace tiepoint
