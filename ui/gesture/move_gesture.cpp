#include "ui/gesture/move_gesture.h"

#include "core/edit/placement.h"
#include "ui/gesture/selecting.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kGroupReachMm = 2.5;
constexpr const char* kNoHoles = "no holes here: it goes back";

std::optional<Hole> firstHole(const Bench& bench, const std::string& id) {
    if (const Part* part = bench.findPart(id)) {
        const auto found =
            std::find_if(part->leads.begin(), part->leads.end(), [](const auto& lead) { return lead.has_value(); });
        return found == part->leads.end() ? std::nullopt : *found;
    }
    if (const Note* note = bench.findNote(id)) return note->at;
    if (const Jumper* jumper = bench.findJumper(id)) {
        for (const JumperEnd& end : jumper->ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) return *hole;
        }
    }
    return std::nullopt;
}

void addLegTargets(const Part& part, std::vector<Hole>& targets) {
    for (const auto& lead : part.leads) {
        if (lead) targets.push_back(*lead);
    }
}

void addLegTargets(const Jumper& jumper, std::vector<Hole>& targets) {
    for (const JumperEnd& end : jumper.ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) targets.push_back(*hole);
    }
}

std::string nameOf(const std::vector<std::string>& ids) {
    return ids.size() == 1 ? "Move " + ids.front() : fmt::format("Move {} things", ids.size());
}

void refuse(Shift& shift, std::string why) {
    if (shift.refused.empty()) shift.refused = std::move(why);
}

template <class Replace, class Thing>
void shiftOne(const Bench& bench, const Thing& thing, int columns, int rows, Shift& shift, std::vector<Thing>& shown) {
    const auto moved = shifted(bench, thing, columns, rows);
    if (!moved) return refuse(shift, thing.id + " would leave the board");
    shown.push_back(*moved);
    addLegTargets(*moved, shift.targets);
    if (!(*moved == thing)) shift.operations.push_back(Replace{*moved});
}

/// The bench with everything moved at once: what moves together isn't in its own way.
Bench benchAfter(const Bench& bench, const Shift& shift) {
    Bench after = bench;
    for (const Part& part : shift.parts) after.parts[static_cast<std::size_t>(bench.partIndex(part.id))] = part;
    for (const Jumper& jumper : shift.jumpers)
        after.jumpers[static_cast<std::size_t>(bench.jumperIndex(jumper.id))] = jumper;
    return after;
}

void shiftNote(const Bench& bench, const Note& note, int columns, int rows, Shift& shift) {
    const auto moved = shifted(bench, note, columns, rows);
    if (!moved) return refuse(shift, note.id + " would leave the board");
    shift.targets.push_back(moved->at);
    if (!(*moved == note)) shift.operations.push_back(ReplaceNote{*moved});
}

}  // namespace

Shift shiftThings(const Bench& bench, const std::vector<std::string>& ids, int columns, int rows) {
    Shift shift;
    for (const std::string& id : ids) {
        if (const Part* part = bench.findPart(id)) {
            // Supplies stay where they stand.
            if (part->kind->package->reach != Reach::Flying)
                shiftOne<ReplacePart>(bench, *part, columns, rows, shift, shift.parts);
        } else if (const Note* note = bench.findNote(id)) {
            shiftNote(bench, *note, columns, rows, shift);
        } else if (const Jumper* jumper = bench.findJumper(id)) {
            shiftOne<ReplaceJumper>(bench, *jumper, columns, rows, shift, shift.jumpers);
        }
    }
    if (shift.refused.empty()) {
        if (auto why = refusalOfChange(bench, benchAfter(bench, shift))) refuse(shift, std::move(*why));
    }
    if (!shift.refused.empty()) shift.operations.clear();
    return shift;
}

void MoveGesture::press(const Pointer& pointer) { from_ = pointer.at; }

std::vector<std::string> MoveGesture::moving() const {
    if (!hand().selection().contains(QString::fromStdString(thing_))) return {thing_};
    std::vector<std::string> ids;
    for (const QString& id : hand().selection()) ids.push_back(id.toStdString());
    return ids;
}

bool MoveGesture::standsOnTable() const {
    const Part* part = bench().findPart(thing_);
    return part && part->kind->package->reach == Reach::Flying;
}

