#include "core/time/moving_island.h"

#include "core/base/stopping.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

constexpr int kMostMovingIterations = 4;  ///< of a stage, which is foretold; more isn't worth waiting for
constexpr int kMostStartIterations = 60;  ///< where something jumped
constexpr double kMovingSettled = 1e-6;   ///< there
constexpr double kFirstSecond = 1e-9;     ///< of the first steps
constexpr double kFirstSecondPerFarad = 1e-6;
constexpr double kShorterFirst = 1e-2;  ///< where no start is found, and again
constexpr int kShorterTries = 3;
constexpr double kLeastStepShare =
    1e-15;  ///< the shortest step, of the time that it is: some of what a number can tell
constexpr double kLeastSecond = 1e-16;
constexpr double kShrinkOnFailure = 8, kMostGrowth = 5, kYoungGrowth = 2, kLeastGrowth = 0.2, kSafety = 0.9;
constexpr int kYoungSteps = 3;
constexpr double kSteadySecond = 10, kRestingSecond = 1e6;
constexpr double kFirstLeak = 1e-3;
constexpr double kTangentShare = 0.5;  ///< of the tolerance: half the square of a correction is what it leaves
constexpr int kMostBlindFailures = 3;  ///< of a step, before each stage of it is solved to the last digit
constexpr double kFarthestLine = 3;    ///< steps before, along which a first stage is foretold

double shortestStep(double second) { return kLeastStepShare * std::abs(second) + kLeastSecond; }

}  // namespace

MovingIsland::MovingIsland(const Circuit& circuit, const IslandMembers& members, std::span<const int> localOfNode,
                           const Tolerance& tolerance)
    : Island(circuit, members, localOfNode),
      tableau_(esdirk43()),
      tolerance_(tolerance) {
    placeStores(circuit);
    placeWatches(circuit, members);
}

void MovingIsland::placeStores(const Circuit&) {
    eachLaw(laws_, [&]<class Law>(PlacedLaws<Law>& laws) {
        for (auto& p : laws.all()) {
            const int first = static_cast<int>(storeOf_.size());
            for (int k = 0; k < Law::kCharges + Law::kFluxes; ++k) storeOf_.push_back(p.storesAt + k);
            p.storesAt = first;
            ampereCount_ += PlacedLaws<Law>::kWays.count;
            touchCount_ += Law::kPorts;
            tolerance_.mostSecond = std::min(tolerance_.mostSecond, p.law.longestSecond());
            for (int port = 0; port < Law::kPorts; ++port) isLinear_ = isLinear_ && p.law.perUnitVolt(port) == 0;
            if constexpr (Law::kCharges > 0) {
                for (const auto& row : p.law.chargesAt({}).farad)
                    for (const double farad : row) largestFarad_ = std::max(largestFarad_, farad);
            }
        }
    });
    still_.assign(storeOf_.size(), 0.0);
    more_ = still_;
    for (auto& each : storing_) each = still_;
    for (Moment* moment : {&begin_, &end_, &inside_[0], &inside_[1]}) {
        moment->x.resize(x_.size());
        moment->ampere.resize(ampereCount_);
        moment->touch.resize(touchCount_);
        moment->stored = moment->storing = still_;
    }
    for (auto& touch : stageTouch_) touch.resize(static_cast<std::size_t>(touchCount_));
    scratchX_.resize(x_.size());
    scratchAmpere_.resize(ampereCount_);
}

void MovingIsland::placeWatches(const Circuit& circuit, const IslandMembers& members) {
    eachLaw(laws_, [&]<class Law>(const PlacedLaws<Law>& laws) {
        if constexpr (HasBits<Law>) {
            for (const auto& p : laws.all())
                for (int bit = 0; bit < Law::kBits; ++bit)
                    watches_.push_back({p.bitsAt, bit, -1, p.law.delaySecond(bit), 0, 0});
        }
    });
    const auto place = [&](int node) {
        VoltPlace found{-1, node, 0};
        for (const Unknown& u : unknowns_)
            if (u.node == node) found.place = u.place;
        return found;
    };
    const auto watch = [&](int supply, int current) {
        const SupplyBranch& s = circuit.supplies[supply];
        if (!std::isfinite(s.limitAmpere)) return;
        supplyWatches_.push_back(
            {supply, place(s.from), place(s.to), current, s.emfVolt, s.seriesOhm, s.limitAmpere, 0});
        watches_.push_back({-1, -1, supply, 0, 0, 0});
    };
    for (const int supply : members.supplies) {
        const int path = circuit.firstPath[circuit.supplies[supply].element];
        for (const Source& source : sources_)
            if (source.path == path) watch(supply, source.current);
    }
    for (int supply = 0; supply < static_cast<int>(circuit.supplies.size()); ++supply) {
        const int path = circuit.firstPath[circuit.supplies[supply].element];
        const auto injects = [&](const IslandMembers::Injection& i) { return i.path == path; };
        if (std::ranges::any_of(members.injections, injects)) watch(supply, -1);
    }
}

