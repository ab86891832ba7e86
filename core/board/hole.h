#pragma once
// The address of a hole: "A.e12" or "A.top+7".

#include "core/board/board_kind.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

/// A hole of the bench by board id, line and number (column, or place in the rail from the left; from 1).
struct Hole {
    std::string board;
    Line line = Line::A;
    int number = 1;

    friend auto operator<=>(const Hole&, const Hole&) = default;
    friend bool operator==(const Hole&, const Hole&) = default;
};

/// The full address, "A.e12".
std::string toString(const Hole& hole);
/// The address within its board, "e12", as learners read it.
std::string shortName(const Hole& hole);
/// Parses a full address; nothing if the text is no address (a number over 9999 or with a leading zero isn't).
std::optional<Hole> parseHole(std::string_view text);

}  // namespace tiepoint
