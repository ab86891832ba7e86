#pragma once
// A bench through time: its circuit followed from instant to instant, and what its parts remember by their ids.
//
// Added to the circuit here and nowhere else: the air between contacts (spark_law.h), where coils are about. Where parts remember nothing
// yet, charges begin with what the part's own state says, and with up to a millionth of a volt more that follows from the part's id: so
// that a pair that could fall either way chooses a side, each time the same one.
// Contacts of switches bounce where their part says so (contact_bounce.h).
// Thread rule: one thread at a time; loops call stopIfAsked().

#include "core/instant/inputs.h"
#include "core/instant/state.h"
#include "core/solve/bench_circuit.h"
#include "core/time/circuit_run.h"
#include "core/time/contact_bounce.h"

#include <algorithm>
#include <limits>
#include <memory>

namespace tiepoint {

class BenchRun {
public:
    explicit BenchRun(const Tolerance& tolerance = {}) : tolerance_(tolerance) {}

    /// The bench from the present time on; parts that stay, by id, go on from what they remember.
    void setLayout(std::shared_ptr<const Layout> layout);
    /// What hands and the world do from the present time on (`inputs.held` counts, not its presses).
    void setInputs(const Inputs& inputs);
    /// What the parts remember at the present time; those that it doesn't name forget.
    void setState(const State& state);
    State state();

    /// Whether time changes anything about this bench by itself.
    bool moves() const { return moves_; }
    double second() const { return second_; }
    /// What time it is, before a layout is set.
    void setSecond(double second) { second_ = second; }
    /// Goes on to a time. False where it stopped before: second() then says when, and the solution why.
    bool advanceTo(double second);
    /// The circuit's own run, for who reads what is stored.
    CircuitRun& run() { return run_; }
    const Layout& layout() const { return bench_.layout(); }
    double smoothUntil() const { return running_ ? std::min(run_.smoothUntil(), bounce_.nextAfter(second_)) : second_; }
    bool isSteady() const {
        return !running_ || (run_.isSteady() && bounce_.nextAfter(second_) == std::numeric_limits<double>::infinity());
    }
    bool wasCapped() const { return running_ && run_.wasCapped(); }
    /// The present instant; valid until the next call.
    const Solution& solution();

private:
    static bool isAlive(const CircuitSolution& found);
    void addAir(Circuit& circuit);
    void restore();
    void start();

    Tolerance tolerance_;
    BenchCircuit bench_;
    CircuitRun run_;
    ContactBounce bounce_;
    Inputs inputs_;
    State state_;  ///< at the last start
    double second_ = 0;
    bool hasLayout_ = false, moves_ = false, running_ = false, stopped_ = false, isFresh_ = false, isDriven_ = false;
};

}  // namespace tiepoint
