#include "core/snapshot/make_snapshot.h"
#include "core/snapshot/runner.h"

#include <optional>

namespace tiepoint {
namespace {

class RestingRunner final : public Runner {
public:
    void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) override {
        revision_ = revision;
        layout_ = std::move(layout);
        point_.setLayout(layout_);
        flow_.emplace(layout_);
        snapshot_.reset();
    }

    void setInputs(const Inputs& inputs) override {
        inputs_ = inputs;
        snapshot_.reset();
    }

    // Nothing of a circuit at rest depends on time.
    void advanceTo(double) override {}

    std::shared_ptr<const Snapshot> snapshot() override {
        if (!layout_) return nullptr;
        if (!snapshot_) {
            auto made = makeSnapshot(layout_, point_.solve(inputs_), *flow_);
            made->revision = revision_;
            made->inputs = inputs_;
            made->inputSequence = inputs_.sequence;
            snapshot_ = std::move(made);
        }
        return snapshot_;
    }

private:
    std::uint64_t revision_ = 0;
    Inputs inputs_;
    std::shared_ptr<const Layout> layout_;
    OperatingPoint point_;
    std::optional<Flow> flow_;
    std::shared_ptr<const Snapshot> snapshot_;
};

}  // namespace

std::unique_ptr<Runner> makeRestingRunner() { return std::make_unique<RestingRunner>(); }

}  // namespace tiepoint
