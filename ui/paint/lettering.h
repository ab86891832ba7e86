#pragma once
// Text in millimetres, drawn as outlines of glyphs, so that it is crisp at every zoom, the same on screen and
// on paper, and needs no layout while painting. Figures stand in equal cells, so that a changing reading
// doesn't dance. On devices that want letters (letter_sheet.h) they are letters at the same places.
// Glyphs are kept once built; use from the thread that paints.

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QPainterPath>
#include <QString>

namespace tiepoint::ui {

struct Lettering {
    double sizeMm = 0;  ///< of the em
    QFont::Weight weight = QFont::Normal;
    friend bool operator==(const Lettering&, const Lettering&) = default;
};

/// Outlines are taken at this size, in pixels, and scaled, so that hinting and rounding of small sizes play no part.
inline constexpr double kDrawnPx = 200;
/// Height of capitals as a share of the em, for centring.
inline constexpr double kCapHeight = 0.727;

double textWidthMm(const QString& text, const Lettering& lettering);
/// The outlines, beginning at a point on the base line.
QPainterPath textPath(const QString& text, QPointF baseline, const Lettering& lettering);
/// Draws with the alignment's horizontal part (left, centre or right) about `at`, whose y is the middle of
/// the capitals.
void drawText(QPainter& painter, const QString& text, QPointF at, const Lettering& lettering, const QColor& colour,
              Qt::Alignment align = Qt::AlignHCenter);

}  // namespace tiepoint::ui
