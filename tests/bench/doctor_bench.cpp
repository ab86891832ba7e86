// How well the doctor finds slips on real boards: plants on sound benches that it has never seen and on those of the harbour.
//
//   doctor_bench --seeds work|final --count N [--from N] [--print N]
//
// A plant is a slip of the list, drawn by its weight, on a sound bench; resistors are off by chance within their tolerance, and the meter
// errs within its bounds. Work seeds may be looked at; final seeds are run once, at the end, and told as they are.

#include "core/bench/bench_file.h"
#include "core/doctor/observation_words.h"
#include "core/parts/catalogue.h"
#include "examiner/sound_bench.h"
#include "support/doctor_plants.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <numeric>
#include <string>
#include <vector>

namespace {

using namespace tiepoint;
using namespace tiepoint::test;

constexpr std::uint64_t kWorkSeeds = 40'000'000, kFinalSeeds = 7'000'000'000;
constexpr int kPlantsOfBench = 10;  // a bench is prepared once

struct Totals {
    int plants = 0, noticed = 0, lost = 0, unfinished = 0, apart = 0, alone = 0;
    double questions = 0, seconds = 0, prepared = 0, slowestPrepared = 0;
    std::vector<double> slowest;
    std::vector<int> counts;
};

std::vector<Bench> harbour() {
    std::vector<Bench> benches;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(TIEPOINT_SOURCE_DIR) / "resources/benches")) {
        const auto read = readBenchFile(entry.path());
        if (read && minusOfFirstSupply(read->bench)) benches.push_back(read->bench);
    }
    std::ranges::sort(benches, {}, &Bench::title);
    return benches;
}

double now() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

void run(std::uint64_t seed, const Bench& bench, int plants, const PlantRules& rules, int& print, Totals& totals) {
    const double start = now();
    Doctor doctor(buildLayout(std::make_shared<const Bench>(bench)));
    const double prepared = now() - start;
    totals.prepared += prepared;
    totals.slowestPrepared = std::max(totals.slowestPrepared, prepared);
    if (doctor.suspects().all().size() < 2 || !minusOfFirstSupply(bench)) return;
    examiner::Chance chance(seed ^ 0x9e3779b97f4a7c15);
    for (int i = 0; i < plants; ++i) {
        const Suspect& truth = drawTruth(doctor, chance);
        const PlantOutcome outcome = runPlant(doctor, truth, chance, rules);
        ++totals.plants;
        totals.noticed += outcome.noticed;
        totals.lost += !outcome.survived;
        totals.unfinished += outcome.survived && !outcome.finished;
        totals.apart += outcome.apart > 0;
        totals.alone += outcome.finished && outcome.tied == 1;
        totals.questions += outcome.questions;
        totals.counts.push_back(outcome.questions);
        totals.seconds += outcome.seconds;
        totals.slowest.push_back(outcome.slowest);
        const bool failed = !outcome.survived || !outcome.finished || outcome.apart > 0;
        if ((failed || print < 0) && print != 0) {
            fmt::print("seed {}, {} parts: {}\n", seed, bench.parts.size(), outcome.story);
            print += print > 0 ? -1 : 1;
        }
    }
}

void tell(const char* how, Totals& totals) {
    std::ranges::sort(totals.slowest);
    const double worst = totals.slowest.empty() ? 0 : totals.slowest.back();
    const double share95 = totals.slowest.empty() ? 0 : totals.slowest[totals.slowest.size() * 95 / 100];
    fmt::print("{}: {} plants ({} noticed by a light), questions {:.2f} on average, at most {}\n", how, totals.plants,
               totals.noticed, totals.questions / totals.plants,
               totals.counts.empty() ? 0 : *std::ranges::max_element(totals.counts));
    fmt::print("   truth lost {}, not done within the most {}, told too early {}, alone at the end {}\n", totals.lost,
               totals.unfinished, totals.apart, totals.alone);
    fmt::print(
        "   a question takes {:.1f} ms on average; the slowest of a plant: 95 % under {:.1f} ms, worst {:.1f} ms; "
        "prepared worst {:.1f} ms\n",
        1e3 * totals.seconds / (totals.questions + totals.plants), 1e3 * share95, 1e3 * worst,
        1e3 * totals.slowestPrepared);
}

}  // namespace

int main(int argc, char** argv) {
    bool final = false;
    int count = 200, from = 0, print = 0;
    for (int i = 1; i + 1 < argc; i += 2) {
        const std::string option = argv[i];
        if (option == "--seeds") final = std::strcmp(argv[i + 1], "final") == 0;
        if (option == "--count") count = std::stoi(argv[i + 1]);
        if (option == "--from") from = std::stoi(argv[i + 1]);
        if (option == "--print") print = std::stoi(argv[i + 1]);
    }
    const std::vector<Bench> benches = harbour();
    for (const bool eye : {true}) {
        Totals totals;
        PlantRules rules;
        rules.eye = eye;
        int left = print;
        for (int done = 0; done < count; done += kPlantsOfBench) {
            const std::uint64_t seed = (final ? kFinalSeeds : kWorkSeeds) + static_cast<std::uint64_t>(from + done);
            const int plants = std::min(kPlantsOfBench, count - done);
            constexpr int kEachHarbour = 5;  // every fifth bench is the harbour's
            const auto round = static_cast<std::size_t>(done / kPlantsOfBench);
            if (round % kEachHarbour == 0 && !benches.empty())
                run(seed, benches[round / kEachHarbour % benches.size()], plants, rules, left, totals);
            else
                run(seed, examiner::soundBench(seed).bench, plants, rules, left, totals);
        }
        tell("looks and meter", totals);
    }
}
