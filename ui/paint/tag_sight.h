#pragma once
// Keeps tags in sight while a view shows a part of the table: a tag whose foot is seen comes to the edge of the view along its
// own leader, or stands beside a foot at that edge.
// Pure. Millimetres.

#include "ui/paint/picture.h"

#include <vector>

namespace tiepoint::ui {

/// Moves frames alone; feet stay. What has no room there, or would touch another tag, stays where it is.
void keepInSight(std::vector<PinnedTag>& pinned, std::vector<NetTag>& nets, const QRectF& seenMm,
                 const WordSizes& sizes);

}  // namespace tiepoint::ui
