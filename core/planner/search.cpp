// Method notes. Simulated annealing (Kirkpatrick, Gelatt and Vecchi, Science 220 (1983) 671-680) over the places of all parts. A move takes one
// thing and puts one of its leads into a strip of that lead's own net (half of the moves; the other leg too, where that reaches), anywhere, or
// a few holes further. The cost, in units of less than a millimetre of wire:
//   hard   200 for each strip with metal of two nets, each hole with two pins or a pin under a body, each two bodies in one place,
//          and 60 for each jumper end for which a strip has no free hole; a plan holds none of these
//   wire   20 a jumper, and 1.5 a millimetre: the least spanning tree over the strips of each net, where a part's own metal joins for nothing
//   flow   1 a millimetre that a part runs from right to left, 0.15 a millimetre that neighbours stand in another order than that of current,
//          0.1 that parts of one layer stand in another order than that of their ids
//   room   12 for each two bodies nearer than 2.4 mm; 60 for a leg in a rail, which is for wires; 60 for a part aslant; 0.7 a millimetre that it
//          reaches across rows; 5 for one that stands on a leg; 0.2 a millimetre off its usual span; 0.02 a millimetre from the left
// It cools by a constant factor from 60 to 0.2. A net's tree is recomputed only where one of its things has moved.
// Tried and left: greedy placing along the layers of the diagram alone (half more jumpers than by hand).

#include "core/planner/search.h"

#include "core/base/stopping.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kHard = 200, kNoHole = 60, kJumper = 20, kWire = 1.5;
constexpr double kBackwards = 1, kOrder = 0.15, kBeside = 0.1, kCrowded = 12, kInRail = 60, kAslant = 60, kAcross = 0.7;
constexpr double kStanding = 5, kSpan = 0.2, kFromLeft = 0.02;
constexpr double kFingerRoomMm = 1.2;

Outline grown(Outline outline, double by) {
    outline.halfLength += by;
    outline.halfWidth += by;
    return outline;
}

class PlanSearch {
public:
    PlanSearch(const PlanGround& ground, const PlanTask& task, const std::vector<PlanPlace>& fixed, unsigned seed)
        : ground_(ground),
          task_(task),
          random_(seed),
          places_(fixed),
          leads_(ground.holeCount()),
          covers_(ground.holeCount()),
          bitOf_(ground.holeCount()),
          free_(ground.stripCount()),
          ways_(static_cast<std::size_t>(ground.stripCount()) * ground.stripCount()),
          onStrip_(ground.stripCount()),
          ends_(ground.stripCount()),
          netLinks_(task.nets),
          isStale_(task.nets),
          thingsOf_(task.nets) {
        for (std::size_t thing = 0; thing < task.things.size(); ++thing) {
            for (const int net : task.things[thing].nets) {
                auto& list = thingsOf_[net];
                if (list.empty() || list.back() != static_cast<int>(thing)) list.push_back(static_cast<int>(thing));
            }
            if (!task.things[thing].fixed) movable_.push_back(static_cast<int>(thing));
        }
        placed_.resize(task.things.size());
        for (int strip = 0; strip < ground.stripCount(); ++strip) {
            std::uint64_t bit = 1;
            for (const int hole : ground.holesOf(strip)) {
                bitOf_[hole] = bit;
                free_[strip] |= bit;
                bit <<= 1;
            }
        }
    }

