#pragma once
// Findings in words and in JSON, for every command that prints them.

#include "app/json_writer.h"

#include "core/findings/finding.h"

#include <string>
#include <string_view>

namespace tiepoint::app {

/// "fault", "risk" or "remark".
std::string_view severityName(Severity severity);

/// The member "findings" of an object that is open in `json`. `bench` is the one that the report is about.
void writeFindings(JsonWriter& json, const Bench& bench, const Report& report);
/// A line for each finding, and one for its mend.
std::string findingsText(const Report& report);

}  // namespace tiepoint::app
