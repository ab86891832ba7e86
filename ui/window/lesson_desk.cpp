#include "ui/window/lesson_desk.h"

#include "core/course/exercise.h"
#include "ui/lesson/lesson_sizes.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"
#include "ui/view/bench_marks.h"

#include <QGuiApplication>
#include <QScreen>

#include <utility>

namespace tiepoint::ui {

LessonDesk::LessonDesk(const Parts& parts, QWidget* stage, QWidget* window)
    : QObject(window),
      parts_(parts),
      stage_(stage),
      run_(new LessonRun(parts.document, parts.live, parts.recordFolder, this)),
      caption_(new LessonCaption(*run_, stage)),
      band_(new LessonBand(*run_, stage)),
      ghost_(new GhostBoard(*run_, parts.view, stage)),
      glide_(new Glide(parts.view, stage)),
      paper_(new PaperQuestions(stage)) {
    connect(&parts_.files, &FileActions::opened, this, [this] { run_->setLesson(parts_.files.lesson()); });
    connect(run_, &LessonRun::lessonChanged, this, &LessonDesk::followLesson);
    connect(run_, &LessonRun::aboutToMove, glide_, &Glide::keepBefore);
    connect(run_, &LessonRun::stepChanged, this, &LessonDesk::followStep);
    connect(run_, &LessonRun::changed, this, &LessonDesk::follow);
    connect(parts_.actions.nextStep, &QAction::triggered, this, &LessonDesk::next);
    connect(parts_.actions.previousStep, &QAction::triggered, this, &LessonDesk::previous);
    connect(&parts_.projection, &Projection::changed, this, [this] {
        if (parts_.projection.isProjecting()) return;
        paper_->hide();
        run_->end();
    });
    followLesson();
}

void LessonDesk::followLesson() {
    const bool there = run_->lesson() != nullptr;
    paper_->hide();
    parts_.actions.nextStep->setEnabled(there);
    parts_.actions.previousStep->setEnabled(there);
    if (!there || isExercise(*run_->lesson())) return;  // an exercise says its task itself
    const Lesson& lesson = *run_->lesson();
    std::vector<MessageBar::Offer> offers{{QStringLiteral("Begin"), [this] { begin(0); }},
                                          {QStringLiteral("Begin in the projector theme"), [this] {
                                               parts_.actions.themeProjector->trigger();
                                               begin(0);
                                           }}};
    if (const int before = run_->stepBefore(); before > 0 && before + 1 < lesson.stepCount())
        offers.push_back({QStringLiteral("Go on at step %1").arg(before + 1), [this, before] { begin(before); }});
    if (!run_->lastLesson().paper.empty())
        offers.push_back({QStringLiteral("First the last lesson's questions"), [this] { askAgain(); }});
    parts_.bar.say(MessageBar::Tone::Notice,
                   QStringLiteral("A lesson: %1, %2 steps, %3 minutes. Page Down shows the first to the room.")
                       .arg(qs(lesson.title))
                       .arg(lesson.stepCount())
                       .arg(lesson.minutes),
                   offers);
}

void LessonDesk::begin(int step) {
    paper_->hide();
    parts_.actions.project->setChecked(true);
    parts_.bar.dismiss();  // what projecting says too
    run_->goTo(step);
}

/// The questions that ended the last lesson, before this one begins.
void LessonDesk::askAgain() {
    parts_.actions.project->setChecked(true);
    parts_.bar.dismiss();
    QStringList questions;
    for (const std::string& each : run_->lastLesson().paper) questions << plainText(each);
    paper_->ask(QStringLiteral("Once more, from \u201c%1\u201d").arg(plainText(run_->lastLesson().lesson)), questions);
}

void LessonDesk::next() {
    if (!run_->lesson()) return;
    parts_.bar.dismiss();
    if (!run_->isRunning()) return begin(0);
    if (paper_->isVisible()) return paper_->hide();
    if (!run_->isAtEnd() || run_->lesson()->paper.empty()) return run_->next();
    QStringList questions;
    for (const std::string& each : run_->lesson()->paper) questions << plainText(each);
    paper_->ask(QStringLiteral("On paper"), questions);
}

void LessonDesk::previous() {
    if (paper_->isVisible()) return paper_->hide();
    run_->previous();
}

/// Another step stands on the table, or none any more.
void LessonDesk::followStep(int before) {
    const bool giving = run_->isRunning();
    if (giving && before < 0) {
        before_ = parts_.view.views();
        sheetBefore_ = parts_.diagram->isChecked();
        parts_.memory.setResting(true);
        if (QGuiApplication::screens().size() > 1) showTeacherWords(true);
    }
    parts_.projection.endButton().setVisible(!giving && parts_.projection.isProjecting());
    if (!giving) fitted_ = {};
    caption_->setVisible(giving);
    band_->setVisible(giving);
    glidePending_ = giving;
    parts_.view.setLadderAllowed(!giving);
    parts_.view.forgetBefore();  // steps are no edits of a hand: what was read before them is another circuit's
    if (giving) showStep();
    if (!giving && before >= 0) {
        parts_.view.setViews(before_);
        parts_.diagram->setChecked(sheetBefore_);
        parts_.view.setSelection({});
        parts_.view.marks().set(&Marks::guide, std::vector<Hole>());
        parts_.memory.setResting(false);
        showTeacherWords(false);
    }
}

/// The views and places of the present step.
void LessonDesk::showStep() {
    const LessonStep& step = run_->present();
    Views views = step.show.value_or(Views{});
    if (!views.lockedFullScaleAmpere) views.lockedFullScaleAmpere = run_->fullScaleAmpere();
    parts_.view.setViews(views);
    parts_.diagram->setChecked(step.sheet);
    QStringList things;
    std::vector<Hole> holes;
    for (const std::string& place : step.places) {
        if (const auto hole = parseHole(place))
            holes.push_back(*hole);
        else
            things << qs(place);
    }
    parts_.view.setSelection(things);
    parts_.view.marks().set(&Marks::guide, holes);
}

void LessonDesk::follow() {
    parts_.view.setVeiled(run_->isVeiled());
    ghost_->setVisible(run_->showsWrongIdea());
    Q_EMIT arrangeWanted();
}

void LessonDesk::showTeacherWords(bool shown) {
    if (!shown) {
        if (words_) words_->hide();
        return;
    }
    if (!words_) words_ = new TeacherWords(*run_, stage_);
    const QWidget* window = stage_->window();
    for (QScreen* screen : QGuiApplication::screens()) {
        if (screen == window->screen()) continue;
        words_->setGeometry(screen->availableGeometry());
        break;
    }
    words_->show();
    stage_->window()->activateWindow();  // some window systems give a new window the keys all the same
}

void LessonDesk::setLook(const Look& look) {
    caption_->setLook(look);
    band_->setLook(look);
    ghost_->setLook(look);
    paper_->setLook(look);
    if (words_) words_->setTheme(*look.theme);
}

LessonDesk::Room LessonDesk::roomWanted() const {
    if (!isGiving()) return {};
    const int high = stage_->window()->height();
    return {caption_->wantedHeight(high), band_->wantedHeight(high),
            run_->showsWrongIdea() ? static_cast<int>(kGhostShare * stage_->width()) : 0};
}

void LessonDesk::placeIn(const QRect& stage) {
    paper_->setGeometry(stage);
    if (!isGiving()) return;
    const Room room = roomWanted();
    caption_->setGeometry(stage.left(), stage.top(), stage.width(), room.above);
    caption_->setGhostLeft(room.right > 0 ? stage.width() - room.right : 0);
    band_->setGeometry(stage.left(), stage.bottom() + 1 - room.below, stage.width(), room.below);
    ghost_->setGeometry(stage.right() + 1 - room.right, stage.top() + room.above, room.right,
                        stage.height() - room.above - room.below);
}

void LessonDesk::settle() {
    if (!isGiving()) return;
    // All of the circuit in the room that is left to it, and the ghost at the same scale.
    const QSize before = std::exchange(fitted_, parts_.view.size());
    if (glidePending_ || before != parts_.view.size()) parts_.view.fitBench();
    if (ghost_->isVisible()) ghost_->refresh();
    if (std::exchange(glidePending_, false)) glide_->begin();
    caption_->raise();
    band_->raise();
    paper_->raise();
}

}  // namespace tiepoint::ui
