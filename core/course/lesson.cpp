#include "core/course/lesson.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <type_traits>

namespace tiepoint {
namespace {

/// Sets one value or state on a bench; says why it can't.
std::optional<Error> setOn(Bench& bench, const std::string& what, double to) {
    const std::size_t dot = what.find('.');
    const int index = bench.partIndex(what.substr(0, dot));
    if (index < 0 || dot == std::string::npos)
        return Error{ErrorKind::Reference, fmt::format("nothing on the bench can be set as {}", what), {}, {}};
    Part& part = bench.parts[index];
    const std::string name = what.substr(dot + 1);
    const int state = part.kind->stateIndex(name), value = part.kind->valueIndex(name);
    if (state >= 0) {
        part.state[state] = to;
    } else if (value >= 0) {
        part.values[value] = to;
    } else {
        return Error{
            ErrorKind::Reference, fmt::format("a {} has neither state nor value {}", part.kind->name, name), {}, {}};
    }
    return {};
}

bool canBeHeld(const PartKind& kind) {
    return std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return spec.whenHeld; });
}

template <class Item>
bool sameOrder(const std::vector<Item>& from, const std::vector<Item>& to) {
    // What both have stands in the same order, so that the rest can be taken out and put in around it.
    std::vector<std::string_view> left, right;
    const auto has = [](const std::vector<Item>& items, const std::string& id) {
        return std::ranges::find(items, id, &Item::id) != items.end();
    };
    for (const Item& item : from) {
        if (has(to, item.id)) left.push_back(item.id);
    }
    for (const Item& item : to) {
        if (has(from, item.id)) right.push_back(item.id);
    }
    return left == right;
}

template <class Item>
constexpr bool canBeReplaced = !std::is_same_v<Item, PinnedReading>;

Operation replacementOf(const Board& board) { return ReplaceBoard{board}; }
Operation replacementOf(const Part& part) { return ReplacePart{part}; }
Operation replacementOf(const Jumper& jumper) { return ReplaceJumper{jumper}; }
Operation replacementOf(const Note& note) { return ReplaceNote{note}; }
Operation additionOf(const Board& board, int at) { return AddBoard{board, at}; }
Operation additionOf(const Part& part, int at) { return AddPart{part, at}; }
Operation additionOf(const Jumper& jumper, int at) { return AddJumper{jumper, at}; }
Operation additionOf(const Note& note, int at) { return AddNote{note, at}; }
Operation additionOf(const PinnedReading& reading, int at) { return AddPinned{reading, at}; }

/// What is taken out goes first and what is put in comes last, so that no id is used twice.
struct ListChange {
    std::vector<Operation> out, in;
};

template <class Item>
void addChange(const std::vector<Item>& from, const std::vector<Item>& to, ListChange& change) {
    const bool ordered = sameOrder(from, to);
    const auto find = [](const std::vector<Item>& items, const std::string& id) {
        return std::ranges::find(items, id, &Item::id);
    };
    const auto stays = [&](const Item& item) {
        const auto there = find(to, item.id);
        return ordered && there != to.end() && (*there == item || canBeReplaced<Item>);
    };
    for (const Item& item : from) {
        if (!stays(item)) change.out.emplace_back(Remove{item.id});
    }
    const auto comes = [&](const Item& item) {
        const auto there = find(from, item.id);
        return there == from.end() || !stays(*there);
    };
    // What comes behind all that stays is added at the end, wherever that is: so edits can change places.
    std::size_t tail = to.size();
    while (tail > 0 && comes(to[tail - 1])) --tail;
    for (std::size_t i = 0; i < to.size(); ++i) {
        const auto there = find(from, to[i].id);
        if (comes(to[i])) {
            change.in.push_back(additionOf(to[i], i >= tail ? -1 : static_cast<int>(i)));
        } else if constexpr (canBeReplaced<Item>) {
            if (!(*there == to[i])) change.in.push_back(replacementOf(to[i]));
        }
    }
}

}  // namespace

Result<Situation> situationOf(std::shared_ptr<const Bench> bench, const Tried& tried) {
    Situation situation{std::move(bench), {}};
    for (const std::string& id : tried.hold) {
        const Part* part = situation.bench->findPart(id);
        if (!part)
            return Error{ErrorKind::Reference, fmt::format("nothing on the bench has the id \"{}\"", id), {}, {}};
        if (!canBeHeld(*part->kind))
            return Error{ErrorKind::Reference, fmt::format("a {} can't be pressed", part->kind->label), {}, {}};
        situation.inputs.held.insert(id);
    }
    if (tried.set.empty()) return situation;
    Bench set = *situation.bench;
    Edit edit{"Try", {}};
    for (const auto& [what, to] : tried.set) {
        if (auto error = setOn(set, what, to)) return std::move(*error);
        edit.operations.emplace_back(ReplacePart{*set.findPart(what.substr(0, what.find('.')))});
    }
    auto applied = apply(*situation.bench, edit);
    if (!applied) return applied.error();
    situation.bench = std::make_shared<const Bench>(std::move(applied).value().bench);
    return situation;
}

Situation situationOf(const Lesson& lesson, int step) {
    if (step < 0) return {lesson.start, {}};
    // It was tried when the lesson was read.
    return situationOf(lesson.steps[step].bench, lesson.steps[step].tried).value();
}

Edit editBetween(const Bench& from, const Bench& to, std::string name) {
    ListChange change;
    addChange(from.pinned, to.pinned, change);
    addChange(from.notes, to.notes, change);
    addChange(from.jumpers, to.jumpers, change);
    addChange(from.parts, to.parts, change);
    addChange(from.boards, to.boards, change);
    Edit edit{std::move(name), std::move(change.out)};
    ListChange in;
    addChange(from.boards, to.boards, in);
    addChange(from.parts, to.parts, in);
    addChange(from.jumpers, to.jumpers, in);
    addChange(from.notes, to.notes, in);
    addChange(from.pinned, to.pinned, in);
    edit.operations.insert(edit.operations.end(), in.in.begin(), in.in.end());
    if (from.title != to.title) edit.operations.emplace_back(SetTitle{to.title});
    if (from.disclosure != to.disclosure) edit.operations.emplace_back(SetDisclosure{to.disclosure});
    if (from.surroundings != to.surroundings) edit.operations.emplace_back(SetSurroundings{to.surroundings});
    return edit;
}

std::vector<NeededPart> partsNeeded(const Lesson& lesson) {
    const auto isSame = [](const Part& a, const Part& b) { return a.kind == b.kind && a.values == b.values; };
    std::vector<NeededPart> needed;
    for (int step = -1; step < lesson.stepCount(); ++step) {
        std::vector<NeededPart> here;
        for (const Part& part : lesson.benchAt(step)->parts) {
            const auto found = std::ranges::find_if(here, [&](const NeededPart& n) { return isSame(n.example, part); });
            if (found != here.end())
                ++found->count;
            else
                here.push_back({part.kind, part, 1});
        }
        for (const NeededPart& each : here) {
            const auto found =
                std::ranges::find_if(needed, [&](const NeededPart& n) { return isSame(n.example, each.example); });
            if (found == needed.end())
                needed.push_back(each);
            else
                found->count = std::max(found->count, each.count);
        }
    }
    return needed;
}

int jumpersNeeded(const Lesson& lesson) {
    std::size_t most = 0;
    for (int step = -1; step < lesson.stepCount(); ++step) most = std::max(most, lesson.benchAt(step)->jumpers.size());
    return static_cast<int>(most);
}

}  // namespace tiepoint
