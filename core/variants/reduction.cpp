#include "core/variants/reduction.h"

#include "core/base/disjoint_sets.h"
#include "core/solve/circuit_solver.h"
#include "core/solve/supply_role.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

namespace {

constexpr int kMostLimitRounds = 8;
constexpr int kMostCurveRounds = 16;
constexpr int kMostPorts = 60;
constexpr int kMostSofteningRounds = 8;
constexpr double kNoMove = 1e-7;    ///< in a law's unit: nothing of it shows in twelve digits
constexpr double kFarShare = 0.25;  ///< beyond it a curve becomes a port
constexpr double kLeastShareOfResponse = 1e-12;
constexpr double kFarMove = 0.3;         ///< in a law's unit
constexpr double kLeastSiemens = 1e-10;  ///< nobody measures behind more than ten gigohm
constexpr double kMissedShare = 2e-8;    ///< of the largest current: what all curves together may miss
constexpr double kMissedAmpere = 1e-13;
constexpr double kMissedVolt = 2e-5;  ///< what one curve may miss between its ends, however little flows

/// The tangent of a curve at a voltage, from a place near where it is touched there.
Curve::Tangent tangentAt(const Curve& curve, double touch, double volt) {
    constexpr int kMostSteps = 4;
    constexpr double kNear = 1e-5;  // in the law's unit: squared, nothing
    Curve::Tangent tangent = curve.tangent(touch);
    for (int step = 0; step < kMostSteps; ++step) {
        const double next = curve.touched(touch, tangent, volt);
        if (std::abs(next - touch) * curve.perUnitVolt < kNear) break;
        touch = curve.limited(touch, next);
        tangent = curve.tangent(touch);
    }
    return tangent;
}

}  // namespace

bool Reduction::solve(const Variant& variant) {
    for (const int curve : outCurves_) isOut_[curve] = 0;
    outCurves_.clear();
    nearPort_.assign(base_.curves().size(), -1);
    isSoft_ = false;
    base_.forgetIfMany();
    ports_.clear();
    map(variant);
    findJoins();
    return addPorts() && addDarkNear() && settle();
}

/// Dark junctions near what goes: they may be all that holds their place in the variant, and then each leak counts.
bool Reduction::addDarkNear() {
    constexpr double kDarkSiemens = 1e-6;
    constexpr std::size_t kMostMet = 16;
    constexpr int kMostAtNode = 8;  // more meet at rails only, which don't hang
    std::vector<int> met;
    const auto meet = [&](int node) {
        if (met.size() < kMostMet && std::find(met.begin(), met.end(), node) == met.end()) met.push_back(node);
    };
    for (const Gone& gone : allGone_) {
        meet(gone.from);
        meet(gone.to);
    }
    far_.clear();
    for (std::size_t k = 0; k < met.size(); ++k) {
        const std::vector<Neighbour>& around = neighbours_[met[k]];
        if (static_cast<int>(around.size()) > kMostAtNode) continue;
        for (const Neighbour& each : around) {
            meet(each.node);
            const bool isDark = each.curve >= 0 && base_.tangent(each.curve).siemens < kDarkSiemens;
            if (isDark && !isOut_[each.curve] && std::find(far_.begin(), far_.end(), each.curve) == far_.end())
                far_.push_back(each.curve);
        }
    }
    across_ = restAcross_;
    return addNear();
}

bool Reduction::addPorts() {
    for (const auto& [a, b] : joins_) {
        Port join;
        join.a = pointOf(a);
        join.b = pointOf(b);
        ports_.add(join);
    }
    if (!addOwnBranches()) return false;
    for (const int cut : cuts_) {
        const BaseSystem::Stiff& edge = base_.stiffs()[base_.stiffOfEdge(cut)];
        gone_.push_back({edge.from, edge.to, {base_.stiffOfEdge(cut), -1, -1}});
    }
    allGone_ = gone_;
    tied_.clear();
    keepHanging();
    for (const Gone& gone : gone_) addGone(gone);
    return true;
}

