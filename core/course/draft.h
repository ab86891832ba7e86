#pragma once
// A lesson in the making: what was done on a bench becomes its steps, which can be reworded, moved, split, joined and taken out. Every change
// can be taken back and done again. A change whose edits can't be applied in the new order is refused and changes nothing.

#include "core/course/lesson.h"

#include <string>
#include <vector>

namespace tiepoint {

class LessonDraft {
public:
    /// Begins with a bench and no step.
    explicit LessonDraft(std::shared_ptr<const Bench> start);
    /// Goes on with a lesson that is there already.
    explicit LessonDraft(Lesson lesson);

    const Lesson& lesson() const { return history_[present_]; }

    /// Appends a step that brings the last bench to this one.
    Result<Done> record(const Bench& bench, std::string caption, std::string note = {});
    Result<Done> reword(int step, std::string caption, std::string note);
    /// Puts a step in another place of the order.
    Result<Done> move(int step, int to);
    /// Joins a step to the next; the first one's words stay.
    Result<Done> merge(int step);
    /// Parts a step before one of its edits, counted from 0; the second has these words.
    Result<Done> split(int step, int edit, std::string caption);
    Result<Done> remove(int step);

    bool canUndo() const { return present_ > 0; }
    bool canRedo() const { return present_ + 1 < history_.size(); }
    void undo();
    void redo();

private:
    Result<Done> change(Lesson lesson);
    Result<Done> noStep(int step) const;

    std::vector<Lesson> history_;
    std::size_t present_ = 0;
};

}  // namespace tiepoint
