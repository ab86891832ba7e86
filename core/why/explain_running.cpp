// Current runs through the part. How bright or how hot it is follows from the way of the current: what drives it, what holds it back,
// and what the part bears.

#include "core/base/quantity.h"
#include "core/circuit/element.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/why/explainer.h"

#include <fmt/format.h>

#include <algorithm>
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

/// How warm a part feels at a share of the power that it bears (common practice: at its rating a small resistor is too hot to touch).
std::string_view warmth(double share) {
    if (share > 1) return "burning hot";
    if (share > 0.5) return "too hot to touch for long";
    if (share > 0.2) return "warm";
    return "cool";
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
    answer_.question = fmt::format("Why is {} {}?", id,
                                   tooMuch                               ? "overloaded"
                                   : brightness > 0 && brightness < kDim ? "so dim"
                                                                         : "lit as it is");
    const double usual = usualAmpere(snapshot_, index_);
    if (tooMuch) {
        const bool far = most->share() > kFarAbove;
        add(fmt::format("{} carries {}; its maximum is {}.", id, far ? "far too much current" : ampere,
                        formatSetting(most->limit, "A")),
            {id});
    } else if (brightness > 0) {
        const std::string full =
            usual > 0 ? fmt::format("At its rated {} it shines at full brightness; now it", formatSetting(usual, "A"))
                      : "Compared with full brightness it";
        add(fmt::format("{} flows through {}. {} looks {:.0f} % as bright.", ampere, id, full, 100 * brightness), {id});
    } else {
        add(fmt::format("{} flows through {}: it shines, but in a light that eyes can't see.", ampere, id), {id});
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
    const std::string ampere = currentWords(snapshot_, index_), watt = snapshot_.shown().power(index_).text();
    const auto most = maximumOf(snapshot_, index_, "power");
    const std::string& id = self().id;
    answer_.figures.emplace_back("power", snapshot_.partPower[index_]);
    const CurrentPath path = pathThrough(snapshot_, index_);
    const auto link = std::ranges::find(path.links, index_, &PathLink::part);
    if (isSwitch(*self().kind)) {
        answer_.question = fmt::format("Why does current flow through {}?", id);
        add(fmt::format("{} is closed: joined, and {} passes.", id, ampere), {id});
    } else if (!most) {
        answer_.question = fmt::format("Why does current flow through {}?", id);
        add(fmt::format("{} flows through {} and turns {} into heat there.", ampere, id, watt), {id});
    } else {
        const std::string_view feels = warmth(most->share());
        answer_.figures.emplace_back("limit", most->limit);
        answer_.question = fmt::format("Why is {} {}?", id, feels);
        const bool far = most->share() > kFarAbove;
        const std::string across = link == path.links.end() || !link->fall.isKnown()
                                       ? ""
                                       : fmt::format("{} lies across it and ", link->fall.text());
        add(fmt::format("{}{} flows through it: that makes {} heat. It is rated for {}, so it is {}.", across, ampere,
                        far ? "far too much" : watt + " of", formatSetting(most->limit, "W"), feels),
            {id});
    }
    saySharing(path);
    const auto tightest = tightestRating(snapshot_, index_);
    if (tightest && tightest->rating->maximum && tightest->share() > kAboveMargin) {
        if (!most || tightest->rating != most->rating) {
            add(fmt::format("That is too much for {}: its maximum is {}.", id,
                            formatSetting(tightest->limit, tightest->unit)),
                {id});
        }
        offerFindings();
    }
}

void Explainer::explainSupply() {
    const std::string& id = self().id;
    const double watt = -snapshot_.partPower[index_];
    const CurrentPath path = pathThrough(snapshot_, index_);
    answer_.figures.emplace_back("power", watt);
    answer_.question = fmt::format("Why does {} give this current?", id);
    const Figure ampere = snapshot_.shown().through(index_).out, power = snapshot_.shown().power(index_);
    if (watt < 0) {
        add(fmt::format("{} takes current instead of giving it: another supply pushes {} into it.", id, ampere.text()),
            {id});
    } else {
        add(fmt::format("{} gives {}: {} in all.", id, ampere.text(), power.magnitude().text()), {id});
    }
    const bool limiting = std::ranges::any_of(snapshot_.solution.elements(), [&](const ElementState& element) {
        return element.part == index_ && element.limiting;
    });
    if (limiting)
        add(fmt::format("{} is at its current limit: the bench asks for more than it may give, so its voltage drops.",
                        id),
            {id});
    if (path.links.empty() && !path.sources.empty())
        add(fmt::format("Most of it goes through metal alone, from plus of {} straight to its minus.", id), {id});
    if (!path.links.empty()) add(fmt::format("Most of it flows through {}, and back.", wayInWords(path)));
    if (limiting || watt < 0) offerFindings();
}

/// Where the current comes from and how the voltage is shared out on its way. What is told adds up: only what rounds to nothing is left out.
void Explainer::saySharing(const CurrentPath& path) {
    if (path.sources.empty() || path.links.empty()) return;
    std::vector<std::string> sources, sourceIds;
    for (const PathLink& source : path.sources) {
        sourceIds.push_back(bench().parts[source.part].id);
        sources.push_back(sourceIds.back() +
                          (source.fall.isKnown() ? fmt::format(" ({})", (-source.fall).text()) : std::string()));
    }
    add(fmt::format("The current comes from {}, flows through {}, and goes back.", fmt::join(sources, " and "),
                    wayInWords(path)),
        sourceIds);
    std::vector<std::string> shares, ids;
    for (const PathLink& link : path.links) {
        if (!link.fall.isKnown() || link.fall.isZero()) continue;
        ids.push_back(bench().parts[link.part].id);
        shares.push_back(fmt::format("{} {}", ids.back(), link.fall.text()));
    }
    if (shares.size() > 1) add(fmt::format("They share the voltage: {}.", fmt::join(shares, ", ")), ids);
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
            add(fmt::format("Nothing on the way holds the current back: {} needs a resistor.", self().id), {self().id});
        return;
    }
    if (!strongest->fall.isKnown()) return;
    const Part& resistor = bench().parts[strongest->part];
    const double ohm = resistor.value(resistanceValue(*resistor.kind));
    const Figure own = snapshot_.shown().through(index_).in;
    std::string text = fmt::format("{} sets how much: {} divided by its {} is about {}", resistor.id,
                                   strongest->fall.text(), formatSetting(ohm, "ohm"), strongest->current.text());
    text += own.steps() != strongest->current.steps() ? fmt::format(", and {} gets {} of it.", self().id, own.text())
                                                      : ". More ohms, less current, less light.";
    add(std::move(text), {resistor.id}, holesOf(resistor));
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
