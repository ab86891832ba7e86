#include "core/time/circuit_run.h"

#include "core/base/stopping.h"
#include "core/solve/supply_role.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

namespace {

constexpr int kBitsOfBranch = 32;
constexpr int kWorkOfStep = 4;  ///< what any step costs, in numbers moved
constexpr double kNever = std::numeric_limits<double>::infinity();

}  // namespace

bool movesByItself(const Circuit& circuit) {
    bool moves = false;
    eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        moves = moves || (kMovesByItself<Law> && !branches.empty());
    });
    return moves;
}

CircuitRun::CircuitRun(Circuit circuit, const Tolerance& tolerance)
    : circuit_(std::move(circuit)),
      tolerance_(tolerance),
      lastFlip_(static_cast<std::size_t>(circuit_.bitsCount) * kBitsOfBranch, -kNever),
      rises_(static_cast<std::size_t>(circuit_.bitsCount), {-kNever, -kNever}) {
    state_.reset(circuit_);
}

bool CircuitRun::start(std::span<const char> present, int reference) {
    if (started_ && !stopped_) readAll(second_);
    present_.assign(present.begin(), present.end());
    reference_ = reference;
    started_ = true;
    stopped_ = capped_ = false;
    solution_.trouble = Trouble::None;
    solution_.troubleElements.clear();
    for (std::size_t k = 0; k < circuit_.supplies.size(); ++k)
        if (!present_[circuit_.supplies[k].element]) state_.limiting[k] = 0;
    if (const std::vector<int> loop = idealLoop(circuit_, present_); !loop.empty()) {
        fail(Trouble::IdealLoop, -1);
        solution_.troubleElements.clear();
        for (int k : loop) solution_.troubleElements.push_back(circuit_.supplies[k].element);
        return false;
    }
    return plan();
}

/// Islands anew, with roles that fit all supplies.
bool CircuitRun::plan() {
    const int patience = 2 * static_cast<int>(circuit_.supplies.size()) + 2;
    const std::vector<double> stored = state_.stored;
    for (int round = 0; round < 8 * patience; ++round) {
        if (!buildIslands()) return false;
        const int supply = offendingSupply();
        if (supply < 0) {
            for (int i = 0; i < static_cast<int>(islands_.size()); ++i) noteEvents(i, true);
            return true;
        }
        signed char& role = state_.limiting[supply];
        const double ampere = state_.pathAmpere[circuit_.firstPath[circuit_.supplies[supply].element]];
        role = static_cast<signed char>(role != 0 ? 0 : ampere < 0 ? -1 : 1);
        state_.stored = stored;
    }
    return fail(Trouble::LimitsContend, -1);
}

bool CircuitRun::buildIslands() {
    stepsBefore_ = stepCount();
    workBefore_ = workDone();
    islands_.clear();
    pending_.clear();
    known_ = false;
    outline_ = outlinePlan(circuit_, present_, state_.limiting, reference_, true);
    for (const int path : outline_.idle) state_.pathAmpere[path] = 0;
    spreadKnownVolts(circuit_, outline_.known, 1, state_);
    for (std::size_t k = 0; k < circuit_.supplies.size(); ++k) {
        const SupplyBranch& s = circuit_.supplies[k];
        if (state_.limiting[k]) state_.pathAmpere[circuit_.firstPath[s.element]] = state_.limiting[k] * s.limitAmpere;
    }
    for (const IslandMembers& members : outline_.members) {
        islands_.emplace_back(circuit_, members, outline_.localOfNode, tolerance_);
        if (!islands_.back().begin(state_, second_)) return fail(Trouble::NotConverged, islands_.back().troubleNode());
    }
    return true;
}

/// Right after islands began; the first by index, which ends where all laws rise (Murty's rule). -1: all are content.
int CircuitRun::offendingSupply() {
    for (const MovingIsland& island : islands_) {
        for (const MovingIsland::Watch& w : island.watches())
            if (w.supply >= 0 && w.atEnd > 0) {
                // The sign of its current must be that of this moment.
                readAll(islands_.front().endSecond());
                return w.supply;
            }
    }
    return -1;
}

void CircuitRun::readAll(double second) {
    for (MovingIsland& island : islands_) island.read(second, state_);
    findKnownCurrents(circuit_, present_, outline_.known, state_, sums_);
}

void CircuitRun::schedule(int island, int watch, double second) {
    const MovingIsland::Watch& w = islands_[island].watches()[watch];
    const auto same = [&](const Pending& p) { return p.island == island && p.watch == watch; };
    if (std::ranges::any_of(pending_, same)) return;
    double due = second + w.delaySecond;
    if (w.supply < 0) {
        const double earliest = lastFlip_[w.bitsAt * kBitsOfBranch + w.bit] + kLeastFlipSecond;
        if (due < earliest) {
            due = earliest;
            capped_ = true;
        }
    }
    pending_.push_back({island, watch, due, due == second});
}

/// What stands at the end of an island's last step and didn't before.
void CircuitRun::noteEvents(int island, bool justBegun) {
    MovingIsland& moving = islands_[island];
    for (int watch = 0; watch < static_cast<int>(moving.watches().size()); ++watch) {
        const MovingIsland::Watch& w = moving.watches()[watch];
        if (!(w.atEnd > 0)) continue;
        if (justBegun || w.atBegin > 0)
            schedule(island, watch, justBegun ? moving.endSecond() : moving.beginSecond());
        else
            schedule(island, watch, moving.crossing(watch));
    }
    double first = kNever;
    for (const Pending& p : pending_)
        if (p.island == island) first = std::min(first, p.dueSecond);
    if (first >= moving.endSecond()) return;
    // What would come after it in this step may never happen.
    moving.stopAt(first);
    std::erase_if(pending_, [&](const Pending& p) { return p.island == island && p.dueSecond > first && p.certain; });
}

