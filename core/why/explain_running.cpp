// Current runs through the part. How bright or how hot it is follows from the way of the current: what drives it, what holds it back,
// and what the part bears.

#include "core/base/quantity.h"
#include "core/circuit/element.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/why/explainer.h"
#include "core/words/words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

/// Under this share of full brightness a light is called dim.
constexpr double kDim = 0.5;
/// What brighter means: about three quarters of the usual current.
constexpr double kBrightShare = 0.75;
/// Beyond three times a maximum no digit is true any more.
constexpr double kFarAbove = 3;
/// Over a limit by more than rounding.
constexpr double kAboveMargin = 1.005;

/// How warm a part feels: the question, and the answer without and with the voltage across it.
struct Warmth {
    double aboveShare;
    std::string_view question, text, textAcross;
};
constexpr std::array kWarmths = {
    Warmth{kFarAbove, "why.question.burning", "why.heat.far", "why.heat.farAcross"},
    Warmth{1, "why.question.burning", "why.heat.burning", "why.heat.burningAcross"},
    Warmth{0.5, "why.question.hot", "why.heat.hot", "why.heat.hotAcross"},
    Warmth{0.2, "why.question.warm", "why.heat.warm", "why.heat.warmAcross"},
    Warmth{-1, "why.question.cool", "why.heat.cool", "why.heat.coolAcross"},
};

/// At a share of the power that a part bears (common practice: at its rating a small resistor is too hot to touch).
const Warmth& warmthAt(double share) {
    return *std::ranges::find_if(kWarmths, [share](const Warmth& warmth) { return !(share <= warmth.aboveShare); });
}

std::optional<RatingShare> maximumOf(const Snapshot& snapshot, int part, std::string_view quantity) {
    for (const RatingShare& share : ratingShares(snapshot, part)) {
        if (share.rating->maximum && share.rating->quantity == quantity) return share;
    }
    return std::nullopt;
}

/// The usual current of a part; 0 if it has none.
double usualAmpere(const Snapshot& snapshot, int part) {
    for (const RatingShare& share : ratingShares(snapshot, part)) {
        if (!share.rating->maximum && share.rating->quantity == "current") return share.limit;
    }
    return 0;
}

/// A junction takes whatever current it can get, so something else has to hold it back.
bool needsResistor(const PartKind& kind) {
    return std::ranges::any_of(kind.model,
                               [](const ElementSpec& spec) { return findElement(spec.element) == &kJunctionElement; });
}

/// Whether some part gets more than it bears.
bool overloads(const Snapshot& snapshot) {
    for (int part = 0; part < static_cast<int>(snapshot.layout->bench->parts.size()); ++part) {
        for (const RatingShare& share : ratingShares(snapshot, part)) {
            if (share.rating->maximum && share.share() > kAboveMargin) return true;
        }
    }
    return false;
}

}  // namespace

void Explainer::explainLight() {
    const double brightness = snapshot_.brightness(index_);
    const std::string ampere = currentWords(snapshot_, index_);
    const auto most = maximumOf(snapshot_, index_, "current");
    const bool tooMuch = most && most->share() > kAboveMargin;
    const std::string& id = self().id;
    answer_.figures.emplace_back("brightness", brightness);
    answer_.question = say(tooMuch                               ? "why.question.overloaded"
                           : brightness > 0 && brightness < kDim ? "why.question.dim"
                                                                 : "why.question.lit",
                           {{"part", id}});
    const double usual = usualAmpere(snapshot_, index_);
    if (tooMuch) {
        const std::string limit = formatSetting(most->limit, "A");
        add(most->share() > kFarAbove ? say("why.light.farTooMuch", {{"part", id}, {"limit", limit}})
                                      : say("why.light.tooMuch", {{"part", id}, {"current", ampere}, {"limit", limit}}),
            {id});
    } else if (brightness > 0) {
        const std::string percent = percentInWords(brightness);
        add(usual > 0
                ? say("why.light.rated",
                      {{"current", ampere}, {"part", id}, {"rated", formatSetting(usual, "A")}, {"percent", percent}})
                : say("why.light.bright", {{"current", ampere}, {"part", id}, {"percent", percent}}),
            {id});
    } else {
        add(say("why.light.unseen", {{"current", ampere}, {"part", id}}), {id});
    }
    const CurrentPath path = pathThrough(snapshot_, index_);
    saySharing(path);
    sayLimit(path);
    if (tooMuch)
        offerFindings();
    else if (brightness < kDim && brightness > 0)
        offerResistance();
}

