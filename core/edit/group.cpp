// Holes of strips go by columns and rows. Rails have gaps in their columns and are crowded, so their ends come last: each takes the hole of its
// rail that is nearest to where it would go and still free, before the others of the group are served.

#include "core/edit/group.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace tiepoint {
namespace {

constexpr double kColumnReach = 2;  ///< so far beyond the last hole of a rail an end still finds it
constexpr double kOtherBoardReachMm = kPitchMm / 2;

bool isNamed(const std::vector<std::string>& ids, const std::string& id) {
    return std::ranges::find(ids, id) != ids.end();
}

template <class Visit>
void eachHole(Part& part, Visit&& visit) {
    for (auto& lead : part.leads)
        if (lead) visit(*lead);
}
template <class Visit>
void eachHole(Jumper& jumper, Visit&& visit) {
    for (JumperEnd& end : jumper.ends)
        if (Hole* hole = std::get_if<Hole>(&end)) visit(*hole);
}
template <class Visit>
void eachHole(Note& note, Visit&& visit) {
    visit(note.at);
}

template <class Visit>
void eachHoleOf(const Group& group, Visit&& visit) {
    for (Part part : group.parts) eachHole(part, visit);
    for (Jumper jumper : group.jumpers) eachHole(jumper, visit);
}

template <class Thing>
std::optional<Hole> leadingHole(Thing thing) {
    std::optional<Hole> first;
    eachHole(thing, [&](const Hole& hole) {
        if (!first || (isRail(first->line) && !isRail(hole.line))) first = hole;
    });
    return first;
}

}  // namespace

Group groupOf(const Bench& bench, const std::vector<std::string>& ids) {
    Group group;
    for (const std::string& id : ids) {
        if (const Part* part = bench.findPart(id)) group.parts.push_back(*part);
        if (const Jumper* jumper = bench.findJumper(id)) group.jumpers.push_back(*jumper);
        if (const Note* note = bench.findNote(id)) group.notes.push_back(*note);
    }
    return group;
}

std::optional<Hole> handleOf(const Part& part) { return leadingHole(part); }
std::optional<Hole> handleOf(const Jumper& jumper) { return leadingHole(jumper); }
std::optional<Hole> handleOf(const Bench& bench, const std::string& id) {
    if (const Part* part = bench.findPart(id)) return leadingHole(*part);
    if (const Jumper* jumper = bench.findJumper(id)) return leadingHole(*jumper);
    if (const Note* note = bench.findNote(id)) return note->at;
    return std::nullopt;
}

std::optional<Step> stepTo(const Bench& bench, const Hole& from, Point at, double reachMm) {
    const Board* start = bench.findBoard(from.board);
    if (!start) return std::nullopt;
    const bool rail = isRail(from.line);
    std::optional<Step> step;
    double best = reachMm;
    for (const Board& board : bench.boards) {
        for (int index = rail ? kRowCount : 0; index < (rail ? kLineCount : kRowCount); ++index) {
            const Line line = static_cast<Line>(index);
            for (int number = 1; number <= board.kind->holesOf(line); ++number) {
                const double away = distance(board.cornerMm() + board.kind->holeMm(line, number), at);
                if (away > best || (step && away == best)) continue;
                best = away;
                const int columns =
                    rail ? board.kind->railColumn(number) - start->kind->railColumn(from.number) : number - from.number;
                const int lines = index - static_cast<int>(from.line);
                step = Step{columns, rail ? 0 : lines, rail ? lines : 0, from.board, board.id};
            }
        }
    }
    return step;
}

GroupPlacer::GroupPlacer(const Bench& bench, std::vector<std::string> away) : bench_(bench), away_(std::move(away)) {
    const auto take = [&](const Hole& hole) {
        taken_.insert(hole);
        if (!isRail(hole.line) && holeExists(bench_, hole)) takenStrips_.emplace(hole.board, stripOf(hole));
    };
    for (Part part : bench.parts)
        if (!isNamed(away_, part.id)) eachHole(part, take);
    for (Jumper jumper : bench.jumpers)
        if (!isNamed(away_, jumper.id)) eachHole(jumper, take);
}

int GroupPlacer::stripOf(const Hole& hole) const {
    const Board& board = *bench_.findBoard(hole.board);
    return board.kind->stripIndex(board.rails, hole.line, hole.number);
}

const Occupancy& GroupPlacer::around() const {
    if (!around_) around_.emplace(bench_, away_);
    return *around_;
}

bool GroupPlacer::isFree(const Group& group) const {
    bool free = true;
    eachHoleOf(group, [&](const Hole& hole) { free = free && !isTaken(hole); });
    return free;
}

bool GroupPlacer::hasOwnStrips(const Group& group) const {
    bool own = true;
    eachHoleOf(group, [&](const Hole& hole) {
        own = own &&
              (isRail(hole.line) || !holeExists(bench_, hole) || !takenStrips_.contains({hole.board, stripOf(hole)}));
    });
    return own;
}

/// Moves one group by one step.
class GroupPlacer::Mover {
public:
    Mover(const GroupPlacer& placer, const Step& step) : placer_(placer), bench_(placer.bench_), step_(step) {}

