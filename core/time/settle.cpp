#include "core/time/settle.h"

#include "core/base/stopping.h"
#include "core/time/cycle_watch.h"
#include "core/time/extremes.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace tiepoint {
namespace {

constexpr long long kFirstRoundSteps = 60, kWorkOfPiece = 4;
constexpr double kStillShare = 1e-5, kAlmostStillShare = 1e-2;  ///< of what was ever stored
constexpr double kLittleVolt = 1e-3, kLittleAmpere = 1e-5;  ///< across a charge, through a winding: too little to count
constexpr double kPeriodsApartShare = 1e-3;
constexpr int kPeriodsOfSeveral = 10;  ///< of the longest, where islands repeat each in its own time
constexpr double kLastShare = 0.25;    ///< of the work: what lasts where nothing repeats
constexpr double kWarmSecond = 1;      ///< in which a small part warms (common practice)
constexpr double kEyeSecond = 0.02;    ///< over which an eye takes a mean, about (common practice)
constexpr double kBeforeShare = 1e-6;  ///< of a step: just before what happens at its end

/// What of each store is too little to count.
std::vector<double> littleOf(const Circuit& circuit) {
    std::vector<double> little(circuit.storeCount, 0.0);
    eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        for (const LawBranch<Law>& b : branches) {
            if constexpr (Law::kCharges > 0) {
                const auto charges = b.law.chargesAt({});
                for (int k = 0; k < Law::kCharges; ++k)
                    for (const double farad : charges.farad[k]) little[b.store + k] += std::abs(farad) * kLittleVolt;
            }
            if constexpr (Law::kFluxes > 0) {
                const auto fluxes = b.law.fluxesAt({});
                for (int k = 0; k < Law::kFluxes; ++k)
                    for (const double henry : fluxes.henry[k])
                        little[b.store + Law::kCharges + k] += std::abs(henry) * kLittleAmpere;
            }
        }
    });
    return little;
}

/// Envelopes and warmth, out of solutions and how long they held.
class SettlingFigures {
public:
    SettlingFigures(const Layout& layout, Settled& settled) : layout_(layout), settled_(settled) {
        settled.leadAmpere.resize(layout.leadCount());
        settled.netVolt.resize(layout.netCount);
        settled.warmWatt.assign(layout.bench->parts.size(), 0);
        settled.seenAmpere = settled.seenSecond = settled.warmWatt;
        warmth_ = watt_ = seen_ = settled.warmWatt;
    }

    /// `second`: from the beginning. `seconds`: how long it held.
    void add(const Solution& solution, double second, double seconds, bool lasting) {
        if (solution.status == Status::None) return;
        for (std::size_t lead = 0; lead < settled_.leadAmpere.size(); ++lead)
            meet(settled_.leadAmpere[lead], solution.leadInjection[lead], second, seconds, lasting);
        for (std::size_t net = 0; net < settled_.netVolt.size(); ++net)
            meet(settled_.netVolt[net], solution.netVoltage[net], second, seconds, lasting);
        warm(solution, seconds);
        see(solution, second, seconds);
        if (lasting) {
            if (sums_.netVoltage.empty()) clearSums(solution);
            addTo(sums_.netVoltage, solution.netVoltage, seconds);
            addTo(sums_.leadInjection, solution.leadInjection, seconds);
            addTo(sums_.elementAmpere, solution.elementAmpere, seconds);
            addTo(sums_.elementWatt, solution.elementWatt, seconds);
            lastingSeconds_ += seconds;
        }
        begun_ = true;
        lastingBegun_ = lastingBegun_ || lasting;
    }

    /// The mean of what lasts, in the form of its last instant.
    Solution mean(Solution form) {
        for (auto* envelopes : {&settled_.leadAmpere, &settled_.netVolt})
            for (Envelope& each : *envelopes) {
                each.mean /= lastingSeconds_;
                each.rootMeanSquare = std::sqrt(each.rootMeanSquare / lastingSeconds_);
            }
        if (form.status != Status::Solved || !(lastingSeconds_ > 0)) return form;
        divide(sums_.netVoltage, form.netVoltage);
        divide(sums_.leadInjection, form.leadInjection);
        divide(sums_.elementAmpere, form.elementAmpere);
        divide(sums_.elementWatt, form.elementWatt);
        return form;
    }

private:
    void meet(Envelope& figure, double value, double second, double seconds, bool lasting) const {
        if (!begun_ || value < figure.least) {
            figure.least = value;
            figure.leastSecond = second;
        }
        if (!begun_ || value > figure.greatest) {
            figure.greatest = value;
            figure.greatestSecond = second;
        }
        if (!lasting) return;
        if (!lastingBegun_) figure.lastingLeast = figure.lastingGreatest = value;
        figure.lastingLeast = std::min(figure.lastingLeast, value);
        figure.lastingGreatest = std::max(figure.lastingGreatest, value);
        figure.mean += value * seconds;
        figure.rootMeanSquare += value * value * seconds;
    }

