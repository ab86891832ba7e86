#pragma once
// Pictures of what lies in the tray, made by the bench's own painters and fitted into a box. Window's thread only.

#include "ui/theme/look.h"
#include "ui/tray/tray_items.h"

#include <QPainter>

namespace tiepoint::ui {

/// Draws an item centred in the box, at most `largestPixelsPerMm` large.
void paintItem(QPainter& painter, const Theme& theme, const TrayItem& item, const QRectF& box,
               double largestPixelsPerMm);
/// Everything that the item's picture covers, in mm about its middle.
QRectF itemExtentMm(const Theme& theme, const TrayItem& item);

}  // namespace tiepoint::ui
