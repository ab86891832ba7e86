#pragma once
// Side by side: times several ways of doing one job in interleaved repeats of one process, so that noise hits all alike,
// and prints ratios of medians. Absolute times say little on a busy machine; they are printed for orientation.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <string>
#include <vector>

namespace tiepoint::test {

/// Keeps a result alive, so that the compiler can't drop the work.
template <class T>
inline void keep(const T& value) {
    asm volatile("" : : "r,m"(value) : "memory");
}

class SideBySide {
public:
    static constexpr int kRepeats = 15;

    /// `work` is run `rounds` times in each repeat.
    void add(std::string name, int rounds, std::function<void()> work) { ways_.push_back({std::move(name), rounds, std::move(work), {}}); }

    /// Median seconds of each way for one run, in the order of adding.
    std::vector<double> run() {
        for (Way& way : ways_) way.work();  // warms caches and buffers
        for (int repeat = 0; repeat < kRepeats; ++repeat) {
            for (Way& way : ways_) way.seconds.push_back(once(way));
        }
        std::vector<double> medians;
        for (Way& way : ways_) {
            std::nth_element(way.seconds.begin(), way.seconds.begin() + kRepeats / 2, way.seconds.end());
            medians.push_back(way.seconds[kRepeats / 2]);
            std::printf("  %-44s %12.3f us\n", way.name.c_str(), medians.back() * 1e6);
        }
        return medians;
    }

private:
    struct Way {
        std::string name;
        int rounds;
        std::function<void()> work;
        std::vector<double> seconds;
    };

    static double once(const Way& way) {
        const auto start = std::chrono::steady_clock::now();
        for (int i = 0; i < way.rounds; ++i) way.work();
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() / way.rounds;
    }

    std::vector<Way> ways_;
};

/// Compares measured figures with their bars; a figure passes within 85 % of its bar, since machines are noisy.
class Gate {
public:
    static constexpr double kShare = 0.85;

    void atLeast(const char* what, double reached, double bar) { judge(what, reached, bar, reached >= bar * kShare, "at least"); }
    void atMost(const char* what, double reached, double bar) { judge(what, reached, bar, reached <= bar / kShare, "at most"); }

    /// For main: 0 if everything passed.
    int exitCode() const { return failed_ ? 1 : 0; }

private:
    void judge(const char* what, double reached, double bar, bool passed, const char* relation) {
        std::printf("%s %-52s %10.3g   (bar: %s %g)\n", passed ? "pass" : "FAIL", what, reached, relation, bar);
        failed_ = failed_ || !passed;
    }

    bool failed_ = false;
};

}  // namespace tiepoint::test
