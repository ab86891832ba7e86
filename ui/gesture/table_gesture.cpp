#include "ui/gesture/table_gesture.h"

#include "core/bench/cable_routes.h"
#include "core/edit/boards.h"
#include "core/edit/boxes.h"
#include "ui/gesture/selecting.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kFewPitches = 5;

bool hasEndOn(const Part& part, const std::string& board) {
    return std::any_of(part.leads.begin(), part.leads.end(),
                       [&](const auto& lead) { return lead && lead->board == board; });
}

bool hasEndOn(const Jumper& jumper, const std::string& board) {
    return std::any_of(jumper.ends.begin(), jumper.ends.end(), [&](const JumperEnd& end) {
        const Hole* hole = std::get_if<Hole>(&end);
        return hole && hole->board == board;
    });
}

bool plugsInto(const Jumper& jumper, const std::string& part) {
    return std::any_of(jumper.ends.begin(), jumper.ends.end(), [&](const JumperEnd& end) {
        const Socket* socket = std::get_if<Socket>(&end);
        return socket && socket->part == part;
    });
}

}  // namespace

Point TableGesture::cornerMm() const {
    if (const Board* moved = board()) return moved->cornerMm();
    const Rect frame = frameOf(hand().picture().table->parts[static_cast<std::size_t>(bench().partIndex(thing_))]);
    return {frame.left, frame.top};
}

Point TableGesture::landing(const Pointer& pointer) const {
    const Point corner = cornerMm() + (pointer.at - from_);
    return board() ? boardLandsAt(bench(), thing_, corner) : boxLandsAt(corner);
}

Result<Edit> TableGesture::editTo(Point at) const {
    return board() ? moveBoardEdit(bench(), thing_, at) : moveBoxEdit(bench(), thing_, at);
}

std::string TableGesture::wordsAt(Point at) const { return board() ? dockedWords(bench(), thing_, at) : std::string(); }

/// What moves, alone on the table: a board with what is plugged into it, or a box with its leads and the jumpers in its sockets. Supplies that
/// follow the boards by themselves are left out, for they don't lie still yet.
std::shared_ptr<const Bench> TableGesture::carriedTo(Point at) const {
    auto moved = std::make_shared<Bench>(bench());
    moved->notes.clear();
    moved->pinned.clear();
    const bool isBoard = board() != nullptr;
    for (Board& each : moved->boards) {
        if (each.id == thing_) each.atX = at.x, each.atY = at.y;
    }
    for (Part& part : moved->parts) {
        if (part.id == thing_) part.at = at;
    }
    const auto goes = [&](const Part& part) {
        return isBoard ? !standsOnTable(part) && hasEndOn(part, thing_) : part.id == thing_;
    };
    std::erase_if(moved->jumpers, [&](const Jumper& jumper) {
        const auto dangles = [&](const JumperEnd& end) {
            const Socket* socket = std::get_if<Socket>(&end);
            return socket && !goes(*moved->findPart(socket->part));
        };
        return std::any_of(jumper.ends.begin(), jumper.ends.end(), dangles) ||
               (isBoard ? !hasEndOn(jumper, thing_) : !plugsInto(jumper, thing_));
    });
    std::erase_if(moved->parts, [&](const Part& part) { return !goes(part); });
    return moved;
}

/// The nearest place among all that lies there: words beside a pointer that has left the view would be seen by nobody.
Point TableGesture::onTable(Point at) const {
    const Rect& all = hand().picture().table->allMm;
    return {std::clamp(at.x, all.left, all.right()), std::clamp(at.y, all.top, all.bottom())};
}

void TableGesture::move(const Pointer& pointer) {
    const auto before = hand().marks().group;
    hand().clearMarks();
    const Point at = landing(pointer);
    const auto edit = editTo(at);
    auto carried = carriedTo(at);
    if (before && *before == *carried) carried = before;  // the same, and nothing is drawn anew
    std::vector<std::string> pale;
    for (const Part& part : carried->parts) pale.push_back(part.id);
    for (const Jumper& jumper : carried->jumpers) pale.push_back(jumper.id);
    hand().setPale(pale);
    Marks& marks = hand().marks();
    marks.group = std::move(carried);
    marks.groupBoard = board() ? thing_ : std::string();
    marks.refused = !edit.ok();
    marks.say = edit.ok() ? wordsAt(at) : edit.error().message;
    marks.sayAt = onTable(pointer.at);
    hand().showMarks();
}

void TableGesture::release(const Pointer& pointer) {
    finish();
    if (!pointer.dragged) return selectByClick(hand(), board() ? std::string() : thing_, pointer.modifiers);
    const Point at = landing(pointer);
    const bool stays = distance(at * kPitchMm, cornerMm()) < 0.01;
    const auto edit = editTo(at);
    hand().clearMarks();
    if (stays) return;
    if (!edit) return hand().flash(edit.error().message, onTable(pointer.at));
    if (const auto why = hand().document().push(*edit)) hand().flash(why->toStdString(), onTable(pointer.at));
}

bool TableGesture::key(int key, const Pointer& pointer) {
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        if (const auto edit = editTo(landing(pointer)); !edit) {
            hand().flash(edit.error().message, hand().marks().sayAt);
            return true;
        }
        Pointer there = pointer;
        there.dragged = true;
        release(there);
        return true;
    }
    if (key < Qt::Key_Left || key > Qt::Key_Down) return false;
    const double step = kPitchMm * (pointer.modifiers & Qt::ControlModifier ? kFewPitches : 1);
    const int right = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
    const int down = key == Qt::Key_Down ? 1 : key == Qt::Key_Up ? -1 : 0;
    from_ = from_ - Point{right * step, down * step};
    move(pointer);
    return true;
}

}  // namespace tiepoint::ui
