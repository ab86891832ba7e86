#pragma once
// The table of rules. A rule looks at one snapshot and says what it finds; it is one file, one function and one line of the table.
// Rules are pure and safe from any thread.

#include "core/findings/finding.h"

#include <span>
#include <string_view>
#include <vector>

namespace tiepoint {

struct Rule {
    std::string_view name;     ///< as Finding::rule
    Severity severity;
    std::string_view explains; ///< what the rule looks for, in one sentence
    std::vector<Finding> (*find)(const Snapshot& snapshot);
};

/// Every rule, the causes before what they bring about.
std::span<const Rule> rules();

std::vector<Finding> findShortCircuits(const Snapshot& snapshot);
std::vector<Finding> findNoSolution(const Snapshot& snapshot);
std::vector<Finding> findSuppliesOff(const Snapshot& snapshot);

}  // namespace tiepoint
