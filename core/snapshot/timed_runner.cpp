// A runner that follows benches through time, and lets rest those that time doesn't change.

#include "core/bench/bench_inputs.h"
#include "core/circuit/element.h"
#include "core/scope/recorder.h"
#include "core/snapshot/runner.h"
#include "core/snapshot/snapshot_maker.h"
#include "core/time/bench_run.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace tiepoint {
namespace {

class TimedRunner final : public Runner {
public:
    void setLayout(std::uint64_t revision, std::shared_ptr<const Layout> layout) override {
        const State kept = state();
        revision_ = revision;
        moves_ = movesByItself(*layout->bench);
        if (!moves_) {
            resting_->setState(kept);
            resting_->setLayout(revision, std::move(layout));
            resting_->setInputs(inputs_);
            resting_->advanceTo(timeSecond_);
            layout_.reset();
            recorder_ = Recorder();
            return;
        }
        layout_ = std::move(layout);
        run_.setSecond(timeSecond_);
        run_.setLayout(layout_);
        run_.setState(ofThisBench(kept));
        maker_.emplace(layout_);
        Recorder recorder(layout_);
        recorder.begin(timeSecond_);
        recorder.takeOver(recorder_);
        recorder_ = std::move(recorder);
        seenSecond_ = timeSecond_;
        takeInputs();
    }

    void setInputs(const Inputs& inputs) override {
        inputs_ = inputs;
        resting_->setInputs(inputs);
        if (moves_) takeInputs();
    }

    void setState(const State& state) override {
        resting_->setState(state);
        if (!moves_) return;
        run_.setState(state);
        snapshot_.reset();
    }

    void restart() override {
        timeSecond_ = seenSecond_ = 0;
        resting_->restart();
        if (!moves_) return;
        run_.setSecond(0);
        run_.setLayout(layout_);
        run_.setState({});
        maker_.emplace(layout_);
        recorder_.begin(0);
        takeInputs();
    }

    State state() const override { return moves_ ? run_.state() : resting_->state(); }

    void advanceTo(double timeSecond) override {
        if (!moves_) {
            resting_->advanceTo(timeSecond);
            timeSecond_ = std::max(timeSecond_, timeSecond);
            return;
        }
        while (timeSecond_ < timeSecond) {
            const double press = inputs_.nextPressAfter(timeSecond_);
            followTo(std::min(timeSecond, press));
            if (press <= timeSecond) takeInputs();
        }
    }

    double nextChangeSecond() const override {
        if (!moves_) return resting_->nextChangeSecond();
        return run_.isSteady() ? inputs_.nextPressAfter(timeSecond_) : timeSecond_;
    }

    std::shared_ptr<const Snapshot> snapshot() override {
        if (!moves_) return layout_ ? nullptr : resting_->snapshot();
        if (!snapshot_) {
            auto made =
                maker_->makeMoving(run_.solution(), std::max(0.0, timeSecond_ - seenSecond_) / inputs_.timeScale);
            seenSecond_ = timeSecond_;
            recorder_.publish(made->traces);
            made->revision = revision_;
            made->inputs = now_;
            made->inputSequence = now_->sequence;
            made->timeSecond = timeSecond_;
            snapshot_ = std::move(made);
        }
        return snapshot_;
    }

private:
    State ofThisBench(State state) const {
        std::erase_if(state.values,
                      [this](const auto& each) { return layout_->bench->partIndex(each.first.part) < 0; });
        return state;
    }

    void takeInputs() {
        now_ = std::make_shared<const Inputs>(inputsOn(*layout_->bench, inputs_.at(timeSecond_)));
        run_.setInputs(*now_);
        recorder_.setRate(inputs_.timeScale);
        recorder_.setHeld(*now_);
        snapshot_.reset();
    }

    /// Through smooth pieces, each with the light of its two ends; a snapshot that nobody asked for costs nothing.
    void followTo(double goal) {
        snapshot_.reset();
        recorder_.towards(goal);
        constexpr int kMostPieces = 64;  // of a way: more don't make its light truer
        constexpr double kShortest = 1e-10;
        const double least = recorder_.needsPieces()
                                 ? std::max(kShortest, 4 * std::numeric_limits<double>::epsilon() * goal)
                                 : (goal - timeSecond_) / kMostPieces;
        bool goesOn = run_.advanceTo(timeSecond_);
        maker_->addLight(run_.solution(), 0);
        while (goesOn && timeSecond_ < goal) {
            // Where steps have ended, the next ones are taken first: they say how long it is smooth.
            if (recorder_.needsPieces() && run_.smoothUntil() <= timeSecond_)
                goesOn = run_.advanceTo(std::nextafter(timeSecond_, goal));
            const double next = std::min(goal, std::max(run_.smoothUntil(), timeSecond_ + least));
            const double half = (next - timeSecond_) / 2;
            maker_->addLight(run_.solution(), half);
            if (goesOn && !recorder_.isEmpty()) record(next);
            if (goesOn) goesOn = run_.advanceTo(next);
            timeSecond_ = next;
            if (goesOn) maker_->addLight(run_.solution(), half);
        }
        timeSecond_ = goal;
    }

    /// From the present time, whose readings stand, to one until which all is smooth. At its very end something may happen.
    void record(double until) {
        constexpr double kJustBefore = 1 - 1e-7;
        const double from = timeSecond_;
        recorder_.read(run_.solution(), 0);
        for (std::size_t at = 1; at <= 3; ++at) {
            const double share = at == 3 ? kJustBefore : static_cast<double>(at) / 3;
            if (recorder_.needsPieces() || at == 3) run_.advanceTo(from + share * (until - from));
            recorder_.read(run_.solution(), at);
        }
        recorder_.take(from, until);
    }

    std::uint64_t revision_ = 0;
    double timeSecond_ = 0;
    double seenSecond_ = 0;  ///< of the last snapshot
    bool moves_ = false;
    Inputs inputs_;
    std::shared_ptr<const Inputs> now_ = std::make_shared<const Inputs>();  ///< the inputs at the present time
    std::shared_ptr<const Layout> layout_;                                  ///< of a bench that moves
    mutable BenchRun run_;
    std::unique_ptr<Runner> resting_ = makeRestingRunner();
    std::optional<SnapshotMaker> maker_;
    Recorder recorder_;
    std::shared_ptr<const Snapshot> snapshot_;
};

}  // namespace

std::unique_ptr<Runner> makeRunner() { return std::make_unique<TimedRunner>(); }

}  // namespace tiepoint
