#include "ui/view/board_keys.h"

#include "core/bench/cable_routes.h"
#include "core/edit/boxes.h"
#include "core/edit/neighbour.h"
#include "core/edit/placement.h"
#include "core/edit/told.h"
#include "ui/gesture/move_gesture.h"
#include "ui/gesture/press_gesture.h"
#include "ui/gesture/turning.h"
#include "ui/view/key_list.h"
#include "ui/view/value_box.h"

namespace tiepoint::ui {
namespace {

bool isPlain(const QKeyEvent& event) {
    return !(event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
}
bool isEnter(const QKeyEvent& event) { return isKeyFor(KeyFor::Take, event.key()); }
bool isDigit(const QKeyEvent& event) { return isKeyFor(KeyFor::Type, event.key()); }
bool isBracket(const QKeyEvent& event) { return isKeyFor(KeyFor::Turn, event.key()); }
bool isArrow(const QKeyEvent& event) { return isKeyFor(KeyFor::Walk, event.key()); }
bool isStep(const QKeyEvent& event) { return isKeyFor(KeyFor::Step, event.key()); }
bool isWire(const QKeyEvent& event) { return isKeyFor(KeyFor::Wire, event.key()); }
bool isLetGo(const QKeyEvent& event) { return isKeyFor(KeyFor::LetGo, event.key()); }
bool isOperate(const QKeyEvent& event) { return isKeyFor(KeyFor::Operate, event.key()); }

/// Whether digits type its value; else they switch the views.
bool hasFigure(const Part* part) { return part && typedValueOf(*part) >= 0; }

std::vector<std::string> idsOf(const QStringList& list) {
    std::vector<std::string> ids;
    for (const QString& id : list) ids.push_back(id.toStdString());
    return ids;
}

}  // namespace

struct BoardKeys::Row {
    bool (*isKey)(const QKeyEvent&);
    bool (BoardKeys::*does)(const QKeyEvent&);
};

// The first row that does something with the key has it.
const BoardKeys::Row BoardKeys::kTable[] = {
    {isLetGo, &BoardKeys::letGo},
    {isBracket, &BoardKeys::turn},
    {isArrow, &BoardKeys::arrow},
    {isWire, &BoardKeys::insert},
    {isStep, &BoardKeys::step},
    {[](const QKeyEvent& event) { return isEnter(event) || isDigit(event); }, &BoardKeys::type},
    {[](const QKeyEvent& event) { return !event.text().isEmpty(); }, &BoardKeys::pressCap},
};

std::string BoardKeys::partWithCap(const QKeyEvent& event) const {
    const QString letter = QKeySequence(event.key()).toString();
    for (const Part& part : hand_.picture().bench().parts) {
        if (part.kind->hasCap && !part.cap.empty() &&
            QString::fromStdString(part.cap).compare(letter, Qt::CaseInsensitive) == 0)
            return part.id;
    }
    return {};
}

const Part* BoardKeys::soleSelection() const {
    const QStringList selection = hand_.selection();
    return selection.size() == 1 ? hand_.picture().bench().findPart(selection.front().toStdString()) : nullptr;
}

bool BoardKeys::wants(const QKeyEvent& event) const {
    if (!isPlain(event)) return false;
    if (isBracket(event) || isLetGo(event) || isOperate(event)) return true;
    if (isArrow(event) || isEnter(event) || isWire(event)) return true;
    if (isStep(event) && soleSelection()) return true;
    if (isDigit(event) && hasFigure(soleSelection())) return true;
    return !partWithCap(event).empty();
}

bool BoardKeys::press(const QKeyEvent& event) {
    if (isArrow(event) && event.modifiers() & Qt::ControlModifier) return arrow(event);
    if (!isPlain(event)) return false;
    for (const Row& row : kTable) {
        if (row.isKey(event) && (this->*row.does)(event)) return true;
    }
    return false;
}

bool BoardKeys::release(const QKeyEvent& event) {
    const std::string id = partWithCap(event);
    if (id.empty()) return false;
    if (!event.isAutoRepeat()) PressGesture::releasePart(hand_, id);
    return true;
}

bool BoardKeys::pressCap(const QKeyEvent& event) {
    const std::string id = partWithCap(event);
    if (id.empty()) return false;
    if (!event.isAutoRepeat()) PressGesture::pressPart(hand_, id, event.modifiers());
    return true;
}

bool BoardKeys::turn(const QKeyEvent& event) {
    // With nothing selected it is about what the pointer or the cursor is at.
    const std::string& pointed = hand_.picture().marks.hoverPart;
    if (hand_.selection().isEmpty() && hand_.picture().bench().findPart(pointed))
        hand_.setSelection({QString::fromStdString(pointed)});
    if (!hand_.selection().isEmpty()) turnSelection(hand_, event.key() == Qt::Key_BracketRight ? 1 : -1);
    return true;
}

bool BoardKeys::arrow(const QKeyEvent& event) {
    const int right = hand_.picture().table->turned ? -1 : 1;  // keys move as the eye sees it
    const int columns = event.key() == Qt::Key_Left ? -right : event.key() == Qt::Key_Right ? right : 0;
    const int rows = event.key() == Qt::Key_Up ? -1 : event.key() == Qt::Key_Down ? 1 : 0;
    if (event.modifiers() & Qt::ControlModifier) {
        host_.walk(columns, rows, event.modifiers());
        return true;
    }
    if (hand_.selection().isEmpty()) {
        host_.walk(columns, rows, {});
        return true;
    }
    if (const Part* box = soleSelection(); box && standsOnTable(*box) && !(event.modifiers() & Qt::ShiftModifier))
        return shiftBox(*box, right * columns, rows);
    return event.modifiers() & Qt::ShiftModifier ? stretch(columns, rows) : shift(columns, rows);
}

bool BoardKeys::shift(int columns, int rows) {
    const auto ids = idsOf(hand_.selection());
    const auto bench = hand_.document().bench();
    const Shift moved = shiftThings(*bench, ids, {columns, rows, 0, {}, {}});
    if (!moved.refused.empty()) {
        hand_.flash(moved.refused, besideSelection(hand_.picture()));
    } else if (!moved.operations.empty()) {
        const std::string name = ids.size() == 1 ? "Move " + ids.front() : "Move parts";
        if (const auto why = hand_.document().push({name, moved.operations}))
            hand_.flash(why->toStdString(), besideSelection(hand_.picture()));
        else
            hand_.tell(toldOf(*hand_.document().bench(), ids, "moved"));
    }
    return true;
}

/// Moves a supply or an instrument on the table by a pitch.
bool BoardKeys::shiftBox(const Part& box, int columns, int rows) {
    const Bench& bench = hand_.picture().bench();
    const auto index = static_cast<std::size_t>(bench.partIndex(box.id));
    const Rect frame = frameOf(hand_.picture().table->parts[index]);
    const Point at = boxLandsAt({frame.left + columns * kPitchMm, frame.top + rows * kPitchMm});
    const auto edit = moveBoxEdit(bench, box.id, at);
    if (!edit)
        hand_.flash(edit.error().message, besideSelection(hand_.picture()));
    else if (const auto why = hand_.document().push(*edit))
        hand_.flash(why->toStdString(), besideSelection(hand_.picture()));
    return true;
}

/// Moves the end in the cursor's hole, or else the last one.
bool BoardKeys::stretch(int columns, int rows) {
    const auto bench = hand_.document().bench();
    const auto selection = hand_.selection();
    if (selection.size() != 1) return true;
    const std::string id = selection.front().toStdString();
    const auto cursor = host_.cursorHole();
    const auto occupant = cursor ? occupantOf(*bench, *cursor) : std::nullopt;
    const bool chosen = occupant && occupant->id == id;
    Edit edit{"Stretch " + id, {}};
    std::optional<std::string> why;
    if (const Part* part = bench->findPart(id)) {
        if (!bendsLegs(*part->kind->package)) why = "its legs don't bend";
        const int lead = chosen ? occupant->lead : static_cast<int>(part->leads.size()) - 1;
        const auto moved = why ? std::nullopt : stretched(*bench, *part, lead, columns, rows);
        if (!moved && !why) why = "there is no hole that way";
        if (moved) why = refusal(*bench, *moved);
        if (moved && !why) edit.operations.emplace_back(ReplacePart{*moved});
    } else if (const Jumper* jumper = bench->findJumper(id)) {
        const auto moved = stretched(*bench, *jumper, chosen ? occupant->lead : 1, columns, rows);
        if (!moved) why = "there is no hole that way";
        if (moved) why = refusal(*bench, *moved);
        if (moved && !why) edit.operations.emplace_back(ReplaceJumper{*moved});
    }
    if (why) hand_.flash(*why, besideSelection(hand_.picture()));
    if (edit.operations.empty()) return true;
    if (const auto refused = hand_.document().push(edit)) {
        hand_.flash(refused->toStdString(), besideSelection(hand_.picture()));
        return true;
    }
    hand_.tell(toldOf(*hand_.document().bench(), {id}, "stretched"));
    if (chosen) host_.walk(columns, rows, {});  // the cursor stays on the end that it holds
    return true;
}

bool BoardKeys::insert(const QKeyEvent&) {
    host_.wire();
    return true;
}

bool BoardKeys::step(const QKeyEvent& event) {
    if (!soleSelection()) return false;
    host_.stepValue(event.key() == Qt::Key_Plus ? 1 : -1);
    return true;
}

bool BoardKeys::type(const QKeyEvent& event) {
    const Part* part = soleSelection();
    if (isEnter(event) && hand_.selection().size() == 1 &&
        hand_.picture().bench().findNote(hand_.selection().front().toStdString())) {
        host_.editNote(hand_.selection().front().toStdString());
        return true;
    }
    if (!part && isEnter(event) && hand_.selection().isEmpty()) {
        host_.enter();
        return true;
    }
    if (!part || (isDigit(event) && !hasFigure(part))) return false;
    host_.beginTyping(part->id, isDigit(event) ? event.text() : QString());
    return true;
}

bool BoardKeys::letGo(const QKeyEvent&) {
    host_.letGo();
    return true;
}

}  // namespace tiepoint::ui
