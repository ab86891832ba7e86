#include "ui/live/live_worker.h"

#include "core/base/stopping.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint::ui {

LiveBench::Worker::Worker(LiveBench& owner, std::unique_ptr<Runner> runner)
    : owner_(owner),
      run_(std::move(runner), 0),
      thread_([this] { run(); }) {}

LiveBench::Worker::~Worker() {
    {
        const std::lock_guard guard(mutex_);
        stopping_ = true;
    }
    stop_.request_stop();
    wake_.notify_one();
    thread_.join();
}

double LiveBench::Worker::wallSecond() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
}

void LiveBench::Worker::askLayout(quint64 revision, std::shared_ptr<const Layout> layout) {
    {
        const std::lock_guard guard(mutex_);
        request_.revision = revision;
        request_.layout = std::move(layout);
    }
    wake_.notify_one();
}

void LiveBench::Worker::sendInputs(const TimedInputs& inputs) {
    {
        const std::lock_guard guard(mutex_);
        request_.inputs.push_back(inputs);
        request_.inputs.back().wallSecond = wallSecond();
    }
    wake_.notify_one();
}

/// Sleeps until something is asked or the next tick is due; false when the owner goes.
bool LiveBench::Worker::waitForWork(Request& request, double& nowSecond) {
    const double tick = run_.nextTickSecond();
    ticking_ = std::isfinite(tick);
    const auto isWanted = [this] { return stopping_ || !request_.isEmpty(); };
    std::unique_lock lock(mutex_);
    if (ticking_) {
        constexpr double kFarSecond = 1e9;  // what the clock can count
        const auto due = start_ + std::chrono::duration_cast<std::chrono::steady_clock::duration>(
                                      std::chrono::duration<double>(std::min(tick, kFarSecond)));
        wake_.wait_until(lock, due, isWanted);
    } else {
        wake_.wait(lock, isWanted);
    }
    request = std::exchange(request_, Request());
    nowSecond = wallSecond();  // not before any of the inputs
    return !stopping_;
}

void LiveBench::Worker::run() {
    const StopScope scope(stop_.get_token());
    try {
        Request request;
        double nowSecond = 0;
        std::shared_ptr<const Snapshot> last;
        while (waitForWork(request, nowSecond)) {
            for (const TimedInputs& inputs : request.inputs) run_.take(inputs);
            run_.bringTo(nowSecond);
            run_.spent(wallSecond() - nowSecond);
            kept_ = run_.keptShare();
            if (request.layout) run_.setLayout(request.revision, request.layout);
            // A bench that begins anew knows nothing of the one before, whose parts may have had the same ids.
            if (request.layout && std::ranges::any_of(request.inputs, &TimedInputs::restarts)) {
                TimedInputs anew = request.inputs.back();
                anew.restarts = true;
                anew.stepSecond = 0;
                run_.take(anew);
            }
            auto snapshot = run_.snapshot();
            const bool isNews = !request.isEmpty() || snapshot != last;
            last = snapshot;
            if (snapshot && isNews) handOver(std::move(snapshot));
        }
    } catch (const Stopped&) {  // the owner goes, and needs no answer
    }
}

/// Calls that are still queued when the owner goes are dropped with it.
void LiveBench::Worker::handOver(std::shared_ptr<const Snapshot> snapshot) {
    if (mailbox_.put(std::move(snapshot)))
        QMetaObject::invokeMethod(
            &owner_, [&owner = owner_] { owner.take(); }, Qt::QueuedConnection);
}

}  // namespace tiepoint::ui
