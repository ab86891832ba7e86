#pragma once
// The pinned readings as a table: before the last change and now. Pure.

#include "core/snapshot/snapshot.h"

#include <string>
#include <vector>

namespace tiepoint {

struct ReadingRow {
    std::string what;  ///< "volts at c14"
    std::string before,
        now;  ///< as they are shown: "1.91 V", "floating"; before is empty where it wasn't pinned or there was none
    double beforeValue = 0, nowValue = 0;  ///< SI; NaN where nothing is to be read
    std::string unit;                      ///< "V", "A", "W"
};

/// A row for each reading pinned on the bench of `now`, in its order. `before` may be null.
std::vector<ReadingRow> readingsTable(const Snapshot* before, const Snapshot& now);

/// Columns that stand below each other in equal letters, with a head.
std::string readingsAsText(const std::vector<ReadingRow>& rows);
/// reading,unit,before,now; SI, empty where nothing is to be read (RFC 4180).
std::string readingsAsCsv(const std::vector<ReadingRow>& rows);

}  // namespace tiepoint
