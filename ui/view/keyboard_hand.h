#pragma once
// The keyboard's hand: a cursor that walks from hole to hole, gestures led by it as by a pointer, and the space bar that presses and
// flips. What else the keys of the board do is said in board_keys.h.

#include "ui/view/board_keys.h"
#include "ui/view/hole_cursor.h"
#include "ui/view/knob_steps.h"
#include "ui/view/note_pen.h"
#include "ui/view/pointer_hand.h"
#include "ui/view/value_fields.h"

#include <QKeyEvent>

namespace tiepoint::ui {

class KeyboardHand : private KeyHost {
public:
    /// All must outlive it.
    struct Needs {
        Hand& hand;
        BenchMarks& marks;
        GestureRun& gestures;
        PointerHand& pointer;
        HoleCursor& cursor;
        KnobSteps& knobs;
        ValueFields& fields;
        NotePen& notes;
    };
    explicit KeyboardHand(const Needs& needs) : needs_(needs), keys_(needs.hand, *this) {}

    /// Whether the board wants the key before any shortcut of the window gets it.
    bool wants(const QKeyEvent& event) const { return keys_.wants(event); }
    bool press(const QKeyEvent& event);    ///< whether it was one of its keys
    bool release(const QKeyEvent& event);  ///< the same
    /// The keyboard has gone elsewhere; what the space bar holds down is let go of elsewhere.
    void loseFocus();

private:
    void beginTyping(const std::string& partId, const QString& typed) override {
        needs_.fields.beginTyping(partId, typed);
    }
    void letGo() override;
    void walk(int columns, int rows, Qt::KeyboardModifiers modifiers) override;
    void enter() override;
    void wire() override;
    void editNote(const std::string& id) override { needs_.notes.edit(id); }
    void stepValue(int steps) override;
    std::optional<Hole> cursorHole() const override { return needs_.cursor.hole(); }

    const Picture& picture() const { return needs_.hand.picture(); }
    /// Leads what is carried by arrows and Enter; whether the key was one of them.
    bool lead(const QKeyEvent& event);
    /// Presses or flips what is selected or in the cursor's hole, or lets go of it.
    void operate(bool down);
    std::string thingMeant() const;

    Needs needs_;
    BoardKeys keys_;
    std::string operated_;  ///< the button that the space bar holds down
};

}  // namespace tiepoint::ui
