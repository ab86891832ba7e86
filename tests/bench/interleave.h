#pragma once
// Medians of interleaved repeats: contestants take turns in one process, so that a noisy machine disturbs all of them alike.

#include <time.h>

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

namespace tiepoint::bench {

struct Contestant {
    std::string name;
    std::function<void()> run;
    double medianSecond = 0;  ///< of one run
};

/// Processor time of this thread: what other programs take doesn't count.
inline double threadSecond() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    constexpr double kNano = 1e-9;
    return static_cast<double>(now.tv_sec) + kNano * static_cast<double>(now.tv_nsec);
}

inline double secondsOf(const std::function<void()>& run, int count) {
    const double start = threadSecond();
    for (int i = 0; i < count; ++i) run();
    return (threadSecond() - start) / count;
}

/// Fills in the medians. Each repeat lasts about `repeatSecond` for each contestant.
inline void interleave(std::vector<Contestant>& contestants, int repeats = 15, double repeatSecond = 2e-3) {
    std::vector<int> counts;
    for (Contestant& c : contestants) {
        const double once = secondsOf(c.run, 3);
        counts.push_back(std::max(1, static_cast<int>(repeatSecond / std::max(once, 1e-9))));
    }
    std::vector<std::vector<double>> times(contestants.size());
    for (int repeat = 0; repeat < repeats; ++repeat) {
        for (std::size_t k = 0; k < contestants.size(); ++k)
            times[k].push_back(secondsOf(contestants[k].run, counts[k]));
    }
    for (std::size_t k = 0; k < contestants.size(); ++k) {
        std::nth_element(times[k].begin(), times[k].begin() + repeats / 2, times[k].end());
        contestants[k].medianSecond = times[k][repeats / 2];
    }
}

}  // namespace tiepoint::bench
