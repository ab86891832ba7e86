#include "ui/view/keyboard_hand.h"

#include "core/edit/placement.h"
#include "ui/gesture/jumper_gesture.h"
#include "ui/gesture/knob_gesture.h"
#include "ui/gesture/lead_gesture.h"
#include "ui/gesture/press_gesture.h"
#include "ui/gesture/selecting.h"

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kKnobStep = 0.05;  ///< of its range
constexpr int kStride = 5;          ///< holes of a step with Ctrl, as they are counted on the printing
constexpr const char* kLeadWords = "arrows lead it, Enter plugs it in";

/// The free socket of a part, or nothing.
std::optional<Socket> freeSocket(const Bench& bench, const Part& part) {
    for (int lead = 0; lead < static_cast<int>(part.kind->leads.size()); ++lead) {
        const JumperEnd end = Socket{part.id, lead};
        const bool taken = std::any_of(bench.jumpers.begin(), bench.jumpers.end(),
                                       [&](const Jumper& j) { return j.ends[0] == end || j.ends[1] == end; });
        if (part.kind->leads[static_cast<std::size_t>(lead)].socket && !taken) return Socket{part.id, lead};
    }
    return std::nullopt;
}

/// The lead of a supply to take in hand: the first that hangs, else the first.
int leadToTake(const Part& part) {
    const auto hanging = std::find(part.leads.begin(), part.leads.end(), std::nullopt);
    return hanging == part.leads.end() ? 0 : static_cast<int>(hanging - part.leads.begin());
}

/// What Insert begins at a hole of the cursor: a lead of the selected supply, or a jumper.
std::unique_ptr<Gesture> wiring(Hand& hand, const Part* selected, const Hole& cursor) {
    const bool stands = selected && selected->kind->package->reach == Reach::Flying;
    if (stands && !selected->kind->leads.front().socket)
        return std::make_unique<LeadGesture>(hand, End{selected->id, leadToTake(*selected), false});
    Under under;
    if (stands)
        under.socket = freeSocket(hand.picture().bench(), *selected);
    else
        under.hole = cursor;
    return std::make_unique<JumperGesture>(hand, under);
}

}  // namespace

bool KeyboardHand::press(const QKeyEvent& event) {
    if (event.key() == Qt::Key_Space) {
        needs_.pointer.setSpaceHeld(true);
        if (!event.isAutoRepeat()) operate(true);
        return true;
    }
    if (needs_.gestures.isUnderWay()) {
        if (event.key() == Qt::Key_Escape) {
            needs_.gestures.cancel();
            return true;
        }
        if (needs_.pointer.key(event.key(), event.modifiers()) || lead(event)) return true;
    }
    return keys_.press(event);
}

bool KeyboardHand::release(const QKeyEvent& event) {
    if (event.key() == Qt::Key_Space && !event.isAutoRepeat()) {
        needs_.pointer.setSpaceHeld(false);
        operate(false);
    }
    return keys_.release(event);
}

void KeyboardHand::loseFocus() {
    needs_.pointer.setSpaceHeld(false);
    operated_.clear();
}

bool KeyboardHand::lead(const QKeyEvent& event) {
    if (!needs_.gestures.isUnderWay() || needs_.pointer.isButtonDown()) return false;  // the mouse has it
    const int key = event.key();
    const bool arrow = key >= Qt::Key_Left && key <= Qt::Key_Down;
    const bool ends = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (!arrow && !ends) return false;
    if (arrow)
        walk(key == Qt::Key_Left    ? -1
             : key == Qt::Key_Right ? 1
                                    : 0,
             key == Qt::Key_Up     ? -1
             : key == Qt::Key_Down ? 1
                                   : 0,
             event.modifiers());
    const auto& hole = needs_.cursor.hole();
    if (!hole) return true;
    const Point at = needs_.gestures.handleFor(picture().seenAt(*hole));
    needs_.pointer.lead(at, event.modifiers(), false);
    if (ends && needs_.gestures.isUnderWay()) {
        // What can't go there stays in the hand, and the reason stands beside it.
        if (const Marks& marks = picture().marks; marks.refused && !marks.say.empty())
            needs_.hand.flash(std::string(marks.say), marks.sayAt);
        else
            needs_.pointer.lead(at, event.modifiers(), true);
    }
    if (!needs_.gestures.isUnderWay() && hole) needs_.cursor.show(*hole);
    return true;
}

/// With Ctrl five holes at once. A hidden cursor only shows where it is.
void KeyboardHand::walk(int columns, int rows, Qt::KeyboardModifiers modifiers) {
    const int steps = modifiers & Qt::ControlModifier && needs_.cursor.hole() ? kStride : 1;
    for (int i = 0; i < steps; ++i) needs_.cursor.walk(columns, rows);
}

void KeyboardHand::letGo() {
    if (needs_.gestures.isUnderWay()) return needs_.gestures.cancel();
    needs_.marks.clear();
    if (picture().marks.selected.empty()) return needs_.cursor.hide();
    needs_.marks.setSelection({});
}

void KeyboardHand::enter() {
    if (!needs_.cursor.hole()) return needs_.cursor.restore();
    const auto occupant = occupantOf(picture().bench(), *needs_.cursor.hole());
    if (!occupant) return wire();
    selectByClick(needs_.hand, occupant->id, {});
}

void KeyboardHand::wire() {
    if (!needs_.cursor.hole()) needs_.cursor.restore();
    if (!needs_.cursor.hole()) return;
    const Hole hole = *needs_.cursor.hole();
    const Point at = picture().seenAt(hole);
    if (picture().table->turned)
        return needs_.hand.flash("nothing goes into the underside: key 5 turns the board back", at);
    const Part* selected = picture().bench().findPart(needs_.marks.soleSelection());
    auto gesture = wiring(needs_.hand, selected, hole);
    needs_.hand.clearMarks();
    needs_.pointer.carry(std::move(gesture), at);
    if (!needs_.gestures.isUnderWay()) return;
    // It has only just been taken in hand: nothing is wrong yet.
    needs_.marks.marks().refused = false;
    needs_.marks.marks().say = kLeadWords;
    needs_.marks.show();
}

void KeyboardHand::stepValue(int steps) {
    if (needs_.fields.step(steps)) return;
    if (const std::string part = needs_.marks.soleSelection(); !part.empty())
        needs_.knobs.turn(part, steps * kKnobStep);
}

std::string KeyboardHand::thingMeant() const {
    std::string selected = needs_.marks.soleSelection();
    if (!selected.empty() || !needs_.cursor.hole()) return selected;
    const auto occupant = occupantOf(picture().bench(), *needs_.cursor.hole());
    return occupant ? occupant->id : std::string();
}

void KeyboardHand::operate(bool down) {
    if (!down) {
        if (!operated_.empty()) PressGesture::releasePart(needs_.hand, std::exchange(operated_, {}));
        return;
    }
    const Part* part = picture().bench().findPart(thingMeant());
    if (!part || needs_.gestures.isUnderWay()) return;
    if (part->kind->hasCap) {
        operated_ = part->id;
        PressGesture::pressPart(needs_.hand, operated_, {});
    } else {
        KnobGesture::flip(needs_.hand, std::string(part->id));
    }
}

}  // namespace tiepoint::ui
