#include "core/hunt/judge.h"

#include "core/base/stopping.h"
#include "core/hunt/ground.h"
#include "core/meter/meter.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

/// A bench that could be the one on the table, by its secret.
struct Suspect {
    std::string thing;  ///< that is broken on it; empty: the sound bench
    Condition condition = Condition::Sound;
};

std::vector<Suspect> suspectsOf(const Bench& bench) {
    std::vector<Suspect> suspects{{}};
    const auto add = [&](const std::string& id) {
        suspects.push_back({id, Condition::OpenInside});
        suspects.push_back({id, Condition::DryContact});
    };
    for (const Part& part : bench.parts)
        if (!part.kind->isSupply && !isMeter(*part.kind)) add(part.id);
    for (const Jumper& jumper : bench.jumpers) add(jumper.id);
    return suspects;
}

void breakThing(Bench& bench, const Suspect& suspect) {
    if (const int part = bench.partIndex(suspect.thing); part >= 0)
        bench.parts[static_cast<std::size_t>(part)].condition = suspect.condition;
    if (const int jumper = bench.jumperIndex(suspect.thing); jumper >= 0)
        bench.jumpers[static_cast<std::size_t>(jumper)].condition = suspect.condition;
}

/// Puts the meter's tips back where they were, or into another hole of the same strip where something stands there now.
void putTips(Bench& bench, const std::string& meter, const std::vector<std::optional<Hole>>& tips) {
    for (std::size_t tip = 0; tip < tips.size(); ++tip) {
        if (!tips[tip]) continue;
        const auto layout = buildLayout(std::make_shared<const Bench>(bench));
        const int wanted = layout->holeIndex(*tips[tip]);
        const auto isFree = [&](int hole) { return layout->jointOfHole[static_cast<std::size_t>(hole)] < 0; };
        int at = isFree(wanted) ? wanted : -1;
        for (int hole = 0; hole < layout->holeCount() && at < 0; ++hole) {
            const bool sameStrip = layout->stripOfHole[static_cast<std::size_t>(hole)] ==
                                   layout->stripOfHole[static_cast<std::size_t>(wanted)];
            if (sameStrip && isFree(hole)) at = hole;
        }
        if (at >= 0) bench.parts[static_cast<std::size_t>(bench.partIndex(meter))].leads[tip] = layout->holeAt(at);
    }
}

/// The bench of a reading as it would be with another secret: the slip mended, all that can't be seen sound, the suspect broken. The tips
/// are out while the slip is mended, for one may be where a leg belongs.
std::shared_ptr<const Bench> asSuspected(const Bench& then, const std::string& meter, const HiddenSlip& slip,
                                         const Suspect& suspect) {
    Bench bench = then;
    auto& leads = bench.parts[static_cast<std::size_t>(bench.partIndex(meter))].leads;
    const std::vector<std::optional<Hole>> tips = leads;
    for (auto& lead : leads) lead.reset();
    bench = soundOf(mended(bench, slip).value_or(bench));
    breakThing(bench, suspect);
    putTips(bench, meter, tips);
    return std::make_shared<const Bench>(std::move(bench));
}

/// Whether two readings of one meter agree. Numbers as volts do; ohms to a tenth; words and beeps as they are.
bool agree(const MeterReading& one, const MeterReading& other) {
    constexpr double kOhmShare = 0.1;
    if (one.beeps != other.beeps || std::isnan(one.value) != std::isnan(other.value)) return false;
    if (std::isnan(one.value)) return one.digits == other.digits;
    if (one.quantity == "resistance" || one.quantity == "continuity")
        return std::abs(one.value - other.value) <= 1 + kOhmShare * std::max(one.value, other.value);
    return !differ(one.value, other.value);
}

MeterReading shownBy(const Snapshot& snapshot, const std::string& meter) {
    return *meterReading(snapshot, snapshot.layout->bench->partIndex(meter));
}

/// Whether the eye would see the same lights.
bool looksAlike(const Snapshot& one, const Snapshot& other) {
    for (int part = 0; part < static_cast<int>(one.layout->bench->parts.size()); ++part) {
        const LightSign now{seenAt(one.brightness(part)), one.brightness(part)};
        if (!now.isLike({seenAt(other.brightness(part)), other.brightness(part)})) return false;
    }
    return true;
}

bool fits(const HuntReading& reading, const HiddenSlip& slip, const Suspect& suspect) {
    stopIfAsked();
    const auto bench = asSuspected(*reading.at->layout->bench, reading.meter, slip, suspect);
    const auto solved = evaluate(bench, *reading.at->inputs);
    // Of another thing to blame the lights must tell nothing else; that they aren't as on the sound bench proves no thing.
    if (!suspect.thing.empty() && !looksAlike(*solved, *reading.at)) return false;
    return agree(shownBy(*solved, reading.meter), shownBy(*reading.at, reading.meter));
}

bool isIn(const std::vector<std::string>& ids, const std::string& id) {
    return std::ranges::find(ids, id) != ids.end();
}

std::string eitherOf(const std::vector<std::string>& ids) {
    std::string text;
    for (std::size_t i = 0; i < ids.size(); ++i) text += (i == 0 ? "" : i + 1 == ids.size() ? " or " : ", ") + ids[i];
    return text;
}

std::string answerTo(const HuntVerdict& verdict, const HuntGuess& guess, bool readingsDiffer) {
    if (verdict.solved())
        return fmt::format("{} Your readings prove it: nothing else would give them.",
                           causeInWords(guess.thing, *guess.fault));
    if (guess.evidence.empty()) return "Choose the readings that show it.";
    if (!readingsDiffer)
        return "With everything sound the meter would show the same. Find a reading that isn't as it should be.";
    if (verdict.others.empty()) {
        return verdict.thing
                   ? fmt::format("Your readings lead to {}. Look again at what is wrong with it.", guess.thing)
                   : fmt::format("Your readings don't fit a fault of {}.", guess.thing);
    }
    const std::vector<std::string> few(
        verdict.others.begin(), verdict.others.begin() + std::min<std::ptrdiff_t>(3, std::ssize(verdict.others)));
    return fmt::format("These readings would be the same if it were {}. Take one that tells them apart.",
                       eitherOf(few));
}

}  // namespace

HuntVerdict judge(const Bench& bench, const HiddenSlip& slip, const HuntGuess& guess) {
    HuntVerdict verdict;
    verdict.thing = isIn(slip.things, guess.thing);
    // A broken thing and one that makes no contact show the same to a meter in the holes.
    verdict.fault = guess.fault == slip.fault || (slip.hidden && guess.fault && isUnseen(*guess.fault));
    bool fitsSound = true, fitsGuess = verdict.thing;
    for (const Suspect& suspect : suspectsOf(bench)) {
        const bool fitsAll = std::ranges::all_of(
            guess.evidence, [&](const HuntReading& reading) { return fits(reading, slip, suspect); });
        if (suspect.thing.empty())
            fitsSound = fitsAll;
        else if (suspect.thing == guess.thing)
            fitsGuess = fitsGuess || fitsAll;
        else if (fitsAll && !(verdict.thing && isIn(slip.things, suspect.thing)) &&
                 !isIn(verdict.others, suspect.thing))
            verdict.others.push_back(suspect.thing);
    }
    verdict.proved = !guess.evidence.empty() && !fitsSound && fitsGuess && verdict.others.empty();
    verdict.text = answerTo(verdict, guess, !fitsSound);
    return verdict;
}

}  // namespace tiepoint
