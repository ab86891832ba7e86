#include "core/solve/circuit_plan.h"

#include "core/base/disjoint_sets.h"
#include "core/solve/loops.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

bool isIdeal(const SupplyBranch& s) { return s.seriesOhm == 0; }

/// Builds one plan step by step; lives only for that.
class Planner {
public:
    Planner(const Circuit& circuit, std::span<const char> present, std::span<const signed char> limited, int reference,
            bool inTime)
        : circuit_(circuit),
          inTime_(inTime),
          present_(present),
          limited_(limited),
          reference_(reference),
          tied_(circuit.nodeCount),
          joined_(circuit.nodeCount),
          isKnown_(circuit.nodeCount, 0),
          isDead_(circuit.nodeCount, 0) {}

    PlanOutline make() {
        joinComponents();
        markFloating();
        chooseZeroNodes();
        spreadKnown();
        buildIslands();
        return std::move(plan_);
    }

private:
    template <class Branch>
    bool counts(const Branch& b) const {
        return present_[b.element] && b.from != b.to;
    }
    template <class Law>
    bool counts(const LawBranch<Law>& b) const {
        return present_[b.element] &&
               std::any_of(b.nodes.begin(), b.nodes.end(), [&](int n) { return n != b.nodes[0]; });
    }

    /// Visits the ends of every branch without a law that ties voltages: conductors, supplies that hold their voltage.
    template <class Visit>
    void eachLinearTie(Visit visit) const {
        for (const auto& b : circuit_.conductors)
            if (counts(b)) visit(b.from, b.to);
        for (std::size_t k = 0; k < circuit_.supplies.size(); ++k) {
            const auto& b = circuit_.supplies[k];
            if (counts(b) && !limited_[k]) visit(b.from, b.to);
        }
    }

    /// Visits each branch that follows a law and is there.
    template <class Visit>
    void eachLawBranch(Visit visit) const {
        eachLaw(circuit_.laws, [&](const auto& branches) {
            for (const auto& b : branches)
                if (counts(b)) visit(b);
        });
    }

    void joinComponents() {
        eachLinearTie([&](int a, int b) { joined_.join(a, b); });
        eachLawBranch([&]<class Law>(const LawBranch<Law>& b) {
            for (const TerminalPair& tie : Law::kTies) joined_.join(b.nodes[tie.from], b.nodes[tie.to]);
            if constexpr (Law::kCharges > 0) {
                for (const TerminalPair& charge : Law::kChargeEnds)
                    if (inTime_) joined_.join(b.nodes[charge.from], b.nodes[charge.to]);
            }
        });
        tied_ = joined_;
        for (const auto& b : circuit_.supplies)
            if (counts(b)) tied_.join(b.from, b.to);
    }

    void markFloating() {
        plan_.floating.assign(circuit_.nodeCount, 1);
        if (reference_ < 0) return;
        const int root = tied_.root(reference_);
        for (int node = 0; node < circuit_.nodeCount; ++node) plan_.floating[node] = tied_.root(node) != root;
    }

    void makeKnown(const KnownNode& known) {
        isKnown_[known.node] = 1;
        plan_.known.push_back(known);
    }

    /// One node at 0 V in every component; every node of a component that nothing feeds.
    void chooseZeroNodes() {
        std::vector<int> zeroOf(circuit_.nodeCount, -1);  // by root
        std::vector<char> live(circuit_.nodeCount, 0);    // by root
        if (reference_ >= 0) zeroOf[joined_.root(reference_)] = reference_;
        const auto feed = [&](int from, int to) {
            for (int node : {to, from}) {
                const int root = joined_.root(node);
                live[root] = 1;
                if (zeroOf[root] < 0) zeroOf[root] = node;
            }
        };
        for (const auto& b : circuit_.supplies)
            if (counts(b)) feed(b.from, b.to);
        eachLawBranch([&]<class Law>(const LawBranch<Law>& b) {
            constexpr bool kStores = Law::kCharges + Law::kFluxes > 0;
            if (!Law::kFeeds && !(kStores && inTime_)) return;
            constexpr LawWays<Law> kWays = waysOf<Law>();
            for (int way = 0; way < kWays.count; ++way)
                feed(b.nodes[kWays.ends[way].from], b.nodes[kWays.ends[way].to]);
        });
        for (int node = 0; node < circuit_.nodeCount; ++node) {
            const int root = joined_.root(node);
            isDead_[node] = !live[root];
            if (isDead_[node] || zeroOf[root] == node) makeKnown({node});
        }
    }

    /// Walks from known nodes along ideal supplies.
    void spreadKnown() {
        std::vector<int> ideals;
        for (std::size_t k = 0; k < circuit_.supplies.size(); ++k) {
            const SupplyBranch& s = circuit_.supplies[k];
            const bool mayLimit = inTime_ && std::isfinite(s.limitAmpere);
            if (counts(s) && !limited_[k] && isIdeal(s) && !mayLimit) ideals.push_back(static_cast<int>(k));
        }
        for (bool grew = true; grew;) {
            grew = false;
            for (int k : ideals) {
                const SupplyBranch& s = circuit_.supplies[k];
                if (isKnown_[s.from] == isKnown_[s.to]) continue;
                if (isKnown_[s.to])
                    makeKnown({s.from, s.to, k});
                else
                    makeKnown({s.to, s.from, k});
                grew = true;
            }
        }
    }

