// More current than a part, or the board's own metal, bears. A remark above an LED's usual current, a fault above its maximum. Of the
// parts of one chain, all with the same current, the one that suffers most is named.

#include "core/base/quantity.h"
#include "core/bench/resolve.h"
#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/rules.h"
#include "core/findings/shorted.h"
#include "core/findings/trial.h"
#include "core/parts/preferred.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace tiepoint {
namespace {

/// What one contact and one strip of a solderless board bear (common practice).
constexpr double kMetalMaximumAmpere = 1.0;
/// Mends aim a little under the usual current of a light, and well under another part's maximum.
constexpr double kLightShare = 0.75;
constexpr double kPartShare = 0.8;
/// Metal that carries this share of the largest current carries the same.
constexpr double kEqualShare = 0.99;
/// A resistor beside a part counts as its own if it carries a good part of its current, and no more.
constexpr double kLeastShare = 0.3;
constexpr double kMostShare = 1.05;

double targetFor(const Part& part, const Excess& excess) {
    if (part.kind->emitsLight) return kLightShare * ratedCurrentAmpere(part);
    return kPartShare * excess.share.limit;
}

/// The resistance that ought to hold a part's current back: the smallest in its chain, else of those that end beside it the one that
/// carries most; -1 without one.
int resistorFor(const Snapshot& snapshot, int part) {
    const Layout& layout = *snapshot.layout;
    const auto valueOf = [&](int other) {
        const Part& each = layout.bench->parts[other];
        const int value = resistanceValue(*each.kind);
        return value < 0 ? std::numeric_limits<double>::infinity() : each.value(value);
    };
    int best = -1;
    for (const int other : chainOf(snapshot, part)) {
        if (std::isfinite(valueOf(other)) && (best < 0 || valueOf(other) < valueOf(best))) best = other;
    }
    if (best >= 0) return best;
    const double least = kLeastShare * currentThrough(snapshot, part).inAmpere;
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
        for (int other = 0; other < layout.leadCount(); ++other) {
            const int owner = layout.partOfLead(other);
            if (layout.netOfLead[other] != layout.netOfLead[lead] || !std::isfinite(valueOf(owner))) continue;
            const double ampere = currentThrough(snapshot, owner).inAmpere;
            const bool enters =
                std::abs(ampere) <= kMostShare * currentThrough(snapshot, part).inAmpere && ampere >= least;
            if (enters && (best < 0 || ampere > currentThrough(snapshot, best).inAmpere)) best = owner;
        }
    }
    return best;
}

std::string sentence(const Part& part, const Part* resistor, const Excess& excess) {
    const std::string limit = limitInWords(excess);
    const std::string who = bearerInWords(part, *excess.share.rating), current = excessInWords(excess);
    if (!excess.share.rating->maximum) {
        return say("finding.over.rated", {{"part", who}, {"current", current}, {"limit", limit}});
    }
    if (resistor != nullptr) {
        const double ohm = resistor->value(resistanceValue(*resistor->kind));
        return say("finding.over.resistor", {{"part", who},
                                             {"current", current},
                                             {"limit", limit},
                                             {"resistorId", resistor->id},
                                             {"resistance", formatSetting(ohm, "ohm")}});
    }
    if (part.kind->needsResistor)
        return say("finding.over.noResistor", {{"part", part.id}, {"current", current}, {"limit", limit}});
    return say("finding.over.current", {{"part", who}, {"current", current}, {"limit", limit}});
}

/// Larger values for a resistor that shares its work with others.
void proposeLarger(const Bench& bench, const Part& resistor, double byShare, const ResistorDrawer& drawer,
                   Suspicion& found) {
    const ValueSpec& spec = resistor.kind->values[resistanceValue(*resistor.kind)];
    constexpr int kTries = 6;
    for (const double ohm : drawer.from(resistor.value(resistanceValue(*resistor.kind)) * byShare, kTries)) {
        if (ohm > spec.maximum) return;
        found.proposals.push_back({say("mend.take", {{"value", formatSetting(ohm, "ohm")}, {"part", resistor.id}}),
                                   setValueEdit(bench, resistor.id, spec.name, ohm)});
    }
}