bool MovingIsland::converge(const Drive& drive, int mostIterations, double curveSettled, bool watched) {
    for (int iteration = 0; iteration < mostIterations; ++iteration) {
        load(drive);
        if (!findStep(watched)) return false;
        const StepMeasure m = correct();
        if (!std::isfinite(m.voltStep) || !std::isfinite(m.ampereStep) || !std::isfinite(m.curveStep)) return false;
        if (m.curveStep <= curveSettled) return true;
    }
    return false;
}

void MovingIsland::takeTouches(const std::vector<double>& touch) {
    std::size_t next = 0;
    eachLaw(laws_, [&](auto& laws) {
        for (auto& p : laws.all())
            for (double& volt : p.touch) volt = touch[next++];
    });
}

void MovingIsland::keepTouches(std::vector<double>& touch) const {
    std::size_t next = 0;
    eachLaw(laws_, [&](const auto& laws) {
        for (const auto& p : laws.all())
            for (const double volt : p.touch) touch[next++] = volt;
    });
}

void MovingIsland::keep(Moment& moment, double second) {
    moment.second = second;
    moment.x = x_;
    std::size_t nextTouch = 0, nextAmpere = 0;
    eachLaw(laws_, [&]<class Law>(const PlacedLaws<Law>& laws) {
        for (const auto& p : laws.all()) {
            for (const double volt : p.touch) moment.touch[nextTouch++] = volt;
            const auto amperes = PlacedLaws<Law>::amperesAt(p, x_, pace_);
            for (int way = 0; way < PlacedLaws<Law>::kWays.count; ++way) moment.ampere[nextAmpere++] = amperes[way];
        }
        laws.readStores(x_, pace_, moment.stored.data(), moment.storing.data());
    });
}

void MovingIsland::resume(const Moment& moment) {
    x_ = moment.x;
    takeTouches(moment.touch);
}

bool MovingIsland::begin(const SolveState& state, double second) {
    for (SupplyWatch& w : supplyWatches_) {
        for (VoltPlace* place : {&w.from, &w.to})
            if (place->place < 0) place->constant = state.nodeVolt[place->node];
        if (w.current < 0) w.givenAmpere = state.limiting[w.supply] * w.limitAmpere;
    }
    for (std::size_t k = 0; k < storeOf_.size(); ++k) begin_.stored[k] = state.stored[storeOf_[k]];
    double first = std::max(kFirstSecond, kFirstSecondPerFarad * largestFarad_);
    bool found = startFrom(state, first);
    for (int tries = 0; !found && tries < kShorterTries; ++tries) found = startFrom(state, first *= kShorterFirst);
    if (!found) return false;
    keep(begin_, second + 2 * first);
    end_ = begin_;
    insideKnown_ = false;
    nextSecond_ = std::max(2 * first, 8 * shortestStep(begin_.second));
    young_ = 0;
    stood_ = false;
    readWatches(end_.x, end_.ampere, false);
    readWatches(end_.x, end_.ampere, true);
    return true;
}

