// How well findings hold on benches never seen: sound ones drawn by chance, slips drawn by chance, judged by what the benches do.
//
//   examine --seeds work|final --count N [--slips 1|2] [--sound] [--print N] [--jobs N] [--keep FOLDER] [--from N]
//
// Work seeds may be looked at, and rules mended on what they show. Final seeds are for the final figure: they are run once, at the end, and
// told as they are; whoever mends a rule on what they showed has to draw others. The two never meet: see kWork, kFinal.
// The program is no part of the test run. The slow cases (over a second) are told; a report that takes longer than --cap seconds is given up
// and counts as one that says nothing.

#include "core/base/stopping.h"
#include "core/bench/bench_file.h"
#include "examiner/judge.h"
#include "examiner/sound_bench.h"

#include <fmt/format.h>

#include <atomic>
#include <charconv>
#include <condition_variable>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <map>
#include <mutex>
#include <thread>

namespace {

using namespace tiepoint;
using namespace tiepoint::examiner;

constexpr std::uint64_t kWork = 1'000'000, kFinal = 9'000'000'000;  // a run draws at most 100,000 from either
constexpr std::uint64_t kSlipSeed = 0x9e3779b97f4a7c15;             // parts the slips' chance from the benches'
constexpr int kMostCases = 100'000;
constexpr double kSlow = 1;

struct Options {
    bool final = false, sound = false;
    int count = 100, slips = 1, print = 0, jobs = 2, from = 0, cap = 20;
    std::string keep;
};

struct Score {
    int cases = 0, told = 0, toldAll = 0, causeFirst = 0, mend = 0, harmful = 0, slow = 0;
    void add(const Verdict& verdict) {
        ++cases;
        told += verdict.told;
        toldAll += verdict.toldAll;
        causeFirst += verdict.causeFirst;
        mend += verdict.mendAsWanted;
        harmful += verdict.harmful;
        slow += verdict.seconds > kSlow;
    }
};

/// The outcome of one seed: lines to print, in the order of seeds whatever thread made them.
struct Outcome {
    std::vector<std::string> kinds;
    std::optional<Verdict> verdict;
    std::optional<SoundVerdict> sound;
    std::string words, detail;
    bool failed = false;
};

class Run {
public:
    explicit Run(Options options) : options_(std::move(options)), outcomes_(options_.count) {}

    void draw() {
        std::vector<std::jthread> workers;
        for (int i = 0; i < options_.jobs; ++i) {
            workers.emplace_back([this] {
                for (int next; (next = next_++) < options_.count;) {
                    try {
                        outcomes_[next] = caseOf(next);
                    } catch (const std::exception& trouble) {
                        std::fprintf(stderr, "%s\n", trouble.what());
                    }
                }
            });
        }
    }

    void tell() const {
        int printed = 0;
        for (int i = 0; i < options_.count; ++i) {
            if (outcomes_[i].detail.empty() || printed >= options_.print) continue;
            std::printf("%s\n", outcomes_[i].detail.c_str());
            ++printed;
        }
        if (options_.sound)
            tellSound();
        else
            tellSlips();
    }

private:
    std::uint64_t seedOf(int number) const { return (options_.final ? kFinal : kWork) + options_.from + number; }

    Report inspectInTime(const std::shared_ptr<const Snapshot>& snapshot) const {
        std::stop_source source;
        const std::jthread timer([&source, this](const std::stop_token& done) {
            std::mutex mutex;
            std::condition_variable_any bell;
            std::unique_lock lock(mutex);
            bell.wait_for(lock, done, std::chrono::seconds(options_.cap), [] { return false; });
            if (!done.stop_requested()) source.request_stop();
        });
        const StopScope scope(source.get_token());
        try {
            return inspect(*snapshot);
        } catch (const Stopped&) {
            return {};
        }
    }

    Outcome caseOf(int number) const {
        const auto inspector = [this](const auto& snapshot) { return inspectInTime(snapshot); };
        const SoundBench sound = soundBench(seedOf(number));
        Outcome outcome;
        if (options_.sound) {
            outcome.sound = judgeSound(sound.bench, inspector);
            outcome.failed = !outcome.sound->silent || !outcome.sound->harm.empty();
            outcome.words = fmt::format("seed {}, {} parts", seedOf(number), sound.bench.parts.size());
            outcome.detail = outcome.words + textOf(outcome.sound->report, outcome.sound->harm);
            if (outcome.failed) keep(sound.bench, number, "sound", outcome.words);
            return outcome;
        }
        Chance chance(seedOf(number) ^ kSlipSeed);
        const auto drawn = drawCase(sound.bench, sound.parked, options_.slips, chance);
        if (!drawn) return outcome;
        outcome.verdict = judge(*drawn, inspector);
        outcome.words = fmt::format("seed {}, {} parts", seedOf(number), sound.bench.parts.size());
        for (const Slip& slip : drawn->slips) {
            outcome.kinds.push_back(slip.kind);
            outcome.words += fmt::format("; {}: {}", slip.kind, slip.words);
        }
        const Verdict& verdict = *outcome.verdict;
        outcome.failed = !verdict.told || !verdict.causeFirst || !verdict.mendAsWanted || verdict.harmful;
        outcome.detail = fmt::format("{}\n  {}{}{}{}{}", outcome.words, verdict.told ? "told" : "NOT TOLD",
                                     verdict.causeFirst ? ", cause first" : ", NOT FIRST",
                                     verdict.mendAsWanted ? ", mend as wanted" : ", MEND NOT AS WANTED",
                                     verdict.harmful ? ", HARMFUL" : "", textOf(verdict.report, verdict.harm));
        if (outcome.failed) {
            keep(drawn->bench(), number, "slip", outcome.words);
            keep(drawn->wanted, number, "wanted", outcome.words);
        }
        return outcome;
    }

