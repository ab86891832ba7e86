#pragma once
// Makes the snapshots of one layout, from solutions and the flow of its metal. After the first few, making one allocates nothing: what
// nobody holds any more is filled again (snapshot_pool.h).
//
// A bench that moves is solved many times between two snapshots. Its light is added up over these solutions, since eyes and lamps
// average over time; all other arrays are those of the last.
// Belongs to one thread; the snapshots that it hands out may go, and be let go, anywhere.

#include "core/flow/flow.h"
#include "core/light/flashes.h"
#include "core/snapshot/snapshot.h"
#include "core/snapshot/snapshot_pool.h"

#include <memory>
#include <vector>

namespace tiepoint {

class SnapshotMaker {
public:
    explicit SnapshotMaker(std::shared_ptr<const Layout> layout);

    /// Counts the light and the currents of a solution for as long as it held, towards the next snapshot.
    void addLight(const Solution& solution, double seconds);
    /// A snapshot of a solution of the layout. Brightness is that of the light added since the last one, or where none was added, that
    /// of this solution. Revision, times, input sequence and inputs are the caller's.
    std::shared_ptr<Snapshot> make(const Solution& solution);
    /// The same of a bench that moves, seen for so many seconds since the one before: with mean currents, and how its lights flash.
    std::shared_ptr<Snapshot> makeMoving(const Solution& solution, double secondsSeen);

private:
    void findEmitters(const Solution& solution);
    void fillLight(Snapshot& snapshot);
    void fillMeans(Snapshot& snapshot);

    std::shared_ptr<const Layout> layout_;
    Flow flow_;
    std::shared_ptr<const ElementPlaces> places_;  ///< those that the emitters were found for
    std::shared_ptr<const Emitters> emitters_;
    std::vector<double> lightSum_;             ///< by emitter: relative light times seconds
    std::vector<double> ampereSum_, sizeSum_;  ///< by lead: current, and its size, times seconds
    double lightSeconds_ = 0;
    std::vector<int> turning_;          ///< elements of the solution that tell a speed
    std::vector<double> turnedRadian_;  ///< by part
    Flashes flashes_;
    std::vector<double> light_;  ///< by emitter: of the last snapshot
    SnapshotPool pool_;
};

}  // namespace tiepoint
