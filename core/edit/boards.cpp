#include "core/edit/boards.h"

#include "core/bench/frame_grid.h"
#include "core/nets/layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <memory>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::size_t kMostNamed = 3;

constexpr double kDockReachMm = 5;    ///< a board let go so near to a docked place takes it
constexpr double kHardlyMovedMm = 2;  ///< so far it stays where it was

Error wouldLieOn(const std::string& id, const std::string& what) {
    return {ErrorKind::Placement, fmt::format("board {} would lie on {}", id, what), {}, {}};
}

/// What a board would lie on, apart from itself.
std::optional<Error> underBoard(const Bench& bench, const Board& board) {
    for (const Board& other : bench.boards) {
        if (other.id != board.id && overlap(board.frameMm(), other.frameMm()))
            return wouldLieOn(board.id, "board " + other.id);
    }
    for (const Part& part : bench.parts) {
        if (part.at && standsOnTable(part) && overlap(board.frameMm(), boxMm(part)))
            return wouldLieOn(board.id, part.id);
    }
    return std::nullopt;
}

std::string_view sideWords(Side side) {
    constexpr std::array<std::string_view, 4> kWords = {"below", "to the right of", "above", "to the left of"};
    return kWords[static_cast<std::size_t>(side)];
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

Point dockedAt(const Board& other, Side side, const BoardKind& kind) {
    const Point corner = other.cornerMm();
    Point at{corner.x + other.kind->firstColumnMm - kind.firstColumnMm, corner.y + other.kind->rowAMm - kind.rowAMm};
    switch (side) {
        case Side::Below:
            at.y = corner.y + other.kind->heightMm;
            break;
        case Side::Right:
            at.x = corner.x + other.kind->widthMm;
            break;
        case Side::Above:
            at.y = corner.y - kind.heightMm;
            break;
        case Side::Left:
            at.x = corner.x - kind.widthMm;
            break;
    }
    return at * (1 / kPitchMm);
}

Edit dockBoardEdit(const Bench& bench, const BoardKind& kind) {
    Board board;
    board.id = freeBoardId(bench);
    board.kind = &kind;
    const auto edit = [&] { return Edit{"Add board " + board.id, {AddBoard{board}}}; };
    for (auto other = bench.boards.rbegin(); other != bench.boards.rend(); ++other) {
        for (const Side side : kSides) {
            const Point at = dockedAt(*other, side, kind);
            board.atX = at.x;
            board.atY = at.y;
            if (!underBoard(bench, board)) return edit();
        }
    }
    return edit();  // the table is empty: the corner is free
}

Result<Edit> moveBoardEdit(const Bench& bench, const std::string& id, Point at) {
    const Board* board = bench.findBoard(id);
    assert(board);
    Board moved = *board;
    moved.atX = at.x;
    moved.atY = at.y;
    if (auto why = underBoard(bench, moved)) return std::move(*why);
    return Edit{"Move board " + id, {ReplaceBoard{std::move(moved)}}};
}

Result<Edit> moveBoardBesideEdit(const Bench& bench, const std::string& id, const std::string& other, Side side) {
    const Board *board = bench.findBoard(id), *beside = bench.findBoard(other);
    assert(board && beside && board != beside);
    return moveBoardEdit(bench, id, dockedAt(*beside, side, *board->kind));
}

Point boardLandsAt(const Bench& bench, const std::string& id, Point cornerMm) {
    const Board* board = bench.findBoard(id);
    assert(board);
    if (distance(cornerMm, board->cornerMm()) < kHardlyMovedMm) return {board->atX, board->atY};
    Point landing{std::round(cornerMm.x / kPitchMm), std::round(cornerMm.y / kPitchMm)};
    double least = kDockReachMm;
    for (const Board& other : bench.boards) {
        if (other.id == id) continue;
        for (const Side side : kSides) {
            const Point docked = dockedAt(other, side, *board->kind);
            const double away = distance(docked * kPitchMm, cornerMm);
            if (away >= least) continue;
            least = away;
            landing = docked;
        }
    }
    return landing;
}

std::string dockedWords(const Bench& bench, const std::string& id, Point at) {
    const Board* board = bench.findBoard(id);
    constexpr double kSamePitches = 1e-6;
    for (const Board& other : bench.boards) {
        if (other.id == id) continue;
        for (const Side side : kSides) {
            if (distance(dockedAt(other, side, *board->kind), at) < kSamePitches)
                return fmt::format("{} board {}", sideWords(side), other.id);
        }
    }
    return {};
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

Result<Edit> turnRailsEdit(const Bench& bench, const std::string& id) {
    const Board* board = bench.findBoard(id);
    assert(board);
    if (!board->kind->hasRails()) return Error{ErrorKind::Placement, fmt::format("board {} has no rails", id), {}, {}};
    Board turned = *board;
    const bool splits = board->rails == Rails::Through;
    turned.rails = splits ? Rails::Split : Rails::Through;
    return Edit{fmt::format("{} the rails of board {}", splits ? "Split" : "Join", id), {ReplaceBoard{turned}}};
}

std::string partedByRails(const Bench& whole, const Bench& broken, const std::string& id) {
    const Board* board = broken.findBoard(id);
    if (!board || !board->kind->hasRails() || board->rails == Rails::Through) return {};
    const auto before = buildLayout(std::make_shared<const Bench>(whole)),
               after = buildLayout(std::make_shared<const Bench>(broken));
    const int half = board->kind->railHoles / 2;
    const auto netIn = [&](const Layout& layout, Line rail, int number) {
        return layout.netOfHole(layout.holeIndex({id, rail, number}));
    };
    std::vector<std::string> parted;
    for (const Line rail : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
        const int left = netIn(*after, rail, 1), right = netIn(*after, rail, board->kind->railHoles);
        if (left == right || netIn(*before, rail, 1) != netIn(*before, rail, board->kind->railHoles)) continue;
        if (after->netUsed[left] && after->netUsed[right]) parted.emplace_back(lineName(rail));
    }
    if (parted.empty()) return {};
    return fmt::format("{} {} parted between holes {} and {}", inWords(parted), parted.size() == 1 ? "is" : "are", half,
                       half + 1);
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
