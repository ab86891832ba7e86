#include "ui/window/lesson_recorder.h"

#include "core/course/lesson_file.h"
#include "core/edit/step_words.h"
#include "ui/document/file_dialogs.h"
#include "ui/theme/qs.h"

#include <QDir>
#include <QFile>

namespace tiepoint::ui {
namespace {

const QString kLessonEnding = QStringLiteral(".lesson.json");

}  // namespace

LessonRecorder::LessonRecorder(BenchDocument& document, MessageBar& bar, const Actions& actions, const QString& folder,
                               QWidget* window)
    : QObject(window),
      document_(document),
      bar_(bar),
      actions_(actions),
      folder_(folder),
      askPath_(fileDialogs(window).savePath) {
    connect(actions_.record, &QAction::toggled, this, &LessonRecorder::setRecording);
    connect(actions_.markStep, &QAction::triggered, this, &LessonRecorder::askStep);
    actions_.markStep->setEnabled(false);
    connect(&document_, &BenchDocument::benchReplaced, this, [this] { actions_.record->setChecked(false); });
}

void LessonRecorder::setRecording(bool recording) {
    actions_.markStep->setEnabled(recording);
    if (!recording) {
        if (draft_ && draft_->lesson().stepCount() > 0) save();
        draft_.reset();
        return;
    }
    draft_.emplace(document_.bench());
    bar_.say(
        MessageBar::Tone::Notice,
        QStringLiteral("Recording a lesson that begins with this bench. Build, then press Ctrl+J: this is a step."));
}

/// What was done since the last step, in words.
QString LessonRecorder::suggestion() const {
    const Lesson& lesson = draft_->lesson();
    const Bench& before = *lesson.benchAt(lesson.stepCount() - 1);
    return qs(stepNote(before, editBetween(before, *document_.bench(), "Look"), *document_.bench()).words);
}

void LessonRecorder::askStep() {
    if (!draft_) return;
    MessageBar::Question ask;
    ask.line = QStringLiteral("Step %1: what is its caption?").arg(draft_->lesson().stepCount() + 1);
    ask.more = QStringLiteral("One short line for the room. Empty: “%1”.").arg(suggestion());
    ask.phrase = true;
    ask.masked = false;
    ask.answers = {{QStringLiteral("This is a step"), [this] { addStep(bar_.phrase().text().trimmed()); }},
                   {QStringLiteral("Cancel"), [] {}}};
    ask.safe = 1;
    ask.cancel = [] {};
    bar_.ask(std::move(ask));
}

void LessonRecorder::addStep(const QString& caption) {
    if (!draft_) return;
    const QString words = caption.isEmpty() ? suggestion() : caption;
    if (const auto done = draft_->record(*document_.bench(), words.toStdString()); !done)
        return bar_.say(MessageBar::Tone::Trouble, qs(done.error().message));
    keep();
    tellLast();
}

void LessonRecorder::tellLast() {
    const Lesson& lesson = draft_->lesson();
    if (lesson.steps.empty())
        return bar_.say(MessageBar::Tone::Notice,
                        QStringLiteral("No step yet. Build, then press Ctrl+J: this is a step."));
    std::vector<MessageBar::Offer> offers{{QStringLiteral("Take back"), [this] {
                                               draft_->undo();
                                               keep();
                                               tellLast();
                                           }}};
    if (lesson.stepCount() > 1) {
        offers.push_back({QStringLiteral("Join to the one before"), [this] {
                              if (!draft_->merge(draft_->lesson().stepCount() - 2)) return;
                              keep();
                              tellLast();
                          }});
    }
    offers.push_back({QStringLiteral("Save the lesson…"), [this] { save(); }});
    bar_.say(MessageBar::Tone::Notice,
             QStringLiteral("Step %1: %2").arg(lesson.stepCount()).arg(qs(lesson.steps.back().caption)), offers);
}

/// A copy on the disk from the first step on.
void LessonRecorder::keep() {
    QDir().mkpath(folder_);
    if (const auto kept = writeLessonFile(draft_->lesson(), keptPath().toStdString()); !kept)
        bar_.say(MessageBar::Tone::Trouble, qs(kept.error().oneLine()));
}

void LessonRecorder::save() {
    const Lesson lesson = draft_->lesson();  // recording may have ended when the answer comes
    askPath_(qs(lesson.title) + kLessonEnding, [this, lesson](const QString& chosen) {
        if (chosen.isEmpty()) return;
        const QString path = chosen.endsWith(QStringLiteral(".json")) ? chosen : chosen + kLessonEnding;
        const auto written = writeLessonFile(lesson, path.toStdString());
        if (!written) return bar_.say(MessageBar::Tone::Trouble, qs(written.error().oneLine()));
        QFile::remove(keptPath());
        bar_.say(MessageBar::Tone::Notice, QStringLiteral("The lesson is saved: %1.").arg(path));
    });
}

}  // namespace tiepoint::ui
