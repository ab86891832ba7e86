#pragma once
// Devices on which letters stay letters: paper and drawings, where words can be searched for and copied. On all others a letter is an
// outline like any other shape.

#include "ui/paint/lettering.h"

namespace tiepoint::ui {

/// A letter of a line, and where it stands behind the line's beginning.
struct PlacedLetter {
    QString letter;  ///< one code point
    double leftMm = 0;
};

/// One line of letters as it is drawn.
struct LetterLine {
    QString text;
    Lettering lettering;
    QColor colour;
    double widthMm = 0;
    std::vector<PlacedLetter> letters;
};

/// What a paint device is besides, if it wants letters.
class LetterSheet {
public:
    virtual ~LetterSheet() = default;
    /// Draws a line that begins on a point of its base line, in the painter's units. The painter is on this device.
    virtual void drawLetters(QPainter& painter, const LetterLine& line, QPointF baseline) = 0;
};

}  // namespace tiepoint::ui
