// From the members of an island to its program: entries, order of pivots, places and slots.

#include "core/solve/elimination_order.h"
#include "core/solve/island.h"

#include <algorithm>
#include <array>

namespace tiepoint {

namespace {

constexpr int kDumpSlots = 16;  ///< stamps at known nodes rotate over them, so that none waits for the one before

}  // namespace

/// Turns the members of an island into places and slots.
class Island::Builder {
public:
    Builder(Island& island, const Circuit& circuit, const IslandMembers& members, std::span<const int> localOfNode)
        : island_(island),
          circuit_(circuit),
          members_(members),
          local_(localOfNode),
          nodeCount_(static_cast<int>(members.nodes.size())) {}

    void build() {
        sortBranches();
        listEntries();
        compile();
        placeBranches();
    }

private:
    struct Stiff {
        int from, to;  ///< local nodes, -1 where known
        double emfVolt, ohm;
        int path;
        bool isWinding = false;
    };
    using Entry = LinearProgram::Entry;

    int local(int node) const { return local_[node]; }

    void sortBranches() {
        for (int index : members_.supplies) {
            const SupplyBranch& s = circuit_.supplies[index];
            addStiff(s.from, s.to, s.emfVolt, s.seriesOhm, circuit_.firstPath[s.element]);
        }
        for (int index : members_.conductors) {
            const ConductorBranch& c = circuit_.conductors[index];
            if (c.siemens > kStiffSiemens)
                addStiff(c.from, c.to, 0, 1 / c.siemens, circuit_.firstPath[c.element]);
            else
                soft_.push_back(index);
        }
        eachLaw(circuit_.laws, [&]<class Law>(const LawBranches<Law>& branches) {
            if constexpr (Law::kFluxes > 0) {
                for (int index : membersOf<Law>())
                    for (const TerminalPair& ends : Law::kFluxEnds)
                        addWinding(branches[index].nodes[ends.from], branches[index].nodes[ends.to]);
            }
        });
    }

    /// Its equation is as a supply's; what stands on the diagonal changes with the pace of time.
    void addWinding(int from, int to) {
        if (firstWinding_ < 0) firstWinding_ = static_cast<int>(stiff_.size());
        addStiff(from, to, 0, kRestingWindingOhm, -1);
        stiff_.back().isWinding = true;
        ++island_.windingCount_;
    }

    void addStiff(int from, int to, double emfVolt, double ohm, int path) {
        stiff_.push_back({local(from), local(to), emfVolt, ohm, path});
        stiffNodes_.push_back({from, to});
    }

    void listEntries() {
        for (int node = 0; node < nodeCount_; ++node) entries_.push_back({node, node});
        for (std::size_t k = 0; k < stiff_.size(); ++k) {
            const int unknown = nodeCount_ + static_cast<int>(k);
            for (int node : {stiff_[k].from, stiff_[k].to}) {
                if (node < 0) continue;
                entries_.push_back({node, unknown});
                entries_.push_back({unknown, node});
            }
            if (stiff_[k].ohm > 0) entries_.push_back({unknown, unknown});
            addEdge(stiff_[k].from, stiff_[k].to);
        }
        for (int index : soft_) couple(circuit_.conductors[index].from, circuit_.conductors[index].to);
        eachLaw(circuit_.laws, [&](const auto& branches) { coupleLaw(branches); });
    }

    template <class Law>
    const std::vector<int>& membersOf() const {
        return std::get<LawMembers<Law>>(members_.laws).indices;
    }

    template <class Law>
    void coupleLaw(const LawBranches<Law>& branches) {
        constexpr auto couples = couplingOf<Law>();
        for (int index : membersOf<Law>()) {
            const auto& nodes = branches[index].nodes;
            for (int row = 0; row < Law::kTerminals; ++row) {
                for (int column = 0; column < Law::kTerminals; ++column) {
                    if (needsEntry(nodes[row], nodes[column], couples[row][column]))
                        entries_.push_back({local(nodes[row]), local(nodes[column])});
                }
                for (int other = row + 1; other < Law::kTerminals; ++other)
                    if (couples[row][other] || couples[other][row]) addEdge(local(nodes[row]), local(nodes[other]));
            }
            for (int k = 0; k < Law::kFluxes; ++k) {
                for (int by = 0; by < Law::kFluxes; ++by) entries_.push_back({windingUnknown(k), windingUnknown(by)});
            }
            nextWinding_ += Law::kFluxes;
        }
    }

