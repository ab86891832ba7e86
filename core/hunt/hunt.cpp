#include "core/hunt/hunt.h"

#include "core/hunt/draws.h"
#include "core/meter/meter.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace tiepoint {
namespace {

constexpr std::string_view kVoltsRead = "voltage";

/// The difficulty of which there are most plants.
int usualReadings(const std::vector<Plant>& plants) {
    std::map<int, int> counts;
    for (const Plant& plant : plants) ++counts[plant.readings];
    const auto most = std::ranges::max_element(counts, [](const auto& a, const auto& b) {
        return a.second != b.second ? a.second < b.second : a.first < b.first;
    });
    return most->first;
}

/// The plants in an order in which kinds of fault take turns.
std::vector<std::size_t> takingTurns(const std::vector<Plant>& plants, SeededDraws& draws) {
    std::map<const Fault*, std::vector<std::size_t>> byFault;
    for (std::size_t i = 0; i < plants.size(); ++i) byFault[plants[i].fault].push_back(i);
    std::vector<std::vector<std::size_t>> piles;
    for (const Fault& fault : faults()) {  // in their own order: addresses differ from run to run
        const auto pile = byFault.find(&fault);
        if (pile != byFault.end()) piles.push_back(pile->second);
    }
    for (auto& pile : piles) draws.shuffle(pile);
    std::vector<std::size_t> order;
    while (order.size() < plants.size()) {
        draws.shuffle(piles);
        for (auto& pile : piles) {
            if (pile.empty()) continue;
            order.push_back(pile.back());
            pile.pop_back();
        }
    }
    return order;
}

std::string whyNothing(const HuntGround& ground) {
    if (!ground.black()) return "nothing can be hunted here: the bench has no supply to measure against";
    if (ground.lights().empty())
        return "nothing can be hunted here: the bench has no light, so that nothing would be seen";
    return "nothing can be hunted here: no slip that changes the lights can be found by readings";
}

/// The part's element that reads volts stands between two leads: the red one and the black one.
std::pair<int, int> tipsOf(const PartKind& kind) {
    const auto volts = std::ranges::find(kind.model, kVoltsRead, &ElementSpec::reads);
    return {kind.leadIndex(volts->from()), kind.leadIndex(volts->to())};
}

const PartKind* meterKind() {
    for (const PartKind& kind : catalogue())
        if (std::ranges::find(kind.model, kVoltsRead, &ElementSpec::reads) != kind.model.end()) return &kind;
    return nullptr;
}

/// A meter beside those that are part of the circuit, set to volts, its black tip in minus and its red one in the hand. It is the last part.
void addMeter(Bench& bench, const Hole& black) {
    const PartKind* kind = meterKind();
    if (!kind) return;
    Part meter = makePart(*kind, freeId(bench, kind->prefix));
    meter.leads[static_cast<std::size_t>(tipsOf(*kind).second)] = black;
    const std::string id = meter.id;
    auto added = apply(bench, {"Add a meter", {AddPart{std::move(meter)}}});
    if (!added) return;
    Bench withMeter = std::move(added).value().bench;
    const auto dial = turnDialEdit(withMeter, *withMeter.findPart(id), kVoltsRead);
    auto set = dial ? apply(withMeter, *dial) : std::move(added);
    bench = dial && set ? std::move(set).value().bench : std::move(withMeter);
}

}  // namespace

Result<HuntSet> makeHunts(std::shared_ptr<const Bench> target, int count, std::uint64_t seed) {
    const HuntGround ground(std::move(target));
    std::vector<Plant> plants = plantsOf(ground);
    if (plants.empty()) return Error{ErrorKind::Range, whyNothing(ground), {}, {}};
    HuntSet set;
    set.plants = static_cast<int>(plants.size());
    set.readings = usualReadings(plants);
    std::erase_if(plants, [&](const Plant& plant) { return plant.readings != set.readings; });
    set.different = std::min(count, static_cast<int>(plants.size()));
    SeededDraws draws(seed);
    while (static_cast<int>(set.hunts.size()) < count) {
        for (const std::size_t index : takingTurns(plants, draws)) {
            if (static_cast<int>(set.hunts.size()) == count) break;
            set.hunts.push_back(plants[index]);
        }
    }
    return set;
}

Bench huntBench(const HuntGround& ground, const Plant& plant) {
    const Bench& target = ground.target();
    Bench bench = plant.bench;
    HiddenSlip hidden;
    hidden.seen = plant.seen;
    hidden.kind = plant.slip.kind->name;
    hidden.fault = plant.fault;
    hidden.things = plant.things;
    hidden.told = slipInWords(target, plant.slip);
    hidden.mendWords = mendInWords(target, plant.slip);
    hidden.hidden = plant.hidden;
    hidden.readings = plant.readings;
    hidden.wrong = editOf(target, plant.slip.wrong, "Hide a slip");
    hidden.mend = editOf(bench, plant.slip.right, "Mend");
    if (ground.black()) addMeter(bench, *ground.black());
    bench.pinned.clear();  // readings that stand there would tell
    if (bench.views) bench.views->shown = Views{};
    hideSlip(bench, hidden);
    return bench;
}

}  // namespace tiepoint
