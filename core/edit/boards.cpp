#include "core/edit/boards.h"

#include "core/bench/board_grid.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace tiepoint {
namespace {

constexpr std::size_t kMostNamed = 3;

bool isFree(const Bench& bench, const Board& board) {
    std::vector<Board> boards = bench.boards;
    boards.push_back(board);
    BoardGrid grid(boards);
    for (int i = 0; i < static_cast<int>(boards.size()); ++i) {
        if (grid.add(i)) return false;
    }
    return true;
}

/// The places of a board beside another: below, right, above, left.
std::vector<Point> placesBeside(const Board& other, const BoardKind& kind) {
    const Point corner = other.cornerMm();
    const double x = corner.x + other.kind->firstColumnMm - kind.firstColumnMm;
    const double y = corner.y + other.kind->rowAMm - kind.rowAMm;
    return {{x, corner.y + other.kind->heightMm},
            {corner.x + other.kind->widthMm, y},
            {x, corner.y - kind.heightMm},
            {corner.x - kind.widthMm, y}};
}

/// "R1", "R1 and D1", "R1, D1, W3 and 2 more".
std::string inWords(const std::vector<std::string>& ids) {
    std::string text;
    const std::size_t named = std::min(ids.size(), kMostNamed);
    for (std::size_t i = 0; i < named; ++i) {
        const bool last = i + 1 == named && ids.size() <= kMostNamed;
        text += (i == 0 ? "" : last ? " and " : ", ") + ids[i];
    }
    if (ids.size() > kMostNamed) text += fmt::format(" and {} more", ids.size() - kMostNamed);
    return text;
}

std::vector<std::string> pluggedInto(const Bench& bench, const std::string& board) {
    std::vector<std::string> ids;
    for (const Part& part : bench.parts) {
        if (std::any_of(part.leads.begin(), part.leads.end(),
                        [&](const auto& lead) { return lead && lead->board == board; }))
            ids.push_back(part.id);
    }
    for (const Jumper& jumper : bench.jumpers) {
        const auto there = [&](const JumperEnd& end) {
            const Hole* hole = std::get_if<Hole>(&end);
            return hole && hole->board == board;
        };
        if (std::any_of(jumper.ends.begin(), jumper.ends.end(), there)) ids.push_back(jumper.id);
    }
    return ids;
}

/// Boards are lettered in the order in which they come: A, B, ... and then by number.
std::string freeBoardId(const Bench& bench) {
    for (char letter = 'A'; letter <= 'Z'; ++letter) {
        std::string id(1, letter);
        if (!bench.findBoard(id) && !bench.findPart(id) && !bench.findJumper(id) && !bench.findNote(id) &&
            !bench.findPinned(id))
            return id;
    }
    return freeId(bench, "A");
}

}  // namespace

Edit dockBoardEdit(const Bench& bench, const BoardKind& kind) {
    Board board;
    board.id = freeBoardId(bench);
    board.kind = &kind;
    const auto edit = [&] { return Edit{"Add board " + board.id, {AddBoard{board}}}; };
    for (auto other = bench.boards.rbegin(); other != bench.boards.rend(); ++other) {
        for (const Point at : placesBeside(*other, kind)) {
            board.atX = at.x / kPitchMm;
            board.atY = at.y / kPitchMm;
            if (isFree(bench, board)) return edit();
        }
    }
    return edit();  // the table is empty: the corner is free
}

Result<Edit> removeBoardEdit(const Bench& bench, const std::string& id) {
    if (bench.boards.size() == 1) return Error{ErrorKind::Placement, "the last board stays: a bench needs one", {}, {}};
    const auto inTheWay = pluggedInto(bench, id);
    if (!inTheWay.empty()) {
        return Error{ErrorKind::Placement,
                     fmt::format("board {} can't go: {} {} plugged into it", id, inWords(inTheWay),
                                 inTheWay.size() == 1 ? "is" : "are"),
                     {},
                     {}};
    }
    Edit edit{"Remove board " + id, {}};
    for (const Note& note : bench.notes) {
        if (note.at.board == id) edit.operations.emplace_back(Remove{note.id});
    }
    edit.operations.emplace_back(Remove{id});
    return edit;
}

Edit turnLabelsEdit(const Bench& bench, const std::string& id) {
    const Board* board = bench.findBoard(id);
    assert(board);
    Board turned = *board;
    turned.labels = board->labels == Labels::ATop ? Labels::ABottom : Labels::ATop;
    return {fmt::format("Letter board {} from the {}", id, turned.labels == Labels::ATop ? "top" : "bottom"),
            {ReplaceBoard{turned}}};
}

}  // namespace tiepoint
