#pragma once
// The one gesture under way: begins it, leads it on and ends it, and knows whether the bench changes by its hand. Belongs to the
// window's thread.

#include "ui/gesture/gesture.h"

#include <QObject>

#include <memory>

namespace tiepoint::ui {

class GestureRun : public QObject {
    Q_OBJECT
public:
    bool canLeaveSight() const { return gesture_ && gesture_->canLeaveSight(); }
    bool isUnderWay() const { return gesture_ != nullptr; }
    /// Presses it where it begins; another must not be under way.
    void begin(std::unique_ptr<Gesture> gesture, const Pointer& pointer);
    // While one is under way.
    void move(const Pointer& pointer);
    void release(const Pointer& pointer);
    /// Whether the gesture took the key.
    bool key(int key, const Pointer& pointer);
    Point handleFor(Point hole) const { return gesture_->handleFor(hole); }
    /// Takes everything back, if one is under way.
    void cancel();
    /// The bench was changed: what is under way gives up, unless it did that itself. Whether something gave up.
    bool followBench();

Q_SIGNALS:
    void begun();  ///< before it is pressed
    void ended();

private:
    /// Calls the gesture and notes that the bench changes by its hand.
    template <class Call>
    void with(Call call);
    void end();

    std::unique_ptr<Gesture> gesture_;
    bool isCalled_ = false;
};

}  // namespace tiepoint::ui
