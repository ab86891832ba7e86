#pragma once
// Notes: paper slips pinned to holes, with the words of whoever pinned them. In millimetres of the bench.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// Where a note's slip lies; its pin is at its hole, off a corner of the slip.
QRectF noteFrame(const Picture& picture, int note);
QRectF noteBounds(const Picture& picture, int note);  ///< everything that is drawn of it
void addNote(Patches& patches, const Picture& picture, int note);
void addNotes(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
