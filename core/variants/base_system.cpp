#include "core/variants/base_system.h"

#include "core/base/disjoint_sets.h"
#include "core/solve/elimination_order.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

constexpr std::size_t kMostKeptBytes = std::size_t{96} << 20;

}  // namespace

BaseSystem::BaseSystem(const StripCircuit& strips, std::span<const double> touches, std::span<const signed char> roles,
                       int reference)
    : strips_(strips),
      nodeCount_(strips.circuit().nodeCount) {
    collectBranches(touches, roles);
    findGrounds(reference);
    if (!good_) return;
    compile();
    settle();
}

/// The search left its touches where they served its purpose; here every tangent has to touch where the base rests.
void BaseSystem::settle() {
    constexpr int kMostSteps = 60;
    constexpr double kSettled = 1e-7;         // of a law's unit
    constexpr double kSettledAmpere = 1e-15;  // or so little current: behind leaks
                                              // rounding moves a voltage further
    for (int step = 0; step < kMostSteps && good_; ++step) {
        load();
        double largest = 0;
        for (std::size_t k = 0; k < curves_.size() && good_; ++k) {
            const Curve& c = curves_[k];
            const double target = c.touched(touches_[k], tangents_[k], rest_[c.from] - rest_[c.to]);
            const double move = std::abs(target - touches_[k]);
            if (move * tangents_[k].siemens > kSettledAmpere) largest = std::max(largest, move * c.perUnitVolt);
            touches_[k] = c.limited(touches_[k], target);
            tangents_[k] = c.tangent(touches_[k]);
        }
        if (largest > kSettled) continue;
        straighten();
        return load();
    }
    good_ = false;
}

/// A dark junction is taken for a line through the same point that isn't quite as flat: what hangs on leaks alone would answer with
/// 1e12 V to an ampere, and what a variant drives there be lost in rounding.
void BaseSystem::straighten() {
    constexpr double kLeastSiemens = 1e-7;
    for (std::size_t k = 0; k < curves_.size(); ++k) {
        const double volt = rest_[curves_[k].from] - rest_[curves_[k].to];
        Curve::Tangent& t = tangents_[k];
        if (t.siemens < kLeastSiemens) t = {t.at(volt), kLeastSiemens, volt};
    }
}

void BaseSystem::collectBranches(std::span<const double> touches, std::span<const signed char> roles) {
    const Circuit& circuit = strips_.circuit();
    const std::vector<char>& present = strips_.present();
    placeOf_.resize(circuit.elementCount());
    for (std::size_t k = 0; k < circuit.supplies.size(); ++k) {
        const SupplyBranch& s = circuit.supplies[k];
        if (!present[s.element] || s.from == s.to) continue;
        placeOf_[s.element].stiff = static_cast<int>(stiffs_.size());
        stiffs_.push_back({s.from, s.to, s.element, s.emfVolt, s.seriesOhm, s.limitAmpere, roles[k]});
    }
    for (const ConductorBranch& c : circuit.conductors) {
        if (!present[c.element] || c.from == c.to) continue;
        if (c.siemens > kStiffSiemens) {
            placeOf_[c.element].stiff = static_cast<int>(stiffs_.size());
            stiffs_.push_back({c.from, c.to, c.element, 0, 1 / c.siemens, INFINITY, 0});
        } else {
            placeOf_[c.element].soft = static_cast<int>(softs_.size());
            softs_.push_back({c.from, c.to, c.element, c.siemens});
        }
    }
    firstEdge_ = static_cast<int>(stiffs_.size());
    for (const MetalEdge& edge : strips_.tree())
        stiffs_.push_back({strips_.nodeOf(edge.a), strips_.nodeOf(edge.b), -1, 0, 0, INFINITY, 0});
    good_ = collectCurves(
        circuit, [&](int element) { return present[element] != 0; }, curves_);
    std::erase_if(curves_, [](const Curve& c) { return c.from == c.to; });
    for (std::size_t k = 0; k < curves_.size(); ++k) {
        placeOf_[curves_[k].element].curve = static_cast<int>(k);
        touches_.push_back(touches[curves_[k].touch]);
        tangents_.push_back(curves_[k].tangent(touches_.back()));
    }
}

