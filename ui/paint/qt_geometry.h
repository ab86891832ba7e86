#pragma once
// Between the places of the core and Qt's.

#include "core/base/geometry.h"

#include <QPointF>
#include <QRectF>

namespace tiepoint::ui {

inline QPointF toQt(Point p) { return {p.x, p.y}; }
inline QRectF toQt(const Rect& r) { return {r.left, r.top, r.width, r.height}; }
inline Point fromQt(QPointF at) { return {at.x(), at.y()}; }
inline Rect fromQt(const QRectF& rect) { return {rect.left(), rect.top(), rect.width(), rect.height()}; }

}  // namespace tiepoint::ui
