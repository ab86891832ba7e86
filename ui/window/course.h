#pragma once
// The shipped benches in the order of a course: what each shows, in one line, and the view that it teaches in.

#include "core/bench/bench.h"

#include <optional>
#include <span>
#include <string_view>

namespace tiepoint::ui {

/// A part of a board, by columns, that a picture shows closely.
struct CloseUp {
    int fromColumn = 0, toColumn = 0;
};

struct CourseBench {
    std::string_view file;   ///< of the embedded files
    std::string_view topic;  ///< "One loop"
    std::string_view line;   ///< one sentence
    Views views{};           ///< that it opens in from the start card
    bool pressed = true;     ///< its buttons are down in the picture
    std::optional<CloseUp> closeUp{};
};

std::span<const CourseBench> course();

/// Where a close-up lies on the first board of a bench.
Rect closeUpMm(const Bench& bench, const CloseUp& closeUp);

}  // namespace tiepoint::ui