MoveGesture::Aim MoveGesture::aimSinglePart(const Pointer& pointer, const Part& part) const {
    const Picture& picture = hand().picture();
    const PartPlace& place = picture.table->parts[static_cast<std::size_t>(bench().partIndex(part.id))];
    Aim aim;
    const auto anchor = nearestHole(bench(), place.leadsMm[0] + (pointer.at - from_), kGroupReachMm);
    if (!anchor) {
        aim.refused = kNoHoles;
        return aim;
    }
    Part moved = placedAt(bench(), part, *anchor, quarterTurnsOf(bench(), part) + quarterTurns_);
    if (quarterTurns_ == 0 && part.leads[0] && part.leads[0]->board == anchor->board) {
        // A plain shift keeps a slanting part slanting.
        const int rows = isRail(anchor->line) || isRail(part.leads[0]->line)
                             ? 0
                             : static_cast<int>(anchor->line) - static_cast<int>(part.leads[0]->line);
        const auto kept = shifted(bench(), part, anchor->number - part.leads[0]->number, rows);
        if (kept && kept->leads[0] == anchor) moved = *kept;
    }
    aim.part = moved;
    addLegTargets(moved, aim.targets);
    if (const auto why = refusal(bench(), moved))
        aim.refused = *why;
    else if (!(moved == part))
        aim.operations.push_back(ReplacePart{moved});
    return aim;
}

MoveGesture::Aim MoveGesture::aim(const Pointer& pointer) const {
    const auto ids = moving();
    const Part* part = bench().findPart(thing_);
    if (ids.size() == 1 && part) return aimSinglePart(pointer, *part);
    return aimGroup(pointer, ids);
}

MoveGesture::Aim MoveGesture::aimGroup(const Pointer& pointer, const std::vector<std::string>& ids) const {
    Aim aim;
    const auto start = firstHole(bench(), thing_);
    const auto target =
        start ? nearestHole(bench(), *holeMm(bench(), *start) + (pointer.at - from_), kGroupReachMm) : std::nullopt;
    if (!target) {
        aim.refused = kNoHoles;
        return aim;
    }
    const int columns = static_cast<int>(std::lround((pointer.at.x - from_.x) / kPitchMm));
    const int rows = isRail(start->line) || isRail(target->line)
                         ? 0
                         : static_cast<int>(target->line) - static_cast<int>(start->line);
    Shift shift = shiftThings(bench(), ids, columns, rows);
    aim.operations = std::move(shift.operations);
    aim.targets = std::move(shift.targets);
    aim.refused = std::move(shift.refused);
    aim.group = carried(std::move(shift.parts), std::move(shift.jumpers));
    return aim;
}

std::shared_ptr<const Bench> MoveGesture::carried(std::vector<Part> parts, std::vector<Jumper> jumpers) const {
    auto group = std::make_shared<Bench>();
    group->boards = bench().boards;
    group->parts = std::move(parts);
    group->jumpers = std::move(jumpers);
    return group;
}

void MoveGesture::move(const Pointer& pointer) {
    const auto groupBefore = hand().marks().group;
    hand().clearMarks();
    if (standsOnTable()) {
        hand().flash("it stands here; its leads can be dragged", pointer.at);
        return;
    }
    if (!hand().selection().contains(QString::fromStdString(thing_)))
        hand().setSelection({QString::fromStdString(thing_)});
    hand().setPale(moving());
    const Aim aimed = aim(pointer);
    Marks& marks = hand().marks();
    marks.targets = aimed.targets;
    marks.carried = aimed.part;
    // Within the same holes it stays the same bench, and nothing is drawn anew.
    marks.group = aimed.group && groupBefore && *aimed.group == *groupBefore ? groupBefore : aimed.group;
    marks.refused = !aimed.refused.empty();
    marks.say = aimed.refused;
    marks.sayAt = pointer.at;
    hand().lightNets(netsOf(hand().picture(), marks.targets));
    hand().showMarks();
}

bool MoveGesture::key(int key, const Pointer& pointer) {
    if (key != Qt::Key_BracketLeft && key != Qt::Key_BracketRight) return false;
    quarterTurns_ += key == Qt::Key_BracketRight ? 1 : -1;
    move(pointer);
    return true;
}

void MoveGesture::release(const Pointer& pointer) {
    finish();
    if (!pointer.dragged) return selectByClick(hand(), thing_, pointer.modifiers);
    if (standsOnTable()) return;
    const auto ids = moving();
    const Aim aimed = aim(pointer);
    hand().clearMarks();
    if (!aimed.refused.empty()) return hand().flash(aimed.refused, pointer.at);
    if (aimed.operations.empty()) return;
    if (const auto why = hand().document().push({nameOf(ids), aimed.operations}))
        hand().flash(why->toStdString(), pointer.at);
}

}  // namespace tiepoint::ui
