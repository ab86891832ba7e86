#pragma once
// A wrong idea as a grey ghost beside the truth: the same bench at the same scale with the idea's own currents, without colour and light, its
// edges fading; where it breaks a law a collar and one flag in words, the only colour on it. Window's thread only.

#include "ui/lesson/lesson_run.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/view/bench_view.h"

#include <QPixmap>
#include <QWidget>

#include <vector>

namespace tiepoint::ui {

class GhostBoard : public QWidget {
    Q_OBJECT
public:
    GhostBoard(const LessonRun& run, const BenchView& view, QWidget* parent);
    void setLook(const Look& look);
    /// Draws it anew, after the place or the step changed.
    void refresh();
    /// Where the law breaks, in the widget; empty where it breaks none.
    QRectF flagPlace() const { return flag_; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QPointF seen(Point mm) const;
    struct Tag {
        QRectF frame;
        QPointF end;  ///< of its leader, on its hole
        QString text;
        bool above = true;
    };
    std::vector<Tag> tags() const;
    void paintTags(QPainter& painter);
    void paintBreak(QPainter& painter);

    const LessonRun& run_;
    const BenchView& view_;
    Look look_;
    WordSheet sheet_{this};
    QPixmap grey_;
    double scale_ = 1;  ///< pixels a millimetre
    QPointF origin_;    ///< of the table, in the widget
    QRectF flag_;
};

}  // namespace tiepoint::ui
