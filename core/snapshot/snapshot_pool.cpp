#include "core/snapshot/snapshot_pool.h"

#include <array>
#include <atomic>
#include <cassert>
#include <cstddef>
#include <utility>

namespace tiepoint {

/// Lives as long as the pool or any of its snapshots: each holds it through the allocator of its count.
class SnapshotPool::Store {
public:
    struct Node {
        static constexpr std::size_t kCountBytes = 128;

        Snapshot snapshot;
        alignas(std::max_align_t) std::array<std::byte, kCountBytes> count;  ///< where the shared pointer counts
        Node* next = nullptr;
    };

    Store() = default;
    ~Store() {
        freeAll(ready_);
        freeAll(returned_.load(std::memory_order_acquire));
    }
    Store(const Store&) = delete;
    Store& operator=(const Store&) = delete;

    /// By the pool's thread.
    Node* take() {
        if (ready_ == nullptr) ready_ = returned_.exchange(nullptr, std::memory_order_acquire);
        return ready_ == nullptr ? new Node : std::exchange(ready_, ready_->next);
    }

    /// By any thread.
    void giveBack(Node* node) {
        node->next = returned_.load(std::memory_order_relaxed);
        while (
            !returned_.compare_exchange_weak(node->next, node, std::memory_order_release, std::memory_order_relaxed)) {
        }
    }

private:
    static void freeAll(Node* first) {
        while (first != nullptr) delete std::exchange(first, first->next);
    }

    Node* ready_ = nullptr;
    std::atomic<Node*> returned_ = nullptr;
};

namespace {

/// Puts the count of a shared pointer into its node, and gives the node back when the count is done with.
template <class Value, class Store>
struct NodeAllocator {
    using value_type = Value;

    std::shared_ptr<Store> store;
    typename Store::Node* node;

    NodeAllocator(std::shared_ptr<Store> into, typename Store::Node* at) : store(std::move(into)), node(at) {}
    template <class Other>
    explicit(false) NodeAllocator(const NodeAllocator<Other, Store>& other) : store(other.store),
                                                                              node(other.node) {}

    Value* allocate([[maybe_unused]] std::size_t count) {
        static_assert(sizeof(Value) <= Store::Node::kCountBytes && alignof(Value) <= alignof(std::max_align_t));
        assert(count == 1);
        return reinterpret_cast<Value*>(node->count.data());
    }
    void deallocate(Value*, std::size_t) { store->giveBack(node); }

    template <class Other>
    bool operator==(const NodeAllocator<Other, Store>& other) const {
        return node == other.node;
    }
};

/// What was rounded for showing is of no use to the next who gets the snapshot; dropped where it was let go.
struct DropFigures {
    void operator()(Snapshot* snapshot) const { snapshot->shown_.drop(); }
};

}  // namespace

SnapshotPool::SnapshotPool() : store_(std::make_shared<Store>()) {}
SnapshotPool::~SnapshotPool() = default;
SnapshotPool::SnapshotPool(SnapshotPool&&) noexcept = default;
SnapshotPool& SnapshotPool::operator=(SnapshotPool&&) noexcept = default;

std::shared_ptr<Snapshot> SnapshotPool::take() {
    Store::Node* node = store_->take();
    return {&node->snapshot, DropFigures(), NodeAllocator<Snapshot, Store>(store_, node)};
}

}  // namespace tiepoint