    PlanResult run(int steps, WorkClock::time_point deadline) {
        for (std::size_t thing = 0; thing < places_.size(); ++thing) {
            if (task_.things[thing].fixed) put(static_cast<int>(thing), places_[thing]);
        }
        placeFirst();
        double cost = total(), best = cost;
        std::vector<PlanPlace> bestPlaces = places_;
        constexpr double kHot = 60, kCold = 0.2;
        for (int step = 0; step < steps && !movable_.empty(); ++step) {
            constexpr int kLook = 256;
            if (step % kLook == 0) {
                stopIfAsked();
                if (WorkClock::now() > deadline) break;
            }
            const double heat = kHot * std::pow(kCold / kHot, static_cast<double>(step) / steps);
            const int thing = movable_[below(random_, static_cast<int>(movable_.size()))];
            auto next = propose(thing);
            if (!next) continue;
            PlanPlace old = places_[thing];
            take(thing);
            put(thing, std::move(*next));
            const double now = total();
            const double chance = (below(random_, 1 << 20) + 0.5) / (1 << 20);
            if (now <= cost || chance < std::exp((cost - now) / heat)) {
                cost = now;
                if (cost < best - 1e-9) best = cost, bestPlaces = places_;
            } else {
                take(thing);
                put(thing, std::move(old));
            }
        }
        for (const int thing : movable_) {
            take(thing);
            put(thing, bestPlaces[thing]);
        }
        return result();
    }

private:
    /// In the order of current, each where it costs least among places by chance.
    void placeFirst() {
        std::vector<int> order = movable_;
        std::ranges::stable_sort(order, {}, [&](int thing) { return task_.rank[thing]; });
        for (const int thing : order) {
            constexpr int kTrials = 300;
            std::optional<PlanPlace> best;
            double least = std::numeric_limits<double>::max();
            for (int trial = 0; trial < kTrials; ++trial) {
                auto place = propose(thing);
                if (!place) continue;
                put(thing, *place);
                const double now = total();
                take(thing);
                if (now < least) least = now, best = std::move(place);
            }
            while (!best) best = propose(thing);
            put(thing, std::move(*best));
        }
    }

    std::optional<PlanPlace> propose(int thing) {
        const PlanThing& each = task_.things[thing];
        const int lead = below(random_, static_cast<int>(each.leads.size()));
        const int kind = below(random_, 8);
        std::optional<PlanPlace> place;
        if (kind < 4) {
            const int hole = holeOfNet(each.nets[lead], thing);
            int second = -1;
            if (each.leads.size() == 2 && kind < 2) second = holeOfNet(each.nets[1 - lead], thing);
            if (hole >= 0) place = lieAt(ground_, each, lead, hole, random_, second);
        } else if (kind < 6 || !placed_[thing]) {
            place = lieAt(ground_, each, lead, below(random_, ground_.holeCount()), random_);
        } else {
            place = moved(thing);
        }
        if (place && !suitsRails(each, *place)) return std::nullopt;
        return place;
    }

    /// A hole by chance in a strip that the net has already.
    int holeOfNet(int net, int except) {
        const auto& things = thingsOf_[net];
        for (int trial = 0; trial < 4; ++trial) {
            const int thing = things[below(random_, static_cast<int>(things.size()))];
            if (!placed_[thing] || thing == except) continue;
            const PlanThing& other = task_.things[thing];
            const int lead = below(random_, static_cast<int>(other.leads.size()));
            if (other.nets[lead] != net) continue;
            const auto& holes = ground_.holesOf(ground_.spot(places_[thing].holes[lead]).strip);
            return holes[below(random_, static_cast<int>(holes.size()))];
        }
        return -1;
    }

    std::optional<PlanPlace> moved(int thing) {
        const int columns = below(random_, 9) - 4, rows = below(random_, 3) - 1;
        std::vector<int> holes;
        for (const int hole : places_[thing].holes) {
            const PlanGround::Spot& spot = ground_.spot(hole);
            const int line = isRail(spot.line) ? static_cast<int>(spot.line) : static_cast<int>(spot.line) + rows;
            if (line < 0 || (!isRail(spot.line) && line >= kRowCount)) return std::nullopt;
            const int to = ground_.holeAt(static_cast<Line>(line), spot.number + columns);
            if (to < 0) return std::nullopt;
            holes.push_back(to);
        }
        return lieIn(ground_, task_.things[thing], std::move(holes));
    }

    /// A rail is for its own net alone.
    bool suitsRails(const PlanThing& thing, const PlanPlace& place) const {
        for (std::size_t i = 0; i < place.holes.size(); ++i) {
            const int strip = ground_.spot(place.holes[i]).strip;
            if (ground_.isRail(strip) && task_.netOfRail[strip] != thing.nets[i]) return false;
        }
        return true;
    }

