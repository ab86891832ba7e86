#pragma once
// Jumper: drawn from one hole (or socket) to another. An end over something taken goes to the nearest free hole of the same metal and
// says so. Its length shows while it is drawn. Taken out of the tray it is drawn by two clicks, or by one drag.

#include "ui/gesture/gesture.h"
#include "ui/scene/under.h"

namespace tiepoint::ui {

/// One end of a jumper as the pointer says it: where it goes, or why it can't, and what to say about it.
struct JumperAim {
    std::optional<JumperEnd> end;
    std::string words;
};
/// `under` names a hole, a socket or a bare lead, or nothing.
JumperAim aimJumper(const Picture& picture, const Under& under);
/// Red at a plus rail, black at a minus rail, else the chosen colour or the next of the others.
int jumperColourFor(const Hand& hand, const JumperEnd& a, const JumperEnd& b);

class JumperGesture : public Gesture {
public:
    JumperGesture(Hand& hand, const Under& under);
    /// Out of the tray: the first end is yet to come.
    JumperGesture(Hand& hand, int colour);

    void press(const Pointer& pointer) override;
    bool canLeaveSight() const override { return true; }
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override;

private:
    void begin(const JumperAim& aim);
    void show(const Pointer& pointer);
    void connectTo(const Pointer& pointer);
    Jumper jumperTo(const JumperEnd& end) const;
    void say(const std::string& words, const Pointer& pointer, bool refused);

    Under under_;                ///< where it began
    std::optional<int> colour_;  ///< taken from the tray
    bool fromTray_ = false;
    std::optional<JumperEnd> start_;
    std::string startWords_;
};

}  // namespace tiepoint::ui
