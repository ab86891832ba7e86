#pragma once
// Pinned readings as tags: what each says, and on what its leader may end. Where no band has a place for one, it lies beside what it
// measures, clear of bodies, wires, ids, notes and other tags. Pure.

#include "ui/paint/picture.h"
#include "ui/paint/tag_ground.h"

#include <vector>

namespace tiepoint::ui {

/// What a pinned reading says, not placed yet: its frame is empty.
PinnedTag pinnedTag(const Picture& picture, const PinnedReading& reading);
double pinnedWidth(const PinnedTag& tag, const WordSizes& sizes);
std::vector<TagFoot> pinnedFeet(const Picture& picture, const PinnedReading& reading);
/// Puts a tag there, its leaders ending at these places.
void stand(PinnedTag& tag, const Rect& frame, const std::vector<Point>& ends);
/// Finds places on the bench for those that have none.
void placeOthersBeside(const Picture& picture, const TagGround& ground, std::vector<PinnedTag>& tags);

/// About what a tag points at: no other words may hide it.
QRectF endFrame(const TagEnd& end);
/// The point of a frame from which its leader runs.
QPointF nearestOf(const QRectF& frame, QPointF to);

/// Room of the pin's head at the left of a tag's words, in ems.
inline constexpr double kPinRoomEm = 0.75;

}  // namespace tiepoint::ui
