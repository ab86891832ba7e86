#pragma once
// Where notes lie: paper tags beside the boards or below them, off everything that is read or pressed, and what of their text is seen. Pure.

#include "ui/paint/lettering.h"
#include "ui/paint/picture.h"

#include <QStringList>

#include <vector>

namespace tiepoint::ui {

/// The paper of a note, and the thread that ties it to its hole.
struct NotePlace {
    QRectF paper;
    QPointF eyelet, knot;
    QStringList lines;
    double sizeMm = 0;      ///< of its letters
    bool isCutOff = false;  ///< it says more than is seen
};

/// By note of the bench.
std::vector<NotePlace> placeNotes(const Picture& picture);
/// Around all papers; empty without notes.
QRectF notesArea(const Picture& picture);
/// The same note with all of its text, from the same corner.
NotePlace unfolded(const Picture& picture, int note);

inline Lettering noteLettering(double sizeMm) { return {sizeMm, QFont::Medium}; }
// Of a paper, in ems of its usual letters.
inline constexpr double kNoteLineEm = 1.46, kNotePadEm = 0.95, kNoteTextEm = 3.1, kNoteEyeletEm = 1.45,
                        kNoteRuleEm = 2.55;

}  // namespace tiepoint::ui
