#include "ui/live/live_bench.h"

#include "core/light/flashes.h"
#include "ui/live/live_worker.h"

#include <utility>

namespace tiepoint::ui {

LiveBench::LiveBench(QObject* parent) : LiveBench(makeRunner(), parent) {}

LiveBench::LiveBench(std::unique_ptr<Runner> runner, QObject* parent)
    : QObject(parent),
      worker_(std::make_unique<Worker>(*this, std::move(runner))) {}

LiveBench::~LiveBench() = default;

bool LiveBench::isTicking() const { return worker_->isTicking(); }

void LiveBench::setLayout(quint64 revision, std::shared_ptr<const Layout> layout) {
    revision_ = revision;
    layout_ = std::move(layout);
    // A part that is gone can't stay pressed.
    const auto gone =
        std::erase_if(inputs_.held, [this](const std::string& id) { return !layout_->bench->findPart(id); });
    if (gone > 0) {
        ++inputs_.sequence;
        sendInputs();
    }
    worker_->askLayout(revision_, layout_);
    if (gone > 0) Q_EMIT inputsChanged();
}

void LiveBench::setHeld(const std::string& partId, bool held) {
    if (isHeld(partId) == held) return;
    if (held) {
        inputs_.held.insert(partId);
    } else {
        inputs_.held.erase(partId);
    }
    changeInputs();
}

bool LiveBench::isHeld(const std::string& partId) const { return inputs_.held.contains(partId); }

void LiveBench::releaseAll() {
    if (inputs_.held.empty()) return;
    inputs_.held.clear();
    changeInputs();
}

void LiveBench::setTimeScale(double scale) {
    if (inputs_.timeScale == scale) return;
    inputs_.timeScale = scale;
    changeInputs();
}

void LiveBench::setPaused(bool paused) {
    if (std::exchange(paused_, paused) != paused) sendInputs();
}

void LiveBench::changeInputs() {
    ++inputs_.sequence;
    sendInputs();
    Q_EMIT inputsChanged();
}

void LiveBench::sendInputs() {
    TimedInputs now;
    now.inputs = inputs_;
    now.paused = paused_;
    worker_->sendInputs(now);
}

void LiveBench::stepOn() {
    TimedInputs now;
    now.inputs = inputs_;
    now.paused = paused_;
    now.stepSecond = PacedRun::kTickSecond * inputs_.timeScale;
    worker_->sendInputs(now);
}

void LiveBench::restart() {
    ++inputs_.sequence;
    beginAnew();
    Q_EMIT inputsChanged();
}

void LiveBench::beginAnew() {
    TimedInputs now;
    now.inputs = inputs_;
    now.paused = paused_;
    now.restarts = true;
    worker_->sendInputs(now);
}

double LiveBench::keptShare() const { return worker_->keptShare(); }

void LiveBench::setSteadyLight(bool steady) { steady_ = steady; }

/// As it is to be seen.
std::shared_ptr<const Snapshot> LiveBench::seen(std::shared_ptr<const Snapshot> snapshot) const {
    if (!steady_ || snapshot->flashesPerSecond <= kMostFlashes || snapshot->emitterSteady.empty()) return snapshot;
    auto calm = std::make_shared<Snapshot>(*snapshot);
    calm->emitterBrightness = calm->emitterSteady;
    return calm;
}

void LiveBench::take() {
    const auto before = std::exchange(snapshot_, seen(worker_->takeSnapshot()));
    Q_EMIT snapshotReady();
    if (!before || before->revision != snapshot_->revision || before->inputSequence != snapshot_->inputSequence)
        Q_EMIT answerReady();
}

}  // namespace tiepoint::ui
