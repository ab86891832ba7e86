// Each thread takes the next file. Beside them a watch ends the work on a file that takes longer than it may: the work's loops ask its token
// (core/base/stopping.h).

#include "core/compare/class_comparison.h"

#include "core/base/csv.h"
#include "core/base/file_io.h"
#include "core/base/printable.h"
#include "core/base/stopping.h"
#include "core/bench/bench_file.h"
#include "core/bench/bench_in_picture.h"
#include "core/bench/natural_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <mutex>
#include <thread>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;
using SteadyClock = std::chrono::steady_clock;

/// Larger benches have more in them than an exercise has, and than a circuit can be told apart in.
constexpr std::size_t kMostParts = 2000;

/// Asks for the end of work that takes too long.
class Watch {
public:
    Watch() : thread_([this] { run(); }) {}
    ~Watch() {
        {
            const std::lock_guard lock(mutex_);
            over_ = true;
        }
        wake_.notify_one();
        thread_.join();
    }
    Watch(const Watch&) = delete;
    Watch& operator=(const Watch&) = delete;

    /// While it lives the source is asked to stop at a time.
    class Turn {
    public:
        Turn(Watch& watch, std::stop_source& source, SteadyClock::time_point until) : watch_(watch), source_(&source) {
            const std::lock_guard lock(watch_.mutex_);
            watch_.turns_.emplace_back(source_, until);
            watch_.wake_.notify_one();
        }
        ~Turn() {
            const std::lock_guard lock(watch_.mutex_);
            std::erase_if(watch_.turns_, [&](const auto& turn) { return turn.first == source_; });
        }
        Turn(const Turn&) = delete;
        Turn& operator=(const Turn&) = delete;

    private:
        Watch& watch_;
        std::stop_source* source_;
    };

private:
    void run() {
        std::unique_lock lock(mutex_);
        while (!over_) {
            auto next = SteadyClock::now() + std::chrono::hours(1);
            for (const auto& [source, until] : turns_) {
                if (until <= SteadyClock::now())
                    source->request_stop();
                else
                    next = std::min(next, until);
            }
            wake_.wait_until(lock, next);
        }
    }

    std::mutex mutex_;
    std::condition_variable wake_;
    std::vector<std::pair<std::stop_source*, SteadyClock::time_point>> turns_;
    bool over_ = false;
    std::thread thread_;
};

std::string reasonOf(const Error& error) {
    Error plain = error;
    plain.file.clear();  // the row says which file it is
    return printable(plain.oneLine());
}

/// A bench, or a picture with one inside.
Result<std::string> handedIn(const fs::path& path, std::size_t largestBytes) {
    auto bytes = readFile(path, largestBytes);
    if (!bytes) return bytes;
    return textOrInside(std::move(bytes).value());
}

void fill(LearnerRow& row, const ClassComparison& wanted, const ComparisonTarget& target) {
    const auto text = handedIn(row.path, wanted.largestBytes);
    if (!text) {
        row.error = reasonOf(text.error());
        return;
    }
    auto read = readBench(*text);
    if (!read) {
        row.error = reasonOf(read.error());
        return;
    }
    row.bench = std::make_shared<const Bench>(std::move(read).value().bench);
    if (row.bench->parts.size() + row.bench->jumpers.size() > kMostParts) {
        row.error = fmt::format("more than {} parts and jumpers: too many to compare", kMostParts);
        return;
    }
    auto compared = compareBenches(row.bench, target, wanted.bounds);
    if (compared)
        row.comparison = std::move(compared).value();
    else
        row.error = reasonOf(compared.error());
}

