#pragma once
// A clock that runs while the calling thread works and stands while it waits for the processor: limits of effort by it are the same on a busy
// machine. Times of different threads can't be compared.

#include <time.h>

#include <chrono>

namespace tiepoint {

struct WorkClock {
    using duration = std::chrono::nanoseconds;
    using rep = duration::rep;
    using period = duration::period;
    using time_point = std::chrono::time_point<WorkClock>;
    static constexpr bool is_steady = true;

    static time_point now() noexcept {
        timespec worked{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &worked);
        return time_point(std::chrono::seconds(worked.tv_sec) + std::chrono::nanoseconds(worked.tv_nsec));
    }
};

}  // namespace tiepoint
