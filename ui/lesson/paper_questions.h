#pragma once
// The two questions that a class answers on paper: at the end of a lesson, and again at the start of the next. They stand alone before the room.
// Window's thread only.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QStringList>
#include <QWidget>

namespace tiepoint::ui {

class PaperQuestions : public QWidget {
    Q_OBJECT
public:
    explicit PaperQuestions(QWidget* stage);

    void setLook(const Look& look);
    /// Covers the stage with a heading and the questions.
    void ask(const QString& heading, const QStringList& questions);
    const QString& heading() const { return heading_; }
    const QStringList& questions() const { return questions_; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Look look_;
    WordSheet sheet_{this};
    QString heading_;
    QStringList questions_;
};

}  // namespace tiepoint::ui
