#pragma once
// The pictures in the menu at a part: what will happen, drawn with the real things of the tray. Window's thread only.

#include "core/bench/bench.h"
#include "ui/theme/look.h"

#include <QPainter>

#include <functional>

namespace tiepoint::ui {

/// Draws into a box, in pixels.
using RowPicture = std::function<void(QPainter&, const Look&, const QRectF&)>;

/// What the menu is about, as it lies in the tray: a part, or else a jumper of a colour; neither: a hole.
struct Pictured {
    std::optional<Part> part;
    std::optional<int> jumperColour;
};

RowPicture turnedPicture(const Pictured& thing);  ///< it, over where it was
RowPicture twicePicture(const Pictured& thing);   ///< two of it
RowPicture emptyHolesPicture();                   ///< what is left
RowPicture openContactPicture();                  ///< why nothing flows
RowPicture sheetPicture();                        ///< a printed page
RowPicture tagPicture();                          ///< a reading's tag on its hole
RowPicture twoHolesPicture();                     ///< from one hole to another
RowPicture laidPicture(int jumperColour, bool flat);

}  // namespace tiepoint::ui
