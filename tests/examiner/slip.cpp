#include "examiner/slip.h"

#include "core/bench/validate.h"
#include "core/edit/clashes.h"
#include "examiner/hands.h"

#include <algorithm>

namespace tiepoint::examiner {
namespace {

constexpr int kTriesOfKind = 12, kKindsTried = 40;

bool canBe(const Bench& bench) { return validate(bench).ok() && Occupancy(bench).all().empty(); }

bool touchesAny(const Slip& slip, const std::set<std::string>& ids) {
    return std::ranges::any_of(slip.things, [&](const std::string& id) { return ids.contains(id); });
}

std::vector<double> weights() {
    std::vector<double> all;
    for (const SlipKind& kind : slipKinds()) all.push_back(kind.weight);
    return all;
}

/// A slip that can be and that matters; nothing where chance found none.
std::optional<Slip> drawSlip(const Bench& bench, const std::set<std::string>& untouched, Chance& chance,
                             const std::function<bool(const Slip&)>& matters) {
    const auto weight = weights();
    for (int i = 0; i < kKindsTried; ++i) {
        const SlipKind& kind = slipKinds()[chance.weighted(weight)];
        for (int j = 0; j < kTriesOfKind; ++j) {
            auto slip = kind.draw(bench, chance);
            if (!slip || touchesAny(*slip, untouched) || !canBe(slip->bench) || !matters(*slip)) continue;
            slip->kind = kind.name;
            return slip;
        }
    }
    return {};
}

}  // namespace

std::span<const SlipKind> slipKinds() {
    static const std::vector<SlipKind> kinds = [] {
        std::vector<SlipKind> all;
        for (auto each : {pinSlips(), partSlips(), jumperSlips(), settingSlips(), conditionSlips()})
            std::ranges::move(each, std::back_inserter(all));
        return all;
    }();
    return kinds;
}

std::optional<Case> drawCase(const Bench& wanted, const std::set<std::string>& parked, int slips, Chance& chance) {
    Case drawn{wanted, {}, positionsOf(wanted), {}, {}};
    drawn.wantedBehaviour = drawn.behaviour = behave(wanted, drawn.positions);
    std::set<std::string> untouched = parked;
    for (int i = 0; i < slips; ++i) {
        Behaviour after;
        // The second slip must matter beside the first, and may not take it back.
        const auto slip = drawSlip(drawn.bench(), untouched, chance, [&](const Slip& each) {
            after = behave(each.bench, drawn.positions);
            return !asWanted(after, drawn.behaviour) && !asWanted(after, drawn.wantedBehaviour);
        });
        if (!slip) return {};
        drawn.slips.push_back(*slip);
        drawn.behaviour = std::move(after);
        untouched.insert(slip->things.begin(), slip->things.end());
    }
    return drawn;
}

}  // namespace tiepoint::examiner
