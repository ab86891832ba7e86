#pragma once
// A solved bench in words and in JSON. Where there is no solution every number is null, or a dash: none may be shown.

#include "core/findings/finding.h"

#include <optional>
#include <string>
#include <string_view>

namespace tiepoint::app {

/// "solved", "off" or "none".
std::string_view statusName(Status status);

/// `walked`: the part round whose loop the potential is walked.
std::string solveJson(const Snapshot& snapshot, const Report& report, std::optional<int> walked = {});
std::string solveText(const Snapshot& snapshot, const Report& report, std::optional<int> walked = {});

}  // namespace tiepoint::app
