#pragma once
// The keys of the board, while the view has the focus: letters on caps press them, [ and ] turn, arrows move, digits and Enter type a
// value, Escape lets go. Each is one line of the table in board_keys.cpp.

#include "ui/gesture/hand.h"

#include <QKeyEvent>

namespace tiepoint::ui {

/// What only the view can do for a key.
class KeyHost {
public:
    virtual ~KeyHost() = default;
    virtual void beginTyping(const std::string& partId, const QString& typed) = 0;
    virtual void letGo() = 0;  ///< cancels the gesture, or else clears the selection
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
    bool shift(const QKeyEvent& event);
    bool type(const QKeyEvent& event);
    bool letGo(const QKeyEvent& event);
    Point wordsAt() const;

    Hand& hand_;
    KeyHost& host_;
};

}  // namespace tiepoint::ui
