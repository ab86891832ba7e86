#pragma once
// Where everything of a bench lies, for the words on it: what they stand beside, and what they keep clear of. A value; the same bench on
// the same table, seen at the same sizes, has the same ground, whatever flows in it.

#include "ui/paint/part_seen.h"
#include "ui/paint/used_numbers.h"

#include <memory>
#include <vector>

namespace tiepoint::ui {

/// From the first hole of a strip to its last.
struct StripPlace {
    Point first, last;
    bool rail = false;
    friend bool operator==(const StripPlace&, const StripPlace&) = default;
};

struct WordGround {
    std::vector<PartSeen> parts;     ///< unpressed, by part
    std::vector<Rect> bodies;        ///< around these
    std::vector<CurveSeen> jumpers;  ///< by jumper
    std::vector<StripPlace> strips;  ///< by strip
    std::vector<StripPlace> metal;   ///< of strips, between holes in use
    std::vector<Rect> notes;         ///< the slips
    Rect boardsMm, allMm;            ///< around the boards, and around everything
    WordSizes sizes;
    Rect stage;                       ///< while projecting words stay inside; else empty
    std::vector<UsedNumber> numbers;  ///< while projecting
    friend bool operator==(const WordGround&, const WordGround&) = default;

    bool isProjected() const { return sizes.numberMm > 0; }
};

/// From the picture's layout, table and sizes alone.
std::shared_ptr<const WordGround> wordGround(const Picture& picture);

}  // namespace tiepoint::ui
