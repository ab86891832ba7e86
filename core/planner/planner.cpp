// Method notes. From the circuit come things (search.h): parts with their legs, and the leads of what stands on the table, which go into rails.
// The search finds strips for all; then the shortest links that are still missing become jumpers, each between the two nearest free holes
// whose wire finds a way (core/edit/clashes.h judges, as it judges a hand). A part that stands in a clash after three searches is put aside
// and named, and the rest is planned again without it.

#include "core/planner/planner.h"

#include "core/bench/natural_order.h"
#include "core/diagram/ranks.h"
#include "core/planner/builder.h"
#include "core/planner/kit_wish.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <numeric>
#include <set>

namespace tiepoint {
namespace {

using Clock = WorkClock;

class BenchPlanner {
public:
    BenchPlanner(const Netlist& circuit, const PlanWish& wish)
        : circuit_(circuit),
          wish_(wish),
          ground_(*wish.board, wish.rails),
          terminals_(terminalsOf(circuit)),
          deadline_(Clock::now() + std::chrono::milliseconds(static_cast<long>(wish.mostSeconds * 1000))) {}

    Plan run() {
        Plan plan;
        if (wish_.kit) {
            for (Unplaced& each : beyondKit(*wish_.kit, circuit_))
                putAside(plan, circuit_.partIndex(each.part), std::move(each.why));
        }
        for (;;) {
            prepare();
            if (const int misfit = tooBig(); misfit >= 0) {
                putAside(plan, misfit,
                         fmt::format("its {} legs find no place on a {} board", legCount(misfit), wish_.board->name));
                continue;
            }
            if (auto bench = tryAll(plan.cost)) {
                plan.bench = std::move(*bench);
                const int most = wish_.kit ? wish_.kit->jumpers : -1;
                if (most >= 0) plan.jumpersOver = std::max(0, static_cast<int>(std::ssize(plan.bench.jumpers)) - most);
                return plan;
            }
            if (left_.size() >= circuit_.parts.size()) return plan;
            // One at a time, so that no more are left than have to be; once time is up, half of those that are in each other's way.
            const std::size_t most = Clock::now() > deadline_ ? std::max<std::size_t>(1, crowded_.size() / 2) : 1;
            for (std::size_t i = 0; i < most; ++i) {
                const int part = i < crowded_.size() ? crowded_[crowded_.size() - 1 - i] : worst_;
                putAside(
                    plan, part,
                    fmt::format("no place is left for it on a {} board beside the other parts", wish_.board->name));
            }
        }
    }

private:
    void putAside(Plan& plan, int part, std::string why) {
        left_.insert(part);
        plan.unplaced.push_back({circuit_.parts[part].id, std::move(why)});
    }
    int legCount(int part) const { return static_cast<int>(circuit_.parts[part].kind->leads.size()); }

    const Part* keptOf(int part) const { return keptIn(wish_, circuit_.parts[part].id); }

    int netOf(int part, int lead) const { return terminals_.netOf[terminals_.ofLead[part][lead]]; }

    void prepare() {
        task_ = {};
        fixed_.clear();
        task_.nets = static_cast<int>(circuit_.nets.size());
        task_.netOfRail.assign(static_cast<std::size_t>(ground_.stripCount()), -1);
        std::vector<double> key(circuit_.parts.size());
        std::iota(key.begin(), key.end(), 0.0);
        const SheetRanks ranks = rankCircuit(circuit_, key, true);
        giveRails();
        std::vector<int> byId(circuit_.parts.size());
        std::iota(byId.begin(), byId.end(), 0);
        std::ranges::sort(byId, [&](int a, int b) { return naturalLess(circuit_.parts[a].id, circuit_.parts[b].id); });
        for (const int part : byId) {
            if (left_.contains(part)) continue;
            if (packageOf(circuit_.parts[part]).reach == Reach::Flying) {
                addLeads(part);
            } else {
                addPart(part, ranks);
            }
        }
        task_.isRailNet.assign(static_cast<std::size_t>(task_.nets), 0);
        for (const int net : railNets_) task_.isRailNet[net] = 1;
    }