    static int holeClashes(int leads, int covers) { return std::max(0, leads - 1) + (leads > 0 ? covers : 0); }
    void change(int hole, int leads, int covers) {
        clashes_ -= holeClashes(leads_[hole], covers_[hole]);
        leads_[hole] += leads;
        covers_[hole] += covers;
        clashes_ += holeClashes(leads_[hole], covers_[hole]);
        std::uint64_t& free = free_[ground_.spot(hole).strip];
        free = isFree(hole) ? free | bitOf_[hole] : free & ~bitOf_[hole];
    }
    /// Metal of a net in a strip: counted by net.
    void changeStrip(int strip, int net, int by) {
        auto& list = onStrip_[strip];
        clashes_ -= std::max(0, static_cast<int>(list.size()) - 1);
        const auto found = std::ranges::find(list, net, &std::pair<int, int>::first);
        if (found == list.end()) {
            list.emplace_back(net, by);
        } else if ((found->second += by) == 0) {
            list.erase(found);
        }
        clashes_ += std::max(0, static_cast<int>(list.size()) - 1);
    }

    void put(int thing, PlanPlace place) {
        places_[thing] = std::move(place);
        placed_[thing] = 1;
        count(thing, 1);
    }
    void take(int thing) {
        count(thing, -1);
        placed_[thing] = 0;
    }

    void count(int thing, int by) {
        const PlanThing& each = task_.things[thing];
        const PlanPlace& place = places_[thing];
        for (std::size_t i = 0; i < place.holes.size(); ++i) {
            change(place.holes[i], by, 0);
            changeStrip(ground_.spot(place.holes[i]).strip, each.nets[i], by);
            stale_.push_back(each.nets[i]);
        }
        for (const int hole : place.covered) change(hole, 0, by);
        soft_ += by * ownCost(thing);
        for (std::size_t other = 0; other < places_.size(); ++other) {
            if (static_cast<int>(other) == thing || !placed_[other]) continue;
            betweenCost(thing, static_cast<int>(other), by);
        }
    }

    double ownCost(int thing) const {
        const PlanThing& each = task_.things[thing];
        if (each.fixed || !each.package) return 0;
        const PlanPlace& place = places_[thing];
        double cost = 0, left = std::numeric_limits<double>::max();
        for (const int hole : place.holes) {
            const PlanGround::Spot& spot = ground_.spot(hole);
            left = std::min(left, spot.at.x);
            if (isRail(spot.line)) cost += kInRail;
        }
        const auto [from, to] = task_.flow[thing];
        if (from >= 0 && to >= 0)
            cost +=
                kBackwards * std::max(0.0, ground_.spot(place.holes[from]).at.x - ground_.spot(place.holes[to]).at.x);
        if (place.hasLegs) {
            const Point a = ground_.spot(place.holes[0]).at, b = ground_.spot(place.holes[1]).at;
            const double span = distance(a, b), usual = each.package->defaultSpan * kPitchMm;
            if (std::abs(a.x - b.x) > 0.1 && std::abs(a.y - b.y) > 0.1) cost += kAslant;
            cost += kAcross * std::abs(a.y - b.y) + kSpan * std::abs(span - usual);
            if (span < each.package->minSpan * kPitchMm - 0.1) cost += kStanding;
        }
        return cost + kFromLeft * left;
    }

    void betweenCost(int a, int b, int by) {
        const PlanPlace &one = places_[a], &other = places_[b];
        if (one.hasBody && other.hasBody) {
            const double apart = distance(one.body.centre, other.body.centre);
            const double reach = std::max(one.body.halfLength, one.body.halfWidth) +
                                 std::max(other.body.halfLength, other.body.halfWidth);
            const double legs = one.legs.halfLength + other.legs.halfLength;
            if (apart < reach * 1.5 + 2) {
                if (overlap(one.body, other.body)) {
                    clashes_ += by;
                } else if (overlap(grown(one.body, kFingerRoomMm), grown(other.body, kFingerRoomMm))) {
                    soft_ += by * kCrowded;
                }
            }
            if (apart < reach * 1.5 + legs + 2) {
                if (one.hasLegs && overlap(one.legs, other.body)) clashes_ += by;
                if (other.hasLegs && overlap(other.legs, one.body)) clashes_ += by;
                if (one.hasLegs && other.hasLegs && overlap(one.legs, other.legs)) clashes_ += by;
            }
        }
        if (!one.hasBody || !other.hasBody) return;
        if (task_.rank[a] == task_.rank[b]) {
            soft_ += by * kBeside * std::max(0.0, (a < b ? 1 : -1) * (one.body.centre.x - other.body.centre.x));
            return;
        }
        const bool inOrder = task_.rank[a] < task_.rank[b];
        const double ahead =
            inOrder ? one.body.centre.x - other.body.centre.x : other.body.centre.x - one.body.centre.x;
        if (ahead > 0 && areNeighbours(a, b)) soft_ += by * kOrder * ahead;
    }
    bool areNeighbours(int a, int b) const {
        for (const int net : task_.things[a].nets) {
            if (!task_.isRailNet[net] && std::ranges::find(task_.things[b].nets, net) != task_.things[b].nets.end())
                return true;
        }
        return false;
    }