    static std::string textOf(const Report& report, const std::vector<std::string>& harm) {
        static constexpr const char* kWords[]{"remark", "risk", "fault"};
        std::string text;
        for (const Finding& finding : report.findings) {
            text +=
                fmt::format("\n  [{} {}] {}", kWords[static_cast<int>(finding.severity)], finding.rule, finding.text);
            if (finding.mend) text += "\n      -> " + finding.mend->text;
        }
        if (report.findings.empty()) text += "\n  (nothing found)";
        for (const std::string& mend : harm) text += "\n  harmful: " + mend;
        return text + "\n";
    }

    void keep(Bench bench, int number, const char* what, const std::string& words) const {
        if (options_.keep.empty()) return;
        bench.title = words.substr(0, 200);
        const auto path = std::filesystem::path(options_.keep) / fmt::format("{}-{}.bench.json", seedOf(number), what);
        if (const auto written = writeBenchFile(bench, path); !written)
            std::fprintf(stderr, "%s\n", written.error().oneLine().c_str());
    }

    static void row(const std::string& name, const Score& score) {
        const auto share = [&](int of) { return score.cases ? static_cast<double>(of) / score.cases : 0; };
        std::printf("%-28s %6d %7.3f %9.3f %12.3f %11.3f %8.3f %5d\n", name.c_str(), score.cases, share(score.told),
                    share(score.toldAll), share(score.causeFirst), share(score.mend), share(score.harmful), score.slow);
    }

    void tellSlips() const {
        std::map<std::string, Score> byKind;
        Score all;
        double longest = 0;
        for (const Outcome& outcome : outcomes_) {
            if (!outcome.verdict) continue;
            all.add(*outcome.verdict);
            longest = std::max(longest, outcome.verdict->seconds);
            for (const std::string& kind : outcome.kinds) byKind[kind].add(*outcome.verdict);
        }
        std::printf("%-28s %6s %7s %9s %12s %11s %8s %5s\n", "slip", "cases", "told", "told all", "cause first",
                    "first mend", "harmful", "slow");
        for (const auto& [kind, score] : byKind) row(kind, score);
        row("all", all);
        std::printf("no case drawn: %d of %d; longest report %.2f s\n", options_.count - all.cases, options_.count,
                    longest);
        for (const Outcome& outcome : outcomes_) {
            if (!outcome.verdict || outcome.verdict->told) continue;
            std::printf("not told: %s\n", outcome.words.c_str());
        }
        for (const Outcome& outcome : outcomes_) {
            if (outcome.verdict && outcome.verdict->seconds > kSlow)
                std::printf("slow (%.1f s): %s\n", outcome.verdict->seconds, outcome.words.c_str());
        }
    }

    void tellSound() const {
        int benches = 0, silent = 0, remarks = 0, harmful = 0, slow = 0;
        for (const Outcome& outcome : outcomes_) {
            if (!outcome.sound) continue;
            ++benches;
            silent += outcome.sound->silent;
            remarks += outcome.sound->remarks;
            harmful += static_cast<int>(outcome.sound->harm.size());
            slow += outcome.sound->seconds > kSlow;
            if (outcome.failed) std::printf("%s\n", outcome.detail.c_str());
        }
        std::printf("sound benches silent %d of %d, remarks %d, harmful mends %d, slow %d\n", silent, benches, remarks,
                    harmful, slow);
    }

    Options options_;
    std::vector<Outcome> outcomes_;
    std::atomic<int> next_ = 0;
};

bool readNumber(const char* text, int& to) {
    const auto end = text + std::strlen(text);
    return std::from_chars(text, end, to).ptr == end && to >= 0;
}

bool readOptions(int count, char** words, Options& options) {
    bool seeds = false;
    const std::map<std::string, int*> numbers{{"--count", &options.count}, {"--slips", &options.slips},
                                              {"--print", &options.print}, {"--jobs", &options.jobs},
                                              {"--from", &options.from},   {"--cap", &options.cap}};
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        if (word == "--sound") {
            options.sound = true;
            continue;
        }
        if (i + 1 == count) return false;
        const char* next = words[++i];
        if (const auto found = numbers.find(word); found != numbers.end()) {
            if (!readNumber(next, *found->second)) return false;
        } else if (word == "--seeds" && (std::strcmp(next, "work") == 0 || std::strcmp(next, "final") == 0)) {
            options.final = std::strcmp(next, "final") == 0;
            seeds = true;
        } else if (word == "--keep") {
            options.keep = next;
        } else {
            return false;
        }
    }
    return seeds && options.slips >= 1 && options.slips <= 2 && options.jobs >= 1 &&
           options.count + options.from <= kMostCases;
}

}  // namespace

int main(int count, char** words) {
    Options options;
    if (!readOptions(count, words, options)) {
        std::fprintf(stderr,
                     "examine --seeds work|final --count N [--slips 1|2] [--sound] [--print N] [--jobs N] [--keep "
                     "FOLDER] [--from N] [--cap "
                     "SECONDS]\n");
        return 2;
    }
    if (!options.keep.empty()) std::filesystem::create_directories(options.keep);
    Run run(options);
    run.draw();
    run.tell();
    return 0;
}
