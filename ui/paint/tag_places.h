#pragma once
// Where tags with leaders stand: in a band outside of the boards, each on a strictly vertical leader that ends on its own metal. Knows
// neither benches nor words, only places. Pure. Millimetres.
//
// The laws: no two tags touch; a leader meets its tag inside of the tag's edge; leaders don't cross, nor run through the end of another;
// a tag keeps the foot and the place that it had while it can. Where there is no place for all, those of a higher rank give way.

#include "core/base/geometry.h"

#include <optional>
#include <vector>

namespace tiepoint::ui {

/// What a tag can't lie on, along a band.
struct TakenStretch {
    double from = 0, to = 0;
};

/// A row outside of the boards in which tags stand.
struct TagBand {
    Rect room;          ///< as high as a tag
    bool above = true;  ///< the boards lie below it
    std::vector<TakenStretch> taken = {};
};

/// What a leader should rather not run beneath.
struct TagHindrance {
    Rect frame;
    double dislikePerMm = 0;
};

/// Where the leader of a tag may end: at one place, or at two of a reading between them.
struct TagFoot {
    std::vector<Point> ends;
    double dislike = 0;
    friend bool operator==(const TagFoot&, const TagFoot&) = default;
};

/// Where a tag stands.
struct TagPlace {
    int band = 0;
    Rect frame;
    std::vector<Point> ends;
    friend bool operator==(const TagPlace&, const TagPlace&) = default;
};

/// A tag that wants a place.
struct TagWish {
    double width = 0;
    int rank = 0;  ///< the lower, the later it gives way
    std::vector<TagFoot> feet;
    std::optional<TagPlace> before = std::nullopt;  ///< where it stood so far
};

struct TagRoom {
    std::vector<TagBand> bands;
    std::vector<TagHindrance> hindrances;
    double ringMm = 1;      ///< radius of an end
    double casingMm = 0.7;  ///< breadth of a leader
    double gapMm = 0.5;     ///< between tags
    double insetMm = 0.6;   ///< from a tag's corner to its leader, at least
};

/// By wish: its place, or nothing where it gives way.
std::vector<std::optional<TagPlace>> placeTags(const TagRoom& room, const std::vector<TagWish>& wishes);

/// How near two leaders may come.
double leaderClearance(const TagRoom& room);

}  // namespace tiepoint::ui
