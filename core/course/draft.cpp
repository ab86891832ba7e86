#include "core/course/draft.h"

#include "core/course/fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace tiepoint {

LessonDraft::LessonDraft(std::shared_ptr<const Bench> start) {
    Lesson lesson;
    lesson.title = start->title;
    lesson.start = std::move(start);
    history_.push_back(std::move(lesson));
}

LessonDraft::LessonDraft(Lesson lesson) { history_.push_back(std::move(lesson)); }

Result<Done> LessonDraft::noStep(int step) const {
    if (step >= 0 && step < lesson().stepCount()) return Done{};
    return Error{ErrorKind::Range, fmt::format("there is no step {}", step + 1), {}, {}};
}

/// Works out all benches anew; only what can be applied becomes the present lesson.
Result<Done> LessonDraft::change(Lesson changed) {
    auto built = rebuilt(std::move(changed));
    if (!built) return built.error();
    history_.erase(history_.begin() + static_cast<std::ptrdiff_t>(present_) + 1, history_.end());
    history_.push_back(std::move(built).value());
    ++present_;
    return Done{};
}

Result<Done> LessonDraft::record(const Bench& bench, std::string caption, std::string note) {
    Lesson changed = lesson();
    LessonStep step;
    step.caption = std::move(caption);
    step.note = std::move(note);
    step.edits = editBetween(*changed.benchAt(changed.stepCount() - 1), bench, {}).operations;
    changed.steps.push_back(std::move(step));
    return change(std::move(changed));
}

Result<Done> LessonDraft::reword(int step, std::string caption, std::string note) {
    if (auto there = noStep(step); !there) return there;
    Lesson changed = lesson();
    changed.steps[step].caption = std::move(caption);
    changed.steps[step].note = std::move(note);
    return change(std::move(changed));
}

Result<Done> LessonDraft::move(int step, int to) {
    for (const int each : {step, to}) {
        if (auto there = noStep(each); !there) return there;
    }
    Lesson changed = lesson();
    LessonStep moved = std::move(changed.steps[step]);
    changed.steps.erase(changed.steps.begin() + step);
    changed.steps.insert(changed.steps.begin() + to, std::move(moved));
    return change(std::move(changed));
}

Result<Done> LessonDraft::merge(int step) {
    for (const int each : {step, step + 1}) {
        if (auto there = noStep(each); !there) return there;
    }
    Lesson changed = lesson();
    LessonStep &one = changed.steps[step], &next = changed.steps[step + 1];
    one.edits.insert(one.edits.end(), next.edits.begin(), next.edits.end());
    // What is claimed, tried and shown is of the bench after both.
    one.then = std::move(next.then);
    one.tried = std::move(next.tried);
    if (next.show) one.show = next.show;
    if (!one.note.empty() && !next.note.empty()) one.note += ' ';
    one.note += next.note;
    changed.steps.erase(changed.steps.begin() + step + 1);
    return change(std::move(changed));
}

Result<Done> LessonDraft::split(int step, int edit, std::string caption) {
    if (auto there = noStep(step); !there) return there;
    Lesson changed = lesson();
    LessonStep& first = changed.steps[step];
    if (edit <= 0 || edit >= static_cast<int>(first.edits.size()))
        return Error{ErrorKind::Range, "a step is parted between two of its edits", {}, {}};
    LessonStep second = first;
    second.caption = std::move(caption);
    second.note.clear();
    second.edits.assign(first.edits.begin() + edit, first.edits.end());
    first.edits.resize(static_cast<std::size_t>(edit));
    // What is claimed, asked and tried belongs to the whole.
    first.then.clear();
    first.ask.reset();
    first.tried = {};
    first.opposite.reset();
    first.oppositeEdits.clear();
    first.kind = StepKind::Show;
    changed.steps.insert(changed.steps.begin() + step + 1, std::move(second));
    return change(std::move(changed));
}

Result<Done> LessonDraft::remove(int step) {
    if (auto there = noStep(step); !there) return there;
    Lesson changed = lesson();
    changed.steps.erase(changed.steps.begin() + step);
    return change(std::move(changed));
}

void LessonDraft::undo() {
    if (canUndo()) --present_;
}

void LessonDraft::redo() {
    if (canRedo()) ++present_;
}

}  // namespace tiepoint
