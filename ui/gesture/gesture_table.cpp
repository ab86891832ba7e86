// The table of gestures. The order is from what is on top of the bench to the table beneath it:
//
//   middle button, or the space bar     pans
//   the tag of a pinned reading         selects it
//   a knob on an instrument's face      turns the value that it is for
//   a cap, a lever, a blade, a knob     presses, switches, turns
//   anything else of a turned board     selects it; nothing moves from below
//   the end of a jumper, a leg that     moves that end
//   bends at its hole, a cable
//   a hole, a socket, a bare lead       draws a jumper
//   the casing of a supply or a meter   moves it on the table
//   a body or a jumper                  moves it
//   the edge or empty face of a board   moves it on the table
//   anything else, or Shift there       draws a rubber band

#include "ui/gesture/gesture_table.h"

#include "ui/gesture/band_gesture.h"
#include "ui/gesture/below_gesture.h"
#include "ui/gesture/face_gesture.h"
#include "ui/gesture/jumper_gesture.h"
#include "ui/gesture/knob_gesture.h"
#include "ui/gesture/lead_gesture.h"
#include "ui/gesture/move_gesture.h"
#include "ui/gesture/pan_gesture.h"
#include "ui/gesture/place_gesture.h"
#include "ui/gesture/press_gesture.h"
#include "ui/gesture/table_gesture.h"
#include "ui/gesture/tag_gesture.h"

namespace tiepoint::ui {
namespace {

struct Case {
    const Hand& hand;
    const Under& under;
    const Pointer& pointer;
    bool spaceHeld;

    bool left() const { return pointer.button == Qt::LeftButton; }
    const Part* control() const {
        return under.control.empty() ? nullptr : hand.picture().bench().findPart(under.control);
    }
    bool shift() const { return pointer.modifiers & Qt::ShiftModifier; }
    /// Of a supply or a meter, whose casing lies bare there.
    bool box() const {
        const Part* part = under.note.empty() && under.wire.empty() && !under.body.empty()
                               ? hand.picture().bench().findPart(under.body)
                               : nullptr;
        return part && standsOnTable(*part);
    }
    bool covered() const { return !under.body.empty() || !under.wire.empty(); }
};

struct Row {
    bool (*suits)(const Case&);
    std::unique_ptr<Gesture> (*make)(Hand&, const Under&);
};

const Row kTable[] = {
    {[](const Case& c) { return c.pointer.button == Qt::MiddleButton || (c.left() && c.spaceHeld); },
     [](Hand& hand, const Under&) -> std::unique_ptr<Gesture> { return std::make_unique<PanGesture>(hand); }},
    {[](const Case& c) { return c.left() && !c.under.pinned.empty(); },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<TagGesture>(hand, under.pinned);
     }},
    {[](const Case& c) {
         return c.left() && c.control() && FaceGesture::valueAt(c.hand.picture(), c.under.control, c.pointer.at);
     },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<FaceGesture>(hand, under.control);
     }},
    {[](const Case& c) { return c.left() && c.control() && c.control()->kind->hasCap; },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<PressGesture>(hand, under.control);
     }},
    {[](const Case& c) { return c.left() && c.control() && c.control()->kind->hasControl(); },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<KnobGesture>(hand, under.control);
     }},
    {[](const Case& c) { return c.left() && c.hand.picture().table->turned; },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<BelowGesture>(hand, under.thing());
     }},
    {[](const Case& c) { return c.left() && c.under.grip.has_value(); },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<LeadGesture>(hand, *under.grip);
     }},
    {[](const Case& c) {
         return c.left() && !c.shift() && (c.under.socket || (!c.covered() && (c.under.lead || c.under.hole)));
     },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<JumperGesture>(hand, under);
     }},
    {[](const Case& c) { return c.left() && c.box(); },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<TableGesture>(hand, under.body);
     }},
    {[](const Case& c) { return c.left() && !c.under.thing().empty(); },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<MoveGesture>(hand, under.thing());
     }},
    {[](const Case& c) { return c.left() && !c.shift() && !c.under.board.empty(); },
     [](Hand& hand, const Under& under) -> std::unique_ptr<Gesture> {
         return std::make_unique<TableGesture>(hand, under.board);
     }},
    {[](const Case& c) { return c.left(); },
     [](Hand& hand, const Under&) -> std::unique_ptr<Gesture> { return std::make_unique<BandGesture>(hand); }},
};

}  // namespace

std::unique_ptr<Gesture> gestureFor(Hand& hand, const Under& under, const Pointer& pointer, bool spaceHeld) {
    const Case here{hand, under, pointer, spaceHeld};
    for (const Row& row : kTable) {
        if (row.suits(here)) return row.make(hand, under);
    }
    return nullptr;
}

std::unique_ptr<Gesture> gestureFromTray(Hand& hand, const QString& kind, const QString& preset) {
    if (kind == QLatin1String("jumper")) {
        if (const int colour = findJumperColour(preset.toStdString()); colour >= 0) hand.chooseJumperColour(colour);
        return std::make_unique<JumperGesture>(hand, hand.chosenJumperColour().value_or(0));
    }
    const PartKind* found = findKind(kind.toStdString());
    if (!found) return nullptr;
    return std::make_unique<PlaceGesture>(hand, PlaceGesture::fresh(hand.picture().bench(), *found, preset));
}

}  // namespace tiepoint::ui