    MovedGroup take(Group group) {
        MovedGroup moved{std::move(group), {}};
        for (const bool rails : {false, true}) {
            isAtRails_ = rails;
            move(moved.group.parts);
            move(moved.group.jumpers);
            move(moved.group.notes);
        }
        const auto isLost = [&](const auto& thing) { return isNamed(lost_, thing.id); };
        std::erase_if(moved.group.parts, isLost);
        std::erase_if(moved.group.jumpers, isLost);
        std::erase_if(moved.group.notes, isLost);
        moved.refused = std::move(refused_);
        return moved;
    }

private:
    template <class Thing>
    void move(std::vector<Thing>& things) {
        constexpr bool isNote = std::is_same_v<Thing, Note>;
        for (Thing& thing : things) {
            strip_ = leadingHole(thing);
            eachHole(thing, [&](Hole& hole) {
                if (isRail(hole.line) != isAtRails_) return;
                const auto to = isAtRails_ ? alongRail(hole, isNote) : acrossStrips(hole);
                if (!to) return lose(thing.id, hole);
                hole = *to;
                if (!isNote) claimed_.insert(hole);
            });
        }
    }

    void lose(const std::string& id, const Hole& hole) {
        lost_.push_back(id);
        if (!refused_.empty()) return;
        const Board* board = bench_.findBoard(boardFor(hole));
        const bool noRail = isAtRails_ && board && !board->kind->hasRails();
        const bool full = isAtRails_ && !noRail && railIsFull_;
        refused_ = noRail ? fmt::format("{} needs a rail, and board {} has none", id, board->id)
                   : full ? fmt::format("no hole is free for {} in the rail {}", id, lineName(hole.line))
                          : id + " would leave the board";
    }

    const std::string& boardFor(const Hole& hole) const {
        return hole.board == step_.from && !step_.to.empty() ? step_.to : hole.board;
    }

    std::optional<Hole> acrossStrips(const Hole& hole) const {
        if (step_.changesBoard() && hole.board != step_.from) return besideTheGroup(hole);
        const int row = static_cast<int>(hole.line) + step_.rows;
        if (row < 0 || row >= kRowCount) return std::nullopt;
        const Hole to{boardFor(hole), static_cast<Line>(row), hole.number + step_.columns};
        return holeExists(bench_, to) ? std::optional(to) : std::nullopt;
    }

    /// Of a group on several boards, the hole at the same place beside the rest of it.
    std::optional<Hole> besideTheGroup(const Hole& hole) const {
        const Board *from = bench_.findBoard(step_.from), *to = bench_.findBoard(step_.to);
        const auto at = holeMm(bench_, hole);
        if (!from || !to || !at) return std::nullopt;
        const Point way = to->cornerMm() - from->cornerMm() + Point{step_.columns * kPitchMm, step_.rows * kPitchMm};
        return nearestHole(bench_, *at + way, kOtherBoardReachMm);
    }

    std::optional<Hole> alongRail(const Hole& hole, bool isNote) {
        railIsFull_ = false;
        const Board* before = bench_.findBoard(hole.board);
        const Board* board = bench_.findBoard(boardFor(hole));
        const int index = static_cast<int>(hole.line) + step_.rails;
        if (!before || !board || !board->kind->hasRails() || index < kRowCount || index >= kLineCount)
            return std::nullopt;
        const Line line = static_cast<Line>(index);
        const int wanted = before->kind->railColumn(hole.number) + step_.columns;
        auto nearest = nearestInRail(*board, line, wanted, [](const Hole&) { return true; });
        railIsFull_ = nearest.has_value();
        if (!nearest || isNote) return nearest;
        return nearestInRail(*board, line, wanted, [&](const Hole& to) {
            return sameStrip(bench_, to, *nearest) && !placer_.isTaken(to) && !claimed_.contains(to) &&
                   !placer_.around().over(to);
        });
    }

    /// The hole of a rail nearest to a column that suits; of two as near the one nearer to the thing's end in a strip, so that copies of
    /// copies don't drift, or else the one that lies ahead.
    template <class Suits>
    std::optional<Hole> nearestInRail(const Board& board, Line line, int column, Suits suits) const {
        const auto awayFrom = [&](int number) { return std::abs(board.kind->railColumn(number) - column); };
        std::optional<Hole> nearest;
        for (int number = 1; number <= board.kind->railHoles; ++number) {
            const int away = awayFrom(number);
            if (nearest && (away > awayFrom(nearest->number) ||
                            (away == awayFrom(nearest->number) && !isBetter(board, number, nearest->number))))
                continue;
            if (const Hole to{board.id, line, number}; suits(to)) nearest = to;
        }
        const int first = board.kind->railColumn(1), last = board.kind->railColumn(board.kind->railHoles);
        const bool beyond = column < first - kColumnReach || column > last + kColumnReach;
        return beyond ? std::nullopt : nearest;
    }

    bool isBetter(const Board& board, int number, int than) const {
        if (!strip_ || isRail(strip_->line))
            return step_.columns > 0;  // later numbers lie ahead of a step to the right
        const auto aside = [&](int each) { return std::abs(board.kind->railColumn(each) - strip_->number); };
        return aside(number) < aside(than) || (aside(number) == aside(than) && step_.columns > 0);
    }

    const GroupPlacer& placer_;
    const Bench& bench_;
    const Step& step_;
    std::optional<Hole> strip_;  ///< of the thing that is moved, where it goes
    bool isAtRails_ = false;
    bool railIsFull_ = false;
    std::set<Hole> claimed_;
    std::vector<std::string> lost_;
    std::string refused_;
};

MovedGroup GroupPlacer::moved(const Group& group, const Step& step) const { return Mover(*this, step).take(group); }

}  // namespace tiepoint
