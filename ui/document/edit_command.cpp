#include "ui/document/edit_command.h"

#include "core/findings/reveal.h"
#include "ui/theme/plain_text.h"

namespace tiepoint::ui {
namespace {

/// What the history makes of a bench. A lock stays, and how much is revealed behind it: only the pass phrase changes that.
Bench keepingLock(const Bench& before, Bench after) {
    if (isLocked(before)) after.disclosure = before.disclosure;
    return after;
}

quint64 nextStamp() {
    static quint64 last = 0;  // documents live in the window's thread
    return ++last;
}

}  // namespace

EditCommand::EditCommand(BenchDocument& document, Edit edit, Applied done, int gesture)
    : document_(document),
      edit_(std::move(edit)),
      inverse_(std::move(done.inverse)),
      note_(stepNote(*document.bench(), edit_, done.bench)),
      stamp_(nextStamp()),
      first_(std::move(done.bench)),
      gesture_(gesture) {
    setText(plainText(edit_.name));
}

void EditCommand::redo() {
    if (first_) {
        document_.adopt(std::move(*first_));
        first_.reset();
        return;
    }
    step(edit_);
}

void EditCommand::undo() { step(inverse_); }

void EditCommand::step(const Edit& edit) {
    if (document_.isHistoryStuck()) return;
    auto done = apply(*document_.bench(), edit);
    if (done.ok()) return document_.adopt(keepingLock(*document_.bench(), std::move(done.value().bench)));
    document_.stickHistory(*this, &edit == &inverse_, QString::fromStdString(done.error().message));
}

bool EditCommand::mergeWith(const QUndoCommand* next) {
    // Steps of one gesture put the same objects in place again and again: the last one is what was done, and
    // the first inverse takes all of them back.
    const auto* later = static_cast<const EditCommand*>(next);
    if (later->gesture_ != gesture_) return false;
    edit_ = later->edit_;
    note_ = later->note_;
    stamp_ = later->stamp_;
    return true;
}

}  // namespace tiepoint::ui