    /// Of the branch whose turn it is; branches of laws have the same turn in every pass.
    int windingUnknown(int k) const { return nodeCount_ + firstWinding_ + nextWinding_ + k; }

    /// Diagonals have their entries already; so have terminals that metal joins.
    bool needsEntry(int row, int column, bool couples) const {
        return couples && row != column && local(row) >= 0 && local(column) >= 0;
    }

    void couple(int from, int to) {
        const int a = local(from), b = local(to);
        if (a < 0 || b < 0) return;
        entries_.push_back({a, b});
        entries_.push_back({b, a});
        addEdge(a, b);
    }

    void addEdge(int a, int b) {
        if (a >= 0 && b >= 0) edges_.push_back({a, b});
    }

    void compile() {
        std::vector<ForestSource> sources;
        for (const Stiff& s : stiff_) sources.push_back({s.from, s.to, s.ohm == 0});
        const SourceForest forest = growSourceForest(nodeCount_, sources);
        std::vector<Entry> pivots;
        for (std::size_t k = 0; k < stiff_.size(); ++k) {
            const int unknown = nodeCount_ + static_cast<int>(k);
            if (forest.closesLoop[k]) pivots.push_back({unknown, unknown});
        }
        for (int node : eliminationOrder(nodeCount_, edges_, forest)) {
            const int source = forest.sourceOfNode[node];
            if (source < 0) {
                pivots.push_back({node, node});
            } else {
                pivots.push_back({nodeCount_ + source, node});
                pivots.push_back({node, nodeCount_ + source});
            }
        }
        island_.program_ = LinearProgram(entries_, pivots);
        const int size = island_.program_.size();
        island_.baseValues_.assign(island_.program_.slotCount() + kDumpSlots, 0.0);
        island_.x_.assign(size, 0.0);
        island_.right_.assign(size + 1, 0.0);
        for (int node = 0; node < nodeCount_; ++node) {
            island_.unknowns_.push_back(
                {members_.nodes[node], island_.program_.positionOfColumn(node), island_.program_.positionOfRow(node)});
        }
    }

    void placeBranches() {
        const LinearProgram& program = island_.program_;
        int entry = nodeCount_;
        const auto base = [&](int index) -> double& { return island_.baseValues_[program.slot(index)]; };
        for (std::size_t k = 0; k < stiff_.size(); ++k) {
            const Stiff& s = stiff_[k];
            const int unknown = nodeCount_ + static_cast<int>(k);
            const int place = program.positionOfColumn(unknown);
            double sign = 1;
            for (int node : {s.from, s.to}) {
                if (node >= 0) {
                    base(entry++) += sign;
                    base(entry++) += sign;
                }
                sign = -1;
            }
            if (s.isWinding) {
                ++entry;
                continue;
            }
            if (s.ohm > 0) base(entry++) -= s.ohm;
            island_.sources_.push_back({ends(stiffNodes_[k][0], stiffNodes_[k][1]), place,
                                        program.positionOfRow(unknown), s.emfVolt, s.ohm, s.path});
        }
        for (int index : soft_) {
            const ConductorBranch& c = circuit_.conductors[index];
            int slots[4];
            findSlots(c.from, c.to, entry, slots);
            stamp(island_.baseValues_, slots, c.siemens);
            island_.conductors_.push_back({ends(c.from, c.to), c.siemens, circuit_.firstPath[c.element]});
        }
        nextWinding_ = 0;
        eachLaw(circuit_.laws, [&](const auto& branches) { placeLaw(branches, entry); });
        for (const IslandMembers::Injection& i : members_.injections) {
            island_.injections_.push_back({sumPlace(i.node), i.path, i.sign});
        }
        island_.values_ = island_.baseValues_;
    }

