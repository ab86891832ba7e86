#include "core/planner/builder.h"

#include "core/bench/validate.h"
#include "core/diagram/symbol.h"
#include "core/edit/clashes.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace tiepoint {
namespace {

constexpr int kRed = 0, kBlack = 1;
constexpr std::array<int, 6> kOtherColours = {3, 4, 2, 6, 5, 7};

class PlanBuilder {
public:
    explicit PlanBuilder(const PlanGiven& given) : given_(given) {}

    /// The bench with its jumpers; nothing if a hand couldn't build it.
    std::optional<Bench> run(const PlanResult& found) {
        Bench bench;
        bench.title = given_.circuit.title;
        Board board;
        board.id = "A";
        board.kind = given_.wish.board;
        board.rails = given_.wish.rails;
        board.labels = given_.wish.labels;
        bench.boards.push_back(board);
        for (int part = 0; part < std::ssize(given_.circuit.parts); ++part) {
            if (given_.left.contains(part)) continue;
            bench.parts.push_back(given_.circuit.parts[part]);
            if (const Part* kept = keptOf(part)) bench.parts.back().at = kept->at;
        }
        std::set<int> used, covered;
        for (std::size_t thing = 0; thing < given_.task.things.size(); ++thing) {
            const PlanThing& each = given_.task.things[thing];
            Part& part = bench.parts[bench.partIndex(given_.circuit.parts[each.part].id)];
            for (std::size_t i = 0; i < each.leads.size(); ++i) {
                part.leads[each.leads[i]] = given_.ground.address(found.places[thing].holes[i]);
                used.insert(found.places[thing].holes[i]);
            }
            covered.insert(found.places[thing].covered.begin(), found.places[thing].covered.end());
        }
        covered.insert(used.begin(), used.end());
        if (!validate(bench) || !Occupancy(bench).all().empty()) return std::nullopt;
        for (int net = 0; net < std::ssize(given_.circuit.nets); ++net) {
            for (const PlanLink& link : linksOf(given_.ground, given_.task, found.places, net)) {
                if (!addJumper(bench, link, covered)) return std::nullopt;
            }
        }
        if (!addSockets(bench, found, covered)) return std::nullopt;
        return validate(bench) ? std::optional(std::move(bench)) : std::nullopt;
    }

private:
    int colourOf(int net) {
        const auto rail = given_.railOfNet.find(net);
        if (rail == given_.railOfNet.end()) return kOtherColours[colour_++ % kOtherColours.size()];
        return rail->second == Line::TopPlus || rail->second == Line::BottomPlus ? kRed : kBlack;
    }

    /// Between the nearest free holes of two strips whose wire finds a way.
    bool addJumper(Bench& bench, const PlanLink& link, std::set<int>& taken) {
        std::vector<std::tuple<double, int, int>> pairs;
        for (const int from : given_.ground.holesOf(link.from)) {
            for (const int to : given_.ground.holesOf(link.to)) {
                if (!taken.contains(from) && !taken.contains(to))
                    pairs.emplace_back(distance(given_.ground.spot(from).at, given_.ground.spot(to).at), from, to);
            }
        }
        std::ranges::sort(pairs);
        Jumper jumper;
        jumper.id = freeId(bench, "W");
        jumper.colour = colourOf(link.net);
        bench.jumpers.push_back(jumper);
        constexpr std::size_t kMost = 60;
        for (std::size_t i = 0; i < std::min(pairs.size(), kMost); ++i) {
            const auto [length, from, to] = pairs[i];
            bench.jumpers.back().ends = {given_.ground.address(from), given_.ground.address(to)};
            if (!Occupancy(bench).clashesOf(bench.jumpers.back()).empty()) continue;
            taken.insert(from);
            taken.insert(to);
            return true;
        }
        return false;
    }

    /// A jumper from each socket to the net's nearest free hole.
    bool addSockets(Bench& bench, const PlanResult& found, std::set<int>& taken) {
        for (int part = 0; part < std::ssize(given_.circuit.parts); ++part) {
            if (given_.left.contains(part)) continue;
            const std::vector<int> first = firstOfTerminal(*given_.circuit.parts[part].kind);
            for (int lead = 0; lead < std::ssize(first); ++lead) {
                const int net = netOf(part, lead);
                if (!given_.circuit.parts[part].kind->leads[lead].socket || net < 0 || first[lead] != lead) continue;
                if (!addSocket(bench, found, taken, {given_.circuit.parts[part].id, lead}, net)) return false;
            }
        }
        return true;
    }

    bool addSocket(Bench& bench, const PlanResult& found, std::set<int>& taken, const Socket& socket, int net) {
        std::set<int> strips;
        for (std::size_t thing = 0; thing < given_.task.things.size(); ++thing) {
            for (std::size_t i = 0; i < given_.task.things[thing].nets.size(); ++i) {
                if (given_.task.things[thing].nets[i] == net)
                    strips.insert(given_.ground.spot(found.places[thing].holes[i]).strip);
            }
        }
        const auto rail = given_.railOfNet.find(net);
        std::vector<int> holes;
        if (rail != given_.railOfNet.end() &&
            (strips.empty() || std::ranges::any_of(strips, [&](int strip) { return given_.ground.isRail(strip); }))) {
            for (int number = 3; given_.wish.board->has(rail->second, number); ++number)
                holes.push_back(given_.ground.holeAt(rail->second, number));
        }
        for (const int strip : strips) {
            if (!given_.ground.isRail(strip))
                holes.insert(holes.end(), given_.ground.holesOf(strip).begin(), given_.ground.holesOf(strip).end());
        }
        Jumper jumper;
        jumper.id = freeId(bench, "W");
        jumper.colour = colourOf(net);
        bench.jumpers.push_back(jumper);
        for (const int hole : holes) {
            if (taken.contains(hole)) continue;
            bench.jumpers.back().ends = {socket, given_.ground.address(hole)};
            if (!Occupancy(bench).clashesOf(bench.jumpers.back()).empty()) continue;
            taken.insert(hole);
            return true;
        }
        return false;
    }
    const Part* keptOf(int part) const { return keptIn(given_.wish, given_.circuit.parts[part].id); }
    int netOf(int part, int lead) const { return given_.terminals.netOf[given_.terminals.ofLead[part][lead]]; }

    const PlanGiven& given_;
    std::size_t colour_ = 0;
};

}  // namespace

const Part* keptIn(const PlanWish& wish, const std::string& id) {
    const auto found = std::ranges::find(wish.kept, id, &Part::id);
    return found == wish.kept.end() ? nullptr : &*found;
}

std::optional<Bench> buildPlan(const PlanGiven& given, const PlanResult& found) {
    return PlanBuilder(given).run(found);
}

}  // namespace tiepoint
