#pragma once
// Projecting for a room: the window fills the screen with the circuit; ink, and a blank screen while everybody looks at the teacher.
// Ends as it was: a window that was full screen before stays so.

#include "ui/theme/look.h"
#include "ui/view/bench_view.h"
#include "ui/window/actions.h"

#include <QToolButton>

namespace tiepoint::ui {

class Projection : public QObject {
    Q_OBJECT

public:
    /// `window` is the top level window; it owns the projection.
    Projection(BenchView& view, const Actions& actions, QWidget& window);

    void setProjecting(bool projecting);
    bool isProjecting() const { return projecting_; }
    bool isBlank() const { return blank_->isVisible(); }
    QToolButton& endButton() const { return *end_; }
    /// What the button that ends it takes above the bench, pixels.
    int bandHeight(const Look& look);
    /// From the screen's edge to beyond that button, as it was styled last.
    int buttonBreadth() const;
    /// Places that button and the blank in what belongs to the bench and the band.
    void placeIn(const QRect& frame, const Look& look);

Q_SIGNALS:
    void changed();
    void themeOffered();  ///< the room would see more in another theme

public:
    /// Locks the scale of the arrows as it is, so that twice the current is twice the breadth after an edit too.
    void lockScale();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void setBlank(bool blank);
    void styleEnd(const Look& look);

    BenchView& view_;
    const Actions& actions_;
    QWidget& window_;
    QWidget* blank_;
    QToolButton* end_;
    bool projecting_ = false, wasFullScreen_ = false;
    bool locked_ = false;  ///< the arrows' scale was locked for the room, and goes on by itself afterwards
};

}  // namespace tiepoint::ui
