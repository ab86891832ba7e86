#pragma once
// What stands above the bench while a lesson is given: the caption in one line, and over a ghost what it is. Window's thread only.

#include "ui/lesson/lesson_run.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QWidget>

namespace tiepoint::ui {

class LessonCaption : public QWidget {
    Q_OBJECT
public:
    LessonCaption(const LessonRun& run, QWidget* parent);
    void setLook(const Look& look);
    /// How high it wants to stand in a window of that height.
    int wantedHeight(int window) const;
    /// Where the ghost begins; 0: there is none.
    void setGhostLeft(int left);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const LessonRun& run_;
    Look look_;
    WordSheet sheet_{this};
    int ghostLeft_ = 0;
};

}  // namespace tiepoint::ui
