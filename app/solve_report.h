#pragma once
// A solved bench in words and in JSON. Where there is no solution every number is null, or a dash: none may be shown.

#include "core/findings/finding.h"

#include <string>
#include <string_view>

namespace tiepoint::app {

/// "solved", "off" or "none".
std::string_view statusName(Status status);

std::string solveJson(const Snapshot& snapshot, const Report& report);
std::string solveText(const Snapshot& snapshot, const Report& report);

}  // namespace tiepoint::app
