#pragma once
// The Runner: the one interface through which a bench runs. A resting circuit is its stateless case; time stepping will be a
// second class behind it. A Runner belongs to one thread; the benches and snapshots it trades are immutable.

#include "core/snapshot/snapshot.h"

#include <memory>

namespace tiepoint {

class Runner {
public:
    virtual ~Runner() = default;
    virtual void setBench(std::uint64_t revision, std::shared_ptr<const Bench> bench) = 0;
    virtual void setInputs(const Inputs& inputs) = 0;
    /// Brings the bench to a time in seconds of its own clock.
    virtual void advanceTo(double timeSecond) = 0;
    /// The present instant; null before the first setBench.
    virtual std::shared_ptr<const Snapshot> snapshot() = 0;
};

/// A runner for circuits at rest: every instant is an operating point.
std::unique_ptr<Runner> makeRestingRunner();

}  // namespace tiepoint
