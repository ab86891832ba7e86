#pragma once
// One step of the undo stack: an edit and its inverse. Holds values and ids, never pointers into a bench.

#include "core/edit/step_words.h"
#include "ui/document/bench_document.h"

#include <QUndoCommand>

namespace tiepoint::ui {

class EditCommand : public QUndoCommand {
public:
    /// `done` is what applying the edit gave; `gesture` is -1, or the number that the steps of one gesture share.
    EditCommand(BenchDocument& document, Edit edit, Applied done, int gesture);

    const Edit& edit() const { return edit_; }
    const Edit& inverse() const { return inverse_; }
    const StepNote& note() const { return note_; }
    /// Changes whenever what the step does changes; no two steps ever share one.
    quint64 stamp() const { return stamp_; }

    void redo() override;
    void undo() override;
    int id() const override { return gesture_; }
    bool mergeWith(const QUndoCommand* next) override;

private:
    /// Applies one of the two edits. Where that fails the bench stays, and the document puts the history back to where the bench is.
    void step(const Edit& edit);

    BenchDocument& document_;
    Edit edit_, inverse_;
    StepNote note_;
    quint64 stamp_;
    std::optional<Bench> first_;  ///< what the first redo adopts, so that nothing is applied twice
    int gesture_;
};

}  // namespace tiepoint::ui
