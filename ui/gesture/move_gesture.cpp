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

/// The bench with everything moved at once: what moves together isn't in its own way.
Bench benchAfter(const Bench& bench, const Group& group) {
    Bench after = bench;
    for (const Part& part : group.parts) after.parts[static_cast<std::size_t>(bench.partIndex(part.id))] = part;
    for (const Jumper& jumper : group.jumpers)
        after.jumpers[static_cast<std::size_t>(bench.jumperIndex(jumper.id))] = jumper;
    return after;
}

/// The operations that bring things to where they go, of those that go anywhere.
template <class Replace, class Thing>
void addReplacing(std::vector<Operation>& operations, const std::vector<Thing>& moved,
                  const std::vector<Thing>& before) {
    for (std::size_t i = 0; i < moved.size(); ++i) {
        if (!(moved[i] == before[i])) operations.emplace_back(Replace{moved[i]});
    }
}

/// Whether it is plugged into something that stays on the table.
bool hasSocket(const Jumper& jumper) {
    return std::ranges::any_of(jumper.ends, [](const JumperEnd& end) { return std::holds_alternative<Socket>(end); });
}

/// Of what is named, what a hand moves in holes: supplies stay where they stand.
Group whatMoves(const Bench& bench, const std::vector<std::string>& ids) {
    Group group = groupOf(bench, ids);
    std::erase_if(group.parts, [](const Part& part) { return part.kind->package->reach == Reach::Flying; });
    return group;
}

/// The same by id: what counts as taken away while it is carried.
std::vector<std::string> idsOfWhatMoves(const Bench& bench, const std::vector<std::string>& ids) {
    const Group group = whatMoves(bench, ids);
    std::vector<std::string> moving;
    for (const Part& part : group.parts) moving.push_back(part.id);
    for (const Jumper& jumper : group.jumpers) moving.push_back(jumper.id);
    return moving;
}

}  // namespace

Shift shiftThings(const Bench& bench, const GroupPlacer& placer, const std::vector<std::string>& ids,
                  const Step& step) {
    const Group before = whatMoves(bench, ids);
    MovedGroup moved = placer.moved(before, step);
    Shift shift;
    shift.group = std::move(moved.group);
    shift.refused = std::move(moved.refused);
    for (const Part& part : shift.group.parts) addLegTargets(part, shift.targets);
    for (const Jumper& jumper : shift.group.jumpers) addLegTargets(jumper, shift.targets);
    for (const Note& note : shift.group.notes) shift.targets.push_back(note.at);
    if (shift.refused.empty()) shift.refused = refusalOfChange(bench, benchAfter(bench, shift.group)).value_or("");
    if (!shift.refused.empty()) return shift;
    addReplacing<ReplacePart>(shift.operations, shift.group.parts, before.parts);
    addReplacing<ReplaceJumper>(shift.operations, shift.group.jumpers, before.jumpers);
    addReplacing<ReplaceNote>(shift.operations, shift.group.notes, before.notes);
    return shift;
}

Shift shiftThings(const Bench& bench, const std::vector<std::string>& ids, const Step& step) {
    return shiftThings(bench, GroupPlacer(bench, idsOfWhatMoves(bench, ids)), ids, step);
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

/// The hole by which the hand leads what it moves: of the thing that it holds, or of another where that one is only in rails.
std::optional<Hole> MoveGesture::leadingHole(const std::vector<std::string>& ids) const {
    auto leading = handleOf(bench(), thing_);
    if (leading && !isRail(leading->line)) return leading;
    for (const std::string& id : ids) {
        const auto other = handleOf(bench(), id);
        const Part* part = bench().findPart(id);
        const bool stays = part && part->kind->package->reach == Reach::Flying;
        if (other && !stays && (!leading || !isRail(other->line))) leading = other;
        if (leading && !isRail(leading->line)) break;
    }
    return leading;
}

/// All of it where the pointer leads it, or nothing where there are no holes.
std::optional<Shift> MoveGesture::shiftTo(const Pointer& pointer, const std::vector<std::string>& ids) const {
    const auto leading = leadingHole(ids);
    const auto step = leading
                          ? stepTo(bench(), *leading, *holeMm(bench(), *leading) + (pointer.at - from_), kGroupReachMm)
                          : std::nullopt;
    if (!step) return std::nullopt;
    if (!placer_) placer_ = std::make_unique<GroupPlacer>(bench(), idsOfWhatMoves(bench(), ids));
    return shiftThings(bench(), *placer_, ids, *step);
}

MoveGesture::Aim MoveGesture::aimSinglePart(const Pointer& pointer, const Part& part) const {
    const Picture& picture = hand().picture();
    const PartPlace& place = picture.table->parts[static_cast<std::size_t>(bench().partIndex(part.id))];
    Aim aim;
    // A plain step keeps a slanting part slanting, and a leg in its rail.
    const auto plain = quarterTurns_ == 0 ? shiftTo(pointer, {part.id}) : std::nullopt;
    const auto anchor = nearestHole(bench(), place.leadsMm[0] + (pointer.at - from_), kGroupReachMm);
    if (plain && plain->group.parts.size() == 1) {
        aim.part = plain->group.parts.front();
        aim.targets = plain->targets;
        aim.refused = plain->refused;
        aim.operations = plain->operations;
        return aim;
    }
    if (!anchor) {
        aim.refused = kNoHoles;
        return aim;
    }
    const Part moved = placedAt(bench(), part, *anchor, quarterTurnsOf(bench(), part) + quarterTurns_);
    aim.part = moved;
    addLegTargets(moved, aim.targets);
    if (const auto why = refusal(bench(), moved))
        aim.refused = *why;
    else if (!(moved == part))
        aim.operations.emplace_back(ReplacePart{moved});
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
    auto shift = shiftTo(pointer, ids);
    if (!shift) {
        aim.refused = kNoHoles;
        return aim;
    }
    aim.operations = std::move(shift->operations);
    aim.targets = std::move(shift->targets);
    aim.refused = std::move(shift->refused);
    const auto atSocket = std::ranges::find_if(shift->group.jumpers, hasSocket);
    if (atSocket != shift->group.jumpers.end()) aim.drawn = *atSocket;
    std::erase_if(shift->group.jumpers, hasSocket);
    aim.group = carried(std::move(shift->group));
    return aim;
}

std::shared_ptr<const Bench> MoveGesture::carried(Group moved) const {
    auto group = std::make_shared<Bench>();
    group->boards = bench().boards;
    group->parts = std::move(moved.parts);
    group->jumpers = std::move(moved.jumpers);
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
    marks.drawn = aimed.drawn;
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
