// Operations run one after the other on a copy; each notes how it is taken back. The inverse runs these notes
// backwards, and since each puts its object back at its old place in the list, the old bench returns exactly.

#include "core/edit/edit.h"

#include "core/bench/describe.h"
#include "core/bench/measurable.h"
#include "core/bench/validate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <optional>
#include <set>

namespace tiepoint {
namespace {

Error unknownId(const std::string& id) {
    return {ErrorKind::Reference, fmt::format("nothing on the bench has the id \"{}\"", id), {}, {}};
}

template <class Item>
typename std::vector<Item>::iterator findIn(std::vector<Item>& items, const std::string& id) {
    return std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.id == id; });
}

Operation addition(Board board, int at) { return AddBoard{std::move(board), at}; }
Operation addition(Part part, int at) { return AddPart{std::move(part), at}; }
Operation addition(Jumper jumper, int at) { return AddJumper{std::move(jumper), at}; }
Operation addition(Note note, int at) { return AddNote{std::move(note), at}; }
Operation addition(PinnedReading reading, int at) { return AddPinned{std::move(reading), at}; }
Operation replacement(Board board) { return ReplaceBoard{std::move(board)}; }
Operation replacement(Part part) { return ReplacePart{std::move(part)}; }
Operation replacement(Jumper jumper) { return ReplaceJumper{std::move(jumper)}; }
Operation replacement(Note note) { return ReplaceNote{std::move(note)}; }

/// Carries out one operation on a bench and returns the operation that takes it back.
class Performer {
public:
    explicit Performer(Bench& bench) : bench_(bench) {}

    Result<Operation> operator()(const AddBoard& add) { return insert(bench_.boards, add.board, add.at); }
    Result<Operation> operator()(const AddPart& add) { return insert(bench_.parts, add.part, add.at); }
    Result<Operation> operator()(const AddJumper& add) { return insert(bench_.jumpers, add.jumper, add.at); }
    Result<Operation> operator()(const AddNote& add) { return insert(bench_.notes, add.note, add.at); }
    Result<Operation> operator()(const AddPinned& add) { return insert(bench_.pinned, add.reading, add.at); }

    Result<Operation> operator()(const Remove& remove) {
        if (auto undo = takeOut(bench_.boards, remove.id)) return std::move(*undo);
        if (auto undo = takeOut(bench_.parts, remove.id)) return std::move(*undo);
        if (auto undo = takeOut(bench_.jumpers, remove.id)) return std::move(*undo);
        if (auto undo = takeOut(bench_.notes, remove.id)) return std::move(*undo);
        if (auto undo = takeOut(bench_.pinned, remove.id)) return std::move(*undo);
        return unknownId(remove.id);
    }

    Result<Operation> operator()(const ReplaceBoard& replace) { return exchange(bench_.boards, replace.board); }
    Result<Operation> operator()(const ReplacePart& replace) { return exchange(bench_.parts, replace.part); }
    Result<Operation> operator()(const ReplaceJumper& replace) { return exchange(bench_.jumpers, replace.jumper); }
    Result<Operation> operator()(const ReplaceNote& replace) { return exchange(bench_.notes, replace.note); }

    Result<Operation> operator()(const SetTitle& set) {
        return Operation{SetTitle{std::exchange(bench_.title, set.title)}};
    }

    Result<Operation> operator()(const SetDisclosure& set) {
        return Operation{SetDisclosure{std::exchange(bench_.disclosure, set.disclosure)}};
    }

    Result<Operation> operator()(const SetSurroundings& set) {
        return Operation{SetSurroundings{std::exchange(bench_.surroundings, set.surroundings)}};
    }

private:
    template <class Item>
    Result<Operation> insert(std::vector<Item>& items, const Item& item, int at) {
        const auto size = static_cast<int>(items.size());
        if (at < -1 || at > size) {
            return Error{ErrorKind::Range, fmt::format("there is no place {} for {}", at, item.id), {}, {}};
        }
        if (bench_.findBoard(item.id) || bench_.findPart(item.id) || bench_.findJumper(item.id) ||
            bench_.findNote(item.id) || bench_.findPinned(item.id)) {
            return Error{ErrorKind::Reference, fmt::format("the id {} is used already", item.id), {}, {}};
        }
        items.insert(items.begin() + (at < 0 ? size : at), item);
        return Operation{Remove{item.id}};
    }

