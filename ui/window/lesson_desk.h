#pragma once
// Giving a lesson in the window: joins the lesson that was opened to its keys, to the table, to what stands above and below it, and to the
// teacher's own screen. The window only asks it for room. Window's thread only.

#include "ui/document/file_actions.h"
#include "ui/lesson/ghost_board.h"
#include "ui/lesson/glide.h"
#include "ui/lesson/lesson_band.h"
#include "ui/lesson/lesson_caption.h"
#include "ui/lesson/lesson_run.h"
#include "ui/lesson/paper_questions.h"
#include "ui/window/actions.h"
#include "ui/window/message_bar.h"
#include "ui/window/projection.h"
#include "ui/window/teacher_words.h"
#include "ui/window/view_memory.h"

#include <QObject>
#include <QPointer>

namespace tiepoint::ui {

class LessonDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        FileActions& files;
        MessageBar& bar;
        Projection& projection;
        ViewMemory& memory;
        const Actions& actions;
        QAction* diagram;      ///< the circuit diagram, shown by steps that ask for it
        QString recordFolder;  ///< what is counted is kept there
    };

    LessonDesk(const Parts& parts, QWidget* stage, QWidget* window);

    LessonRun& run() const { return *run_; }
    LessonCaption& caption() const { return *caption_; }
    LessonBand& band() const { return *band_; }
    GhostBoard& ghost() const { return *ghost_; }
    Glide& glide() const { return *glide_; }
    PaperQuestions& paper() const { return *paper_; }
    TeacherWords* teacherWords() const { return words_; }
    /// Shows the teacher's words in a window of their own; by itself where there is a second screen.
    void showTeacherWords(bool shown);

    bool isGiving() const { return run_->isRunning(); }
    void setLook(const Look& look);
    /// What it takes of the stage's height above and below, and of its breadth at the right.
    struct Room {
        int above = 0, below = 0, right = 0;
    };
    Room roomWanted() const;
    /// `stage` is all of it.
    void placeIn(const QRect& stage);
    /// After the view has its place.
    void settle();

Q_SIGNALS:
    void arrangeWanted();

private:
    void followLesson();
    void next();
    void previous();
    void begin(int step);
    void askAgain();
    void followStep(int before);
    void follow();
    void showStep();

    Parts parts_;
    QWidget* stage_;
    LessonRun* run_;
    LessonCaption* caption_;
    LessonBand* band_;
    GhostBoard* ghost_;
    Glide* glide_;
    PaperQuestions* paper_;
    QPointer<TeacherWords> words_;
    Views before_;  ///< shown before the lesson was given
    bool sheetBefore_ = false;
    bool glidePending_ = false;
    QSize fitted_;  ///< of the view for which the circuit was fitted last
};

}  // namespace tiepoint::ui