    /// The supplies' nets get the rails: the first plus the upper red one, the first minus the lower blue one.
    void giveRails() {
        railNets_.clear();
        railOfNet_.clear();
        if (!wish_.board->hasRails()) return;
        std::vector<int> plus, minus;
        for (int part = 0; part < std::ssize(circuit_.parts); ++part) {
            const PartKind& kind = *circuit_.parts[part].kind;
            if (!kind.isSupply || left_.contains(part)) continue;
            for (const ElementSpec& spec : kind.model) {
                const int from = kind.leadIndex(spec.from()), to = kind.leadIndex(spec.to());
                if (from >= 0 && netOf(part, from) >= 0) plus.push_back(netOf(part, from));
                if (to >= 0 && netOf(part, to) >= 0) minus.push_back(netOf(part, to));
            }
        }
        keepRails();
        std::vector<Line> pluses{Line::TopPlus, Line::BottomPlus, Line::TopMinus},
            minuses{Line::BottomMinus, Line::TopMinus, Line::BottomPlus};
        for (const auto& [nets, lines] : {std::pair(&plus, &pluses), std::pair(&minus, &minuses)}) {
            for (const int net : *nets) {
                if (railOfNet_.contains(net)) continue;
                for (const Line line : *lines) {
                    if (giveRail(line, net)) break;
                }
            }
        }
    }

    /// Rails in which kept parts are plugged in belong to their nets.
    void keepRails() {
        for (int part = 0; part < std::ssize(circuit_.parts); ++part) {
            const Part* kept = keptOf(part);
            if (!kept || left_.contains(part)) continue;
            for (int lead = 0; lead < std::ssize(kept->leads); ++lead) {
                if (kept->leads[lead] && isRail(kept->leads[lead]->line) && netOf(part, lead) >= 0)
                    giveRail(kept->leads[lead]->line, netOf(part, lead));
            }
        }
    }

    bool giveRail(Line line, int net) {
        for (int number = 1; wish_.board->has(line, number); ++number) {
            int& owner = task_.netOfRail[wish_.board->stripIndex(wish_.rails, line, number)];
            if (owner >= 0 && owner != net) return false;
            owner = net;
        }
        railNets_.insert(net);
        railOfNet_.try_emplace(net, line);
        return true;
    }

    void addThing(PlanThing thing, PlanPlace place, std::array<int, 2> flow, int rank) {
        task_.things.push_back(std::move(thing));
        task_.flow.push_back(flow);
        task_.rank.push_back(rank);
        fixed_.push_back(std::move(place));
    }

    /// A supply's or an instrument's leads, each a pin of its own; sockets take jumpers later.
    void addLeads(int part) {
        const Part& each = circuit_.parts[part];
        const Part* kept = keptOf(part);
        for (int lead = 0; lead < std::ssize(each.kind->leads); ++lead) {
            const int net = netOf(part, lead);
            if (each.kind->leads[lead].socket || net < 0) continue;
            PlanThing thing{part, nullptr, {lead}, {net}, {0}, false};
            PlanPlace place;
            int hole =
                kept && kept->leads[lead] ? ground_.holeAt(kept->leads[lead]->line, kept->leads[lead]->number) : -1;
            if (hole < 0) {
                if (const auto rail = railOfNet_.find(net); rail != railOfNet_.end()) hole = freeInRail(rail->second);
            }
            if (hole >= 0) {
                thing.fixed = true;
                place = *lieIn(ground_, thing, {hole});
            }
            addThing(std::move(thing), std::move(place), {-1, -1}, -1);
        }
    }

    /// Hole 1 and 2 would cover the printed signs.
    int freeInRail(Line line) const {
        for (int number = 3; wish_.board->has(line, number); ++number) {
            const int hole = ground_.holeAt(line, number);
            const bool taken = std::ranges::any_of(fixed_, [&](const PlanPlace& place) {
                return std::ranges::find(place.holes, hole) != place.holes.end();
            });
            if (!taken) return hole;
        }
        return -1;
    }

