#include "core/bench/bench_inputs.h"
#include "core/snapshot/runner.h"
#include "core/snapshot/snapshot_maker.h"

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

class RestingRunner final : public Runner {
public:
    void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) override {
        revision_ = revision;
        layout_ = std::move(layout);
        std::erase_if(state_.values, [this](const auto& each) {
            return layout_->bench->partIndex(each.first.part) < 0;  // what is gone has forgotten
        });
        point_.setLayout(layout_);
        maker_.emplace(layout_);
        takeInputs();
    }

    void setInputs(const Inputs& inputs) override {
        inputs_ = inputs;
        takeInputs();
    }

    void setState(const State& state) override {
        state_ = state;
        snapshot_.reset();
    }

    void restart() override {
        timeSecond_ = 0;
        state_ = {};
        takeInputs();
    }

    State state() const override { return state_; }

    // Nothing of a circuit at rest depends on time but what hands were told to do at given times.
    void advanceTo(double timeSecond) override {
        const bool pressed = inputs_.nextPressAfter(timeSecond_) <= timeSecond;
        timeSecond_ = std::max(timeSecond_, timeSecond);
        if (pressed) takeInputs();
    }

    double nextChangeSecond() const override { return inputs_.nextPressAfter(timeSecond_); }

    std::shared_ptr<const Snapshot> snapshot() override {
        if (!layout_) return nullptr;
        if (!snapshot_) {
            auto made = maker_->make(point_.solve(*now_, state_));
            made->revision = revision_;
            made->inputs = now_;
            made->inputSequence = now_->sequence;
            made->timeSecond = timeSecond_;
            snapshot_ = std::move(made);
        }
        return snapshot_;
    }

private:
    void takeInputs() {
        const Inputs now = inputs_.at(timeSecond_);
        now_ = std::make_shared<const Inputs>(layout_ ? inputsOn(*layout_->bench, now) : now);
        snapshot_.reset();
    }

    std::uint64_t revision_ = 0;
    double timeSecond_ = 0;
    Inputs inputs_;
    std::shared_ptr<const Inputs> now_ = std::make_shared<const Inputs>();  ///< the inputs at the present time
    State state_;
    std::shared_ptr<const Layout> layout_;
    OperatingPoint point_;
    std::optional<SnapshotMaker> maker_;
    std::shared_ptr<const Snapshot> snapshot_;
};

}  // namespace

std::unique_ptr<Runner> makeRestingRunner() { return std::make_unique<RestingRunner>(); }

}  // namespace tiepoint
