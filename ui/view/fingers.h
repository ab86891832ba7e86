#pragma once
// Fingers: each one on a cap presses it, several at a time. A first finger anywhere else is left to the system, which makes a mouse of it.

#include "ui/view/hovering.h"

#include <QTouchEvent>

#include <map>
#include <string>

namespace tiepoint::ui {

class Fingers {
public:
    /// Both must outlive it.
    Fingers(Hand& hand, const Hovering& hovering) : hand_(hand), hovering_(hovering) {}
    /// Whether the event is the bench's.
    bool touch(const QTouchEvent& event);
    /// What they pressed is let go of elsewhere.
    void forget() { pressed_.clear(); }

private:
    void put(int finger, QPointF inView);
    void lift(int finger);

    Hand& hand_;
    const Hovering& hovering_;
    std::map<int, std::string> pressed_;  ///< the button under each, by its number
};

}  // namespace tiepoint::ui
