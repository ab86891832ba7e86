// A thing that moves minds what it would lie on, and what is in the way of its wire. Bodies matter as far as their radius, wires as far as an
// arc may swing.

#include "core/slips/things_near.h"

#include "core/bench/bodies.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>

namespace tiepoint {
namespace {

constexpr double kSquareMm = 25;
constexpr double kRoomMm = 14;  ///< the largest body that stands in holes, and a wire beside it
constexpr double kSwing = 0.6;  ///< how far an arc may stand out, as a share of its span
constexpr double kStepMm = 10;  ///< along wires
constexpr double kMostSwingMm = 50;
constexpr double kLongWireMm = 120;    ///< a longer one has room to go round anywhere
constexpr std::size_t kFewBoards = 8;  ///< so many go along always: boxes look at them all to find their place

/// Grows to hold points.
class Bounds {
public:
    void add(Point at) {
        left_ = std::min(left_, at.x), right_ = std::max(right_, at.x);
        top_ = std::min(top_, at.y), bottom_ = std::max(bottom_, at.y);
    }
    Rect grown(double by) const {
        if (right_ < left_) return {};
        return {left_ - by, top_ - by, right_ - left_ + 2 * by, bottom_ - top_ + 2 * by};
    }
    Rect grown() const { return grown(std::max(kRoomMm, kSwing * std::max(right_ - left_, bottom_ - top_))); }

private:
    static constexpr double kFar = 1e12;
    double left_ = kFar, right_ = -kFar, top_ = kFar, bottom_ = -kFar;
};

int squareAt(double mm) { return static_cast<int>(std::floor(mm / kSquareMm)); }

}  // namespace

std::size_t ThingsNear::HashOfSquare::operator()(const Square& square) const {
    constexpr std::size_t kPrime = 1000003;
    return static_cast<std::size_t>(square.x) * kPrime + static_cast<std::size_t>(square.y);
}

ThingsNear::ThingsNear(const Bench& bench) : bench_(bench), table_(placeThings(bench)) {
    for (int b = 0; b < static_cast<int>(bench.boards.size()); ++b) boards_.emplace(bench.boards[b].id, b);
    const int count = partCount() + static_cast<int>(bench.jumpers.size());
    for (Thing thing = 0; thing < count; ++thing) {
        byId_.emplace(thing < partCount() ? bench.parts[thing].id : bench.jumpers[thing - partCount()].id, thing);
        add(thing);
    }
}

Rect ThingsNear::boundsOf(Thing thing) const {
    Bounds bounds;
    if (thing >= partCount()) {
        for (const JumperEnd& end : bench_.jumpers[thing - partCount()].ends) bounds.add(endMm(bench_, table_, end));
        return bounds.grown(0);
    }
    const PartPlace& place = table_.parts[thing];
    for (std::size_t lead = 0; lead < place.leadsMm.size(); ++lead) {
        bounds.add(place.leadsMm[lead]);
        if (standsOnTable(bench_.parts[thing]) && bench_.parts[thing].leads[lead]) bounds.add(place.exitsMm[lead]);
    }
    bounds.add(place.pose.centre);
    return bounds.grown(0);
}

/// Long wires take the squares along their way only: one for each place where something may stand in it.
void ThingsNear::add(Thing thing) {
    const auto put = [&](Point at) {
        std::vector<Thing>& square = squares_[{squareAt(at.x), squareAt(at.y)}];
        if (square.empty() || square.back() != thing) square.push_back(thing);
    };
    const auto putAlong = [&](Point from, Point to) {
        const int steps = 1 + static_cast<int>(distance(from, to) / kStepMm);
        for (int step = 0; step <= steps; ++step) put(from + (to - from) * (static_cast<double>(step) / steps));
    };
    if (thing >= partCount()) {
        const Jumper& jumper = bench_.jumpers[thing - partCount()];
        return putAlong(endMm(bench_, table_, jumper.ends[0]), endMm(bench_, table_, jumper.ends[1]));
    }
    const PartPlace& place = table_.parts[thing];
    for (std::size_t lead = 0; lead < place.leadsMm.size(); ++lead) {
        const bool cable = standsOnTable(bench_.parts[thing]);
        if (!cable || bench_.parts[thing].leads[lead])
            putAlong(cable ? place.exitsMm[lead] : place.pose.centre, place.leadsMm[lead]);
    }
}

std::vector<ThingsNear::Thing> ThingsNear::touched(const BenchChange& change) const {
    std::vector<Thing> things;
    for (const PlacedLead& each : change.leads) things.push_back(byId_.at(each.part));
    for (const PlacedEnd& each : change.ends) things.push_back(byId_.at(each.jumper));
    for (const auto* ends : {&change.added, &change.removed}) {
        for (const Jumper& jumper : *ends) {
            if (const auto known = byId_.find(jumper.id); known != byId_.end()) things.push_back(known->second);
            for (const JumperEnd& end : jumper.ends) {
                if (const auto* socket = std::get_if<Socket>(&end)) things.push_back(byId_.at(socket->part));
            }
        }
    }
    return things;
}

std::optional<Point> ThingsNear::placeOf(const Hole& hole) const {
    const auto board = boards_.find(hole.board);
    if (board == boards_.end()) return std::nullopt;
    const Board& on = bench_.boards[static_cast<std::size_t>(board->second)];
    return on.cornerMm() + on.kind->holeMm(hole.line, hole.number);
}

std::optional<Point> ThingsNear::placeOf(const JumperEnd& end) const {
    if (const Hole* hole = std::get_if<Hole>(&end)) return placeOf(*hole);
    const Socket& socket = std::get<Socket>(end);
    return table_.parts[byId_.at(socket.part)].leadsMm[static_cast<std::size_t>(socket.lead)];
}

/// About a wire: as far as it may swing, and of a long one, which may go round anywhere, what lies along it.
void ThingsNear::addWire(const std::optional<Point>& from, const std::optional<Point>& to, std::vector<Rect>& frames) {
    if (!from || !to) return;
    const double span = distance(*from, *to);
    const int pieces = span > kLongWireMm ? static_cast<int>(span / kLongWireMm) + 1 : 1;
    const Point step = (*to - *from) * (1.0 / pieces);
    for (int piece = 0; piece < pieces; ++piece) {
        Bounds bounds;
        bounds.add(*from + step * piece);
        bounds.add(*from + step * (piece + 1));
        frames.push_back(bounds.grown(std::max(kRoomMm, std::min(kSwing * span, kMostSwingMm))));
    }
}

std::vector<Rect> ThingsNear::framesOf(const BenchChange& change) const {
    std::vector<Rect> frames;
    for (const PlacedLead& each : change.leads) {
        const Thing thing = byId_.at(each.part);
        const std::optional<Point> to = each.to ? placeOf(*each.to) : std::nullopt;
        if (standsOnTable(bench_.parts[thing])) {
            addWire(table_.parts[thing].exitsMm[static_cast<std::size_t>(each.lead)], to, frames);
            continue;
        }
        const Rect frame = boundsOf(thing);
        Bounds bounds;
        bounds.add({frame.left, frame.top});
        bounds.add({frame.right(), frame.bottom()});
        if (to) bounds.add(*to);
        frames.push_back(bounds.grown());
    }
    for (const PlacedEnd& each : change.ends) {
        std::array<JumperEnd, 2> ends = bench_.jumpers[byId_.at(each.jumper) - partCount()].ends;
        for (const PlacedEnd& other : change.ends) {
            if (other.jumper == each.jumper) ends[static_cast<std::size_t>(other.end)] = other.to;
        }
        addWire(placeOf(ends[0]), placeOf(ends[1]), frames);
    }
    for (const Jumper& jumper : change.added) addWire(placeOf(jumper.ends[0]), placeOf(jumper.ends[1]), frames);
    return frames;
}

std::vector<ThingsNear::Thing> ThingsNear::within(const Rect& frame, std::size_t& work) const {
    std::vector<Thing> things;
    for (int x = squareAt(frame.left); x <= squareAt(frame.right()); ++x) {
        for (int y = squareAt(frame.top); y <= squareAt(frame.bottom()); ++y) {
            const auto found = squares_.find({x, y});
            if (found != squares_.end()) things.insert(things.end(), found->second.begin(), found->second.end());
        }
    }
    work += things.size();
    return things;
}

/// A part whose box stands where it does on the whole bench.
Part ThingsNear::standing(int part) const {
    Part copy = bench_.parts[part];
    if (!standsOnTable(copy) || copy.at) return copy;
    const Point centre = table_.parts[part].pose.centre;
    const Package& package = *copy.kind->package;
    copy.at = Point{(centre.x - package.bodyLengthMm / 2) / kPitchMm, (centre.y - package.bodyWidthMm / 2) / kPitchMm};
    return copy;
}

std::vector<Board> ThingsNear::boardsUnder(const std::vector<Thing>& things, const BenchChange& change) const {
    if (bench_.boards.size() <= kFewBoards) return bench_.boards;
    std::set<int> used;
    const auto addHole = [&](const Hole& hole) {
        if (const auto board = boards_.find(hole.board); board != boards_.end()) used.insert(board->second);
    };
    const auto addEnds = [&](const Jumper& jumper) {
        for (const JumperEnd& end : jumper.ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) addHole(*hole);
        }
    };
    for (const Thing thing : things) {
        if (thing >= partCount()) {
            addEnds(bench_.jumpers[thing - partCount()]);
            continue;
        }
        for (const auto& lead : bench_.parts[thing].leads) {
            if (lead) addHole(*lead);
        }
    }
    for (const PlacedLead& each : change.leads) {
        if (each.to) addHole(*each.to);
    }
    for (const PlacedEnd& each : change.ends) {
        if (const Hole* hole = std::get_if<Hole>(&each.to)) addHole(*hole);
    }
    for (const Jumper& jumper : change.added) addEnds(jumper);
    std::vector<Board> boards;
    for (const int board : used) boards.push_back(bench_.boards[board]);
    return boards;
}