Suspicion suspicionOfExcess(const Examination& examination, const Excess& excess) {
    const Part& part = examination.part(excess.part);
    const Snapshot& snapshot = *excess.position->snapshot;
    const int index = resistorFor(snapshot, excess.part);
    const Part* resistor = index < 0 || index == excess.part ? nullptr : &examination.part(index);
    Suspicion found;
    found.finding.severity = excess.share.rating->maximum ? Severity::Fault : Severity::Remark;
    found.finding.parts = {part.id};
    if (resistor != nullptr) found.finding.parts.push_back(resistor->id);
    found.finding.holes = holesOf(part);
    found.finding.text = saidOf(sentence(part, resistor, excess), *excess.position);
    addFigure(found.finding, "current", excess.shown(), excess.share.limit);
    const double target = targetFor(part, excess);
    found.proposals = index < 0 ? insertionMends(snapshot, excess.part, target, examination.drawer())
                                : resistanceMends(snapshot, excess.part, target, examination.drawer());
    if (found.proposals.empty() && resistor != nullptr)
        proposeLarger(examination.bench(), *resistor, excess.share.share(), examination.drawer(), found);
    return found;
}

/// The piece of metal that carries most beyond its maximum, in the first position that has one.
std::optional<Suspicion> metalSuspicion(const Examination& examination) {
    const Layout& layout = examination.layout();
    for (const Position& position : examination.allInstants()) {
        if (position.snapshot->status() != Status::Solved || isShorted(*position.snapshot)) continue;
        const auto& amperes = position.snapshot->pieceCurrent;
        const auto worst = std::ranges::max_element(amperes, {}, [](double ampere) { return std::abs(ampere); });
        if (worst == amperes.end() || std::abs(*worst) <= kMetalMaximumAmpere) continue;
        // Of a strip and a jumper with the same current the jumper is named: people see it.
        const auto same = std::ranges::find_if(layout.pieces, [&](const Piece& each) {
            const double ampere = amperes[&each - layout.pieces.data()];
            return each.kind == PieceKind::Jumper && std::abs(ampere) > kEqualShare * std::abs(*worst);
        });
        const Figure shown =
            position.snapshot->shown().pieceCurrent(static_cast<int>(worst - amperes.begin())).magnitude();
        const Piece& piece = same != layout.pieces.end() ? *same : layout.pieces[worst - amperes.begin()];
        Suspicion found;
        if (piece.kind == PieceKind::Jumper) found.finding.parts = {layout.bench->jumpers[piece.owner].id};
        if (piece.kind == PieceKind::Bridge)
            found.finding.parts = {layout.bench->parts[layout.partOfLead(piece.owner)].id};
        for (const int joint : {piece.from, piece.to}) {
            if (layout.joints[joint].hole >= 0) found.finding.holes.push_back(layout.holeAt(layout.joints[joint].hole));
        }
        found.finding.text = saidOf(
            say("finding.over.metal", {{"current", shown.text()}, {"limit", formatSetting(kMetalMaximumAmpere, "A")}}),
            position);
        addFigure(found.finding, "current", shown, kMetalMaximumAmpere);
        return found;
    }
    return std::nullopt;
}

}  // namespace

Suspicions findOverCurrent(const Examination& examination) {
    Suspicions found;
    std::set<int> told;
    auto all = excesses(examination, "current");
    // A light is what people look at: of a chain it is named before the button that carries the same current.
    std::stable_partition(all.begin(), all.end(),
                          [&](const Excess& each) { return examination.part(each.part).kind->emitsLight; });
    for (const Excess& excess : all) {
        if (told.contains(excess.part)) continue;
        for (const int other : chainOf(*excess.position->snapshot, excess.part)) told.insert(other);
        found.push_back(suspicionOfExcess(examination, excess));
    }
    if (auto metal = metalSuspicion(examination)) found.push_back(std::move(*metal));
    return found;
}

}  // namespace tiepoint
