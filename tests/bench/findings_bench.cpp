// What the findings are worth: thousands of slips on sound benches, and for each kind of slip how many were found (recall), how many of
// the alarms were true (precision), and how often the first finding tells the true cause. Benches that the rules were
// mended on and others stand apart. With an argument everything that went wrong is listed.

#include "bench/stopwatch.h"
#include "support/slip_figures.h"

#include <cstdio>

namespace {

using namespace tiepoint::test;

constexpr int kOfEachKind = 4000;
constexpr std::uint32_t kSeed = 1, kHeldOutSeed = 20;
constexpr double kRecall = 0.98, kPrecision = 0.98, kCauseFirst = 0.95;

void print(std::string_view name, const SlipFigures& figures) {
    std::printf("%-20.*s %7d %7d %7d %7d   %6.4f %9.4f %11.4f\n", static_cast<int>(name.size()), name.data(),
                figures.slips, figures.broken, figures.found, figures.alarms, figures.recall(), figures.precision(),
                figures.causeShare());
}

bool judgeAll(const char* title, const NamedBenches& benches, std::uint32_t seed, bool listing) {
    const auto tell = [&](const std::string& line) {
        if (listing) std::printf("%s\n", line.c_str());
    };
    const auto byKind = judgeSlips(benches, kOfEachKind, seed, tell);
    std::printf("%s, %zu benches\n%-20s %7s %7s %7s %7s   %6s %9s %11s\n", title, benches.size(), "slip", "slips",
                "broken", "found", "alarms", "recall", "precision", "cause first");
    SlipFigures all;
    for (const auto& [kind, figures] : byKind) {
        print(kind, figures);
        all += figures;
    }
    print("all", all);
    const bool good = all.recall() >= kRecall && all.precision() >= kPrecision && all.causeShare() >= kCauseFirst;
    std::printf("%s: recall %.2f, precision %.2f, true cause first %.2f are asked for\n\n", good ? "pass" : "FAIL",
                kRecall, kPrecision, kCauseFirst);
    return good;
}

}  // namespace

int main(int argc, char**) {
    const bool listing = argc > 1;
    const bool known = judgeAll("The corpus that the rules were mended on", everySoundBench(), kSeed, listing);
    const bool heldOut = judgeAll("Held out", everyHeldOutBench(), kHeldOutSeed, listing);
    return known && heldOut ? 0 : 1;
}