/// From where the state left the laws; then from where they begin; then down from large leaks.
bool MovingIsland::startFrom(const SolveState& state, double firstSecond) {
    gather(state);
    still_ = begin_.stored;
    pace_ = {1 / firstSecond, still_.data()};
    const auto again = [&] {
        gather(state);
        for (const Unknown& u : unknowns_) x_[u.place] = 0;
        eachLaw(laws_, [&](auto& laws) {
            for (auto& p : laws.all()) p.touch = p.law.startVolts();
        });
    };
    const auto solve = [&](double leakSiemens) {
        return converge({1, leakSiemens, pace_}, kMostStartIterations, kMovingSettled);
    };
    if (!solve(kJunctionLeakSiemens)) {
        again();
        if (!solve(kJunctionLeakSiemens)) {
            again();
            for (double leak = kFirstLeak; leak > 2 * kJunctionLeakSiemens; leak /= 10)
                if (!solve(leak)) break;
            if (!solve(kJunctionLeakSiemens)) {
                troubleNode_ = worstNode({1, kJunctionLeakSiemens, pace_});
                return false;
            }
        }
    }
    eachLaw(laws_, [&](const auto& laws) { laws.readStores(x_, pace_, more_.data(), storing_[0].data()); });
    still_ = more_;
    if (solve(kJunctionLeakSiemens)) return true;
    troubleNode_ = worstNode({1, kJunctionLeakSiemens, pace_});
    return false;
}

/// One step of that length from begin_, into x_.
bool MovingIsland::attempt(double length, bool watched) {
    const int stages = tableau_.stages;
    const double perSecond = 1 / (length * tableau_.diagonal);
    // A step is judged to the tolerance; what is left of a tangent goes by the square of the last correction.
    const double settled = std::sqrt(kTangentShare * tolerance_.relative);
    pace_ = {perSecond, still_.data()};
    storing_[0] = begin_.storing;
    resume(begin_);
    stageTouch_[0] = begin_.touch;
    for (int stage = 1; stage < stages; ++stage) {
        foretell(stage, length);
        for (std::size_t k = 0; k < still_.size(); ++k) {
            double change = 0;
            for (int before = 0; before < stage; ++before) change += tableau_.a[stage][before] * storing_[before][k];
            still_[k] = begin_.stored[k] + length * change;
        }
        const bool last = stage == stages - 1;
        if (!converge({1, kJunctionLeakSiemens, pace_}, kMostMovingIterations, settled, watched || last)) return false;
        eachLaw(laws_, [&](const auto& laws) { laws.readStores(x_, pace_, more_.data(), storing_[stage].data()); });
        if (!last && !isLinear_) keepTouches(stageTouch_[stage]);
    }
    return true;
}

/// Where the laws will be touched in a stage: the first along the line to the other end that is known, the step before or what this one was until
/// it was cut; the second along the line through the first; later ones along the parabola through the two before and the beginning.
void MovingIsland::foretell(int stage, double length) {
    if (isLinear_) return;
    const auto& c = tableau_.places;
    const double at = c[stage];
    double one = 0, two = 0;  // weights of the stage before, and of the one before that
    const std::vector<double>*first = &stageTouch_[stage - 1], *second = first;
    if (stage == 1) {
        const double known = end_.second - begin_.second;
        if (young_ == 0 || known == 0) return;
        one = std::clamp(at * length / known, -kFarthestLine, kFarthestLine);
        first = second = &end_.touch;
    } else if (stage == 2) {
        one = at / c[1];
    } else {
        const double near = c[stage - 1], far = c[stage - 2];
        second = &stageTouch_[stage - 2];
        one = at * (at - far) / (near * (near - far));
        two = at * (at - near) / (far * (far - near));
    }
    std::size_t next = 0;
    eachLaw(laws_, [&]<class Law>(PlacedLaws<Law>& laws) {
        for (auto& p : laws.all()) {
            for (int port = 0; port < Law::kPorts; ++port, ++next) {
                const double begun = begin_.touch[next];
                const double there = begun + one * ((*first)[next] - begun) + two * ((*second)[next] - begun);
                p.touch[port] = p.law.limited(port, p.touch[port], there);
            }
        }
    });
}

