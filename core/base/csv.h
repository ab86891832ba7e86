#pragma once
// Fields of comma-separated values (RFC 4180). Pure functions.

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// The text as one field: in quotes where it has to be, printable, and with an apostrophe in front where a spreadsheet would take it for a
/// formula (=, +, -, @).
std::string csvText(std::string_view text);
/// One line of fields that are such already, with its line break.
std::string csvLine(const std::vector<std::string>& fields);

}  // namespace tiepoint