bool Reduction::addOwnBranches() {
    ownCurves_.clear();
    if (!collectCurves(
            own_, [](int) { return true; }, ownCurves_))
        return false;
    const auto pointAt = [&](int ownNode) { return pointOf(metalOfOwnNode_[ownNode]); };
    for (const ConductorBranch& c : own_.conductors) {
        Port port;
        port.a = pointAt(c.from);
        port.b = pointAt(c.to);
        port.element = c.element;
        if (port.a == port.b) continue;
        port.rule = c.siemens > kStiffSiemens ? PortRule::Hold : PortRule::Tangent;
        port.ohm = 1 / c.siemens;
        port.limitAmpere = std::numeric_limits<double>::infinity();
        port.now.siemens = c.siemens;
        ports_.add(port);
    }
    for (const SupplyBranch& s : own_.supplies) {
        Port port;
        port.rule = PortRule::Hold;
        port.a = pointAt(s.from);
        port.b = pointAt(s.to);
        port.element = s.element;
        port.emfVolt = s.emfVolt;
        port.ohm = s.seriesOhm;
        port.limitAmpere = s.limitAmpere;
        if (port.a == port.b) return false;  // it drives itself through metal
        ports_.add(port);
    }
    for (const Curve& curve : ownCurves_) {
        Port port;
        port.rule = PortRule::Tangent;
        port.a = pointAt(curve.from);
        port.b = pointAt(curve.to);
        port.element = curve.element;
        port.curve = &curve;
        port.touch = curve.startVolt;
        if (port.a == port.b) continue;
        ports_.add(port);
    }
    return true;
}

int Reduction::comingTo(int node) const {
    int count = 0;
    for (const Port& p : ports_.ports()) count += (p.a.node == node) + (p.b.node == node);
    return count;
}

/// A node that everything leaves would have no voltage. What held it last stays: nothing flows there.
void Reduction::keepHanging() {
    std::vector<int> bare;
    for (const Gone& gone : gone_) {
        for (const int node : {gone.from, gone.to}) {
            if (std::find(bare.begin(), bare.end(), node) != bare.end()) continue;
            int left = base_.degreeOf(node) + comingTo(node);
            for (const Gone& each : gone_) left -= (each.from == node) + (each.to == node);
            if (left == 0) bare.push_back(node);
        }
    }
    if (bare.empty()) return;
    DisjointSets held(bare.size() + 1);  // the last: all that isn't bare
    const auto placeOf = [&](int node) {
        return static_cast<int>(std::find(bare.begin(), bare.end(), node) - bare.begin());
    };
    std::erase_if(gone_, [&](const Gone& gone) { return held.join(placeOf(gone.from), placeOf(gone.to)); });
}

void Reduction::addGone(const Gone& gone) {
    Port port;
    port.goes = true;
    port.a = {gone.from, base_.componentOf(gone.from)};
    port.b = {gone.to, base_.componentOf(gone.to)};
    if (gone.place.stiff >= 0) {
        port.rule = PortRule::Fix;
        port.stiff = gone.place.stiff;
        port.limitAmpere = std::numeric_limits<double>::infinity();
    } else {
        port.rule = PortRule::Tangent;
        if (gone.place.soft >= 0) {
            port.soft = gone.place.soft;
            port.before.siemens = base_.softs()[gone.place.soft].siemens;
        } else {
            port.ofCurve = gone.place.curve;
            port.before = base_.tangent(gone.place.curve);
            isOut_[gone.place.curve] = 1;
            outCurves_.push_back(gone.place.curve);
        }
    }
    ports_.add(port);
}

/// Curves and limits, in turn, until both are content.
bool Reduction::settle() {
    for (int round = 0; round < kMostLimitRounds; ++round) {
        if (!settleCurves()) return false;
        bool changed = false;
        if (!changeOneLimit(changed)) return false;
        if (!changed) return true;
    }
    return false;
}