/// The row of one file, whatever it holds.
LearnerRow learnerRowOf(const fs::path& path, const ClassComparison& wanted, const ComparisonTarget& target,
                        Watch& watch) {
    LearnerRow row;
    row.path = path;
    row.file = printable(fs::path(path).lexically_relative(wanted.folder).generic_string());
    std::stop_source source;
    const Watch::Turn turn(watch, source, SteadyClock::now() + wanted.patience);
    const StopScope scope(source.get_token());
    try {
        fill(row, wanted, target);
    } catch (const Stopped&) {
        row.error = fmt::format("given up after {:.0f} s: it takes too long to compare",
                                std::chrono::duration<double>(wanted.patience).count());
    } catch (const std::exception& trouble) {
        row.error = printable(fmt::format("it can't be compared: {}", trouble.what()));
    }
    return row;
}

bool isHidden(const fs::path& path) { return path.filename().string().starts_with("."); }

/// Differences, and the limits that are passed.
std::string differencesInOne(const std::vector<BenchDifference>& differences, const std::vector<std::string>& limits) {
    std::string all;
    for (const BenchDifference& each : differences) all += (all.empty() ? "" : " ") + each.text;
    for (const std::string& each : limits) all += (all.empty() ? "" : " ") + each;
    return all;
}

}  // namespace

Result<std::vector<fs::path>> learnersFiles(const ClassComparison& wanted) {
    std::error_code trouble;
    if (!fs::is_directory(wanted.folder, trouble))
        return Error{ErrorKind::Io, "this is no folder", {}, wanted.folder.string()};
    std::vector<fs::path> files;
    fs::recursive_directory_iterator each(wanted.folder, fs::directory_options::skip_permission_denied, trouble);
    for (; !trouble && each != fs::recursive_directory_iterator(); each.increment(trouble)) {
        if (isHidden(each->path())) {
            each.disable_recursion_pending();
            continue;
        }
        std::error_code unseen;
        if (each->is_directory(unseen)) continue;
        if (!wanted.except.contains(fs::weakly_canonical(each->path(), unseen))) files.push_back(each->path());
    }
    if (trouble)
        return Error{ErrorKind::Io, "the folder can't be listed: " + trouble.message(), {}, wanted.folder.string()};
    std::ranges::sort(files, [](const fs::path& a, const fs::path& b) { return naturalLess(a.string(), b.string()); });
    return files;
}

std::vector<LearnerRow> compareFiles(const ClassComparison& wanted, const std::vector<fs::path>& files,
                                     const ComparisonTarget& target, const std::function<void(std::size_t)>& done) {
    std::vector<LearnerRow> rows(files.size());
    std::atomic<std::size_t> next = 0;
    std::mutex telling;
    std::size_t finished = 0;
    Watch watch;
    const auto work = [&] {
        for (std::size_t i = next++; i < files.size(); i = next++) {
            rows[i] = learnerRowOf(files[i], wanted, target, watch);
            const std::lock_guard lock(telling);
            if (done) done(++finished);
        }
    };
    const std::size_t hands = std::min<std::size_t>(files.size(), std::max(1u, std::thread::hardware_concurrency()));
    std::vector<std::thread> threads;
    for (std::size_t t = 1; t < hands; ++t) threads.emplace_back(work);
    work();
    for (std::thread& thread : threads) thread.join();
    return rows;
}

std::string rowsAsCsv(const std::vector<LearnerRow>& rows) {
    std::string csv = csvLine({"file", "sameCircuit", "sameBehaviour", "differences", "error"});
    for (const LearnerRow& row : rows) {
        const auto said = [&](bool yes) { return std::string(!row.error.empty() ? "" : yes ? "true" : "false"); };
        std::vector<BenchDifference> told = row.comparison.differences;
        if (told.empty() && !row.comparison.sameBehaviour) told = row.comparison.behaviour;
        csv += csvLine({csvText(row.file), said(row.comparison.sameCircuit), said(row.comparison.sameBehaviour),
                        row.error.empty() ? csvText(differencesInOne(told, row.comparison.limits)) : "",
                        csvText(row.error)});
    }
    return csv;
}

}  // namespace tiepoint
