#include "core/edit/copies.h"

#include "core/edit/group.h"
#include "core/edit/placement.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>

namespace tiepoint {
namespace {

struct Originals {
    Group group;
    std::vector<PinnedReading> readings;  ///< pinned to these parts and jumpers
    std::size_t count() const { return group.parts.size() + group.jumpers.size(); }
    /// The board on which the first of them is that is in a hole; empty: none is.
    std::string board() const {
        for (const Part& part : group.parts)
            if (const auto hole = handleOf(part)) return hole->board;
        for (const Jumper& jumper : group.jumpers)
            if (const auto hole = handleOf(jumper)) return hole->board;
        return {};
    }
};

/// The named things of a bench and the readings pinned to them, on boards that the other bench has.
Originals find(const Bench& bench, const std::vector<std::string>& ids, const Bench& onto) {
    const auto land = [&](Hole& hole) {
        if (!onto.findBoard(hole.board) && !onto.boards.empty()) hole.board = onto.boards.front().id;
    };
    Originals found{groupOf(bench, ids), {}};
    found.group.notes.clear();
    for (Part& part : found.group.parts) {
        part.at.reset();  // where the original stands no other box can
        for (auto& lead : part.leads)
            if (lead) land(*lead);
    }
    for (Jumper& jumper : found.group.jumpers)
        for (JumperEnd& end : jumper.ends)
            if (Hole* hole = std::get_if<Hole>(&end)) land(*hole);
    for (const PinnedReading& reading : bench.pinned) {
        const std::string_view thing = thingOf(reading.of);
        if (!thing.empty() && std::ranges::find(ids, thing) != ids.end()) found.readings.push_back(reading);
    }
    return found;
}

/// Ids of copies keep their prefix: R7 becomes the next free R.
std::string newId(const Bench& bench, const std::string& old) {
    const auto digits = old.find_last_not_of("0123456789");
    return freeId(bench, old.substr(0, digits + 1));
}

/// Jumpers between copied supplies and the board followOriginals the copies; to others they stay.
void followOriginals(Jumper& jumper, const std::vector<Part>& originals, const std::vector<std::string>& copies) {
    for (JumperEnd& end : jumper.ends) {
        auto* socket = std::get_if<Socket>(&end);
        if (!socket) continue;
        for (std::size_t i = 0; i < originals.size(); ++i)
            if (originals[i].id == socket->part) {
                socket->part = copies[i];
                break;
            }
    }
}

/// Readings of a copied thing followOriginals the copy.
void followOriginals(PinnedReading& reading, const std::map<std::string, std::string>& copyOf) {
    if (auto* amperes = std::get_if<AmperesIn>(&reading.of)) amperes->id = copyOf.at(amperes->id);
    if (auto* watts = std::get_if<WattsOf>(&reading.of)) watts->part = copyOf.at(watts->part);
}

Error noPlace(std::string why) { return {ErrorKind::Placement, std::move(why), {}, {}}; }

/// A bench to which copies are added one after the other, and the edit that adds them.
struct Growing {
    Bench bench;
    Edit edit;

    template <class Add, class List, class Thing>
    void add(List& list, Thing thing) {
        list.push_back(thing);
        edit.operations.emplace_back(Add{std::move(thing)});
    }
};

/// Adds a group that has found its holes, under new ids; gives back these.
std::vector<std::string> addCopy(Growing& onto, const Originals& originals, const Group& placed) {
    std::vector<std::string> ids;
    std::map<std::string, std::string> copyOf;
    const auto name = [&](const std::string& original) {
        ids.push_back(newId(onto.bench, original));
        copyOf.emplace(original, ids.back());
        return ids.back();
    };
    for (Part part : placed.parts) {
        part.id = name(part.id);
        if (!part.cap.empty()) part.cap = freeCapLetter(onto.bench);
        onto.add<AddPart>(onto.bench.parts, std::move(part));
    }
    for (Jumper jumper : placed.jumpers) {
        jumper.id = name(jumper.id);
        followOriginals(jumper, originals.group.parts, ids);
        onto.add<AddJumper>(onto.bench.jumpers, std::move(jumper));
    }
    for (PinnedReading reading : originals.readings) {
        reading.id = newId(onto.bench, reading.id);
        followOriginals(reading, copyOf);
        onto.add<AddPinned>(onto.bench.pinned, std::move(reading));
    }
    return ids;
}

/// Tries steps for one more copy until one fits.
class CopyPlacer {
public:
    CopyPlacer(const Growing& onto, const Originals& originals)
        : onto_(onto),
          originals_(originals),
          placer_(onto.bench, {}) {}

    /// Whether the copies fit there; they are then added to `grown`.
    bool fits(const Step& step, bool wantsOwnStrips) {
        const MovedGroup moved = placer_.moved(originals_.group, step);
        if (!moved.refused.empty()) return keep(moved.refused);
        const bool free = placer_.isFree(moved.group);
        if (!free && !why_.empty()) return false;  // words for one reason are enough
        if (free && wantsOwnStrips && !placer_.hasOwnStrips(moved.group))
            return keep("it would share a strip with what is there");
        Growing after = onto_;
        ids_ = addCopy(after, originals_, moved.group);
        if (auto why = refusalOfChange(onto_.bench, after.bench)) return keep(std::move(*why));
        grown_ = std::move(after);
        return true;
    }