    template <class Item>
    std::optional<Operation> takeOut(std::vector<Item>& items, const std::string& id) {
        const auto found = findIn(items, id);
        if (found == items.end()) return std::nullopt;
        Operation undo = addition(std::move(*found), static_cast<int>(found - items.begin()));
        items.erase(found);
        return undo;
    }

    template <class Item>
    Result<Operation> exchange(std::vector<Item>& items, const Item& item) {
        const auto found = findIn(items, item.id);
        if (found == items.end()) return unknownId(item.id);
        return replacement(std::exchange(*found, item));
    }

    Bench& bench_;
};

bool plugsIntoAny(const Jumper& jumper, const std::set<std::string_view>& parts) {
    return std::any_of(jumper.ends.begin(), jumper.ends.end(), [&](const JumperEnd& end) {
        const auto* socket = std::get_if<Socket>(&end);
        return socket && parts.contains(socket->part);
    });
}

/// Ids of pinned readings of `before` that have nothing left to measure. New ones that never had are for validate() to refuse.
std::vector<std::string> danglingReadings(const Bench& bench, const Bench& before) {
    std::vector<std::string> ids;
    if (bench.pinned.empty() || before.pinned.empty()) return ids;
    const Measurable measurable(bench);
    for (const PinnedReading& reading : bench.pinned) {
        if (measurable.refusal(reading.of) && before.findPinned(reading.id)) ids.push_back(reading.id);
    }
    return ids;
}

}  // namespace

Result<Applied> apply(const Bench& bench, const Edit& edit) {
    Applied applied{bench, {edit.name, {}}};
    Performer perform(applied.bench);
    for (const Operation& operation : edit.operations) {
        auto undo = std::visit(perform, operation);
        if (!undo) return undo.error();
        applied.inverse.operations.push_back(std::move(undo).value());
    }
    for (const std::string& id : danglingReadings(applied.bench, bench))
        applied.inverse.operations.push_back(perform(Remove{id}).value());
    std::reverse(applied.inverse.operations.begin(), applied.inverse.operations.end());
    if (auto valid = validate(applied.bench); !valid) return valid.error();
    return applied;
}

Edit removeEdit(const Bench& bench, const std::vector<std::string>& ids) {
    Edit edit{ids.size() == 1 ? "Remove " + ids.front() : fmt::format("Remove {} pieces", ids.size()), {}};
    std::set<std::string_view> left(ids.begin(), ids.end());
    // Jumpers first: a bench must never name a socket that is gone, not even between two operations of an
    // undo.
    const std::set<std::string_view> parts = left;
    for (const Jumper& jumper : bench.jumpers) {
        if (!plugsIntoAny(jumper, parts)) continue;
        edit.operations.emplace_back(Remove{jumper.id});
        left.erase(jumper.id);
    }
    for (const std::string& id : ids) {
        if (left.erase(id) > 0) edit.operations.emplace_back(Remove{id});
    }
    return edit;
}

Edit pinEdit(const Bench& bench, const Measurand& of) {
    const std::string what = measurandInWords(bench, of);
    const auto there =
        std::find_if(bench.pinned.begin(), bench.pinned.end(), [&](const PinnedReading& r) { return r.of == of; });
    if (there != bench.pinned.end()) return {"Unpin " + what, {Remove{there->id}}};
    return {"Pin " + what, {AddPinned{{freeId(bench, "M"), of, {}}}}};
}

Edit setValueEdit(const Bench& bench, std::string_view partId, std::string_view value, double to) {
    const Part* part = bench.findPart(partId);
    assert(part);
    const int index = part->kind->valueIndex(value);
    assert(index >= 0);
    Part changed = *part;
    changed.values[index] = to;
    return {fmt::format("Set {} of {}", part->kind->values[index].label, partId), {ReplacePart{std::move(changed)}}};
}

Edit setStateEdit(const Bench& bench, std::string_view partId, std::string_view state, double to) {
    const Part* part = bench.findPart(partId);
    assert(part);
    const int index = part->kind->stateIndex(state);
    assert(index >= 0);
    Part changed = *part;
    changed.state[index] = to;
    return {fmt::format("Set {} of {}", part->kind->state[index].label, partId), {ReplacePart{std::move(changed)}}};
}

}  // namespace tiepoint
