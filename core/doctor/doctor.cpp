#include "core/doctor/doctor.h"

#include "core/base/stopping.h"

#include <algorithm>
#include <cstdint>

namespace tiepoint {
namespace {

/// Who says that everything is as planned has overlooked a visible slip so often (common practice).
constexpr double kOverlookedShare = 0.125;
constexpr std::size_t kMostPairs = 4000, kMostObservations = 64, kMostPairsKept = 50;

bool saidAsPlanned(const Bench& plan, const std::vector<Observation>& seen) {
    return std::ranges::any_of(seen, [&](const Observation& each) {
        const auto* built = std::get_if<SawBuilt>(&each.what);
        return built != nullptr && built->asPlanned && plan.findBoard(built->id) != nullptr;
    });
}

void sortByWeight(std::vector<Weighed>& list) { std::ranges::stable_sort(list, std::greater<>(), &Weighed::weight); }

/// Two single suspects and how many observations neither of them agrees with.
struct Couple {
    const Suspect *one, *other;
    int unexplained;
    double weight;
};

}  // namespace

Doctor::Doctor(std::shared_ptr<const Layout> plan, const PossibleSlip& possible)
    : suspects_(std::move(plan), possible),
      foresight_(suspects_),
      questioner_(suspects_, foresight_) {}

Diagnosis Doctor::diagnose(const std::vector<Observation>& seen, Instrument instrument) {
    Diagnosis diagnosis;
    const bool overlooked = saidAsPlanned(plan(), seen);
    for (const Suspect& suspect : suspects_.all()) {
        const auto against = std::ranges::find_if_not(
            seen, [&](const Observation& each) { return fits(foresight_, suspects_, suspect, each); });
        if (against == seen.end())
            diagnosis.fits.push_back(
                {&suspect, suspect.weight * (overlooked && suspect.isVisible() ? kOverlookedShare : 1)});
        else if (!suspect.slips.empty())
            diagnosis.ruledOut.push_back({&suspect, static_cast<std::size_t>(against - seen.begin())});
    }
    sortByWeight(diagnosis.fits);
    diagnosis.switchOff =
        std::ranges::any_of(seen, [](const Observation& each) { return std::holds_alternative<SawHot>(each.what); });
    if (diagnosis.switchOff) return diagnosis;
    if (diagnosis.fits.empty()) tryPairs(seen, diagnosis);
    if (seen.empty() && !plan().boards.empty()) {
        Question built;
        built.digits = restOf(plan());
        built.id = plan().boards.front().id;
        diagnosis.next = questioner_.ask(built, diagnosis.fits);
        return diagnosis;
    }
    diagnosis.next = questioner_.best(diagnosis.fits, seen, instrument);
    return diagnosis;
}

/// Which of the observations each single suspect agrees with, as bits.
class Doctor::Sorting {
public:
    Sorting(Doctor& doctor, const std::vector<Observation>& seen) : suspects_(doctor.suspects_.all()) {
        for (const Suspect& suspect : suspects_) {
            std::uint64_t agrees = 0;
            for (std::size_t o = 0; o < std::min(seen.size(), kMostObservations); ++o) {
                if (fits(doctor.foresight_, doctor.suspects_, suspect, seen[o])) agrees |= std::uint64_t{1} << o;
            }
            agrees_.push_back(agrees);
        }
    }

    /// Pairs that explain most first, then the most probable.
    std::vector<Couple> couples(std::size_t count) const {
        std::vector<Couple> couples;
        const std::uint64_t all = count >= kMostObservations ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1;
        for (std::size_t i = 1; i < suspects_.size(); ++i) {
            stopIfAsked();
            for (std::size_t j = i + 1; j < suspects_.size(); ++j) {
                const std::uint64_t missed = all & ~(agrees_[i] | agrees_[j]);
                couples.push_back({&suspects_[i], &suspects_[j], __builtin_popcountll(missed),
                                   suspects_[i].weight * suspects_[j].weight});
            }
        }
        const auto before = [](const Couple& a, const Couple& b) {
            return a.unexplained != b.unexplained ? a.unexplained < b.unexplained : a.weight > b.weight;
        };
        const std::size_t kept = std::min(couples.size(), kMostPairs);
        std::ranges::partial_sort(couples, couples.begin() + static_cast<std::ptrdiff_t>(kept), before);
        return couples;
    }

    /// Observations without which some single suspect would fit.
    std::vector<std::size_t> doubted(std::size_t count) const {
        std::vector<std::size_t> found;
        const std::uint64_t all = count >= kMostObservations ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1;
        for (std::size_t o = 0; o < std::min(count, kMostObservations); ++o) {
            const std::uint64_t others = all & ~(std::uint64_t{1} << o);
            if (std::ranges::any_of(agrees_, [&](std::uint64_t agrees) { return (agrees & others) == others; }))
                found.push_back(o);
        }
        return found;
    }

private:
    const std::vector<Suspect>& suspects_;
    std::vector<std::uint64_t> agrees_;
};

void Doctor::tryPairs(const std::vector<Observation>& seen, Diagnosis& diagnosis) {
    for (const Suspect& before : pairs_) foresight_.forget(before);
    pairs_.clear();
    const Sorting sorting(*this, seen);
    const std::vector<Couple> couples = sorting.couples(seen.size());
    const std::size_t tried = std::min(couples.size(), kMostPairs);
    diagnosis.pairsLeftOut = couples.size() - tried;
    const bool overlooked = saidAsPlanned(plan(), seen);
    for (std::size_t i = 0; i < tried && pairs_.size() < kMostPairsKept; ++i) {
        auto pair = suspects_.pairOf(*couples[i].one, *couples[i].other);
        if (!pair) continue;
        pairs_.push_back(std::move(*pair));
        Suspect& both = pairs_.back();
        const bool agrees =
            std::ranges::all_of(seen, [&](const Observation& each) { return fits(foresight_, suspects_, both, each); });
        if (agrees)
            diagnosis.fits.push_back({&both, both.weight * (overlooked && both.isVisible() ? kOverlookedShare : 1)});
        else {
            foresight_.forget(both);
            pairs_.pop_back();
        }
    }
    sortByWeight(diagnosis.fits);
    diagnosis.pairs = !diagnosis.fits.empty();
    diagnosis.contradiction = diagnosis.fits.empty();
    if (diagnosis.contradiction) diagnosis.doubted = sorting.doubted(seen.size());
}

}  // namespace tiepoint
