#pragma once
// What the benchmarks print: median times side by side, and measured figures beside their bars.

#include "bench/interleave.h"

#include <cstdio>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint::test {

/// Keeps a result alive, so that the compiler can't drop the work.
template <class T>
inline void keep(const T& value) {
    asm volatile("" : : "r,m"(value) : "memory");
}

class SideBySide {
public:
    void add(std::string name, std::function<void()> work) { ways_.push_back({std::move(name), std::move(work)}); }

    /// Median seconds of each way, in the order of adding. Compare them by ratio: absolute times say little on a busy machine.
    std::vector<double> run() {
        bench::interleave(ways_);
        std::vector<double> medians;
        for (const bench::Contestant& way : ways_) {
            medians.push_back(way.medianSecond);
            std::printf("  %-44s %12.3f us\n", way.name.c_str(), way.medianSecond * 1e6);
        }
        return medians;
    }

private:
    std::vector<bench::Contestant> ways_;
};

/// Compares measured figures with their bars; a figure passes within 85 % of its bar, since machines are noisy.
class Gate {
public:
    static constexpr double kShare = 0.85;

    void atLeast(const char* what, double reached, double bar) {
        judge(what, reached, bar, reached >= bar * kShare, "at least");
    }
    void atMost(const char* what, double reached, double bar) {
        judge(what, reached, bar, reached <= bar / kShare, "at most");
    }

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
