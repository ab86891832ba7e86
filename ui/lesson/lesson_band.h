#pragma once
// What stands below the bench while a lesson is given: the question with its answers and the hands counted for each, or the tables whose boards
// are looked at, and under them the steps as small boards. Answers are buttons: a click counts one more hand, a right click one less, digits
// set the number. Window's thread only.

#include "ui/lesson/diagram_answers.h"
#include "ui/lesson/lesson_run.h"
#include "ui/lesson/lesson_sizes.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QWidget>

#include <vector>

namespace tiepoint::ui {

class LessonBand : public QWidget {
    Q_OBJECT
public:
    LessonBand(LessonRun& run, QWidget* parent);
    void setLook(const Look& look);
    /// How high it wants to stand in a window of that height.
    int wantedHeight(int window) const;

    QRectF answerPlace(int answer) const;
    QRectF byTablePlace() const;           ///< the key that counts table by table
    QRectF countedPlace(int table) const;  ///< the table whose hands are counted, 1 to 15
    QRectF tablePlace(int table) const;    ///< 1 to 15
    QRectF stepPlace(int step) const;
    int focusedAnswer() const { return focused_; }

protected:
    /// While hands are counted, digits and arrows are the band's before they are the window's.
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    /// Tab goes from table to table while hands are counted so.
    bool focusNextPrevChild(bool next) override;

private:
    bool asks() const { return run_.isRunning() && run_.present().ask.has_value(); }
    bool ticks() const { return run_.isRunning() && run_.present().kind == StepKind::Stop; }
    bool countsHands() const;
    bool countsTables() const { return countsHands() && run_.countsByTable(); }
    double tableRow() const { return countsTables() ? kTableRowShare : 0; }
    bool asksDiagrams() const { return asks() && run_.present().ask->diagrams > 0; }
    double answerShare() const { return asksDiagrams() ? kDiagramShare : kAnswerShare; }
    double high() const { return window()->height(); }
    double side() const;
    int answerAt(QPointF place) const;
    int counting(int answer) const;
    void paintQuestion(QPainter& painter);
    void paintAnswer(QPainter& painter, int answer);
    void paintTickAt(QPainter& painter, QPointF corner);
    void paintByTable(QPainter& painter);
    void paintTable(QPainter& painter, const QRectF& frame, int table, bool marked);
    void paintTables(QPainter& painter);
    void paintSteps(QPainter& painter);
    void follow();

    LessonRun& run_;
    Look look_;
    WordSheet sheet_{this};
    DiagramAnswers diagrams_;
    int focused_ = -1;
    int typed_ = -1;  ///< digits typed so far for the focused answer
};

}  // namespace tiepoint::ui
