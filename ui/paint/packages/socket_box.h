#pragma once
// What instruments with sockets share: the case with its face, and sockets with their names. In the frame of the body's top left corner.

#include "ui/paint/packages/package_painter.h"

namespace tiepoint::ui {

void paintSocketBox(QPainter& painter, const PartScene& scene, double radiusMm);
/// A lead's socket in a ring of its colour, its name on the side away from the boards.
void paintNamedSocket(QPainter& painter, const PartScene& scene, std::size_t lead, const QString& name,
                      const QColor& colour);

}  // namespace tiepoint::ui
