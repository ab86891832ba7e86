#include "core/findings/damage.h"

#include "core/hunt/hidden_slip.h"
#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/throws.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

constexpr std::string_view kDamageMember = "damage", kStays = "\"stays\"";

bool isSpared(const Part& part) {
    return part.kind->isSupply || isMeter(*part.kind) || isSwitch(*part.kind) || part.condition != Condition::Sound;
}

bool isRuined(const Snapshot& snapshot, int part) {
    return std::ranges::any_of(ratingShares(snapshot, part), [](const RatingShare& share) {
        return share.rating->maximum && share.share() > kRuinousShare;
    });
}

}  // namespace

bool damageStays(const Bench& bench) {
    return bench.surroundings && std::ranges::any_of(bench.surroundings->extras, [](const auto& member) {
               return member.first == kDamageMember && member.second == kStays;
           });
}

Edit damageStaysEdit(const Bench& bench, bool stays) {
    SaidSurroundings surroundings = bench.surroundings.value_or(SaidSurroundings{});
    std::erase_if(surroundings.extras, [](const auto& member) { return member.first == kDamageMember; });
    if (stays) surroundings.extras.emplace_back(kDamageMember, kStays);
    return {say(stays ? "history.damageStays" : "history.damagePasses"), {SetSurroundings{std::move(surroundings)}}};
}

std::vector<int> ruinedBy(const Snapshot& snapshot) {
    std::vector<int> ruined;
    if (snapshot.status() != Status::Solved) return ruined;
    const Bench& bench = *snapshot.layout->bench;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part)
        if (!isSpared(bench.parts[static_cast<std::size_t>(part)]) && isRuined(snapshot, part)) ruined.push_back(part);
    return ruined;
}

Edit ruinEdit(const Bench& bench, const std::vector<int>& parts) {
    Edit edit;
    std::vector<std::string> ids;
    for (const int index : parts) {
        ReplacePart replace{bench.parts[static_cast<std::size_t>(index)]};
        replace.part.condition = Condition::Dead;
        ids.push_back(replace.part.id);
        edit.operations.emplace_back(std::move(replace));
    }
    edit.name = say("history.ruined", {{"parts", sayList(ids, "list.comma")}, {"count", ids.size()}});
    return edit;
}

std::string ruinWords(const Bench& bench, int part) {
    const Part& which = bench.parts[static_cast<std::size_t>(part)];
    if (which.condition != Condition::Dead || !damageStays(bench) || isHunting(bench)) return {};
    return say("finding.ruined", {{"part", which.id}});
}

}  // namespace tiepoint