void Explainer::explainHeat() {
    const std::string ampere = currentWords(snapshot_, index_);
    const auto most = maximumOf(snapshot_, index_, "power");
    const std::string& id = self().id;
    answer_.figures.emplace_back("power", snapshot_.partPower[index_]);
    const CurrentPath path = pathThrough(snapshot_, index_);
    const auto link = std::ranges::find(path.links, index_, &PathLink::part);
    if (isSwitch(*self().kind)) {
        answer_.question = say("why.question.flows", {{"part", id}});
        add(say("why.heat.switch", {{"part", id}, {"current", ampere}}), {id});
    } else if (!most) {
        answer_.question = say("why.question.flows", {{"part", id}});
        add(say("why.heat.plain",
                {{"current", ampere}, {"part", id}, {"power", snapshot_.shown().power(index_).text()}}),
            {id});
    } else {
        answer_.figures.emplace_back("limit", most->limit);
        sayHeat(*most, link == path.links.end() || !link->fall.isKnown() ? nullptr : &*link);
    }
    saySharing(path);
    const auto tightest = tightestRating(snapshot_, index_);
    if (tightest && tightest->rating->maximum && tightest->share() > kAboveMargin) {
        if (!most || tightest->rating != most->rating) {
            add(say("why.heat.limit", {{"part", id}, {"limit", formatSetting(tightest->limit, tightest->unit)}}), {id});
        }
        offerFindings();
    }
}

/// How hot the part is at its share of what it bears; with the voltage across it where that is known.
void Explainer::sayHeat(const RatingShare& rated, const PathLink* link) {
    const Warmth& warmth = warmthAt(rated.share());
    answer_.question = say(warmth.question, {{"part", self().id}});
    const std::string ampere = currentWords(snapshot_, index_), watt = snapshot_.shown().power(index_).text();
    const std::string limit = formatSetting(rated.limit, "W");
    add(link == nullptr ? say(warmth.text, {{"current", ampere}, {"power", watt}, {"limit", limit}})
                        : say(warmth.textAcross,
                              {{"voltage", link->fall.text()}, {"current", ampere}, {"power", watt}, {"limit", limit}}),
        {self().id});
}

void Explainer::explainSupply() {
    const std::string& id = self().id;
    const double watt = -snapshot_.partPower[index_];
    const CurrentPath path = pathThrough(snapshot_, index_);
    answer_.figures.emplace_back("power", watt);
    answer_.question = say("why.question.gives", {{"part", id}});
    const Figure ampere = snapshot_.shown().through(index_).out, power = snapshot_.shown().power(index_);
    if (watt < 0) {
        add(say("why.supply.takes", {{"part", id}, {"current", ampere.text()}}), {id});
    } else {
        add(say("why.supply.gives", {{"part", id}, {"current", ampere.text()}, {"power", power.magnitude().text()}}),
            {id});
    }
    const bool limiting = std::ranges::any_of(snapshot_.solution.elements(), [&](const ElementState& element) {
        return element.part == index_ && element.limiting;
    });
    if (limiting) add(say("why.supply.limiting", {{"part", id}}), {id});
    if (path.links.empty() && !path.sources.empty()) add(say("why.supply.metal", {{"part", id}}), {id});
    if (!path.links.empty()) add(say("why.supply.way", {{"way", wayInWords(path)}}));
    if (limiting || watt < 0) offerFindings();
}

