#pragma once
// Notes: paper tags with the words of whoever wrote them, on a thread to a knot at their hole. In millimetres of the bench.

#include "ui/paint/note_places.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// Where a note's paper lies.
QRectF noteFrame(const Picture& picture, int note);
QRectF noteBounds(const Picture& picture, int note);        ///< everything that is drawn of it
void addThreads(Patches& patches, const Picture& picture);  ///< under the parts
void addNotes(Patches& patches, const Picture& picture);    ///< papers and knots
/// A note that says more than is seen, opened out over everything.
void addUnfoldedNote(Patches& patches, const Picture& picture, int note);

}  // namespace tiepoint::ui