    void warm(const Solution& solution, double seconds) {
        wattBefore_ = watt_;
        std::fill(watt_.begin(), watt_.end(), 0.0);
        for (int e = 0; e < solution.elementCount(); ++e) watt_[(*solution.places)[e].part] += solution.elementWatt[e];
        const double share = -std::expm1(-seconds / kWarmSecond);
        for (std::size_t part = 0; part < watt_.size(); ++part) {
            warmth_[part] += share * ((wattBefore_[part] + watt_[part]) / 2 - warmth_[part]);
            settled_.warmWatt[part] = std::max(settled_.warmWatt[part], warmth_[part]);
        }
    }

    void see(const Solution& solution, double second, double seconds) {
        const double share = -std::expm1(-seconds / kEyeSecond);
        for (std::size_t part = 0; part < seen_.size(); ++part) {
            if (!layout_.bench->parts[part].kind->emitsLight) continue;
            double ampere = 0;
            for (int lead = layout_.firstLead[part]; lead < layout_.firstLead[part + 1]; ++lead)
                ampere += std::max(0.0, solution.leadInjection[lead]);
            seen_[part] += share * (ampere - seen_[part]);
            if (seen_[part] <= settled_.seenAmpere[part]) continue;
            settled_.seenAmpere[part] = seen_[part];
            settled_.seenSecond[part] = second;
        }
    }

    void clearSums(const Solution& solution) {
        sums_.netVoltage.assign(solution.netVoltage.size(), 0);
        sums_.leadInjection.assign(solution.leadInjection.size(), 0);
        sums_.elementAmpere.assign(solution.elementAmpere.size(), 0);
        sums_.elementWatt.assign(solution.elementWatt.size(), 0);
    }
    static void addTo(std::vector<double>& sums, const std::vector<double>& values, double seconds) {
        for (std::size_t i = 0; i < sums.size(); ++i) sums[i] += values[i] * seconds;
    }
    void divide(const std::vector<double>& sums, std::vector<double>& means) const {
        for (std::size_t i = 0; i < sums.size(); ++i) means[i] = sums[i] / lastingSeconds_;
    }

    const Layout& layout_;
    Settled& settled_;
    Solution sums_;
    std::vector<double> warmth_, watt_, wattBefore_, seen_;
    double lastingSeconds_ = 0;
    bool begun_ = false, lastingBegun_ = false;
};

class Following {
public:
    Following(BenchRun& run, const LastingVisit& visit, const SettleLimits& limits)
        : run_(run),
          visit_(visit),
          limits_(limits),
          extremes_(run.layout()),
          figures_(run.layout(), settled_) {
        settled_.beganSecond = run.second();
    }

    Settled follow() {
        goesOn_ = run_.advanceTo(run_.second());
        workBefore_ = run_.run().workDone();
        little_ = littleOf(run_.run().circuit());
        watches_ = watchesNow();
        readStored(now_);
        history_.push_back(now_);
        sample(0, false);
        search();
        settled_.followedSecond = secondsSoFar();
        settled_.state = run_.state();
        settled_.capped = run_.wasCapped();
        last();
        settled_.extremes = extremes_.chosen(settled_.lasting);
        return std::move(settled_);
    }

private:
    double secondsSoFar() const { return run_.second() - settled_.beganSecond; }
    long long workSoFar() { return run_.run().workDone() - workBefore_ + kWorkOfPiece * pieces_; }

    std::vector<CycleWatch> watchesNow() {
        std::vector<CycleWatch> watches;
        islandCount_ = run_.run().islands().size();
        for (const MovingIsland& island : run_.run().islands())
            if (!island.stores().empty()) watches.emplace_back(island.stores(), little_);
        return watches;
    }

    void readStored(StoredInstant& instant) {
        run_.run().solution();
        instant.second = run_.second();
        instant.stored = run_.run().state().stored;
        instant.storing = run_.run().state().storing;
    }

    void sample(double seconds, bool lasting) {
        const Solution& solution = run_.solution();
        figures_.add(solution, secondsSoFar(), seconds, lasting);
        extremes_.add(solution, secondsSoFar(), seconds, lasting);
    }

    /// One smooth piece, not past a time. What happens by itself at its end has happened then.
    void piece(double notPast) {
        if (!(goesOn_ = run_.run().makeStep())) return;
        const double from = run_.second();
        const double to = std::min(notPast, run_.smoothUntil());
        std::swap(before_, now_);
        const bool happens = run_.run().nextDue() <= to;
        if (happens) {
            run_.advanceTo(to - kBeforeShare * (to - from));
            sample(0, false);
        } else {
            goesOn_ = run_.advanceTo(to);
        }
        readStored(now_);
        for (CycleWatch& watch : watches_) watch.add(before_, now_);
        if (happens) {
            goesOn_ = run_.advanceTo(to);
            readStored(now_);
        }
        history_.push_back(now_);
        sample(to - from, false);
        ++pieces_;
    }

