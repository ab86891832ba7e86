#pragma once
// Writing notes on the bench: finds the place or the note that is meant, and opens the field there.

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
    /// The selected note, or a new one: at the cursor, at the selected part, or at the pointer, which is there in the viewport.
    void begin(QPointF pointer);
    /// If there is such a note.
    void edit(const std::string& id);
    const NoteBox& box() const { return box_; }

private:
    std::optional<Hole> holeMeant(QPointF pointer) const;

    const Picture& picture_;
    const Camera& camera_;
    NoteBox box_;
};

}  // namespace tiepoint::ui