double Reduction::largestAmpere() const {
    double largest = 0;
    for (std::size_t k = 0; k < base_.stiffs().size(); ++k) {
        const BaseSystem::Stiff& s = base_.stiffs()[k];
        if (s.element >= 0 && s.emfVolt != 0)
            largest = std::max(largest, std::abs(ports_.stiffAmpere(static_cast<int>(k))));
    }
    for (std::size_t k = 0; k < ports_.ports().size(); ++k) {
        const Port& p = ports_.ports()[k];
        if (p.element >= 0 && p.emfVolt != 0) largest = std::max(largest, std::abs(ports_.drive(static_cast<int>(k))));
    }
    return largest;
}

bool Reduction::settleCurves() {
    const std::vector<Curve>& curves = base_.curves();
    int softenings = 0;
    for (int round = 0; round < kMostCurveRounds; ++round) {
        if (!ports_.solve()) return false;
        across_ = isSoft_ ? zeroAcross_ : restAcross_;
        ports_.addAcross(across_);
        const double largest = largestAmpere();
        double missed = 0;
        bool anyShows = false;
        far_.clear();
        defect_.assign(curves.size(), 0.0);
        for (std::size_t k = 0; k < curves.size(); ++k) {
            const double moved = std::abs(across_[k] - restAcross_[k]) * curves[k].perUnitVolt;
            if (isOut_[k] || moved < kNoMove) continue;
            const Curve::Tangent& before = base_.tangent(static_cast<int>(k));
            const double touch = base_.touch(static_cast<int>(k));
            const double inner = curves[k].touched(touch, before, across_[k]);
            const Curve::Tangent now = tangentAt(curves[k], inner, across_[k]);
            defect_[k] = now.at(across_[k]) - before.at(across_[k]);
            const double misses = std::abs(defect_[k] - (isSoft_ ? soft_[k] : 0));
            missed += misses;
            if (misses == 0) continue;
            // Behind which resistance the curve stands, without its own line; a leak is the least that holds it.
            const double ohm = base_.ohmAcross(static_cast<int>(k));
            const double outside = ohm / std::max(1 - before.siemens * ohm, kLeastShareOfResponse);
            const bool shows = misses * std::min(outside, 1 / now.siemens) > kMissedVolt;
            anyShows = anyShows || shows;
            // Put in as a current, its defect would come closer by this factor each time. What the base holds firmly may hang on a
            // leak in the variant: whatever moved far is taken as if it did.
            const bool hangs = std::abs(inner - touch) * curves[k].perUnitVolt > kFarMove &&
                               misses > kMissedVolt * std::max(std::min(before.siemens, now.siemens), kLeastSiemens);
            anyShows = anyShows || hangs;
            const bool isFar = hangs || std::abs(now.siemens - before.siemens) * ohm > kFarShare;
            if (isFar && (hangs || shows || misses > kMissedShare * largest / 20)) far_.push_back(static_cast<int>(k));
        }
        if (!std::isfinite(missed)) return false;
        if (missed <= kMissedShare * largest + kMissedAmpere && !anyShows) return true;
        if (!far_.empty()) {
            if (!addNear()) return false;
        } else {
            if (++softenings > kMostSofteningRounds) return false;
            soften();
        }
    }
    return false;
}

/// The far curves become ports.
bool Reduction::addNear() {
    if (static_cast<int>(ports_.ports().size() + far_.size()) > kMostPorts) return false;
    for (const int k : far_) {
        const Curve& curve = base_.curves()[k];
        Port port;
        port.rule = PortRule::Tangent;
        port.a = {curve.from, base_.componentOf(curve.from)};
        port.b = {curve.to, base_.componentOf(curve.to)};
        port.before = base_.tangent(k);
        port.curve = &curve;
        port.touch = curve.limited(base_.touch(k), curve.touched(base_.touch(k), port.before, across_[k]));
        port.ofCurve = port.baseCurve = k;
        isOut_[k] = 1;
        outCurves_.push_back(k);
        nearPort_[k] = ports_.add(port);
    }
    isSoft_ = false;
    ports_.setRest(nullptr);
    return true;
}