    template <class Law>
    void placeLaw(const LawBranches<Law>& branches, int& entry) {
        PlacedLaws<Law>& placed = std::get<PlacedLaws<Law>>(island_.laws_);
        for (int index : membersOf<Law>()) {
            const LawBranch<Law>& b = branches[index];
            typename PlacedLaws<Law>::Placed p{
                {}, {}, b.law, index, b.touch, b.bits, circuit_.firstPath[b.element], b.store, {}, {}, 0, {}, {}};
            for (int row = 0; row < Law::kTerminals; ++row) {
                p.places[row] = {voltPlace(b.nodes[row]), sumPlace(b.nodes[row])};
                for (int column = 0; column < Law::kTerminals; ++column)
                    p.slots[row][column] =
                        slotOf(b.nodes[row], b.nodes[column], PlacedLaws<Law>::kCouples[row][column], entry);
            }
            for (int k = 0; k < Law::kFluxes; ++k) {
                const int unknown = windingUnknown(k);
                p.windings[k].current = island_.program_.positionOfColumn(unknown);
                p.windings[k].equation = island_.program_.positionOfRow(unknown);
                for (int by = 0; by < Law::kFluxes; ++by) p.windings[k].slots[by] = island_.program_.slot(entry++);
            }
            nextWinding_ += Law::kFluxes;
            placed.add(p);
            if (!Law::kRising) noteFeedback(b.nodes);
        }
    }

    void noteFeedback(std::span<const int> nodes) {
        island_.feedsBack_ = true;
        std::vector<int>& active = island_.activeNodes_;
        for (int node : nodes) {
            const int place = local(node);
            if (place >= 0 && std::find(active.begin(), active.end(), place) == active.end()) active.push_back(place);
        }
    }

    int slotOf(int row, int column, bool couples, int& entry) {
        if (needsEntry(row, column, couples)) return island_.program_.slot(entry++);
        return couples && row == column && local(row) >= 0 ? island_.program_.slot(local(row)) : dump();
    }

    /// The four slots of a conductance; `entry` walks over the list that couple() made.
    void findSlots(int from, int to, int& entry, int (&slots)[4]) {
        const int a = local(from), b = local(to);
        slots[0] = a < 0 ? dump() : island_.program_.slot(a);
        slots[1] = b < 0 ? dump() : island_.program_.slot(b);
        slots[2] = slots[3] = -1;
        if (a >= 0 && b >= 0) {
            slots[2] = island_.program_.slot(entry++);
            slots[3] = island_.program_.slot(entry++);
        } else {
            slots[2] = dump();
            slots[3] = dump();
        }
    }

    int dump() { return island_.program_.slotCount() + (nextDump_++ % kDumpSlots); }

    Ends ends(int from, int to) { return {voltPlace(from), voltPlace(to), sumPlace(from), sumPlace(to)}; }

    int sumPlace(int node) const {
        return local(node) < 0 ? island_.program_.size() : island_.program_.positionOfRow(local(node));
    }

    int voltPlace(int node) {
        if (local(node) >= 0) return island_.program_.positionOfColumn(local(node));
        for (const Constant& c : island_.constants_) {
            if (c.node == node) return c.place;
        }
        island_.constants_.push_back({node, static_cast<int>(island_.x_.size())});
        island_.x_.push_back(0);
        return island_.constants_.back().place;
    }

public:
    static void stamp(std::vector<double>& values, const int (&slots)[4], double siemens) {
        values[slots[0]] += siemens;
        values[slots[1]] += siemens;
        values[slots[2]] -= siemens;
        values[slots[3]] -= siemens;
    }

private:
    Island& island_;
    const Circuit& circuit_;
    const IslandMembers& members_;
    std::span<const int> local_;
    int nodeCount_;
    int nextDump_ = 0, firstWinding_ = -1, nextWinding_ = 0;
    std::vector<Stiff> stiff_;
    std::vector<std::array<int, 2>> stiffNodes_;
    std::vector<int> soft_;
    std::vector<Entry> entries_;
    std::vector<Edge> edges_;
};

Island::Island(const Circuit& circuit, const IslandMembers& members, std::span<const int> localOfNode) {
    Builder(*this, circuit, members, localOfNode).build();
}

}  // namespace tiepoint
