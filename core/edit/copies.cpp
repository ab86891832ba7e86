#include "core/edit/copies.h"

#include "core/edit/placement.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <map>

namespace tiepoint {
namespace {

constexpr int kFarthestRows = kRowCount;

struct Originals {
    std::vector<Part> parts;
    std::vector<Jumper> jumpers;
    std::vector<PinnedReading> readings;  ///< pinned to these parts and jumpers
    std::size_t count() const { return parts.size() + jumpers.size(); }
};

/// The named things of a bench and the readings pinned to them, on boards that the other bench has.
Originals find(const Bench& bench, const std::vector<std::string>& ids, const Bench& onto) {
    const auto land = [&](Hole& hole) {
        if (!onto.findBoard(hole.board) && !onto.boards.empty()) hole.board = onto.boards.front().id;
    };
    Originals found;
    for (const std::string& id : ids) {
        if (const Part* part = bench.findPart(id)) {
            found.parts.push_back(*part);
            found.parts.back().at.reset();  // where the original stands no other box can
            for (auto& lead : found.parts.back().leads)
                if (lead) land(*lead);
        } else if (const Jumper* jumper = bench.findJumper(id)) {
            found.jumpers.push_back(*jumper);
            for (JumperEnd& end : found.jumpers.back().ends)
                if (Hole* hole = std::get_if<Hole>(&end)) land(*hole);
        }
    }
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

Error offTheBoard(const std::string& id) { return {ErrorKind::Placement, id + " would leave the board", {}, {}}; }
Error inTheWay(const std::string& why) { return {ErrorKind::Placement, why, {}, {}}; }

/// All copies moved by the same step; fails with the first that doesn't fit.
Result<Copies> copiesAt(const Bench& onto, const Originals& originals, int columns, int rows) {
    Bench bench = onto;
    Copies copies;
    std::map<std::string, std::string> copyOf;
    for (const Part& original : originals.parts) {
        auto part = shifted(bench, original, columns, rows);
        if (!part) return offTheBoard(original.id);
        part->id = newId(bench, original.id);
        if (!part->cap.empty()) part->cap = freeCapLetter(bench);
        if (const auto why = refusal(bench, *part)) return inTheWay(*why);
        bench.parts.push_back(*part);
        copies.ids.push_back(part->id);
        copyOf.emplace(original.id, part->id);
        copies.edit.operations.emplace_back(AddPart{*std::move(part)});
    }
    for (const Jumper& original : originals.jumpers) {
        auto jumper = shifted(bench, original, columns, rows);
        if (!jumper) return offTheBoard(original.id);
        jumper->id = newId(bench, original.id);
        followOriginals(*jumper, originals.parts, copies.ids);
        if (const auto why = refusal(bench, *jumper)) return inTheWay(*why);
        bench.jumpers.push_back(*jumper);
        copies.ids.push_back(jumper->id);
        copyOf.emplace(original.id, jumper->id);
        copies.edit.operations.emplace_back(AddJumper{*std::move(jumper)});
    }
    for (PinnedReading reading : originals.readings) {
        reading.id = newId(bench, reading.id);
        followOriginals(reading, copyOf);
        bench.pinned.push_back(reading);
        copies.edit.operations.emplace_back(AddPinned{std::move(reading)});
    }
    return copies;
}

int widestBoard(const Bench& bench) {
    int columns = 0;
    for (const Board& board : bench.boards) columns = std::max(columns, board.kind->columns);
    return columns;
}

}  // namespace

std::string freeCapLetter(const Bench& bench) {
    for (const char letter : kCapLetters) {
        std::string cap(1, letter);
        if (std::ranges::none_of(bench.parts, [&](const Part& part) { return part.cap == cap; })) return cap;
    }
    return {};
}

Result<Copies> copiesOnto(const Bench& onto, const Bench& from, const std::vector<std::string>& ids) {
    const Originals originals = find(from, ids, onto);
    if (originals.count() == 0) return Error{ErrorKind::Reference, "there is nothing to copy", {}, {}};
    const int farthest = widestBoard(onto);
    for (int rows = 0; rows < kFarthestRows; ++rows)
        for (const int down : {rows, -rows})
            for (int columns = 0; columns < farthest; ++columns)
                for (const int right : {columns, -columns})
                    if (auto copies = copiesAt(onto, originals, right, down)) {
                        copies.value().edit.name =
                            copies->ids.size() == 1 ? "Copy " + copies->ids.front() : "Copy parts";
                        return copies;
                    }
    const std::string what = originals.count() == 1 ? "it" : fmt::format("all {} things together", originals.count());
    const auto beside = copiesAt(onto, originals, 1, 0);
    return Error{ErrorKind::Placement,
                 fmt::format("no place is free for {}; one column on, {}", what, beside.error().message),
                 {},
                 {}};
}

}  // namespace tiepoint
