#pragma once
// What the teacher alone sees, on a screen of their own: the words of this step, and what comes next. Window's thread only.

#include "ui/lesson/lesson_run.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QWidget>

namespace tiepoint::ui {

class TeacherWords : public QWidget {
    Q_OBJECT
public:
    TeacherWords(const LessonRun& run, QWidget* parent);
    void setTheme(const Theme& theme);
    /// "Now: ...", "Next: ...", as they are shown.
    QStringList lines() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const LessonRun& run_;
    const Theme* theme_;
    WordSheet sheet_{this};
};

}  // namespace tiepoint::ui
