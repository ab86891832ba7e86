#pragma once
// Members of a file that this version doesn't know.

#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

/// Name and value as canonical JSON text, in the order of the file.
using Extras = std::vector<std::pair<std::string, std::string>>;

}  // namespace tiepoint
