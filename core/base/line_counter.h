#pragma once
// From offsets in a text to lines and columns, as editors count them.

#include "core/base/result.h"

#include <cstddef>
#include <string_view>

namespace tiepoint {

/// Turns offsets into lines and columns (in characters, from 1). Cheap while the offsets ascend.
class LineCounter {
public:
    explicit LineCounter(std::string_view text) : text_(text) {}
    /// Fills line and column of a place.
    void locate(std::size_t offset, Place& place);

private:
    std::string_view text_;
    std::size_t offset_ = 0;
    int line_ = 1, column_ = 1;
};

}  // namespace tiepoint
