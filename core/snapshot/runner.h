#pragma once
// The Runner: the one interface through which a bench runs. A resting circuit is its simplest case, in which every instant is an
// operating point and time changes nothing; what steps through time is another class behind it.
//
// A Runner belongs to one thread; the benches and snapshots that it trades are immutable. Loops in it call stopIfAsked()
// (core/base/stopping.h), so that whoever lets it run can end that at once. Times are seconds of the bench's own clock; how they go
// with the wall's is the business of who runs it.

#include "core/snapshot/snapshot.h"

#include <memory>

namespace tiepoint {

class Runner {
public:
    virtual ~Runner() = default;
    /// The nets of the bench that is to run. Parts that stay, by id, go on from what they remember; time goes on too.
    virtual void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) = 0;
    void setBench(std::uint64_t revision, std::shared_ptr<const Bench> bench) {
        setLayout(revision, buildLayout(std::move(bench)));
    }
    /// Valid from the present time on, with the presses that they tell of.
    virtual void setInputs(const Inputs& inputs) = 0;
    /// What the parts remember: set where a bench is to begin otherwise than at rest, read to go on elsewhere.
    virtual void setState(const State& state) = 0;
    virtual State state() const = 0;
    /// Back to power-up: time begins at 0, and no part remembers anything.
    virtual void restart() = 0;
    /// Brings the bench to a time, not before the present one.
    virtual void advanceTo(double timeSecond) = 0;
    /// When time alone changes something next: the present time or earlier while anything moves, infinity while all rests.
    virtual double nextChangeSecond() const = 0;
    /// The present instant; null before the first setBench. The same one as long as nothing has changed.
    virtual std::shared_ptr<const Snapshot> snapshot() = 0;
};

/// A runner for any bench: one that time changes by itself is followed through time, any other rests.
std::unique_ptr<Runner> makeRunner();
/// A runner for circuits at rest. Of what parts remember it knows only whether anything drives the circuit.
std::unique_ptr<Runner> makeRestingRunner();

}  // namespace tiepoint
