#pragma once
// Lays small pictures over a large one, without the cost of a painter's call for each.

#include <QImage>
#include <QRect>

namespace tiepoint::ui {

/// Lays `stamp` (ARGB32, premultiplied) over `target` (RGB32, or ARGB32 premultiplied), its corner at `at`.
/// The target isn't shared with another image.
void stampOver(QImage& target, QPoint at, const QImage& stamp);

}  // namespace tiepoint::ui
