#pragma once
// The keys of the board, while the view has the focus. Letters belong to the caps, so everything else is done without them:
//
//   arrows         move the selection by a hole, or a selected supply or meter on the table; with nothing selected, or with Ctrl, the cursor
//   Shift+arrows   stretch: move one end of the selected part or jumper
//   [ ]            turn what is selected, or else what the pointer or the cursor is at
//   Enter          take what is in the cursor's hole, or begin a jumper there; on a selected part: type its value
//   Insert         begin a jumper at the cursor; on a selected supply: take one of its leads
//   space          press the selected (or the cursor's) button, or flip its switch
//   + -            step through the values of the selected part, or turn its knob
//   Escape         let go
//
// While something is carried, arrows lead it from hole to hole and Enter lets it go there. Each is one line of the table in board_keys.cpp.

#include "ui/gesture/hand.h"

#include <QKeyEvent>

namespace tiepoint::ui {

/// What only the view can do for a key.
class KeyHost {
public:
    virtual ~KeyHost() = default;
    virtual void beginTyping(const std::string& partId, const QString& typed) = 0;
    virtual void letGo() = 0;  ///< cancels the gesture, or else clears the selection, or else hides the cursor
    virtual void walk(int columns, int rows,
                      Qt::KeyboardModifiers modifiers) = 0;  ///< moves the cursor, with Ctrl by five holes
    virtual void enter() = 0;  ///< takes what is in the cursor's hole, or begins a jumper there
    virtual void wire() = 0;
    virtual void editNote(const std::string& id) = 0;
    virtual void stepValue(int steps) = 0;
    virtual std::optional<Hole> cursorHole() const = 0;
};

class BoardKeys {
public:
    BoardKeys(Hand& hand, KeyHost& host) : hand_(hand), host_(host) {}

    /// Whether the board wants the key before any shortcut of the window gets it.
    bool wants(const QKeyEvent& event) const;
    bool press(const QKeyEvent& event);
    bool release(const QKeyEvent& event);

private:
    struct Row;
    static const Row kTable[];

    std::string partWithCap(const QKeyEvent& event) const;
    const Part* soleSelection() const;
    bool pressCap(const QKeyEvent& event);
    bool turn(const QKeyEvent& event);
    bool arrow(const QKeyEvent& event);
    bool shift(int columns, int rows);
    bool shiftBox(const Part& box, int columns, int rows);
    bool stretch(int columns, int rows);
    bool insert(const QKeyEvent& event);
    bool step(const QKeyEvent& event);
    bool type(const QKeyEvent& event);
    bool letGo(const QKeyEvent& event);

    Hand& hand_;
    KeyHost& host_;
};

}  // namespace tiepoint::ui
