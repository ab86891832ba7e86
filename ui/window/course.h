#pragma once
// The shipped benches in an order in which they can be met: what each shows, in one line, and the view that it opens in.

#include "core/bench/bench.h"

#include <span>
#include <string_view>

namespace tiepoint::ui {

struct CourseBench {
    std::string_view file;   ///< of the embedded files
    std::string_view topic;  ///< "One loop"
    std::string_view line;   ///< one sentence
    Views views{};           ///< that it opens in
};

std::span<const CourseBench> course();

}  // namespace tiepoint::ui