/// The error of the step in x_, as a share of what is allowed.
double MovingIsland::errorShare(double perSecond) {
    const double length = 1 / (perSecond * tableau_.diagonal);
    for (std::size_t k = 0; k < more_.size(); ++k) {
        double apart = 0;
        for (int stage = 0; stage < tableau_.stages; ++stage)
            apart += (tableau_.b[stage] - tableau_.embedded[stage]) * storing_[stage][k];
        more_[k] = length * apart;
    }
    std::fill(right_.begin(), right_.end(), 0.0);
    eachLaw(laws_, [&](const auto& laws) { laws.loadMore(more_.data(), perSecond, right_); });
    if (!solveAgain()) return std::numeric_limits<double>::infinity();
    double worst = 0;
    stood_ = true;
    const auto meet = [&](int place, double least) {
        const double size = std::max(std::abs(x_[place]), std::abs(begin_.x[place]));
        const double allowed = tolerance_.relative * size + least;
        worst = std::max(worst, std::abs(right_[place]) / allowed);
        stood_ = stood_ && std::abs(x_[place] - begin_.x[place]) <= 10 * allowed;
    };
    for (const Unknown& u : unknowns_) meet(u.place, tolerance_.volt);
    eachLaw(laws_, [&]<class Law>(const PlacedLaws<Law>& laws) {
        if constexpr (Law::kFluxes > 0) {
            for (const auto& p : laws.all())
                for (const auto& winding : p.windings) meet(winding.current, tolerance_.ampere);
        }
    });
    return std::isfinite(worst) ? worst : std::numeric_limits<double>::infinity();
}

bool MovingIsland::step(double notPast) {
    stopIfAsked();
    std::swap(begin_, end_);
    insideKnown_ = false;
    for (Watch& w : watches_) w.atBegin = w.atEnd;
    const double left = notPast - begin_.second;
    if (storeOf_.empty()) {  // time changes nothing here
        end_ = begin_;
        end_.second = std::min(notPast, begin_.second + kRestingSecond);
        return true;
    }
    double length = std::min(nextSecond_, tolerance_.mostSecond);
    const bool cut = length >= left;
    if (cut)
        length = left;
    else if (2 * length > left)
        length = left / 2;
    bool wasTooLong = false;  // what has just been too long isn't made longer at once
    for (int failures = 0;;) {
        if (!(length > shortestStep(begin_.second))) {
            std::swap(begin_, end_);
            return false;
        }
        if (!attempt(length, failures > kMostBlindFailures)) {
            ++failures;
            troubleNode_ = worstNode({1, kJunctionLeakSiemens, pace_});
            ++rejectedCount_;
            length /= kShrinkOnFailure;
            young_ = 0;
            continue;
        }
        const double share = errorShare(pace_.perSecond);
        const double growth = kSafety * std::pow(std::max(share, 1e-10), -1.0 / (tableau_.embeddedOrder + 1));
        if (share > 1) {
            wasTooLong = true;
            ++rejectedCount_;
            length *= std::max(growth, kLeastGrowth);
            continue;
        }
        const double most = wasTooLong ? 1 : young_ < kYoungSteps ? kYoungGrowth : kMostGrowth;
        const double next = length * std::clamp(growth, kLeastGrowth, most);
        const bool whole = cut && length == left;
        nextSecond_ = whole ? std::max(nextSecond_, next) : next;
        ++young_;
        ++stepCount_;
        keep(end_, whole ? notPast : begin_.second + length);
        readWatches(end_.x, end_.ampere, true);
        return true;
    }
}

void MovingIsland::stopAt(double second) {
    if (second >= end_.second) return;
    if (second <= begin_.second) {
        end_ = begin_;
    } else if (attempt(second - begin_.second)) {
        keep(end_, second);
    } else {  // it can't be that a shorter step fails where a longer one didn't; what was read there then has to do
        fillInside();
        const auto weights = weightsAt(second);
        Moment cut = end_;
        cut.second = second;
        for (auto [to, member] : {std::pair(&cut.x, &Moment::x), std::pair(&cut.ampere, &Moment::ampere),
                                  std::pair(&cut.stored, &Moment::stored), std::pair(&cut.storing, &Moment::storing)}) {
            for (std::size_t i = 0; i < to->size(); ++i)
                (*to)[i] = weights[0] * (begin_.*member)[i] + weights[1] * (inside_[0].*member)[i] +
                           weights[2] * (inside_[1].*member)[i] + weights[3] * (end_.*member)[i];
        }
        end_ = cut;
    }
    insideKnown_ = false;
    readWatches(end_.x, end_.ampere, true);
}

bool MovingIsland::isSteady() const {
    return unknowns_.empty() || storeOf_.empty() || (stood_ && end_.second - begin_.second >= kSteadySecond);
}

}  // namespace tiepoint