    Growing takeGrown() { return std::move(grown_); }
    std::vector<std::string> takeIds() { return std::move(ids_); }
    /// Why the first step that was tried didn't fit.
    const std::string& why() const { return why_; }

private:
    bool keep(std::string why) {
        if (why_.empty()) why_ = std::move(why);
        return false;
    }

    const Growing& onto_;
    const Originals& originals_;
    GroupPlacer placer_;
    Growing grown_;
    std::vector<std::string> ids_;
    std::string why_;
};

int widestBoard(const Bench& bench) {
    int columns = 0;
    for (const Board& board : bench.boards) columns = std::max(columns, board.kind->columns);
    return columns;
}

/// The boards in the order in which a row goes on from one: those at its right, then the rest as they come.
std::vector<std::string> boardsAfter(const Bench& bench, const std::string& id) {
    const Board* first = bench.findBoard(id);
    std::vector<const Board*> boards;
    for (const Board& board : bench.boards)
        if (board.id != id) boards.push_back(&board);
    const auto farness = [&](const Board* board) {
        const bool right = first && board->atY == first->atY && board->atX > first->atX;
        return right ? board->atX - first->atX : std::numeric_limits<double>::infinity();
    };
    std::ranges::stable_sort(boards, {}, farness);
    std::vector<std::string> ids;
    ids.reserve(boards.size());
    for (const Board* board : boards) ids.push_back(board->id);
    return ids;
}

/// One more copy to the right of the last one, or on a board that comes after its own.
bool placeInRow(CopyPlacer& placer, const Bench& bench, Step& last) {
    const int farthest = widestBoard(bench);
    const auto fitsAt = [&](int columns, const std::string& board) {
        const Step step{columns, 0, 0, last.from, board};
        if (!placer.fits(step, true)) return false;
        last = step;
        return true;
    };
    for (int columns = last.columns + 1; columns < farthest; ++columns)
        if (fitsAt(columns, last.to)) return true;
    for (const std::string& next : boardsAfter(bench, last.to))
        for (int columns = -farthest; columns < farthest; ++columns)
            if (fitsAt(columns, next)) return true;
    return false;
}

/// The nearest place of a board, sideways first.
bool placeNear(CopyPlacer& placer, int farthest, const std::string& from, const std::string& to) {
    for (int rows = 0; rows < kRowCount; ++rows)
        for (const int down : {rows, -rows})
            for (int columns = 0; columns < farthest; ++columns)
                for (const int right : {columns, -columns})
                    if (placer.fits({right, down, 0, from, to}, false)) return true;
    return false;
}

std::string allTogether(std::size_t count) { return count == 1 ? "it" : fmt::format("all {} things together", count); }

std::string nameOfEdit(const std::vector<std::string>& ids, int count) {
    if (count > 1) return fmt::format("Copy {} times", count);
    return ids.size() == 1 ? "Copy " + ids.front() : "Copy parts";
}

}  // namespace

std::string freeCapLetter(const Bench& bench) {
    for (const char letter : kCapLetters) {
        std::string cap(1, letter);
        if (std::ranges::none_of(bench.parts, [&](const Part& part) { return part.cap == cap; })) return cap;
    }
    return {};
}

Result<Copies> copiesInRow(const Bench& bench, const std::vector<std::string>& ids, int count) {
    const Originals originals = find(bench, ids, bench);
    if (originals.count() == 0) return Error{ErrorKind::Reference, "there is nothing to copy", {}, {}};
    Growing growing{bench, {}};
    Step last{0, 0, 0, originals.board(), originals.board()};
    Copies copies{{}, {}, 0, {}};
    while (copies.count < count) {
        CopyPlacer placer(growing, originals);
        if (!placeInRow(placer, growing.bench, last)) {
            copies.noMore = fmt::format("there is no room to the right for {}; one column on, {}",
                                        allTogether(originals.count()), placer.why());
            break;
        }
        growing = placer.takeGrown();
        copies.ids = placer.takeIds();
        ++copies.count;
    }
    if (copies.count == 0) return noPlace(std::move(copies.noMore));
    copies.edit = std::move(growing.edit);
    copies.edit.name = nameOfEdit(copies.ids, copies.count);
    return copies;
}

Result<Copies> copiesOnto(const Bench& onto, const Bench& from, const std::vector<std::string>& ids,
                          const std::optional<Hole>& beside) {
    const Originals originals = find(from, ids, onto);
    if (originals.count() == 0) return Error{ErrorKind::Reference, "there is nothing to copy", {}, {}};
    const Growing growing{onto, {}};
    CopyPlacer placer(growing, originals);
    const std::string own = originals.board();
    const std::string first = beside && onto.findBoard(beside->board) ? beside->board : own;
    const int farthest = widestBoard(onto);
    bool placed = placeNear(placer, farthest, own, first);
    for (const std::string& next : boardsAfter(onto, first)) placed = placed || placeNear(placer, farthest, own, next);
    if (!placed) {
        return noPlace(fmt::format("no place is free for {}; {}", allTogether(originals.count()), placer.why()));
    }
    Copies copies{placer.takeGrown().edit, placer.takeIds(), 1, {}};
    copies.edit.name = nameOfEdit(copies.ids, 1);
    return copies;
}

}  // namespace tiepoint