/// What the curves are off their tangents is put into the base as currents.
void Reduction::soften() {
    const std::vector<Curve>& curves = base_.curves();
    soft_ = defect_;
    intoNode_.assign(base_.nodeCount(), 0.0);
    for (std::size_t k = 0; k < curves.size(); ++k) {
        intoNode_[curves[k].from] -= soft_[k];
        intoNode_[curves[k].to] += soft_[k];
    }
    rest_ = base_.rest();
    base_.addResponse(intoNode_, rest_);
    zeroAcross_.resize(curves.size());
    for (std::size_t k = 0; k < curves.size(); ++k) zeroAcross_[k] = rest_[curves[k].from] - rest_[curves[k].to];
    isSoft_ = true;
    ports_.setRest(&rest_);
}

/// The supply furthest beyond what its role allows changes it; false where that can't be said by a port.
bool Reduction::changeOneLimit(bool& changed) {
    struct Offender {
        double excess = kLimitSlack;
        int stiff = -1, port = -1;
        bool holds = true;
        double ampere = 0;
    } worst;
    const auto look = [&](int stiff, int port, bool holds, double limit, double ampere, double held, double volt,
                          int role) {
        double excess = std::abs(ampere) / limit - 1;
        if (!holds) {
            const double scale = std::max({std::abs(held), std::abs(volt), 1e-3});
            excess = (role < 0 ? volt - held : held - volt) / scale;
        }
        if (excess > worst.excess) worst = {excess, stiff, port, holds, ampere};
    };
    const std::vector<Port>& ports = ports_.ports();
    const auto portAt = [&](int stiff) {
        for (std::size_t k = 0; k < ports.size(); ++k)
            if (ports[k].stiff == stiff) return static_cast<int>(k);
        return -1;
    };
    for (int k = 0; k < static_cast<int>(base_.stiffs().size()); ++k) {
        const BaseSystem::Stiff& s = base_.stiffs()[k];
        if (s.element < 0 || !std::isfinite(s.limitAmpere) || portAt(k) >= 0) continue;
        const double ampere = ports_.stiffAmpere(k);
        const double volt =
            ports_.volt({s.from, base_.componentOf(s.from)}) - ports_.volt({s.to, base_.componentOf(s.to)});
        look(k, -1, s.role == 0, s.limitAmpere, ampere, s.emfVolt + s.ohm * ampere, volt, s.role);
    }
    for (int k = 0; k < static_cast<int>(ports.size()); ++k) {
        const Port& p = ports[k];
        const bool isSupply = std::isfinite(p.limitAmpere) && p.limitAmpere > 0;
        if (!isSupply || (p.rule != PortRule::Hold && p.rule != PortRule::Fix)) continue;
        const double ampere = p.stiff >= 0 ? ports_.stiffAmpere(p.stiff) : ports_.drive(k);
        look(p.stiff, k, p.rule == PortRule::Hold, p.limitAmpere, ampere, p.emfVolt + p.ohm * ampere, ports_.across(k),
             p.fixedAmpere < 0 ? -1 : 1);
    }
    changed = worst.stiff >= 0 || worst.port >= 0;
    if (!changed) return true;
    if (worst.port < 0) {
        const BaseSystem::Stiff& s = base_.stiffs()[worst.stiff];
        Port port;
        port.a = {s.from, base_.componentOf(s.from)};
        port.b = {s.to, base_.componentOf(s.to)};
        port.stiff = worst.stiff;
        port.emfVolt = s.emfVolt;
        port.ohm = s.ohm;
        port.limitAmpere = s.limitAmpere;
        worst.port = ports_.add(port);
    }
    Port& port = ports_.port(worst.port);
    port.rule = worst.holds ? PortRule::Fix : PortRule::Hold;
    port.fixedAmpere = worst.ampere < 0 ? -port.limitAmpere : port.limitAmpere;
    return true;
}

}  // namespace tiepoint