void BaseSystem::findGrounds(int reference) {
    DisjointSets joined(nodeCount_);
    degree_.assign(nodeCount_, 0);
    const auto tie = [&](int from, int to) {
        joined.join(from, to);
        ++degree_[from];
        ++degree_[to];
    };
    for (const Stiff& s : stiffs_) {
        if (s.role == 0) tie(s.from, s.to);
    }
    for (const Soft& s : softs_) tie(s.from, s.to);
    for (const Curve& c : curves_) tie(c.from, c.to);
    for (const Stiff& s : stiffs_) {
        if (s.role == 0) continue;
        ++degree_[s.from];
        ++degree_[s.to];
        // What a limited supply drives from one part into another would be lost at their grounds.
        if (!joined.areJoined(s.from, s.to)) good_ = false;
    }
    component_.assign(nodeCount_, -1);
    grounded_.assign(nodeCount_, 0);
    std::vector<int> numberOf(nodeCount_, -1);
    const auto ground = [&](int node) {
        int& number = numberOf[joined.root(node)];
        if (number >= 0) return;
        number = componentCount_++;
        grounded_[node] = 1;
    };
    reference_ = reference;
    if (reference >= 0) {
        ground(reference);
        mainComponent_ = 0;
    }
    for (int node = 0; node < nodeCount_; ++node) ground(node);
    for (int node = 0; node < nodeCount_; ++node) component_[node] = numberOf[joined.root(node)];
}

void BaseSystem::compile() {
    // Unknowns of the program: nodes that aren't grounds, in order, then stiff currents.
    const int unknowns = nodeCount_ + static_cast<int>(stiffs_.size());
    std::vector<int> numberOf(unknowns, -1);
    int nodes = 0;
    for (int node = 0; node < nodeCount_; ++node)
        if (!grounded_[node]) numberOf[node] = nodes++;
    int count = nodes;
    for (int u = nodeCount_; u < unknowns; ++u) numberOf[u] = count++;
    const auto at = [&](int node) { return numberOf[node]; };

    std::vector<Edge> edges;
    const auto enter = [&](int row, int column, double value) {
        entries_.push_back({row, column});
        entryValues_.push_back(value);
    };
    for (int node = 0; node < nodes; ++node) enter(node, node, 0);
    const auto conduct = [&](int from, int to, double siemens) {
        const int a = at(from), b = at(to);
        if (a >= 0) enter(a, a, siemens);
        if (b >= 0) enter(b, b, siemens);
        if (a < 0 || b < 0) return;
        enter(a, b, -siemens);
        enter(b, a, -siemens);
        edges.push_back({a, b});
    };
    for (const Soft& s : softs_) conduct(s.from, s.to, s.siemens);
    firstCurveEntry_ = entries_.size();
    for (const Curve& c : curves_) conduct(c.from, c.to, 0);

    std::vector<ForestSource> sources;
    std::vector<int> stiffOfSource;
    std::vector<LinearProgram::Entry> pivots;
    for (std::size_t k = 0; k < stiffs_.size(); ++k) {
        const Stiff& s = stiffs_[k];
        const int unknown = numberOf[nodeCount_ + static_cast<int>(k)], a = at(s.from), b = at(s.to);
        if (a >= 0) enter(a, unknown, 1);
        if (b >= 0) enter(b, unknown, -1);
        if (s.role != 0) {
            enter(unknown, unknown, 1);
            pivots.push_back({unknown, unknown});
            continue;
        }
        if (a >= 0) enter(unknown, a, 1);
        if (b >= 0) enter(unknown, b, -1);
        if (s.ohm > 0) enter(unknown, unknown, -s.ohm);
        if (a >= 0 && b >= 0) edges.push_back({a, b});
        sources.push_back({a, b, s.ohm == 0});
        stiffOfSource.push_back(unknown);
    }
    const SourceForest forest = growSourceForest(nodes, sources);
    for (std::size_t k = 0; k < sources.size(); ++k) {
        if (!forest.closesLoop[k]) continue;
        if (sources[k].ideal) good_ = false;
        pivots.push_back({stiffOfSource[k], stiffOfSource[k]});
    }
    if (!good_) return;
    for (const int node : eliminationOrder(nodes, edges, forest)) {
        const int source = forest.sourceOfNode[node];
        if (source < 0) {
            pivots.push_back({node, node});
        } else {
            pivots.push_back({stiffOfSource[source], node});
            pivots.push_back({node, stiffOfSource[source]});
        }
    }
    program_ = LinearProgram(entries_, pivots);
    rowOf_.assign(unknowns, -1);
    columnOf_.assign(unknowns, -1);
    for (int u = 0; u < unknowns; ++u) {
        if (numberOf[u] < 0) continue;
        rowOf_[u] = program_.positionOfRow(numberOf[u]);
        columnOf_[u] = program_.positionOfColumn(numberOf[u]);
    }
    ofUnknown_.resize(unknowns);
    ofSoft_.resize(softs_.size());
    ofCurve_.resize(curves_.size());
    ohmAcross_.assign(curves_.size(), -1.0);
}

