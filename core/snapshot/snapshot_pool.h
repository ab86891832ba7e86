#pragma once
// A pool of snapshots. What nobody holds any more comes back to it and is handed out again, with the memory of its arrays and of its
// reference count, so that a steady stream of snapshots allocates nothing.
//
// How they come back: each lies in a node, and its shared pointer counts in a block of the same node. When the last pointer goes, in
// whichever thread, the node is pushed onto a list of returned ones by one atomic exchange; no lock is taken. Only the pool's own thread
// takes from that list, and always all of it, so a node can't come and go unseen between two of its steps. Tried and rejected: keeping
// the pointers and looking for one with a count of one (reading a count says nothing about what the other thread has finished).
//
// Thread rule: the pool belongs to one thread; its snapshots may be let go by any, also after the pool is gone.

#include "core/snapshot/snapshot.h"

#include <memory>

namespace tiepoint {

class SnapshotPool {
public:
    SnapshotPool();
    ~SnapshotPool();
    SnapshotPool(SnapshotPool&&) noexcept;
    SnapshotPool& operator=(SnapshotPool&&) noexcept;

    /// A snapshot to be filled in whole: it may hold the numbers of an earlier one.
    std::shared_ptr<Snapshot> take();

private:
    class Store;
    std::shared_ptr<Store> store_;
};

}  // namespace tiepoint
