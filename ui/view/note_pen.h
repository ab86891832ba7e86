#pragma once
// Writing notes on the bench: finds the place or the note that is meant, and opens the field there.

#include "ui/paint/picture.h"
#include "ui/scene/under.h"
#include "ui/view/camera.h"
#include "ui/view/note_box.h"

#include <optional>
#include <string>

namespace tiepoint::ui {

class NotePen {
public:
    /// The field is a child of `parent`; picture and camera must outlive it.
    NotePen(BenchDocument& document, const Picture& picture, const Camera& camera, QWidget* parent)
        : picture_(picture),
          camera_(camera),
          box_(document, parent) {}

    void setTheme(const Theme& theme) { box_.setTheme(theme); }
    /// The note that the hand is at, or a new one: at the cursor, at the selected part, or at the pointer, which is there in the viewport,
    /// over what lies `under` it.
    void begin(QPointF pointer, const Under& under);
    /// Something else is selected: a note that is counts as meant until the hand goes to another hole.
    void followSelection(QPointF pointer);
    /// If there is such a note.
    void edit(const std::string& id);
    const NoteBox& box() const { return box_; }

private:
    std::optional<Hole> holeMeant(QPointF pointer) const;
    std::string noteMeant(QPointF pointer, const Under& under) const;

    const Picture& picture_;
    const Camera& camera_;
    NoteBox box_;
    std::optional<Hole> cursorThen_;  ///< where cursor and pointer were when the selection changed
    QPointF pointerThen_;
};

}  // namespace tiepoint::ui
