#include "core/judge/judge.h"

#include "core/base/capital.h"
#include "core/base/quantity.h"
#include "core/base/stopping.h"
#include "core/judge/as_variant.h"
#include "core/judge/concern.h"
#include "core/judge/worth.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <unordered_set>

namespace tiepoint {
namespace {

constexpr std::size_t kSmallBench = 150;  ///< parts and jumpers
constexpr std::size_t kMostSymptoms = 6;
constexpr std::size_t kMostOfSymptom = 200;                      ///< slips
constexpr std::size_t kMostSolved = 160'000, kFewestSlips = 40;  ///< parts times slips, and of however large a bench
constexpr std::size_t kMostPositions = 32, kFewestPositions = 4, kPositionsOfParts = 2048;
constexpr std::size_t kMostCauses = 12;
constexpr std::size_t kScenesOfGlance = 12, kLookedAt = 40;

std::size_t positionsFor(const Bench& bench) {
    return std::clamp(kPositionsOfParts / std::max<std::size_t>(1, bench.parts.size()), kFewestPositions,
                      kMostPositions);
}

/// Positions, those first that tell most at a glance: of the first half every second is that in which the supplies are asked for most.
std::vector<std::size_t> tellingFirst(const Play& play) {
    const Bench& bench = *play.layout->bench;
    std::vector<std::pair<double, std::size_t>> load;
    for (std::size_t scene = 0; scene < play.scenes.size(); ++scene) {
        double ampere = 0;
        for (std::size_t part = 0; part < bench.parts.size(); ++part) {
            if (!bench.parts[part].kind->isSupply) continue;
            for (int e = play.firstElement[part]; e < play.firstElement[part + 1]; ++e)
                ampere += std::abs(play.scenes[scene].elementAmpere[e]);
        }
        load.emplace_back(-ampere, scene);
    }
    std::ranges::stable_sort(load, {}, [](const auto& each) { return each.first; });
    std::vector<std::size_t> order;
    std::vector<char> taken(load.size(), 0);
    const auto take = [&](std::size_t scene) {
        if (taken[scene] == 0) order.push_back(scene);
        taken[scene] = 1;
    };
    for (std::size_t i = 0; i < load.size(); ++i) take(i), take(load[i].second);
    return order;
}

}  // namespace

Judge::Judge(const Snapshot& now) : layout_(now.layout), stage_(layout_, *now.inputs, positionsFor(*layout_->bench)) {
    Play play = stage_.play();
    const std::vector<std::size_t> order = tellingFirst(play);
    stage_.reorder(order);
    std::vector<Scene> scenes;
    for (const std::size_t scene : order) scenes.push_back(std::move(play.scenes[scene]));
    play.scenes = std::move(scenes);
    now_ = observe(stage_, play);
}

std::vector<Slip> Judge::candidates(const Ground& ground) {
    const Bench& bench = *layout_->bench;
    const std::size_t most = std::clamp(kMostSolved / bench.parts.size(), kFewestSlips, kMostSymptoms * kMostOfSymptom);
    if (bench.parts.size() + bench.jumpers.size() <= kSmallBench) {
        std::vector<Slip> slips = allMends(ground, {}, most);
        leftUntried_ = slips.size() == most;
        // The list gives a circuit once, by the commonest slip; what is left in a rail of the other sign is the same circuit with another print.
        for (const std::string_view kind : {"other-rail", "far-rail"}) {
            std::erase_if(slips, [&](const Slip& slip) { return slip.kind->name == kind; });
            std::ranges::move(mends(*findSlipKind(kind), ground), std::back_inserter(slips));
        }
        return slips;
    }
    std::vector<Slip> slips;
    std::unordered_set<std::uint64_t> circuits;
    const std::size_t symptoms = std::min(now_.amiss.size(), kMostSymptoms);
    for (std::size_t i = 0; i < symptoms; ++i) {
        const std::size_t share = std::min(kMostOfSymptom, most / symptoms);
        std::vector<Slip> more = allMends(ground, {{bench.parts[now_.amiss[i]].id}}, share);
        leftUntried_ = leftUntried_ || more.size() == share;
        for (Slip& slip : more)
            if (circuits.insert(slip.circuit).second) slips.push_back(std::move(slip));
    }
    leftUntried_ = leftUntried_ || symptoms < now_.amiss.size();
    return slips;
}

std::vector<FoundCause> Judge::causes() {
    if (now_.amiss.empty()) return {};
    const Ground ground(layout_);
    std::vector<Slip> slips = candidates(ground);
    std::map<const SlipKind*, double> ways;  // a rare one is less than a whole way
    for (const Slip& slip : slips) ways[slip.kind] += slip.weight / slip.kind->weight;
    for (auto& [kind, count] : ways) count = std::max(count, 1.0);
    const auto worthOfUndoing = [&](const Slip& slip) { return worthOfSlip(slip.weight, ways[slip.kind]); };

    // A glance at each, in few positions; those that do best there are looked at in all.
    const Concern concern(ground, now_.amiss);
    const Observed glance = observe(stage_, stage_.play(kScenesOfGlance));
    std::vector<std::pair<double, const Slip*>> hopeful;
    for (const Slip& slip : slips) {
        stopIfAsked();
        if (!concern.touches(slip.change())) continue;
        const auto then = seen(slip, kScenesOfGlance);
        if (then) hopeful.emplace_back(worthOf(glance.traits, then->traits) + worthOfUndoing(slip), &slip);
    }
    std::ranges::stable_sort(hopeful, std::greater(), [](const auto& each) { return each.first; });
    if (hopeful.size() > kLookedAt) hopeful.resize(kLookedAt);

    std::vector<std::pair<FoundCause, const Slip*>> found;
    for (const auto& [worth, slip] : hopeful) {
        auto then = seen(*slip, Stage::kAllScenes);
        if (!then || lowersAGain(now_.traits, then->traits)) continue;
        // What is joined to nothing, or with one end alone, isn't built yet: that is no slip, and nobody has said where it belongs.
        const bool builds = then->traits[Trait::Parked] < now_.traits[Trait::Parked] ||
                            (!slip->change().added.empty() && now_.traits[Trait::Supplies] > 0 &&
                             !bringsWork(now_.traits, then->traits));
        if (builds && slip->kind->name != "shifted") continue;
        FoundCause cause;
        cause.worth = worthOf(now_.traits, then->traits) + worthOfUndoing(*slip);
        if (cause.worth < toldFrom(now_.traits, then->traits)) continue;
        cause.then = std::move(*then);
        found.emplace_back(std::move(cause), slip);
    }
    std::ranges::stable_sort(found, std::greater(), [](const auto& each) { return each.first.worth; });
    std::vector<FoundCause> causes;
    std::unordered_set<std::uint64_t> circuits;
    for (auto& [cause, slip] : found) {
        if (causes.size() == kMostCauses) break;
        if (!circuits.insert(slip->circuit).second) continue;  // the same circuit by a slip that is worth less
        tell(*slip, cause);
        causes.push_back(std::move(cause));
    }
    return causes;
}

std::optional<Observed> Judge::seen(const Slip& slip, std::size_t scenes) {
    const Bench& bench = *layout_->bench;
    if (const auto variant = asVariant(bench, slip.change())) return observe(stage_, stage_.play(*variant, scenes));
    auto applied = apply(bench, editOf(bench, slip));
    if (!applied) return std::nullopt;
    return observe(stage_, stage_.playInFull(std::make_shared<const Bench>(std::move(applied).value().bench), scenes));
}

std::optional<Judge::Trial> Judge::trialOf(const Edit& edit) {
    auto applied = apply(*layout_->bench, edit);
    if (!applied) return std::nullopt;
    const auto bench = std::make_shared<const Bench>(std::move(applied).value().bench);
    if (bench->parts.size() < layout_->bench->parts.size()) return std::nullopt;
    Trial trial;
    trial.then = observe(stage_, stage_.playInFull(bench));
    // A rule may put up with a rail whose print says the contrary, as long as it works.
    Traits behaviour = trial.then.traits;
    behaviour[Trait::Misprinted] = std::min(behaviour[Trait::Misprinted], now_.traits[Trait::Misprinted]);
    trial.lowers = lowersAGain(now_.traits, behaviour);
    trial.worth = worthOf(now_.traits, trial.then.traits);
    return trial;
}

void Judge::tell(const Slip& slip, FoundCause& cause) const {
    const Bench& bench = *layout_->bench;
    cause.kind = slip.kind->name;
    cause.hidden = !slip.change().conditions.empty();
    cause.text = slipInWords(bench, slip);
    if (const std::string proof = proofOf(cause.then); !proof.empty()) {
        if (cause.text.ends_with('.')) cause.text.pop_back();
        cause.text = say("judge.proven", {{"slip", cause.text}, {"proof", proof}});
    }
    cause.mend = {mendInWords(bench, slip), editOf(bench, slip)};
    if (cause.mend.text.ends_with('.')) cause.mend.text.pop_back();
    for (const std::string& id : slip.ids()) {
        const bool exists = bench.partIndex(id) >= 0 || bench.jumperIndex(id) >= 0;
        if (exists) cause.parts.push_back(id);
    }
    if (!slip.about.empty() && std::ranges::find(cause.parts, slip.about) == cause.parts.end())
        cause.parts.push_back(slip.about);
    cause.holes = slip.holes();
}

std::string Judge::proofOf(const Observed& then) const {
    const Bench& bench = *layout_->bench;
    const auto amperes = [](double ampere) { return formatQuantity(ampere, "A"); };
    int changed = -1;
    double mostChange = 0;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        const double was = now_.mostAmpere[part], is = then.mostAmpere[part];
        if (then.lit[part] && !now_.lit[part])
            return say("judge.shines", {{"part", bench.parts[part].id}, {"current", amperes(is)}});
        const double change = std::abs(std::log((is + 1e-5) / (was + 1e-5)));
        const bool told = !bench.parts[part].kind->isSupply && change > mostChange;
        if (told) changed = part, mostChange = change;
    }
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        if (!then.works[part] || now_.works[part]) continue;
        const PartKind& kind = *bench.parts[part].kind;
        return say(isSwitch(kind)  ? "judge.switches"
                   : isMeter(kind) ? "judge.reads"
                                   : "judge.changes",
                   {{"part", bench.parts[part].id}});
    }
    constexpr double kWorthTelling = 0.05;
    if (changed < 0 || mostChange < kWorthTelling) return {};
    return say("judge.carries", {{"part", bench.parts[changed].id},
                                 {"current", amperes(then.mostAmpere[changed])},
                                 {"now", amperes(now_.mostAmpere[changed])}});
}

std::vector<const FoundCause*> Judge::likeIt(const FoundCause& cause, const std::vector<FoundCause>& causes) {
    constexpr double kMuchLess = 2;
    constexpr std::size_t kMostTold = 3;
    std::vector<const FoundCause*> alike;
    for (const FoundCause& other : causes) {
        const bool like = &other != &cause && !other.hidden && other.then.show == cause.then.show &&
                          other.worth > cause.worth - kMuchLess && other.worth <= cause.worth;
        if (like && alike.size() < kMostTold) alike.push_back(&other);
    }
    return alike;
}

}  // namespace tiepoint
