#pragma once
// A folder of learners' benches compared with one target, by all processors: a row for each file, in natural order of names. Whatever a file
// is, it ends in a row: one that can't be read or used says why, one that takes too long is given up, and none can keep the others from
// being looked at.

#include "core/compare/comparison.h"

#include <chrono>
#include <filesystem>
#include <functional>
#include <set>

namespace tiepoint {

struct LearnerRow {
    std::filesystem::path path;
    std::string file;                    ///< its name, from the folder on
    std::shared_ptr<const Bench> bench;  ///< null where the file holds none
    Comparison comparison;               ///< says something only where `error` is empty
    std::string error;                   ///< why it can't be compared, in one printable line
};

struct ClassComparison {
    std::filesystem::path folder;
    std::set<std::filesystem::path> except;  ///< files that are no learner's: the target, what is written
    ComparisonBounds bounds;
    /// A learner's bench is small; what is larger is refused unread, and what takes longer is given up.
    std::size_t largestBytes = 4u << 20;
    std::chrono::milliseconds patience{3000};
};

/// Every file of the folder, hidden ones and those of `except` left out; of folders inside too. In natural order. An error if it can't be listed.
Result<std::vector<std::filesystem::path>> learnersFiles(const ClassComparison& wanted);

/// Compares them side by side. `done` is called after each, from any thread, one call at a time, with how many are done.
std::vector<LearnerRow> compareFiles(const ClassComparison& wanted, const std::vector<std::filesystem::path>& files,
                                     const ComparisonTarget& target, const std::function<void(std::size_t)>& done);

/// The rows as CSV (RFC 4180): file,sameCircuit,sameBehaviour,differences,error. Text that a spreadsheet would take for a formula gets an
/// apostrophe in front.
std::string rowsAsCsv(const std::vector<LearnerRow>& rows);

}  // namespace tiepoint