    void buildIslands() {
        DisjointSets islands(circuit_.nodeCount);
        const auto influence = [&](int a, int b) {
            if (!isKnown_[a] && !isKnown_[b]) islands.join(a, b);
        };
        eachLinearTie(influence);
        for (const auto& b : circuit_.supplies)
            if (inTime_ && counts(b)) influence(b.from, b.to);
        eachLawBranch([&](const auto& b) {
            for (std::size_t i = 0; i < b.nodes.size(); ++i)
                for (std::size_t j = i + 1; j < b.nodes.size(); ++j) influence(b.nodes[i], b.nodes[j]);
        });

        std::vector<int> islandOfRoot(circuit_.nodeCount, -1);
        std::vector<int>& local = plan_.localOfNode;
        std::vector<IslandMembers>& members = plan_.members;
        local.assign(circuit_.nodeCount, -1);
        for (int node = 0; node < circuit_.nodeCount; ++node) {
            if (isKnown_[node]) continue;
            int& island = islandOfRoot[islands.root(node)];
            if (island < 0) {
                island = static_cast<int>(members.size());
                members.emplace_back();
            }
            local[node] = static_cast<int>(members[island].nodes.size());
            members[island].nodes.push_back(node);
        }
        const auto islandOf = [&](int node) { return isKnown_[node] ? -1 : islandOfRoot[islands.root(node)]; };
        assignBranches(members, islandOf);
    }

    template <class IslandOf>
    void assignBranches(std::vector<IslandMembers>& members, IslandOf islandOf) {
        // Branches between two known nodes make an island without nodes.
        IslandMembers between;
        const auto home = [&](int from, int to) -> IslandMembers& {
            const int island = std::max(islandOf(from), islandOf(to));
            return island < 0 ? between : members[island];
        };
        const auto listed = [&](const auto& branches, auto&& put) {
            for (std::size_t k = 0; k < branches.size(); ++k) {
                if (counts(branches[k]) && !isDead_[branches[k].from])
                    put(static_cast<int>(k), branches[k]);
                else
                    idle(branches[k].element);
            }
        };
        listed(circuit_.conductors, [&](int k, const auto& b) { home(b.from, b.to).conductors.push_back(k); });
        listed(circuit_.supplies, [&](int k, const SupplyBranch& b) {
            if (limited_[k]) {
                const int from = islandOf(b.from), to = islandOf(b.to), path = circuit_.firstPath[b.element];
                if (from >= 0) members[from].injections.push_back({path, b.from, 1});
                if (to >= 0) members[to].injections.push_back({path, b.to, -1});
            } else if (!makesKnown(k)) {
                home(b.from, b.to).supplies.push_back(k);
            }
        });
        bool anyLaw = false;
        eachLaw(circuit_.laws, [&]<class Law>(const LawBranches<Law>& branches) {
            for (std::size_t k = 0; k < branches.size(); ++k) {
                const auto& b = branches[k];
                if (!counts(b) || isDead(b)) {
                    idle(b.element);
                    continue;
                }
                int island = -1;
                for (int node : b.nodes) island = std::max(island, islandOf(node));
                IslandMembers& into = island < 0 ? between : members[island];
                std::get<LawMembers<Law>>(into.laws).indices.push_back(static_cast<int>(k));
                anyLaw = anyLaw || island < 0;
            }
        });
        if (!between.conductors.empty() || !between.supplies.empty() || anyLaw) members.push_back(std::move(between));
    }

    template <class Law>
    bool isDead(const LawBranch<Law>& b) const {
        return std::all_of(b.nodes.begin(), b.nodes.end(), [&](int node) { return isDead_[node] != 0; });
    }

    void idle(int element) {
        for (int path = circuit_.firstPath[element]; path < circuit_.firstPath[element + 1]; ++path)
            plan_.idle.push_back(path);
    }

    bool makesKnown(int supply) const {
        return std::any_of(plan_.known.begin(), plan_.known.end(),
                           [&](const KnownNode& k) { return k.supply == supply; });
    }

    const Circuit& circuit_;
    bool inTime_;
    std::span<const char> present_;
    std::span<const signed char> limited_;
    int reference_;
    DisjointSets tied_, joined_;
    std::vector<char> isKnown_, isDead_;
    PlanOutline plan_;
};

}  // namespace

CircuitPlan makePlan(const Circuit& circuit, std::span<const char> present, std::span<const signed char> limited,
                     int reference) {
    PlanOutline outline = outlinePlan(circuit, present, limited, reference);
    CircuitPlan plan;
    for (const IslandMembers& m : outline.members) plan.islands.emplace_back(circuit, m, outline.localOfNode);
    plan.known = std::move(outline.known);
    plan.idle = std::move(outline.idle);
    plan.floating = std::move(outline.floating);
    return plan;
}

PlanOutline outlinePlan(const Circuit& circuit, std::span<const char> present, std::span<const signed char> limited,
                        int reference, bool inTime) {
    return Planner(circuit, present, limited, reference, inTime).make();
}

std::vector<int> idealLoop(const Circuit& circuit, std::span<const char> present) {
    const auto counts = [&](const SupplyBranch& s) { return present[s.element] && isIdeal(s); };
    std::vector<int> loop;
    if (std::ranges::count_if(circuit.supplies, counts) < 2)
        return loop;  // as nearly always, and without memory of its own
    std::vector<char> ideal(static_cast<std::size_t>(circuit.elementCount()), 0);
    for (const SupplyBranch& s : circuit.supplies) ideal[s.element] = counts(s);
    const std::vector<int> blocks = loopBlocks(circuit, ideal);
    for (std::size_t k = 0; k < circuit.supplies.size(); ++k)
        if (blocks[circuit.supplies[k].element] == 0) loop.push_back(static_cast<int>(k));
    return loop;
}

}  // namespace tiepoint
