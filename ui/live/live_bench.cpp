#include "ui/live/live_bench.h"

#include "core/base/stopping.h"

#include <condition_variable>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>
#include <utility>

namespace tiepoint::ui {

/// The thread with its runner. Requests overwrite each other in a slot, so that the newest wins; the lock guards
/// nothing but that slot and is never held while solving.
class LiveBench::Worker {
public:
    explicit Worker(LiveBench& owner) : owner_(owner), thread_([this] { run(); }) {}

    ~Worker() {
        {
            const std::lock_guard guard(mutex_);
            stopping_ = true;
        }
        stop_.request_stop();
        wake_.notify_one();
        thread_.join();
    }

    void ask(quint64 revision, std::shared_ptr<const Layout> layout, const Inputs& inputs) {
        {
            const std::lock_guard guard(mutex_);
            request_ = Request{revision, std::move(layout), inputs};
        }
        wake_.notify_one();
    }

private:
    struct Request {
        quint64 revision;
        std::shared_ptr<const Layout> layout;
        Inputs inputs;
    };

    std::optional<Request> nextRequest() {
        std::unique_lock lock(mutex_);
        wake_.wait(lock, [this] { return stopping_ || request_; });
        if (stopping_) return std::nullopt;
        return std::exchange(request_, std::nullopt);
    }

    void run() {
        const StopScope scope(stop_.get_token());
        try {
            answerAll();
        } catch (const Stopped&) {  // the owner goes, and needs no answer
        }
    }

    void answerAll() {
        const std::unique_ptr<Runner> runner = makeRestingRunner();
        std::shared_ptr<const Layout> known;
        while (auto request = nextRequest()) {
            if (request->layout != known) runner->setLayout(request->revision, request->layout);
            known = request->layout;
            runner->setInputs(request->inputs);
            post(runner->snapshot());
        }
    }

    /// Hands a snapshot to the window's thread. Calls that are still queued when the owner goes are dropped with it.
    void post(std::shared_ptr<const Snapshot> snapshot) {
        QMetaObject::invokeMethod(
            &owner_, [&owner = owner_, snapshot = std::move(snapshot)] { owner.take(snapshot); }, Qt::QueuedConnection);
    }

    LiveBench& owner_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::optional<Request> request_;
    bool stopping_ = false;
    std::stop_source stop_;
    std::thread thread_;  // last: it uses all of the above
};

LiveBench::LiveBench(QObject* parent) : QObject(parent), worker_(std::make_unique<Worker>(*this)) {}

LiveBench::~LiveBench() = default;

void LiveBench::setLayout(quint64 revision, std::shared_ptr<const Layout> layout) {
    revision_ = revision;
    layout_ = std::move(layout);
    // A part that is gone can't stay pressed.
    const auto gone =
        std::erase_if(inputs_.held, [this](const std::string& id) { return !layout_->bench->findPart(id); });
    if (gone > 0) ++inputs_.sequence;
    ask();
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

void LiveBench::changeInputs() {
    ++inputs_.sequence;
    ask();
    Q_EMIT inputsChanged();
}

void LiveBench::ask() {
    if (layout_) worker_->ask(revision_, layout_, inputs_);
}

void LiveBench::take(std::shared_ptr<const Snapshot> snapshot) {
    snapshot_ = std::move(snapshot);
    Q_EMIT snapshotReady();
}

}  // namespace tiepoint::ui
