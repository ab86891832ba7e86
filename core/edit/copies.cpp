#include "core/edit/copies.h"

#include "core/edit/placement.h"

#include <algorithm>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr int kFarthestRows = kRowCount;

struct Originals {
    std::vector<const Part*> parts;
    std::vector<const Jumper*> jumpers;
};

Originals find(const Bench& bench, const std::vector<std::string>& ids) {
    Originals found;
    for (const std::string& id : ids) {
        if (const Part* part = bench.findPart(id)) found.parts.push_back(part);
        else if (const Jumper* jumper = bench.findJumper(id)) found.jumpers.push_back(jumper);
    }
    return found;
}

/// Ids of copies keep their prefix: R7 becomes the next free R.
std::string newId(const Bench& bench, const std::string& old) {
    const auto digits = old.find_last_not_of("0123456789");
    return freeId(bench, old.substr(0, digits + 1));
}

/// Jumpers between copied supplies and the board follow the copies; to others they stay.
void follow(Jumper& jumper, const std::vector<const Part*>& originals, const std::vector<std::string>& copies) {
    for (JumperEnd& end : jumper.ends) {
        auto* socket = std::get_if<Socket>(&end);
        if (!socket) continue;
        for (std::size_t i = 0; i < originals.size(); ++i)
            if (originals[i]->id == socket->part) {
                socket->part = copies[i];
                break;
            }
    }
}

/// All copies moved by the same step; nothing if one doesn't fit.
std::optional<Copies> copiesAt(const Bench& onto, const Originals& originals, int columns, int rows) {
    Bench bench = onto;
    Copies copies;
    for (const Part* original : originals.parts) {
        auto part = shifted(bench, *original, columns, rows);
        if (!part) return std::nullopt;
        part->id = newId(bench, original->id);
        if (!part->cap.empty()) part->cap = freeCapLetter(bench);
        if (refusal(bench, *part)) return std::nullopt;
        bench.parts.push_back(*part);
        copies.ids.push_back(part->id);
        copies.edit.operations.emplace_back(AddPart{*std::move(part)});
    }
    for (const Jumper* original : originals.jumpers) {
        auto jumper = shifted(bench, *original, columns, rows);
        if (!jumper) return std::nullopt;
        jumper->id = newId(bench, original->id);
        follow(*jumper, originals.parts, copies.ids);
        if (refusal(bench, *jumper)) return std::nullopt;
        bench.jumpers.push_back(*jumper);
        copies.ids.push_back(jumper->id);
        copies.edit.operations.emplace_back(AddJumper{*std::move(jumper)});
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
        const std::string cap(1, letter);
        if (std::ranges::none_of(bench.parts, [&](const Part& part) { return part.cap == cap; })) return cap;
    }
    return {};
}

std::optional<Copies> copiesOnto(const Bench& onto, const Bench& from, const std::vector<std::string>& ids) {
    const Originals originals = find(from, ids);
    if (originals.parts.empty() && originals.jumpers.empty()) return std::nullopt;
    const int farthest = widestBoard(onto);
    for (int rows = 0; rows < kFarthestRows; ++rows)
        for (const int down : {rows, -rows})
            for (int columns = 0; columns < farthest; ++columns)
                for (const int right : {columns, -columns})
                    if (auto copies = copiesAt(onto, originals, right, down)) {
                        copies->edit.name = copies->ids.size() == 1 ? "Copy " + copies->ids.front() : "Copy parts";
                        return copies;
                    }
    return std::nullopt;
}

}  // namespace tiepoint
