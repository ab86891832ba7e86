#include "ui/window/exercise_desk.h"

#include "core/compare/exercise_target.h"
#include "core/course/exercise.h"
#include "core/course/shipped.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"
#include "ui/view/key_list.h"

namespace tiepoint::ui {

ExerciseDesk::ExerciseDesk(const Parts& parts, QMenu& file, QAction* before, QWidget* window)
    : QObject(window),
      parts_(parts),
      menu_(new QMenu(QStringLiteral("&Exercises"), window)),
      compare_(new QAction(QStringLiteral("Compare with the &goal"), this)) {
    for (const ShippedLesson& each : shippedExercises()) {
        QAction* open = menu_->addAction(menuWords(qs(each.lesson->title)));
        const QString name = qs(each.name);
        connect(open, &QAction::triggered, this, [this, name] { parts_.files.openEmbedded(name); });
    }
    menu_->addSeparator();
    menu_->addAction(compare_);
    compare_->setShortcut(keysFor(KeyFor::Goal).front());
    window->addAction(compare_);
    file.insertMenu(before, menu_);
    connect(compare_, &QAction::triggered, this, &ExerciseDesk::compareWithGoal);
    connect(&parts_.files, &FileActions::opened, this, &ExerciseDesk::followFile);
    connect(&parts_.document, &BenchDocument::benchChanged, this, &ExerciseDesk::followBench);
}

QString ExerciseDesk::task() const {
    if (!isActive()) return {};
    const Lesson& lesson = *parts_.files.lesson();
    if (lesson.steps.empty()) return plainText(lesson.summary);
    const LessonStep& step = lesson.steps.front();
    return step.note.empty() ? plainText(step.caption)
                             : QStringLiteral("%1. %2").arg(plainText(step.caption), plainText(step.note));
}

/// Another file stands on the table.
void ExerciseDesk::followFile() {
    const auto& lesson = parts_.files.lesson();
    const bool was = isActive();
    target_ =
        lesson && isExercise(*lesson) ? std::make_shared<const ComparisonTarget>(exerciseTarget(*lesson)) : nullptr;
    if (!isActive()) {
        if (was) parts_.title.setRemark({});
        return;
    }
    followBench();
    sayTask();
}

/// What the limits leave, and locks anew: who else locks these actions lets go of them at each change.
void ExerciseDesk::followBench() {
    const auto& lesson = parts_.files.lesson();
    if (!isActive() || !lesson || !isExercise(*lesson)) return;
    parts_.title.setRemark(qs(limitsUsed(*parts_.document.bench(), lesson->limits)));
    if (hasLock(*lesson, "diagram")) {
        parts_.diagram->setChecked(false);
        parts_.diagram->setEnabled(false);
    }
    if (hasLock(*lesson, "tidying")) parts_.tidy->setEnabled(false);
}

void ExerciseDesk::sayTask() {
    parts_.bar.say(MessageBar::Tone::Notice, task(),
                   {{QStringLiteral("Compare with the goal (%1)").arg(compare_->shortcut().toString()),
                     [this] { compareWithGoal(); }}});
}

void ExerciseDesk::compareWithGoal() {
    if (!isActive())
        return parts_.bar.say(MessageBar::Tone::Notice,
                              QStringLiteral("No exercise is open. File, Exercises has some."));
    parts_.sheets.panel().compare(parts_.document.bench(), target_, task());
}

}  // namespace tiepoint::ui
