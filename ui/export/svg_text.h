#pragma once
// Pieces of SVG as text: numbers, paths, matrices, colours, pens and gradients. Pure functions; the same value is always the same text.

#include <QBrush>
#include <QByteArray>
#include <QPainterPath>
#include <QPen>
#include <QTransform>

#include <string>

namespace tiepoint::ui::svg {

/// Three decimals and no more than are needed: 12, -0.5, 3.142.
QByteArray number(double value);
/// The "d" of a path.
QByteArray data(const QPainterPath& path);
/// "matrix(a b c d e f)".
QByteArray matrix(const QTransform& transform);
/// ` name="#rrggbb"`, and ` name-opacity="0.5"` where it isn't opaque; "fill" or "stroke".
QByteArray paint(const char* name, const QColor& colour, double opacity);
/// Width, ends, joins and dashes of a pen, with lengths times `scale`.
QByteArray stroke(const QPen& pen, double scale);
/// The element of a linear or radial gradient under an id, its units being those of the shape.
QByteArray gradient(const QBrush& brush, const QByteArray& id, double opacity);
/// Any text between tags or in an attribute: controls as their numbers, markup escaped.
QByteArray words(const std::string& text);

}  // namespace tiepoint::ui::svg
