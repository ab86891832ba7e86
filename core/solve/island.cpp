#include "core/solve/island.h"

#include "core/solve/elimination_order.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace tiepoint {

namespace {

constexpr double kStiffSiemens = 1;  ///< conductors above it get a current of their own
constexpr int kDumpSlots = 16;       ///< stamps at known nodes rotate over them, so that none waits for the one before
constexpr int kMostIterations = 60;
constexpr int kPatience = 6;            ///< steps at all, then steps without progress, before rounding is blamed
constexpr double kCurveSettled = 1e-6;  ///< of nVt, and of a filament's scale
constexpr double kSettled = 1e-9;       ///< relative, of voltages and currents
constexpr double kSmallVolt = 1e-3;
constexpr double kSmallAmpere = 1e-12;
constexpr double kResidualAmpere = 1e-12;
constexpr double kResidualShare = 1e-12;

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
        int element;
    };
    using Entry = LinearProgram::Entry;

    int local(int node) const { return local_[node]; }

    void sortBranches() {
        for (int index : members_.supplies) {
            const SupplyBranch& s = circuit_.supplies[index];
            addStiff(s.from, s.to, s.emfVolt, s.seriesOhm, s.element);
        }
        for (int index : members_.conductors) {
            const ConductorBranch& c = circuit_.conductors[index];
            if (c.siemens > kStiffSiemens)
                addStiff(c.from, c.to, 0, 1 / c.siemens, c.element);
            else
                soft_.push_back(index);
        }
    }

    void addStiff(int from, int to, double emfVolt, double ohm, int element) {
        stiff_.push_back({local(from), local(to), emfVolt, ohm, element});
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
        for (int index : members_.junctions) couple(circuit_.junctions[index].from, circuit_.junctions[index].to);
        for (int index : members_.filaments) couple(circuit_.filaments[index].from, circuit_.filaments[index].to);
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
            if (s.ohm > 0) base(entry++) -= s.ohm;
            island_.sources_.push_back({ends(stiffNodes_[k][0], stiffNodes_[k][1]), place,
                                        program.positionOfRow(unknown), s.emfVolt, s.ohm, s.element});
        }
        for (int index : soft_) {
            const ConductorBranch& c = circuit_.conductors[index];
            int slots[4];
            findSlots(c.from, c.to, entry, slots);
            stamp(island_.baseValues_, slots, c.siemens);
            island_.conductors_.push_back({ends(c.from, c.to), c.siemens, c.element});
        }
        placeCurves(circuit_.junctions, members_.junctions, island_.junctions_, entry);
        placeCurves(circuit_.filaments, members_.filaments, island_.filaments_, entry);
        for (const IslandMembers::Injection& i : members_.injections) {
            island_.injections_.push_back({sumPlace(i.node), i.element, i.sign});
        }
        island_.values_ = island_.baseValues_;
    }

    template <class Branch, class Law>
    void placeCurves(const std::vector<Branch>& branches, const std::vector<int>& members,
                     std::vector<Curve<Law>>& curves, int& entry) {
        for (int index : members) {
            const Branch& b = branches[index];
            Curve<Law> curve{ends(b.from, b.to), {}, b.law, index, b.element};
            findSlots(b.from, b.to, entry, curve.slots);
            curves.push_back(curve);
        }
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
    int nextDump_ = 0;
    std::vector<Stiff> stiff_;
    std::vector<std::array<int, 2>> stiffNodes_;
    std::vector<int> soft_;
    std::vector<Entry> entries_;
    std::vector<Edge> edges_;
};

Island::Island(const Circuit& circuit, const IslandMembers& members, std::span<const int> localOfNode) {
    Builder(*this, circuit, members, localOfNode).build();
}

void Island::gather(const SolveState& state) {
    for (const Unknown& u : unknowns_) x_[u.place] = state.nodeVolt[u.node];
    for (const Constant& c : constants_) x_[c.place] = state.nodeVolt[c.node];
    for (const Source& s : sources_) x_[s.current] = state.elementAmpere[s.element];
    for (auto& j : junctions_) j.innerVolt = state.innerVolt[j.index];
    for (auto& f : filaments_) f.innerVolt = state.filamentVolt[f.index];
}

void Island::scatter(SolveState& state) const {
    for (const Unknown& u : unknowns_) state.nodeVolt[u.node] = x_[u.place];
    for (const Source& s : sources_) state.elementAmpere[s.element] = x_[s.current];
    for (const Conductor& c : conductors_) {
        state.elementAmpere[c.element] = c.siemens * (x_[c.ends.voltFrom] - x_[c.ends.voltTo]);
    }
    scatterCurves(junctions_, state.innerVolt, state.elementAmpere);
    scatterCurves(filaments_, state.filamentVolt, state.elementAmpere);
}

/// A curve's current is read off its last tangent: there it balances the others to rounding, and differs from the law by the square of
/// the last step only.
template <class Law>
void Island::scatterCurves(const std::vector<Curve<Law>>& curves, std::vector<double>& innerVolt,
                           std::vector<double>& elementAmpere) const {
    for (const Curve<Law>& c : curves) {
        const double volt = x_[c.ends.voltFrom] - x_[c.ends.voltTo];
        elementAmpere[c.element] = c.pointAmpere + c.tangentSiemens * (volt - c.lineVolt);
        innerVolt[c.index] = c.innerVolt;
    }
}