/// Where the current comes from and how the voltage is shared out on its way. What is told adds up: only what rounds to nothing is left out.
void Explainer::saySharing(const CurrentPath& path) {
    if (path.sources.empty() || path.links.empty()) return;
    std::vector<std::string> sources, sourceIds;
    for (const PathLink& source : path.sources) {
        sourceIds.push_back(bench().parts[source.part].id);
        sources.push_back(source.fall.isKnown() ? say("why.path.source", {{"supply", sourceIds.back()},
                                                                          {"voltage", (-source.fall).text()}})
                                                : sourceIds.back());
    }
    add(say("why.path", {{"supplies", sayList(sources, "list.and")}, {"way", wayInWords(path)}}), sourceIds);
    std::vector<std::string> shares, ids;
    for (const PathLink& link : path.links) {
        if (!link.fall.isKnown() || link.fall.isZero()) continue;
        ids.push_back(bench().parts[link.part].id);
        shares.push_back(say("why.path.share", {{"part", ids.back()}, {"voltage", link.fall.text()}}));
    }
    if (shares.size() > 1) add(say("why.path.shares", {{"shares", sayList(shares, "list.comma")}}), ids);
}

/// What holds the current back: the resistance with most voltage on the way.
void Explainer::sayLimit(const CurrentPath& path) {
    const PathLink* strongest = nullptr;
    for (const PathLink& link : path.links) {
        if (resistanceValue(*bench().parts[link.part].kind) < 0) continue;
        if (strongest == nullptr || link.volt > strongest->volt) strongest = &link;
    }
    if (strongest == nullptr) {
        if (!path.sources.empty() && needsResistor(*self().kind))
            add(say("why.limit.none", {{"part", self().id}}), {self().id});
        return;
    }
    if (!strongest->fall.isKnown()) return;
    const Part& resistor = bench().parts[strongest->part];
    const double ohm = resistor.value(resistanceValue(*resistor.kind));
    const Figure own = snapshot_.shown().through(index_).in;
    const std::string voltage = strongest->fall.text(), current = strongest->current.text();
    const std::string resistance = formatSetting(ohm, "ohm");
    add(own.steps() == strongest->current.steps()
            ? say("why.limit.sets",
                  {{"resistorId", resistor.id}, {"voltage", voltage}, {"resistance", resistance}, {"current", current}})
            : say("why.limit.divided", {{"resistorId", resistor.id},
                                        {"voltage", voltage},
                                        {"resistance", resistance},
                                        {"current", current},
                                        {"part", self().id},
                                        {"own", own.text()}}),
        {resistor.id}, holesOf(resistor));
}

/// Other resistances that make a light brighter and overload nothing.
void Explainer::offerResistance() {
    if (usualAmpere(snapshot_, index_) <= 0) return offerFindings();
    for (Mend& mend : resistanceMends(snapshot_, index_, kBrightShare * usualAmpere(snapshot_, index_), drawer_)) {
        const auto mended = apply(bench(), mend.edit);
        if (!mended) continue;
        const auto then = evaluate(std::make_shared<const Bench>(mended->bench), *snapshot_.inputs);
        const bool brighter =
            then->status() == Status::Solved && then->brightness(index_) > snapshot_.brightness(index_);
        if (!brighter || overloads(*then)) continue;
        answer_.remedies.push_back(
            {std::move(mend.text), outcomeInWords(*then), std::move(mend.edit), snapshot_.inputs->held});
        return;
    }
    offerFindings();
}

/// Mends of findings after which the part is within what it bears, or brighter than before.
void Explainer::offerFindings() {
    for (const Finding& finding : inspect(snapshot_, drawer_).findings) {
        if (!finding.mend) continue;
        const auto mended = apply(bench(), finding.mend->edit);
        if (!mended) continue;
        const auto then = evaluate(std::make_shared<const Bench>(mended->bench), *snapshot_.inputs);
        const int part = then->layout->bench->partIndex(self().id);
        if (part < 0 || then->status() != Status::Solved || overloads(*then) || !works(*then, part)) continue;
        const bool eased = overloads(snapshot_) || then->brightness(part) > snapshot_.brightness(index_);
        if (!eased && !self().kind->isSupply) continue;
        add(finding.text, finding.parts, finding.holes);
        answer_.remedies.push_back(
            {finding.mend->text, outcomeInWords(*then), finding.mend->edit, snapshot_.inputs->held});
        return;
    }
}

}  // namespace tiepoint
