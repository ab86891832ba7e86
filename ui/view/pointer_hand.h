#pragma once
// The pointer's hand: makes gestures of presses, moves and releases, and hovers in between. What comes out of the tray, or is led by the
// keyboard, is carried with the button up; whatever ends it, one gesture is under way at a time. Belongs to the window's thread.

#include "ui/view/edge_scroll.h"
#include "ui/view/gesture_run.h"
#include "ui/view/hovering.h"
#include "ui/view/room_mode.h"

#include <QMouseEvent>
#include <QObject>

namespace tiepoint::ui {

class PointerHand : public QObject {
    Q_OBJECT
public:
    /// All must outlive it.
    struct Needs {
        QWidget& viewport;
        Hand& hand;
        GestureRun& gestures;
        Hovering& hovering;
        Camera& camera;
        RoomMode& room;
    };
    explicit PointerHand(const Needs& needs);

    void press(const QMouseEvent& event);
    void move(const QMouseEvent& event) { move(event.position(), event.buttons(), event.modifiers()); }
    void release(const QMouseEvent& event) { release(event.position(), event.button(), event.modifiers()); }
    bool key(int key, Qt::KeyboardModifiers modifiers);  ///< whether the gesture under way took it
    /// Begins a gesture at a place of the bench as if by the pointer there, with the button up.
    void carry(std::unique_ptr<Gesture> gesture, Point at);
    /// The same for what leaves the tray at a place of the viewport: until it ends the mouse is followed wherever it is.
    void carryFromTray(std::unique_ptr<Gesture> gesture, QPointF inView);
    /// Leads what is carried to a place of the bench, or lets it go there.
    void lead(Point at, Qt::KeyboardModifiers modifiers, bool letGo);

    QPointF at() const { return at_; }  ///< where the hand was last, in the viewport
    void setAt(QPointF inView);
    bool isButtonDown() const { return buttonDown_; }
    void setSpaceHeld(bool held) { spaceHeld_ = held; }

    /// Follows moves over other widgets, which still get them.
    bool eventFilter(QObject* watched, QEvent* event) override;

Q_SIGNALS:
    void pressed();  ///< any button, over the bench
    void moved();
    void findingChosen(int finding);

private:
    static constexpr double kDragPixels = 4;

    void move(QPointF inView, Qt::MouseButtons buttons, Qt::KeyboardModifiers modifiers);
    void release(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers);
    Pointer pointerAt(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) const;
    void pressAgain(Qt::MouseButton button);
    void beginAt(const Pointer& pointer);
    void carryWithButtonUp();
    bool isFar(QPointF inView) const { return QLineF(downAt_, inView).length() >= kDragPixels; }
    void forget();
    void scroll(QPointF pixels, Qt::KeyboardModifiers modifiers);

    Needs needs_;
    EdgeScroll edge_;
    QPointF at_, downAt_;
    Qt::MouseButton downButton_ = Qt::NoButton;
    bool dragged_ = false, buttonDown_ = false;
    bool elsewhere_ = false;  ///< the mouse belongs to whichever widget it went down on
    bool spaceHeld_ = false;
    int pressedFinding_ = -1;  ///< whose symbol the button went down on
};

}  // namespace tiepoint::ui
