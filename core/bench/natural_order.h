#pragma once
// Natural order of ids: letters as text, runs of digits as numbers, so that R2 comes before R10.

#include <string_view>

namespace tiepoint {

/// Whether a comes before b in natural order; a strict weak order, total on different texts.
bool naturalLess(std::string_view a, std::string_view b);

}  // namespace tiepoint
