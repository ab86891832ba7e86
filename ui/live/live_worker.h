#pragma once
// The worker thread of a LiveBench; its thread rules stand there.

#include "ui/live/live_bench.h"
#include "ui/live/mailbox.h"
#include "ui/live/paced_run.h"

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <stop_token>
#include <thread>
#include <vector>

namespace tiepoint::ui {

class LiveBench::Worker {
public:
    Worker(LiveBench& owner, std::unique_ptr<Runner> runner);
    ~Worker();
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void askLayout(quint64 revision, std::shared_ptr<const Layout> layout);
    void sendInputs(const TimedInputs& inputs);
    /// After a call of the owner's take().
    std::shared_ptr<const Snapshot> takeSnapshot() { return mailbox_.take(); }
    bool isTicking() const { return ticking_; }
    double keptShare() const { return kept_; }

private:
    /// What came since the worker looked last.
    struct Request {
        quint64 revision = 0;
        std::shared_ptr<const Layout> layout;  ///< null: the bench is the same
        std::vector<TimedInputs> inputs;

        bool isEmpty() const { return !layout && inputs.empty(); }
    };

    double wallSecond() const;
    void run();
    bool waitForWork(Request& request, double& nowSecond);
    void handOver(std::shared_ptr<const Snapshot> snapshot);

    LiveBench& owner_;
    std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
    PacedRun run_;
    Mailbox<std::shared_ptr<const Snapshot>> mailbox_;
    std::mutex mutex_;
    std::condition_variable wake_;
    Request request_;
    bool stopping_ = false;
    std::atomic<bool> ticking_ = false;
    std::atomic<double> kept_ = 1;
    std::stop_source stop_;
    std::thread thread_;  // last: it uses all of the above
};

}  // namespace tiepoint::ui
