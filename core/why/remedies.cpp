#include "core/why/remedies.h"

#include "core/base/stopping.h"
#include "core/words/words.h"

#include <algorithm>
#include <utility>

namespace tiepoint {
namespace {

constexpr std::size_t kMostHits = 3;
/// More faults than this at once and it is better to build anew.
constexpr int kMostMends = 4;

class PositionSearch {
public:
    PositionSearch(PositionSolver& solver, const Digits& now, const Wish& wish, int mostSolves)
        : solver_(solver),
          digits_(now),
          wish_(wish),
          mostSolves_(mostSolves) {}

    Nearest run() {
        const Digits now = digits_;
        Nearest nearest;
        for (std::size_t changes = 1; changes <= now.size() && hits_.empty() && nearest.complete; ++changes) {
            change(0, changes);
            nearest.complete = solves_ < mostSolves_;
            if (nearest.complete) nearest.throwsTried = changes;
        }
        if (hits_.empty() && !nearest.complete) comeBackFromAll(now);
        nearest.found = std::move(hits_);
        return nearest;
    }

private:
    void change(std::size_t from, std::size_t left) {
        if (hits_.size() >= kMostHits || solves_ >= mostSolves_) return;
        if (left == 0) {
            ++solves_;
            auto snapshot = solver_.solve(digits_);
            if (wish_(*snapshot)) hits_.push_back({digits_, std::move(snapshot)});
            return;
        }
        for (std::size_t t = from; t + left <= digits_.size(); ++t) {
            const int before = digits_[t];
            for (int digit = 0; digit < solver_.throws()[t].values; ++digit) {
                if (digit == before) continue;
                digits_[t] = digit;
                change(t + 1, left - 1);
            }
            digits_[t] = before;
        }
    }

    /// With more positions than can be tried: everything thrown at once, then back throw by throw, as long as it stays as wished.
    void comeBackFromAll(const Digits& now) {
        for (std::size_t t = 0; t < now.size(); ++t) digits_[t] = now[t] == 0 ? solver_.throws()[t].values - 1 : 0;
        auto snapshot = solver_.solve(digits_);
        if (!wish_(*snapshot)) return;
        for (std::size_t t = 0; t < now.size(); ++t) {
            stopIfAsked();
            const int thrown = std::exchange(digits_[t], now[t]);
            auto back = solver_.solve(digits_);
            if (wish_(*back))
                snapshot = std::move(back);
            else
                digits_[t] = thrown;
        }
        hits_.push_back({digits_, std::move(snapshot)});
    }

    PositionSolver& solver_;
    Digits digits_;
    const Wish& wish_;
    int mostSolves_;
    std::vector<Reached> hits_;
    int solves_ = 0;
};

/// The bench as it stands or with the fewest throws, if either is as wished.
std::optional<Reached> reachedOn(const std::shared_ptr<const Bench>& bench, const Inputs& inputs, const Wish& wish) {
    PositionSolver solver(buildLayout(bench));
    const Digits now = digitsOf(solver.throws(), *bench, inputs);
    auto snapshot = solver.solve(now);
    if (wish(*snapshot)) return Reached{now, std::move(snapshot)};
    auto nearest = nearestPositions(solver, now, wish);
    if (nearest.found.empty()) return std::nullopt;
    return std::move(nearest.found.front());
}

class MendSearch {
public:
    MendSearch(const Snapshot& snapshot, const Wish& wish, const ResistorDrawer& drawer)
        : start_(snapshot.layout->bench),
          inputs_(*snapshot.inputs),
          wish_(wish),
          drawer_(drawer) {}

    std::optional<Mended> run() {
        std::shared_ptr<const Bench> bench = start_;
        for (int round = 0; round < kMostMends; ++round) {
            Report report = inspect(*evaluate(bench, inputs_), drawer_);
            std::shared_ptr<const Bench> next;
            std::optional<Finding> taken;
            for (Finding& finding : report.findings) {
                if (!finding.mend) switchOn(*bench, finding);
                const auto after = mended(*bench, finding);
                if (!after) continue;
                if (auto reached = reachedOn(after, inputs_, wish_)) {
                    steps_.push_back(finding);
                    return leaveOut(Mended{{}, {}, after, std::move(*reached)});
                }
                if (next) continue;
                next = after;
                taken = finding;
            }
            if (!next) return std::nullopt;
            steps_.push_back(*taken);
            bench = next;
        }
        return std::nullopt;
    }

private:
    /// A supply that is off is switched on even where that only shows the next fault.
    static void switchOn(const Bench& bench, Finding& finding) {
        const Part* supply = finding.parts.empty() ? nullptr : bench.findPart(finding.parts.front());
        if (supply == nullptr || !supply->kind->isSupply) return;
        const int on = supply->kind->stateIndex("on");
        if (on < 0 || supply->stateValue(on) != 0) return;
        finding.mend = Mend{say("mend.switchOn", {{"supply", supply->id}}), setStateEdit(bench, supply->id, "on", 1)};
    }

    static std::shared_ptr<const Bench> mended(const Bench& bench, const Finding& finding) {
        if (!finding.mend) return nullptr;
        auto applied = apply(bench, finding.mend->edit);
        return applied ? std::make_shared<const Bench>(std::move(applied).value().bench) : nullptr;
    }

    std::shared_ptr<const Bench> benchAfter(const std::vector<Finding>& steps) const {
        std::shared_ptr<const Bench> bench = start_;
        for (const Finding& step : steps) {
            if (bench) bench = mended(*bench, step);
        }
        return bench;
    }

    /// Steps taken on the way that the wish doesn't need.
    Mended leaveOut(Mended all) {
        for (std::size_t step = steps_.size() - 1; step-- > 0;) {
            std::vector<Finding> fewer = steps_;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(step));
            const auto bench = benchAfter(fewer);
            auto reached = bench ? reachedOn(bench, inputs_, wish_) : std::nullopt;
            if (!reached) continue;
            steps_ = std::move(fewer);
            all.bench = bench;
            all.reached = std::move(*reached);
        }
        for (const Finding& step : steps_) {
            all.edit.name = all.edit.operations.empty() ? step.mend->edit.name : say("history.mend");
            std::ranges::copy(step.mend->edit.operations, std::back_inserter(all.edit.operations));
        }
        all.steps = std::move(steps_);
        return all;
    }

    std::shared_ptr<const Bench> start_;
    Inputs inputs_;
    const Wish& wish_;
    const ResistorDrawer& drawer_;
    std::vector<Finding> steps_;
};

}  // namespace

Nearest nearestPositions(PositionSolver& solver, const Digits& now, const Wish& wish, int mostSolves) {
    return PositionSearch(solver, now, wish, mostSolves).run();
}

std::optional<Mended> mendUntil(const Snapshot& snapshot, const Wish& wish, const ResistorDrawer& drawer) {
    return MendSearch(snapshot, wish, drawer).run();
}

}  // namespace tiepoint