void BaseSystem::load() {
    if (!good_) return;
    std::size_t entry = firstCurveEntry_;
    for (std::size_t k = 0; k < curves_.size(); ++k) {
        const double siemens = tangents_[k].siemens;
        const bool from = !grounded_[curves_[k].from], to = !grounded_[curves_[k].to];
        if (from) entryValues_[entry++] = siemens;
        if (to) entryValues_[entry++] = siemens;
        if (!from || !to) continue;
        entryValues_[entry++] = -siemens;
        entryValues_[entry++] = -siemens;
    }
    factors_.assign(program_.slotCount(), 0.0);
    for (std::size_t k = 0; k < entries_.size(); ++k) factors_[program_.slot(static_cast<int>(k))] += entryValues_[k];
    right_.assign(program_.size(), 0.0);
    const auto inject = [&](int node, double ampere) {
        if (rowOf_[node] >= 0) right_[rowOf_[node]] += ampere;
    };
    for (std::size_t k = 0; k < stiffs_.size(); ++k) {
        const Stiff& s = stiffs_[k];
        right_[rowOf_[nodeCount_ + static_cast<int>(k)]] = s.role == 0 ? s.emfVolt : s.role * s.limitAmpere;
    }
    for (std::size_t k = 0; k < curves_.size(); ++k) {
        const double ampere = tangents_[k].at(0);
        inject(curves_[k].from, -ampere);
        inject(curves_[k].to, ampere);
    }
    good_ = program_.run(factors_, right_);
    rest_.assign(rowOf_.size(), 0.0);
    for (std::size_t u = 0; u < rowOf_.size(); ++u) {
        if (columnOf_[u] >= 0) rest_[u] = right_[columnOf_[u]];
        if (!std::isfinite(rest_[u])) good_ = false;
    }
}

const BaseSystem::Response& BaseSystem::ofNode(int node) { return response(ofUnknown_[node], {{node, 1}}); }

const BaseSystem::Response& BaseSystem::ofStiff(int stiff) {
    return response(ofUnknown_[nodeCount_ + stiff], {{nodeCount_ + stiff, 1}});
}

const BaseSystem::Response& BaseSystem::ofSoft(int soft) {
    return response(ofSoft_[soft], {{softs_[soft].from, -1}, {softs_[soft].to, 1}});
}

const BaseSystem::Response& BaseSystem::ofCurve(int curve) {
    return response(ofCurve_[curve], {{curves_[curve].from, -1}, {curves_[curve].to, 1}});
}

const BaseSystem::Response& BaseSystem::response(std::unique_ptr<Response>& kept,
                                                 std::initializer_list<Excitation> excitations) {
    if (kept) return *kept;
    kept = std::make_unique<Response>();
    kept->unknown.assign(rowOf_.size(), 0.0);
    kept->across.assign(curves_.size(), 0.0);
    std::fill(right_.begin(), right_.end(), 0.0);
    for (const Excitation& each : excitations)
        if (rowOf_[each.unknown] >= 0) right_[rowOf_[each.unknown]] = each.size;  // a ground takes what comes
    program_.runAgain(factors_, right_);
    for (std::size_t u = 0; u < rowOf_.size(); ++u)
        if (columnOf_[u] >= 0) kept->unknown[u] = right_[columnOf_[u]];
    for (std::size_t k = 0; k < curves_.size(); ++k)
        kept->across[k] = kept->unknown[curves_[k].from] - kept->unknown[curves_[k].to];
    kept_ += (kept->unknown.size() + kept->across.size()) * sizeof(double);
    return *kept;
}

double BaseSystem::ohmAcross(int curve) {
    double& ohm = ohmAcross_[curve];
    if (ohm < 0) ohm = std::max(0.0, -ofCurve(curve).across[curve]);
    return ohm;
}

void BaseSystem::forgetIfMany() {
    if (kept_ <= kMostKeptBytes) return;
    for (auto* responses : {&ofUnknown_, &ofSoft_, &ofCurve_})
        for (auto& each : *responses) each.reset();
    kept_ = 0;
}

void BaseSystem::addResponse(std::span<const double> intoNode, std::vector<double>& unknown) {
    std::fill(right_.begin(), right_.end(), 0.0);
    for (int node = 0; node < nodeCount_; ++node)
        if (rowOf_[node] >= 0) right_[rowOf_[node]] = intoNode[node];
    program_.runAgain(factors_, right_);
    for (std::size_t u = 0; u < rowOf_.size(); ++u)
        if (columnOf_[u] >= 0) unknown[u] += right_[columnOf_[u]];
}

}  // namespace tiepoint
