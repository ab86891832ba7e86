#pragma once
// Words on the bench: ids on a plate of the board's colour, readings and words on tags.

#include "ui/paint/lettering.h"
#include "ui/paint/patch.h"
#include "ui/theme/theme.h"

#include <QPainter>

namespace tiepoint::ui {

/// The line round a tag. Floating: its words are dim too.
enum class TagEdge { Reading, Accent, Hover, Overload, Dim, Floating, PointedFloating };

void paintTag(QPainter& painter, const Theme& theme, const QRectF& frame, const QString& text,
              const Lettering& lettering, const QColor& edge, const QColor& ink);
Patch tagPatch(const QRectF& frame, const QString& text, const Lettering& lettering, TagEdge edge);
/// A word on a plate of the board's colour, which hides what is printed there.
Patch platePatch(const QRectF& frame, const QString& text, double sizeMm, bool dim = false);
/// What a tag covers, with its edge and shadow.
QRectF tagRoom(const QRectF& frame);
/// A tag as large as its words beside a point, within nothing: up and to the right of it.
QRectF tagBeside(QPointF at, const QString& text, const Lettering& lettering);

}  // namespace tiepoint::ui
