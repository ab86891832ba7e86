#pragma once
// What lies on the far side of a turned board: parts and wires as dashed outlines. For pictures whose table is turned.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// A part's body and leads.
void paintGhost(QPainter& painter, const PartScene& scene, const PackagePainter& look);
/// A wire along its centre line.
void paintGhostWire(QPainter& painter, const Theme& theme, const QPainterPath& line);
/// The accent frame of pressed buttons.
void addPressedGhosts(Patches& patches, const Picture& picture);
/// Draws what a supply's leads do behind the boards, and leaves the painter clipped to the table around them. `hidden`: where wires count
/// as behind boards.
void paintHiddenLeads(QPainter& painter, const std::vector<Rect>& hidden, const PartScene& scene,
                      const PackagePainter& look);
/// Keeps boards clear of what is drawn next: it lies beneath them.
void clipToTable(QPainter& painter, const std::vector<Rect>& hidden);

}  // namespace tiepoint::ui
