// What is read inside a step, and what is watched there (see moving_island.h).

#include "core/solve/supply_role.h"
#include "core/time/moving_island.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

constexpr double kInsideShare = 0.01;  ///< of a step: what an instant inside is solved with
constexpr int kMostInsideIterations = 60;
constexpr double kInsideCurveSettled = 1e-6;

double cubicHermite(double share, double length, double at0, double slope0, double at1, double slope1) {
    const double s = share, r = 1 - s;
    return r * r * (1 + 2 * s) * at0 + s * s * (1 + 2 * r) * at1 + length * s * r * (r * slope0 - s * slope1);
}

double slopeOfHermite(double share, double length, double at0, double slope0, double at1, double slope1) {
    const double s = share;
    return 6 * s * (1 - s) * (at1 - at0) / length + (1 - s) * (1 - 3 * s) * slope0 + s * (3 * s - 2) * slope1;
}

}  // namespace

bool MovingIsland::solveInside(double share, Moment& moment) {
    // The trapezoidal rule over a hundredth of the step, from charges by Hermite's cubic.
    const double length = end_.second - begin_.second, from = share - kInsideShare;
    for (std::size_t k = 0; k < still_.size(); ++k) {
        const double at0 = begin_.stored[k], at1 = end_.stored[k];
        const double slope0 = begin_.storing[k], slope1 = end_.storing[k];
        still_[k] = cubicHermite(from, length, at0, slope0, at1, slope1) +
                    kInsideShare * length / 2 * slopeOfHermite(from, length, at0, slope0, at1, slope1);
    }
    pace_ = {2 / (kInsideShare * length), still_.data()};
    for (std::size_t i = 0; i < x_.size(); ++i) x_[i] = begin_.x[i] + share * (end_.x[i] - begin_.x[i]);
    for (std::size_t i = 0; i < moment.touch.size(); ++i)
        moment.touch[i] = begin_.touch[i] + share * (end_.touch[i] - begin_.touch[i]);
    takeTouches(moment.touch);
    if (!converge({1, kJunctionLeakSiemens, pace_}, kMostInsideIterations, kInsideCurveSettled)) return false;
    keep(moment, begin_.second + share * length);
    return true;
}

void MovingIsland::fillInside() {
    if (insideKnown_) return;
    insideKnown_ = true;
    for (int k : {0, 1}) {
        const double share = (k + 1) / 3.0;
        if (solveInside(share, inside_[k])) continue;
        Moment& moment = inside_[k];  // a straight line has to do
        for (auto [to, member] :
             {std::pair(&moment.x, &Moment::x), std::pair(&moment.ampere, &Moment::ampere),
              std::pair(&moment.stored, &Moment::stored), std::pair(&moment.storing, &Moment::storing)}) {
            for (std::size_t i = 0; i < to->size(); ++i)
                (*to)[i] = (begin_.*member)[i] + share * ((end_.*member)[i] - (begin_.*member)[i]);
        }
    }
}

std::array<double, 4> MovingIsland::weightsAt(double second) const {
    const double length = end_.second - begin_.second;
    if (!(length > 0) || second >= end_.second) return {0, 0, 0, 1};
    if (second <= begin_.second) return {1, 0, 0, 0};
    const double s = 3 * (second - begin_.second) / length;
    return {-(s - 1) * (s - 2) * (s - 3) / 6, s * (s - 2) * (s - 3) / 2, -s * (s - 1) * (s - 3) / 2,
            s * (s - 1) * (s - 2) / 6};
}