    double total() {
        for (const int net : stale_) {
            if (isStale_[net]) continue;
            isStale_[net] = 1;
            for (const PlanLink& link : netLinks_[net]) --ends_[link.from], --ends_[link.to];
        }
        for (const int net : stale_) {
            if (!isStale_[net]) continue;
            isStale_[net] = 0;
            netLinks_[net] = links(net);
            for (const PlanLink& link : netLinks_[net]) ++ends_[link.from], ++ends_[link.to];
        }
        stale_.clear();
        missing_ = 0;
        for (int strip = 0; strip < ground_.stripCount(); ++strip) {
            if (ends_[strip] == 0) continue;
            missing_ += std::max(0, ends_[strip] - std::popcount(free_[strip]));
        }
        double wire = 0;
        for (const auto& list : netLinks_) {
            for (const PlanLink& link : list) wire += kJumper + kWire * freeWay(link);
        }
        return kHard * clashes_ + kNoHole * missing_ + wire + soft_;
    }

    bool isFree(int hole) const { return leads_[hole] == 0 && covers_[hole] == 0; }
    /// The least way between free holes of two strips; remembered for as long as the same holes are free.
    double freeWay(const PlanLink& link) {
        Way& way = ways_[static_cast<std::size_t>(link.from) * ground_.stripCount() + link.to];
        if (way.mm < 0 || way.from != free_[link.from] || way.to != free_[link.to])
            way = {free_[link.from], free_[link.to], leastWay(link)};
        return way.mm;
    }
    double leastWay(const PlanLink& link) const {
        double least = std::numeric_limits<double>::max();
        for (const int from : ground_.holesOf(link.from)) {
            if (!isFree(from)) continue;
            for (const int to : ground_.holesOf(link.to)) {
                const Point off = ground_.spot(from).at - ground_.spot(to).at;
                if (const double square = dot(off, off); square < least && isFree(to)) least = square;
            }
        }
        return least < std::numeric_limits<double>::max() ? std::sqrt(least) : ground_.apart(link.from, link.to);
    }

    std::vector<PlanLink> links(int net) const;

    PlanResult result() {
        PlanResult found;
        found.cost = total();
        found.clashes = clashes_ + missing_;
        for (const int thing : movable_) {
            const int before = clashes_;
            take(thing);
            const bool better = clashes_ < before;
            put(thing, places_[thing]);
            if (better) found.troubled.push_back(thing);
        }
        found.places = places_;
        return found;
    }

    const PlanGround& ground_;
    const PlanTask& task_;
    PlanRandom random_;
    std::vector<PlanPlace> places_;
    struct Way {
        std::uint64_t from = 0, to = 0;  ///< which holes were free
        double mm = -1;
    };
    std::vector<int> leads_, covers_;   // by hole
    std::vector<std::uint64_t> bitOf_;  // by hole: its bit among those of its strip
    std::vector<std::uint64_t> free_;   // by strip: bits of its free holes
    std::vector<Way> ways_;             // by two strips
    std::vector<std::vector<std::pair<int, int>>> onStrip_;
    std::vector<int> ends_;  // by strip: of jumpers
    std::vector<std::vector<PlanLink>> netLinks_;
    std::vector<char> isStale_;
    std::vector<std::vector<int>> thingsOf_;  // by net
    std::vector<int> movable_;
    std::vector<char> placed_;
    std::vector<int> stale_;
    int clashes_ = 0, missing_ = 0;
    double soft_ = 0;
};

std::vector<PlanLink> PlanSearch::links(int net) const {
    return linksOfThings(ground_, task_, places_, thingsOf_[net], &placed_, net);
}

}  // namespace

PlanResult searchPlaces(const PlanGround& ground, const PlanTask& task, const std::vector<PlanPlace>& fixed, int steps,
                        unsigned seed, WorkClock::time_point deadline) {
    return PlanSearch(ground, task, fixed, seed).run(steps, deadline);
}

}  // namespace tiepoint
