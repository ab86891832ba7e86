#pragma once
// What lies under the pointer, from the top down.

#include "ui/paint/picture.h"

#include <optional>
#include <string>

namespace tiepoint::ui {

/// One end of something: a lead of a part, or an end of a jumper.
struct End {
    std::string id;
    int index = 0;
    bool jumper = false;
};

struct Under {
    std::string note;         ///< lies over everything else
    std::string pinned;       ///< tag of a pinned reading; only notes lie over it
    std::string control;      ///< part whose cap, lever, blade or knob it is
    std::optional<End> grip;  ///< the end that a drag moves
    std::optional<Socket> socket;
    std::string body;         ///< part whose body it is
    std::string wire;         ///< jumper
    std::optional<End> lead;  ///< bare lead of a part
    std::optional<Hole> hole;

    /// The part, jumper, note or pinned reading that a click selects, or empty.
    std::string thing() const;
};

/// An end can be gripped where it belongs to something selected and its own body doesn't cover it; the cables of supplies always can.
/// So a drag from a free-standing hole draws a jumper, and one at the end of what the brackets mark moves that end.
Under whatLiesAt(const Picture& picture, Point at);

}  // namespace tiepoint::ui