void MovingIsland::read(double second, SolveState& state) {
    const auto weights = weightsAt(second);
    if (weights[1] != 0 || weights[2] != 0) fillInside();
    const auto blend = [&](std::vector<double> Moment::*member, std::size_t i) {
        double sum = 0;
        if (weights[0] != 0) sum += weights[0] * (begin_.*member)[i];
        if (weights[1] != 0) sum += weights[1] * (inside_[0].*member)[i];
        if (weights[2] != 0) sum += weights[2] * (inside_[1].*member)[i];
        if (weights[3] != 0) sum += weights[3] * (end_.*member)[i];
        return sum;
    };
    for (std::size_t i = 0; i < scratchX_.size(); ++i) scratchX_[i] = blend(&Moment::x, i);
    for (const Unknown& u : unknowns_) state.nodeVolt[u.node] = scratchX_[u.place];
    for (const Source& s : sources_) state.pathAmpere[s.path] = scratchX_[s.current];
    for (const Conductor& c : conductors_)
        state.pathAmpere[c.path] = c.siemens * (scratchX_[c.ends.voltFrom] - scratchX_[c.ends.voltTo]);
    std::size_t next = 0, touch = 0;
    const Moment& nearer = second - begin_.second < end_.second - second ? begin_ : end_;
    eachLaw(laws_, [&]<class Law>(const PlacedLaws<Law>& laws) {
        for (const auto& p : laws.all()) {
            for (int way = 0; way < PlacedLaws<Law>::kWays.count; ++way)
                state.pathAmpere[p.pathsAt + way] = blend(&Moment::ampere, next++);
            for (int port = 0; port < Law::kPorts; ++port) state.touchVolt[p.touchAt + port] = nearer.touch[touch++];
        }
    });
    for (std::size_t k = 0; k < storeOf_.size(); ++k) {
        state.stored[storeOf_[k]] = blend(&Moment::stored, k);
        state.storing[storeOf_[k]] = blend(&Moment::storing, k);
    }
}

template <class Visit>
void MovingIsland::eachWatch(const std::vector<double>& x, const std::vector<double>& ampere, Visit visit) const {
    std::size_t watch = 0, next = 0;
    eachLaw(laws_, [&]<class Law>(const PlacedLaws<Law>& laws) {
        if constexpr (HasBits<Law>) {
            for (const auto& p : laws.all()) {
                typename Law::Amperes amperes{};
                for (int path = 0; path < Law::kPaths; ++path) amperes[path] = ampere[next + path];
                const auto volts = PlacedLaws<Law>::across(p, x);
                for (int bit = 0; bit < Law::kBits; ++bit) visit(watch++, p.law.eventAt(bit, volts, amperes, p.bits));
                next += PlacedLaws<Law>::kWays.count;
            }
        } else {
            next += laws.all().size() * PlacedLaws<Law>::kWays.count;
        }
    });
    const auto volt = [&](const VoltPlace& v) { return v.place < 0 ? v.constant : x[v.place]; };
    for (const SupplyWatch& w : supplyWatches_) {
        const int role = w.current >= 0 ? 0 : w.givenAmpere < 0 ? -1 : 1;
        const double current = w.current >= 0 ? x[w.current] : w.givenAmpere;
        visit(watch++, supplyExcess(role, current, volt(w.from) - volt(w.to), w.emfVolt, w.seriesOhm, w.limitAmpere));
    }
}

void MovingIsland::readWatches(const std::vector<double>& x, const std::vector<double>& ampere, bool atEnd) {
    if (watches_.empty()) return;
    eachWatch(x, ampere, [&](std::size_t watch, double value) {
        (atEnd ? watches_[watch].atEnd : watches_[watch].atBegin) = value;
    });
}

double MovingIsland::watchAt(int watch, double share) {
    const auto w = weightsAt(begin_.second + share * (end_.second - begin_.second));
    for (std::size_t i = 0; i < scratchX_.size(); ++i)
        scratchX_[i] = w[0] * begin_.x[i] + w[1] * inside_[0].x[i] + w[2] * inside_[1].x[i] + w[3] * end_.x[i];
    for (std::size_t i = 0; i < scratchAmpere_.size(); ++i)
        scratchAmpere_[i] =
            w[0] * begin_.ampere[i] + w[1] * inside_[0].ampere[i] + w[2] * inside_[1].ampere[i] + w[3] * end_.ampere[i];
    double value = 0;
    eachWatch(scratchX_, scratchAmpere_, [&](std::size_t each, double at) {
        if (static_cast<int>(each) == watch) value = at;
    });
    return value;
}

double MovingIsland::crossing(int watch) {
    fillInside();
    double low = 0, high = 1, atLow = watches_[watch].atBegin, atHigh = watches_[watch].atEnd;
    // Halving, with a secant in between: the interpolation is smooth, but what is watched may have corners.
    for (int round = 0; round < 60 && high - low > 1e-9; ++round) {
        double share = (low + high) / 2;
        if (round % 2 == 1) {
            share = low + (high - low) * (-atLow / (atHigh - atLow));
            share = std::clamp(share, low + 0.01 * (high - low), high - 0.01 * (high - low));
        }
        const double value = watchAt(watch, share);
        (value > 0 ? high : low) = share;
        (value > 0 ? atHigh : atLow) = value;
    }
    return begin_.second + high * (end_.second - begin_.second);
}

}  // namespace tiepoint
