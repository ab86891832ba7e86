#pragma once
// Where the tags of pinned readings lie: beside what they measure, clear of bodies, wires, ids, notes and each other. Depends on the
// bench and hardly on the figures, so that a tag stays where it is while its reading changes. Pure.

#include "ui/paint/picture.h"

#include <vector>

namespace tiepoint::ui {

/// A tag for each pinned reading, in the order of the bench.
std::vector<PinnedTag> placePinned(const Picture& picture);

/// About what a tag points at: no other words may hide it.
QRectF endFrame(const TagEnd& end);
/// The point of a frame from which its leader runs.
QPointF nearestOf(const QRectF& frame, QPointF to);

/// Room of the pin's head at the left of a tag's words, in ems.
inline constexpr double kPinRoomEm = 0.75;

}  // namespace tiepoint::ui
