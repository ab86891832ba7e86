#pragma once
// Solves a circuit at rest: limits of supplies around Newton's method around the islands.
//
// Limits: each supply either holds its voltage or gives (takes) exactly its limit. One supply changes its role at a time, first
// the worst offender; should that go on for long, the offender of the smallest index (Murty's rule, which ends where all laws rise).
// Where a law feeds back that rule may go round for ever; so as soon as roles repeat themselves under it, the
// combinations of roles are tried one after another, while the supplies are few. Then there is no solution.
// Bits: what they are is held while currents are solved; then one bit whose event stands flips, and so on until none does. A set of
// bits that comes back never rests.
// More than one state: where a law feeds back, the search begins cold each time, so that the answer doesn't depend on what was solved
// before. What it finds is refused if it is a saddle (rest_modes.h), or if a search that begins with one or all of the laws off, or with
// only one on, ends in another state of rest: which of them a circuit takes is decided by how it is switched on, and time isn't known here. If Newton's method fails from the last answer it starts afresh, then steps the
// sources up from nothing, then the leaks down from 1 mS. An answer is accepted only if Kirchhoff's current law holds at every node to
// 1 nA + 1e-6 of the largest current there.
// Plans of the last few states of contacts, supplies and limits are kept. Thread rule: one thread at a time.

#include "core/circuit/surrounded.h"
#include "core/solve/circuit_plan.h"
#include "core/solve/circuit_reading.h"

#include <deque>
#include <span>
#include <vector>

namespace tiepoint {

enum class Trouble {
    None,
    IdealLoop,      ///< ideal sources in a loop
    Unbalanced,     ///< currents that can't add up
    LimitsContend,  ///< no choice of supplies at their limits fits all of them
    NotConverged,   ///< no operating point was found
    ManyRests,      ///< more than one state of rest
    NeverRests,     ///< bits that flip for ever
};

struct CircuitSolution {
    Trouble trouble = Trouble::None;
    std::vector<int> troubleElements;    ///< those at the place of the trouble; never empty where there is one
    std::vector<double> nodeVolt;        ///< by node, above the reference; floating nodes: above a node of their own
    std::vector<char> floating;          ///< by node: nothing ties it to the reference
    std::vector<double> terminalAmpere;  ///< by terminal of the circuit, into the element
    std::vector<double> elementAmpere;   ///< by element, into its first terminal: of two, from `from` to `to`
    std::vector<double> elementWatt;     ///< by element, taken
    std::vector<double> elementTold;     ///< by element, what its law tells of itself (law.h); 0 of most
    std::vector<char> limiting;          ///< by supply
    int iterations = 0;                  ///< Newton steps of the slowest island, of the last solve that counted
    double kirchhoffWorst = 0;           ///< A
    double powerBalance = 0;             ///< W

    bool solved() const { return trouble == Trouble::None; }
};

class CircuitSolver {
public:
    explicit CircuitSolver(Circuit circuit = {});

    const Circuit& circuit() const { return circuit_; }

    /// What surrounds the elements from now on, by element.
    void setSurroundings(std::span<const Surroundings> byElement) {
        if (surround(circuit_, byElement)) plans_.clear();  // their islands hold the laws as they were
    }

    /// present: by element, closed or on. reference: the node at 0 V, or -1. The result is valid until the next call.
    const CircuitSolution& solve(std::span<const char> present, int reference);

    /// What the last solve found.
    const CircuitSolution& solution() const { return solution_; }
    /// Where the laws' tangents touch, by touch of the circuit: the start of the next search.
    std::span<double> touchVolts() { return state_.touchVolt; }

private:
    struct KeptPlan {
        std::vector<char> key;
        CircuitPlan plan;
    };

    CircuitPlan& planFor(std::span<const char> present, int reference);
    bool search(std::span<const char> present, int reference);
    bool runPlan(CircuitPlan& plan, const Drive& drive);
    bool runFromNothing(CircuitPlan& plan);
    bool runHard(CircuitPlan& plan);
    void setLimitedCurrents(const Drive& drive);
    /// The supply that changed, or -1.
    int changeOneLimit(std::span<const char> present, bool worstFirst);
    double excessOf(int supply) const;
    double& ampereOf(const SupplyBranch& s) { return state_.pathAmpere[circuit_.firstPath[s.element]]; }
    int worstNode() const;
    /// Solves with the bits as they are and the roles that fit; null: there is none, and it says so.
    CircuitPlan* settleLimits(std::span<const char> present, int reference);
    CircuitPlan* tryRoles(std::span<const char> present, int reference);
    CircuitPlan* solveOnce(std::span<const char> present, int reference);
    bool isContent(std::span<const char> present) const;
    bool accept(std::span<const char> present, CircuitPlan& plan);
    bool mayFeedBack(std::span<const char> present) const;
    /// The element whose bit flipped, or -1.
    int flipOneBit(std::span<const char> present);
    /// Both say so if it is.
    bool isSaddle(std::span<const char> present, CircuitPlan& plan);
    bool hasOtherRest(std::span<const char> present, CircuitPlan& plan);
    void restart();
    void failWith(std::vector<int> elements, Trouble trouble);
    void failAt(int node, Trouble trouble, std::span<const char> present);
    void failAmong(std::span<const int> supplies, Trouble trouble, std::span<const char> present);

    Circuit circuit_;
    SolveState state_;
    CircuitSolution solution_;
    std::deque<KeptPlan> plans_;
    std::vector<char> key_;     ///< of the present state
    std::vector<int> changed_;  ///< supplies whose role changed, by round of the present search
    NodeSums sums_;
    bool cold_ = true;
    int troubleNode_ = -1;
};

}  // namespace tiepoint
