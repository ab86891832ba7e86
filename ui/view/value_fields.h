#pragma once
// The fields over the board for the value of the one selected part: its ladder, and the box in which a value is typed.

#include "ui/view/camera.h"
#include "ui/view/gesture_run.h"
#include "ui/view/value_box.h"
#include "ui/view/value_ladder.h"

#include <QObject>

namespace tiepoint::ui {

class ValueFields : public QObject {
    Q_OBJECT
public:
    /// Children of `parent`; picture, gestures and camera must outlive it.
    ValueFields(BenchDocument& document, const Picture& picture, const GestureRun& gestures, const Camera& camera,
                QWidget* parent);

    void setTheme(const Theme& theme);
    void setDrawer(const ResistorDrawer& drawer) { ladder_.setDrawer(drawer); }
    /// A part of the view that something of the window covers: the fields keep off it.
    void setCovered(const QRect& inView);
    void setLadderAllowed(bool allowed);
    /// Puts the ladder beside the selected part, out of the way while something is carried.
    void follow();
    /// Opens the box for a part, with what was typed so far.
    void beginTyping(const std::string& partId, const QString& typed);
    bool isTyping() const { return box_.isTyping(); }
    bool hasLadder() const { return ladder_.isVisible(); }
    /// Steps up or down the ladder; false if the selected part has none.
    bool step(int steps) { return ladder_.step(steps); }
    void turnWheel(double notches) { ladder_.turnWheel(notches); }

Q_SIGNALS:
    void done();  ///< the keyboard may go back to the bench
    /// The value isn't a figure to be typed over the board (an LED's colour).
    void cardWanted(const QString& partId);

private:
    const Picture& picture_;
    const GestureRun& gestures_;
    const Camera& camera_;
    ValueBox box_;
    ValueLadder ladder_;
    bool ladderAllowed_ = true;
};

}  // namespace tiepoint::ui