void Island::load(const SolveState& state, const Drive& drive) {
    std::copy(baseValues_.begin(), baseValues_.end(), values_.begin());
    std::fill(right_.begin(), right_.end(), 0.0);
    for (const Conductor& c : conductors_) {
        const double current = c.siemens * (x_[c.ends.voltFrom] - x_[c.ends.voltTo]);
        right_[c.ends.sumFrom] -= current;
        right_[c.ends.sumTo] += current;
    }
    for (const Source& s : sources_) {
        const double current = x_[s.current];
        right_[s.ends.sumFrom] -= current;
        right_[s.ends.sumTo] += current;
        right_[s.equation] =
            drive.sourceScale * s.emfVolt - (x_[s.ends.voltFrom] - x_[s.ends.voltTo]) + s.ohm * current;
    }
    for (const Injection& i : injections_) right_[i.sum] -= i.sign * state.elementAmpere[i.element];
    loadCurves(junctions_, drive);
    loadCurves(filaments_, drive);
}

template <class Law>
void Island::loadCurves(std::vector<Curve<Law>>& curves, const Drive& drive) {
    for (Curve<Law>& c : curves) {
        const auto point = c.law.at(c.innerVolt, drive.leakSiemens);
        c.pointAmpere = point.ampere;
        c.tangentSiemens = point.siemens / (1 + point.siemens * c.law.seriesOhm());
        c.lineVolt = c.innerVolt + c.law.seriesOhm() * point.ampere;
        const double volt = x_[c.ends.voltFrom] - x_[c.ends.voltTo];
        const double current = c.pointAmpere + c.tangentSiemens * (volt - c.lineVolt);
        right_[c.ends.sumFrom] -= current;
        right_[c.ends.sumTo] += current;
        Builder::stamp(values_, c.slots, c.tangentSiemens);
    }
}

/// Whether the sums that load() made, and the curves' distance from their law, are as small as rounding allows.
bool Island::isBalanced(const SolveState& state, double defectAmpere) const {
    double largest = 0, worst = defectAmpere;
    const auto meet = [&](double current) { largest = std::max(largest, std::abs(current)); };
    for (const Conductor& c : conductors_) meet(c.siemens * (x_[c.ends.voltFrom] - x_[c.ends.voltTo]));
    for (const Source& s : sources_) meet(x_[s.current]);
    for (const Injection& i : injections_) meet(state.elementAmpere[i.element]);
    for (const auto& j : junctions_) meet(j.pointAmpere);
    for (const auto& f : filaments_) meet(f.pointAmpere);
    for (const Unknown& u : unknowns_) worst = std::max(worst, std::abs(right_[u.sum]));
    return worst <= kResidualAmpere + kResidualShare * largest;
}

Island::Measure Island::correct() {
    Measure m;
    const int size = program_.size();
    for (int i = 0; i < size; ++i) x_[i] += right_[i];
    for (const Unknown& u : unknowns_) {
        m.voltStep = std::max(m.voltStep, std::abs(right_[u.place]));
        m.largestVolt = std::max(m.largestVolt, std::abs(x_[u.place]));
    }
    for (const Source& s : sources_) {
        m.ampereStep = std::max(m.ampereStep, std::abs(right_[s.current]));
        m.largestAmpere = std::max(m.largestAmpere, std::abs(x_[s.current]));
    }
    moveCurves(junctions_, m);
    moveCurves(filaments_, m);
    return m;
}

template <class Law>
void Island::moveCurves(std::vector<Curve<Law>>& curves, Measure& measure) {
    for (Curve<Law>& c : curves) {
        const double volt = x_[c.ends.voltFrom] - x_[c.ends.voltTo];
        // Along the tangent the inner junction moves by its share of the terminals' voltage.
        const double share = 1 - c.tangentSiemens * c.law.seriesOhm();
        const double target = c.innerVolt + share * (volt - c.lineVolt);
        const double next = c.law.limitedStep(c.innerVolt, target);
        measure.curveStep = std::max(measure.curveStep, std::abs(target - c.innerVolt) * c.law.perUnitVolt());
        measure.lawDefectAmpere = std::max(measure.lawDefectAmpere, c.tangentSiemens * std::abs(target - next));
        c.innerVolt = next;
    }
}

bool Island::Measure::settled() const {
    return curveStep <= kCurveSettled && voltStep <= kSettled * std::max(largestVolt, kSmallVolt) &&
           ampereStep <= kSettled * largestAmpere + kSmallAmpere;
}

Island::Outcome Island::solve(SolveState& state, const Drive& drive) {
    gather(state);
    Outcome outcome;
    double bestStep = std::numeric_limits<double>::infinity(), defect = 0;
    int stalled = 0;
    while (!outcome.converged && outcome.iterations < kMostIterations) {
        ++outcome.iterations;
        load(state, drive);
        const bool balanced = outcome.iterations > kPatience && isBalanced(state, defect);
        if (!program_.run(values_, std::span(right_).first(program_.size()))) break;
        const Measure m = correct();
        const double step = std::max(m.curveStep, m.voltStep);
        if (!std::isfinite(step) || !std::isfinite(m.ampereStep)) break;
        stalled = balanced && step >= bestStep / 2 ? stalled + 1 : 0;
        bestStep = std::min(bestStep, step);
        defect = m.lawDefectAmpere;
        outcome.converged = m.settled() || stalled >= kPatience;
    }
    if (!outcome.converged) outcome.troubleNode = worstNode(state, drive);
    scatter(state);
    return outcome;
}

/// Where Kirchhoff's current law fails worst at the end of a search that failed; a node that lost its number comes first.
int Island::worstNode(const SolveState& state, const Drive& drive) {
    load(state, drive);
    int worst = -1;
    double most = -1;
    for (const Unknown& u : unknowns_) {
        const double defect = std::abs(right_[u.sum]);
        if (!std::isfinite(x_[u.place]) || !std::isfinite(defect)) return u.node;
        if (defect <= most) continue;
        most = defect;
        worst = u.node;
    }
    return worst;
}

}  // namespace tiepoint
