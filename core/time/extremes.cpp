#include "core/time/extremes.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr int kMostLeadsInPairs = 4;  ///< of a part; of more the first is compared with each
constexpr double kAboutShare = 0.98;  ///< so much of the most shows it
constexpr double kHardlyFurtherAmpere = 1e-5,
                 kHardlyFurtherVolt = 0.05;  ///< less than this further isn't worth an instant
constexpr double kHarmSecond = 1e-6;
constexpr std::size_t kMostExtremes = 6;

}  // namespace

Extremes::Extremes(const Layout& layout) : layout_(layout) {
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) {
        const int first = layout.firstLead[part], end = layout.firstLead[part + 1];
        for (int lead = first; lead < end; ++lead) {
            figures_.push_back({lead, -1});
            const int others = end - first <= kMostLeadsInPairs ? lead : std::min(lead, first + 1);
            for (int other = first; other < others; ++other) figures_.push_back({lead, other});
        }
    }
    before_.assign(figures_.size(), 0);
    held_ = before_;
    way_.resize(2 * figures_.size());
    lasting_.resize(2 * figures_.size());
}

double Extremes::read(const Figure& figure, const Solution& solution) const {
    if (figure.other < 0) return solution.leadInjection[figure.lead];
    const double volt =
        solution.netVoltage[layout_.netOfLead[figure.lead]] - solution.netVoltage[layout_.netOfLead[figure.other]];
    return std::isnan(volt) ? 0 : volt;
}

void Extremes::add(const Solution& solution, double second, double seconds, bool lasting) {
    if (solution.status != Status::Solved) return;
    std::shared_ptr<const Instant> now;
    const double share = -std::expm1(-seconds / kHarmSecond);
    for (std::size_t f = 0; f < figures_.size(); ++f) {
        const double at = read(figures_[f], solution);
        held_[f] += share * ((std::abs(at) < std::abs(before_[f]) ? at : before_[f]) - held_[f]);
        before_[f] = at;
        // No more than there is at this instant, which is what will be shown.
        const double value = std::abs(at) < std::abs(held_[f]) ? at : held_[f];
        for (const int side : {0, 1}) {
            Record& record = (lasting ? lasting_ : way_)[2 * f + side];
            const double figure = side == 0 ? -value : value;
            if (figure <= record.most) continue;
            if (!now) now = std::make_shared<const Instant>(Instant{second, solution});
            record = {figure, now};
        }
    }
}

std::vector<Extreme> Extremes::chosen(const Solution& lasting) const {
    struct Wanted {
        std::size_t figure;
        double side, most;
    };
    std::vector<Wanted> wanted;
    std::vector<std::pair<std::shared_ptr<const Instant>, bool>> offered;
    const auto offer = [&](const std::shared_ptr<const Instant>& at, bool returns) {
        const auto same = [&](const auto& each) { return each.first == at; };
        if (std::ranges::none_of(offered, same)) offered.emplace_back(at, returns);
    };
    const bool isSolved = lasting.status == Status::Solved;
    for (std::size_t r = 0; r < way_.size(); ++r) {
        const Figure& figure = figures_[r / 2];
        const double side = r % 2 == 0 ? -1 : 1;
        const double most = std::max(way_[r].most, lasting_[r].most);
        const double last = isSolved ? side * read(figure, lasting) : 0;
        const double little = figure.other < 0 ? kHardlyFurtherAmpere : kHardlyFurtherVolt;
        if (kAboutShare * most <= std::max(0.0, last) + little) continue;
        wanted.push_back({r / 2, side, most});
        if (lasting_[r].at && lasting_[r].most >= kAboutShare * most)
            offer(lasting_[r].at, true);
        else
            offer(way_[r].at, false);
    }
    std::vector<Extreme> found;
    while (!wanted.empty() && found.size() < kMostExtremes) {
        std::size_t best = 0, mostShown = 0;
        const auto shows = [&](const Instant& at, const Wanted& each) {
            return each.side * read(figures_[each.figure], at.solution) >= kAboutShare * each.most;
        };
        for (std::size_t o = 0; o < offered.size(); ++o) {
            const auto shown = static_cast<std::size_t>(
                std::ranges::count_if(wanted, [&](const Wanted& each) { return shows(*offered[o].first, each); }));
            if (shown > mostShown) {
                mostShown = shown;
                best = o;
            }
        }
        if (mostShown == 0) break;
        const Instant& at = *offered[best].first;
        std::erase_if(wanted, [&](const Wanted& each) { return shows(at, each); });
        found.push_back({at.second, offered[best].second, at.solution});
    }
    std::ranges::stable_sort(found, {}, &Extreme::second);
    return found;
}

}  // namespace tiepoint
