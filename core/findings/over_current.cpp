// More current than a part, or the board's own metal, bears. A remark above an LED's usual current, a fault above its maximum. Of the
// parts of one chain, all with the same current, the one that suffers most is named.

#include "core/findings/over_limit.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/rules.h"
#include "core/findings/shorted.h"
#include "core/findings/trial.h"

#include "core/base/quantity.h"
#include "core/parts/derivation.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace tiepoint {
namespace {

/// What one contact and one strip of a solderless board bear (common practice).
constexpr double kMetalMaximumAmpere = 1.0;
/// Mends aim a little under the usual current of a light, and well under another part's maximum.
constexpr double kLightShare = 0.75;
constexpr double kPartShare = 0.8;

double targetFor(const Part& part, const Excess& excess) {
    if (part.kind->emitsLight) return kLightShare * ratedCurrentAmpere(part);
    return kPartShare * excess.share.limit;
}

bool hasResistor(const Snapshot& snapshot, int part) {
    return std::ranges::any_of(chainOf(snapshot, part), [&](int other) {
        return resistanceValue(*snapshot.layout->bench->parts[other].kind) >= 0;
    });
}

std::string sentence(const Part& part, const Excess& excess, bool unlimited) {
    const std::string limit = formatSetting(excess.share.limit, "A");
    if (!excess.share.rating->maximum) {
        return fmt::format("{} carries {}, more than the {} it is made for.", part.id, excessInWords(excess), limit);
    }
    if (unlimited && part.kind->needsResistor) {
        return fmt::format("{} has no resistor to hold its current back: it would get {}, and it bears at most {}.", part.id,
                           excessInWords(excess), limit);
    }
    return fmt::format("{} would get {}: it bears at most {}.", part.id, excessInWords(excess), limit);
}

Suspicion suspicion(const Examination& examination, const Excess& excess) {
    const Part& part = examination.part(excess.part);
    const Snapshot& snapshot = *excess.position->snapshot;
    const bool unlimited = !hasResistor(snapshot, excess.part);
    Suspicion found;
    found.finding.severity = excess.share.rating->maximum ? Severity::Fault : Severity::Remark;
    found.finding.parts = {part.id};
    found.finding.holes = holesOf(part);
    found.finding.text = saidOf(sentence(part, excess, unlimited), *excess.position);
    found.finding.figures = {{"current", excess.share.figure}, {"limit", excess.share.limit}};
    const double target = targetFor(part, excess);
    found.proposals = unlimited ? insertionMends(snapshot, excess.part, target) : resistanceMends(snapshot, excess.part, target);
    return found;
}

/// The piece of metal that carries most beyond its maximum, in the first position that has one.
std::optional<Suspicion> metalSuspicion(const Examination& examination) {
    const Layout& layout = examination.layout();
    for (const Position& position : examination.positions()) {
        if (position.snapshot->status() != Status::Solved || isShorted(*position.snapshot)) continue;
        const auto& amperes = position.snapshot->pieceCurrent;
        const auto worst = std::ranges::max_element(amperes, {}, [](double ampere) { return std::abs(ampere); });
        if (worst == amperes.end() || std::abs(*worst) <= kMetalMaximumAmpere) continue;
        const Piece& piece = layout.pieces[worst - amperes.begin()];
        Suspicion found;
        if (piece.kind == PieceKind::Jumper) found.finding.parts = {layout.bench->jumpers[piece.owner].id};
        if (piece.kind == PieceKind::Bridge) found.finding.parts = {layout.bench->parts[layout.partOfLead(piece.owner)].id};
        for (const int joint : {piece.from, piece.to}) {
            if (layout.joints[joint].hole >= 0) found.finding.holes.push_back(layout.holeAt(layout.joints[joint].hole));
        }
        found.finding.text = saidOf(fmt::format("{} would run through one contact of the board: it bears about {}.",
                                                formatQuantity(std::abs(*worst), "A"), formatSetting(kMetalMaximumAmpere, "A")),
                                    position);
        found.finding.figures = {{"current", std::abs(*worst)}, {"limit", kMetalMaximumAmpere}};
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
    std::ranges::stable_partition(all, [&](const Excess& each) { return examination.part(each.part).kind->emitsLight; });
    for (const Excess& excess : all) {
        if (told.contains(excess.part)) continue;
        for (const int other : chainOf(*excess.position->snapshot, excess.part)) told.insert(other);
        found.push_back(suspicion(examination, excess));
    }
    if (auto metal = metalSuspicion(examination)) found.push_back(std::move(*metal));
    return found;
}

}  // namespace tiepoint
