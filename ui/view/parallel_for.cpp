#include "ui/view/parallel_for.h"

#include <QSemaphore>
#include <QThreadPool>

#include <algorithm>
#include <atomic>

namespace tiepoint::ui {

void parallelFor(const Work& pieces) {
    const int threads = std::min(static_cast<int>(pieces.size()), QThreadPool::globalInstance()->maxThreadCount());
    std::atomic<std::size_t> next = 0;
    std::atomic<int> started = 0;
    QSemaphore done;
    // Each thread wakes the next: by then the one that waits has left its processor free. Woken all at once, two may share one and leave another idle.
    std::function<void()> run = [&] {
        if (++started < threads) QThreadPool::globalInstance()->start(run);
        for (std::size_t piece = next++; piece < pieces.size(); piece = next++) pieces[piece]();
        done.release();
    };
    if (threads > 0) QThreadPool::globalInstance()->start(run);
    done.acquire(threads);
}

}  // namespace tiepoint::ui