double CircuitRun::nextDue() const {
    double next = kNever;
    for (const Pending& p : pending_) next = std::min(next, p.dueSecond);
    return next;
}

bool CircuitRun::advanceTo(double second) {
    known_ = false;
    while (!stopped_ && started_) {
        stopIfAsked();
        const double due = nextDue();
        const double goal = std::min(second, due);
        int slowest = -1;
        for (int i = 0; i < static_cast<int>(islands_.size()); ++i)
            if (slowest < 0 || islands_[i].endSecond() < islands_[slowest].endSecond()) slowest = i;
        if (slowest >= 0 && islands_[slowest].endSecond() < goal) {
            double notPast = kNever;
            for (const Pending& p : pending_)
                if (p.island == slowest) notPast = std::min(notPast, p.dueSecond);
            if (!islands_[slowest].step(notPast)) {
                second_ = std::max(second_, islands_[slowest].endSecond());
                return fail(Trouble::NotConverged, islands_[slowest].troubleNode());
            }
            noteEvents(slowest, false);
        } else if (due <= second) {
            second_ = std::max(second_, due);
            if (!handleDue()) return false;
        } else {
            break;
        }
    }
    if (!stopped_) second_ = std::max(second_, second);
    return !stopped_;
}

bool CircuitRun::handleDue() {
    const double due = nextDue();
    const auto first = std::ranges::find_if(pending_, [&](const Pending& p) { return p.dueSecond == due; });
    const Pending now = *first;
    pending_.erase(first);
    MovingIsland& island = islands_[now.island];
    island.stopAt(due);
    const MovingIsland::Watch& w = island.watches()[now.watch];
    if (!now.certain && !(w.atEnd > 0)) return true;
    return w.supply >= 0 ? changeRole(now) : flip(now);
}

bool CircuitRun::flip(const Pending& due) {
    MovingIsland& island = islands_[due.island];
    const MovingIsland::Watch w = island.watches()[due.watch];
    island.read(second_, state_);
    state_.bits[w.bitsAt] ^= 1U << w.bit;
    lastFlip_[w.bitsAt * kBitsOfBranch + w.bit] = second_;
    if (w.bit == 0 && (state_.bits[w.bitsAt] & 1U) != 0) rises_[w.bitsAt] = {second_, rises_[w.bitsAt][0]};
    ++flipCount_;
    if (!island.begin(state_, second_)) return fail(Trouble::NotConverged, island.troubleNode());
    // A supply that can't bear what comes now changes its role at this instant.
    for (const MovingIsland::Watch& each : island.watches())
        if (each.supply >= 0 && each.atEnd > 0) {
            readAll(second_);
            return plan();
        }
    noteEvents(due.island, true);
    return true;
}

bool CircuitRun::changeRole(const Pending& due) {
    const int supply = islands_[due.island].watches()[due.watch].supply;
    for (MovingIsland& island : islands_) island.stopAt(second_);
    readAll(second_);
    signed char& role = state_.limiting[supply];
    const double ampere = state_.pathAmpere[circuit_.firstPath[circuit_.supplies[supply].element]];
    role = static_cast<signed char>(role != 0 ? 0 : ampere < 0 ? -1 : 1);
    ++flipCount_;
    return plan();
}

bool CircuitRun::fail(Trouble trouble, int node) {
    stopped_ = true;
    solution_.trouble = trouble;
    solution_.troubleElements.clear();
    for (int element = 0; element < circuit_.elementCount(); ++element) {
        const auto nodes = circuit_.nodesOf(element);
        if (present_[element] && std::ranges::find(nodes, node) != nodes.end())
            solution_.troubleElements.push_back(element);
    }
    for (const SupplyBranch& s : circuit_.supplies)
        if (solution_.troubleElements.empty() && present_[s.element]) solution_.troubleElements.push_back(s.element);
    return false;
}

double CircuitRun::smoothUntil() const {
    double until = nextDue();
    for (const MovingIsland& island : islands_) until = std::min(until, island.endSecond());
    return std::max(until, second_);
}

const CircuitSolution& CircuitRun::solution() {
    if (stopped_ || known_) return solution_;
    readAll(second_);
    publishSolution(circuit_, present_, outline_.floating, state_, sums_, solution_);
    tellRises();
    known_ = true;
    return solution_;
}

/// How often first bits rise, of what goes on rising: not much longer ago than from one rise to the next.
void CircuitRun::tellRises() {
    constexpr double kPatience = 1.5;
    eachLaw(circuit_.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        if constexpr (CountsRises<Law>) {
            for (const LawBranch<Law>& b : branches) {
                const auto [last, before] = rises_[b.bits];
                const double period = last - before;
                const bool goesOn = std::isfinite(period) && period > 0 && second_ - last < kPatience * period;
                solution_.elementTold[b.element] = goesOn ? 1 / period : 0;
            }
        }
    });
}

bool CircuitRun::isSteady() const {
    return pending_.empty() && std::ranges::all_of(islands_, [](const MovingIsland& i) { return i.isSteady(); });
}

bool CircuitRun::makeStep() {
    if (smoothUntil() > second_) return true;
    return advanceTo(std::nextafter(second_, kNever));
}

long long CircuitRun::workDone() const {
    long long done = workBefore_;
    for (const MovingIsland& island : islands_)
        done += static_cast<long long>(island.stepCount() + island.rejectedCount()) * (island.size() + kWorkOfStep);
    return done;
}

long long CircuitRun::stepCount() const {
    long long count = stepsBefore_;
    for (const MovingIsland& island : islands_) count += island.stepCount();
    return count;
}

}  // namespace tiepoint
