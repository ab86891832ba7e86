#include "core/bench/bench.h"

#include "core/base/utf8.h"
#include "core/bench/resolve.h"

#include <algorithm>
#include <cassert>
#include <unordered_set>

namespace tiepoint {
namespace {

constexpr std::size_t kMaxIdLength = 32;

bool isLetter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }

template <class Item>
int indexOfId(const std::vector<Item>& items, std::string_view id) {
    const auto found = std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.id == id; });
    return found == items.end() ? -1 : static_cast<int>(found - items.begin());
}

template <class Item>
const Item* findById(const std::vector<Item>& items, std::string_view id) {
    const int index = indexOfId(items, id);
    return index < 0 ? nullptr : &items[index];
}

void plugIn(Part& part, std::string_view lead, Hole hole) {
    const int index = part.kind->leadIndex(lead);
    assert(index >= 0);
    part.leads[index] = std::move(hole);
}

}  // namespace

bool standsOnTable(const Part& part) { return part.kind->package->reach == Reach::Flying; }

Rect boxMm(const Part& part) {
    const Package& package = packageOf(part);
    return {part.at->x * kPitchMm, part.at->y * kPitchMm, package.bodyLengthMm, package.bodyWidthMm};
}

Part makePart(const PartKind& kind, std::string id) {
    Part part;
    part.id = std::move(id);
    part.kind = &kind;
    part.leads.resize(kind.leads.size());
    part.values.resize(kind.values.size());
    part.state.resize(kind.state.size());
    return part;
}

const Board* Bench::findBoard(std::string_view id) const { return findById(boards, id); }
const Part* Bench::findPart(std::string_view id) const { return findById(parts, id); }
const Jumper* Bench::findJumper(std::string_view id) const { return findById(jumpers, id); }
const Note* Bench::findNote(std::string_view id) const { return findById(notes, id); }
const PinnedReading* Bench::findPinned(std::string_view id) const { return findById(pinned, id); }
int Bench::partIndex(std::string_view id) const { return indexOfId(parts, id); }
int Bench::jumperIndex(std::string_view id) const { return indexOfId(jumpers, id); }

Bench makeNewBench() {
    Part supply = makePart(usualSupply(), "PS1");
    plugIn(supply, "+", {"A", Line::TopPlus, 3});  // hole 1 would cover the printed signs
    plugIn(supply, "-", {"A", Line::BottomMinus, 3});

    Board board;
    board.id = "A";
    board.kind = findBoardKind("half");

    Bench bench;
    bench.title = "New bench";
    bench.boards.push_back(std::move(board));
    bench.parts.push_back(std::move(supply));
    return bench;
}

std::optional<Point> holeMm(const Bench& bench, const Hole& hole) {
    const Board* board = bench.findBoard(hole.board);
    if (!board || !board->kind->has(hole.line, hole.number)) return std::nullopt;
    return board->cornerMm() + board->kind->holeMm(hole.line, hole.number);
}

std::string freeId(const Bench& bench, std::string_view prefix) {
    std::unordered_set<std::string_view> used;
    for (const Board& board : bench.boards) used.insert(board.id);
    for (const Part& part : bench.parts) used.insert(part.id);
    for (const Jumper& jumper : bench.jumpers) used.insert(jumper.id);
    for (const Note& note : bench.notes) used.insert(note.id);
    for (const PinnedReading& reading : bench.pinned) used.insert(reading.id);
    for (int number = 1;; ++number) {
        std::string id = std::string(prefix) + std::to_string(number);
        if (!used.contains(id)) return id;
    }
}

bool isId(std::string_view text) {
    if (text.empty() || text.size() > kMaxIdLength || !isLetter(text[0])) return false;
    return std::all_of(text.begin(), text.end(), [](char c) { return isLetter(c) || isDigit(c) || c == '_'; });
}

}  // namespace tiepoint
