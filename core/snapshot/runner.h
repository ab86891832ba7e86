#pragma once
// The Runner: the one interface through which a bench runs. A resting circuit is its stateless case; time stepping will be a
// second class behind it. A Runner belongs to one thread; the benches and snapshots it trades are immutable.

#include "core/snapshot/snapshot.h"

#include <memory>

namespace tiepoint {

class Runner {
public:
    virtual ~Runner() = default;
    /// The nets of the bench that is to run.
    virtual void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) = 0;
    void setBench(std::uint64_t revision, std::shared_ptr<const Bench> bench) {
        setLayout(revision, buildLayout(std::move(bench)));
    }
    virtual void setInputs(const Inputs& inputs) = 0;
    /// Brings the bench to a time in seconds of its own clock.
    virtual void advanceTo(double timeSecond) = 0;
    /// The present instant; null before the first setBench.
    virtual std::shared_ptr<const Snapshot> snapshot() = 0;
};

/// A runner for circuits at rest: every instant is an operating point.
std::unique_ptr<Runner> makeRestingRunner();

}  // namespace tiepoint