    void search() {
        const double end = settled_.beganSecond + limits_.mostSecond;
        long long steps = 0, untilSteps = kFirstRoundSteps;
        while (goesOn_) {
            stopIfAsked();
            if (run_.isSteady()) return conclude(Ending::Steady);
            if (run_.second() >= end || workSoFar() >= limits_.mostWork) break;
            piece(end);
            if (run_.run().islands().size() != islandCount_) {
                watches_ = watchesNow();
                history_.assign(1, now_);
            }
            if (decided(kStillShare)) return;
            if (++steps < untilSteps) continue;
            untilSteps *= 2;
            for (CycleWatch& watch : watches_) watch.beginRound();
        }
        if (!goesOn_ || run_.run().islands().size() != islandCount_) return;
        for (CycleWatch& watch : watches_) watch.lookBack(history_);
        decided(kAlmostStillShare);
    }

    /// Whether each island rests or repeats.
    bool decided(double stillShare) {
        bool repeats = false;
        double longest = 0;
        for (const CycleWatch& watch : watches_) {
            if (watch.repeats()) {
                repeats = true;
                longest = std::max(longest, watch.periodSecond());
            } else if (!watch.rests(now_, stillShare, limits_.mostSecond)) {
                return false;
            }
        }
        if (!repeats && std::isfinite(run_.run().nextDue())) return false;
        settled_.periodSecond = longest;
        conclude(repeats ? Ending::Repeating : Ending::Steady);
        return true;
    }

    void conclude(Ending ending) { settled_.ending = ending; }

    /// What lasts: its figures, and whoever wants to see it.
    void last() {
        if (settled_.ending == Ending::Steady || !goesOn_) return lastOne();
        double span = settled_.periodSecond;
        for (const CycleWatch& watch : watches_)
            if (watch.repeats() && std::abs(watch.periodSecond() - span) > kPeriodsApartShare * span)
                span = kPeriodsOfSeveral * settled_.periodSecond;
        const double end =
            run_.second() + (settled_.ending == Ending::Repeating ? span : kLastShare * limits_.mostSecond);
        const auto mostWork = workSoFar() + static_cast<long long>(kLastShare * static_cast<double>(limits_.mostWork));
        // A repeating bench is followed through whole periods, whatever that takes: it took a multiple to find them.
        while (goesOn_ && run_.second() < end && (settled_.ending == Ending::Repeating || workSoFar() < mostWork)) {
            stopIfAsked();
            goesOn_ = run_.run().makeStep();
            if (!goesOn_) break;
            const double from = run_.second(), to = std::min(end, run_.smoothUntil());
            const bool jumps = run_.run().nextDue() <= to;
            // Simpson's rule over the step.
            lasts((to - from) / 6);
            run_.advanceTo((from + to) / 2);
            lasts((to - from) * 4 / 6);
            if (jumps) {
                run_.advanceTo(to - kBeforeShare * (to - from));
                lasts((to - from) / 6);
                goesOn_ = run_.advanceTo(to);
            } else {
                goesOn_ = run_.advanceTo(to);
                if (goesOn_) lasts((to - from) / 6);
            }
        }
        settled_.lasting = figures_.mean(run_.solution());
    }

    void lasts(double seconds) {
        sample(seconds, true);
        if (visit_) visit_(run_.solution(), seconds);
    }

    void lastOne() {
        sample(1, true);
        const Solution& end = run_.solution();
        figures_.mean(end);
        settled_.lasting = end;
        for (std::size_t part = 0; part < settled_.warmWatt.size() && end.status == Status::Solved; ++part) {
            double watt = 0;
            for (int e = 0; e < end.elementCount(); ++e)
                if ((*end.places)[e].part == static_cast<int>(part)) watt += end.elementWatt[e];
            settled_.warmWatt[part] = std::max(settled_.warmWatt[part], watt);
        }
    }

    BenchRun& run_;
    const LastingVisit& visit_;
    SettleLimits limits_;
    Settled settled_;
    Extremes extremes_;
    SettlingFigures figures_;
    std::vector<double> little_;
    std::vector<CycleWatch> watches_;
    std::size_t islandCount_ = 0;
    StoredInstant before_, now_;
    std::vector<StoredInstant> history_;  ///< by piece; as bounded as the work
    long long workBefore_ = 0, pieces_ = 0;
    bool goesOn_ = true;
};

}  // namespace

std::string_view endingName(Ending ending) {
    switch (ending) {
        case Ending::Steady:
            return "steady";
        case Ending::Repeating:
            return "repeating";
        case Ending::Undecided:
            break;
    }
    return "undecided";
}

bool keepsAnything(const Circuit& circuit) {
    return circuit.bitsCount > 0 || std::ranges::any_of(littleOf(circuit), [](double little) { return little > 0; });
}

Settled settle(BenchRun& run, const LastingVisit& visit, const SettleLimits& limits) {
    return Following(run, visit, limits).follow();
}

}  // namespace tiepoint