/// What stands in the way of a wire past a tall part may keep it from going round; so may what is moved there.
void ThingsNear::addAlongWires(std::vector<Thing>& things, std::size_t& work) const {
    Bounds bounds;
    bool any = false;
    for (const Thing thing : things) {
        if (thing < partCount() && !standsOnTable(bench_.parts[thing])) continue;
        const Rect frame = boundsOf(thing);
        if (std::max(frame.width, frame.height) > kLongWireMm) continue;
        bounds.add({frame.left, frame.top});
        bounds.add({frame.right(), frame.bottom()});
        any = true;
    }
    if (!any) return;
    const std::vector<Thing> more = within(bounds.grown(kRoomMm), work);
    things.insert(things.end(), more.begin(), more.end());
}

Bench ThingsNear::benchAbout(const BenchChange& change, std::size_t& work) const {
    std::vector<Thing> things;
    for (const Rect& frame : framesOf(change)) {
        const std::vector<Thing> more = within(frame, work);
        things.insert(things.end(), more.begin(), more.end());
    }
    if (!change.leads.empty()) addAlongWires(things, work);
    for (const Thing thing : touched(change)) things.push_back(thing);
    std::ranges::sort(things);
    things.erase(std::unique(things.begin(), things.end()), things.end());
    // Sockets that jumpers plug into go along.
    std::vector<Thing> boxes;
    for (const Thing thing : things) {
        if (thing < partCount()) continue;
        for (const JumperEnd& end : bench_.jumpers[thing - partCount()].ends) {
            if (const auto* socket = std::get_if<Socket>(&end)) boxes.push_back(byId_.at(socket->part));
        }
    }
    things.insert(things.end(), boxes.begin(), boxes.end());
    std::ranges::sort(things);
    things.erase(std::unique(things.begin(), things.end()), things.end());
    Bench bench;
    bench.boards = boardsUnder(things, change);
    for (const Thing thing : things) {
        if (thing < partCount())
            bench.parts.push_back(standing(thing));
        else
            bench.jumpers.push_back(bench_.jumpers[thing - partCount()]);
    }
    return bench;
}

}  // namespace tiepoint