    void addPart(int part, const SheetRanks& ranks) {
        const Part& each = circuit_.parts[part];
        const std::vector<int> first = firstOfTerminal(*each.kind);
        PlanThing thing{part, &packageOf(each), {}, {}, {}, false};
        std::array<int, 2> flow{-1, -1};
        std::map<int, int> ownNet;
        for (int lead = 0; lead < std::ssize(each.kind->leads); ++lead) {
            int net = netOf(part, lead);
            if (net < 0) net = ownNet.try_emplace(first[lead], task_.nets).first->second;
            if (net == task_.nets) ++task_.nets;
            thing.leads.push_back(lead);
            thing.nets.push_back(net);
            thing.metal.push_back(first[lead]);
            if (netOf(part, lead) >= 0) flow[ranks.isAfter[part][lead] ? 1 : 0] = lead;
        }
        PlanPlace place;
        if (const Part* kept = keptOf(part)) {
            std::vector<int> holes;
            for (const auto& lead : kept->leads) {
                if (lead) holes.push_back(ground_.holeAt(lead->line, lead->number));
            }
            if (holes.size() == thing.leads.size() && std::ranges::find(holes, -1) == holes.end()) {
                if (auto lies = lieIn(ground_, thing, holes)) place = std::move(*lies), thing.fixed = true;
            }
        }
        addThing(std::move(thing), std::move(place), flow, ranks.partRank[part]);
    }

    /// A part that wouldn't fit on an empty board.
    int tooBig() const {
        PlanRandom random(1);
        for (const PlanThing& thing : task_.things) {
            if (thing.fixed) continue;
            bool fits = false;
            constexpr int kTrials = 4000;
            for (int trial = 0; trial < kTrials && !fits; ++trial)
                fits = lieAt(ground_, thing, 0, below(random, ground_.holeCount()), random).has_value();
            if (!fits) return thing.part;
        }
        return -1;
    }

    std::optional<Bench> tryAll(double& cost) {
        const int size = static_cast<int>(task_.things.size());
        constexpr int kSmall = 12;
        const int many = 25000 + 6000 * size, few = size > kSmall ? 15000 + 4000 * size : 7000 + 2000 * size;
        std::optional<Bench> best;
        double least = std::numeric_limits<double>::max();
        constexpr unsigned kTries = 3;  // and as many longer ones where none of these led to a bench
        worst_ = -1;
        crowded_.clear();
        for (unsigned attempt = 0; attempt < (best ? kTries : 2 * kTries); ++attempt) {
            const int steps = attempt < kTries ? few : many;
            const PlanResult found = searchPlaces(ground_, task_, fixed_, steps, wish_.seed + attempt, deadline_);
            if (worst_ < 0 && !found.troubled.empty()) noteCrowd(found.troubled);
            if (Clock::now() > deadline_ && found.clashes > 0) break;
            if (found.clashes > 0 || found.cost >= least) continue;
            if (auto bench = buildPlan({circuit_, wish_, ground_, terminals_, task_, left_, railOfNet_}, found)) {
                best = std::move(bench);
                least = found.cost;
                if (size > kSmall) break;
            }
        }
        if (!best && worst_ < 0) worst_ = biggest();
        cost = least;
        return best;
    }

    void noteCrowd(const std::vector<int>& troubled) {
        worst_ = task_.things[troubled.back()].part;
        for (const int thing : troubled) {
            if (std::ranges::find(crowded_, task_.things[thing].part) == crowded_.end())
                crowded_.push_back(task_.things[thing].part);
        }
    }

    int biggest() const {
        int part = -1;
        std::size_t most = 0;
        for (const PlanThing& thing : task_.things) {
            if (!thing.fixed && thing.leads.size() >= most) most = thing.leads.size(), part = thing.part;
        }
        if (part >= 0) return part;
        for (part = 0; left_.contains(part); ++part) {
        }
        return part;
    }

    const Netlist& circuit_;
    const PlanWish& wish_;
    PlanGround ground_;
    Terminals terminals_;
    Clock::time_point deadline_;
    PlanTask task_;
    std::vector<PlanPlace> fixed_;
    std::set<int> left_;  ///< parts put aside
    std::set<int> railNets_;
    std::map<int, Line> railOfNet_;
    int worst_ = -1;
    std::vector<int> crowded_;  ///< parts that stood in a clash, the worst last
};

}  // namespace

Plan planBench(const Netlist& circuit, const PlanWish& wish) { return BenchPlanner(circuit, wish).run(); }

}  // namespace tiepoint
