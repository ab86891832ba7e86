// Plus and minus of one supply joined by metal, or by next to no resistance: nothing limits the current but the supply itself.
//
// A supply in current limit alone is no short circuit: driving an LED from a limited supply is honest practice. A path of
// metal is one even while the supply is off, and better said before it is switched on.

#include "core/base/stopping.h"
#include "core/behaviour/supply_nets.h"
#include "core/circuit/element.h"
#include "core/findings/figure_words.h"
#include "core/findings/least_path.h"
#include "core/findings/rules.h"
#include "core/findings/shorted.h"
#include "core/findings/trial.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace tiepoint {
namespace {

/// The two ends of a supply: leads (by index in the kind) between which its model has a source.
struct SupplyEnds {
    int from, to;
};

std::vector<SupplyEnds> supplyEndsOf(const PartKind& kind) {
    std::vector<SupplyEnds> ends;
    for (const ElementSpec& spec : kind.model) {
        const int from = kind.leadIndex(spec.from()), to = kind.leadIndex(spec.to());
        if (findElement(spec.element) == &kSupplyElement && from >= 0 && to >= 0) ends.push_back({from, to});
    }
    return ends;
}

/// The ammeter on a path; null without one.
const Part* ammeterOn(const Bench& bench, const ConductingPath& path) {
    for (const std::string& id : path.parts) {
        const Part* part = bench.findPart(id);
        if (part != nullptr && isMeter(*part->kind)) return part;
    }
    return nullptr;
}

std::string pathText(const Bench& bench, const ConductingPath& path) {
    if (path.parts.empty()) return say("finding.short.sameMetal");
    const std::string things = sayList(path.parts, "list.comma");
    const Part* meter = ammeterOn(bench, path);
    if (meter == nullptr) return say("finding.short.joins", {{"things", things}, {"count", path.parts.size()}});
    return say("finding.short.meter", {{"things", things}, {"count", path.parts.size()}, {"meter", meter->id}});
}

/// A meter that only measures volts joins nothing; else the bench without the one jumper that makes the short, where that is the only
/// thing on the path.
std::optional<Mend> mendFor(const Bench& bench, const ConductingPath& path) {
    if (const Part* meter = ammeterOn(bench, path)) {
        auto turned = turnDialEdit(bench, *meter, "voltage");
        return turned ? std::optional(Mend{say("mend.dialToVolts", {{"meter", meter->id}}), *std::move(turned)})
                      : std::nullopt;
    }
    if (path.parts.size() != 1 || bench.findJumper(path.parts.front()) == nullptr) return std::nullopt;
    const std::string& id = path.parts.front();
    return Mend{say("mend.takeAway", {{"thing", id}}), removeEdit(bench, {id})};
}

/// One supply's ends and the metal between them.
struct Short {
    int part;
    SupplyEnds ends;
    ConductingPath path;
};

/// Whether the supplies give so little that no path between any two of their ends can be a short: across kNearZeroOhm more would run.
bool surelyNone(const Snapshot& snapshot) {
    if (snapshot.status() != Status::Solved) return false;
    const Layout& layout = *snapshot.layout;
    double least = std::numeric_limits<double>::infinity(), given = 0;
    for (const SupplyNets& supply : supplyNets(layout)) {
        const double across =
            std::abs(snapshot.solution.netVoltage[supply.plus] - snapshot.solution.netVoltage[supply.minus]);
        if (std::isnan(across)) return false;
        least = std::min(least, across);
        for (int lead = layout.firstLead[supply.part]; lead < layout.firstLead[supply.part + 1]; ++lead)
            given += std::abs(snapshot.leadCurrent[lead]);
    }
    return given * kNearZeroOhm < least;
}

std::vector<Short> shortsOf(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::vector<Short> found;
    stopIfAsked();
    if (surelyNone(snapshot)) return found;
    NearZeroPaths paths(snapshot);
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) {
        const PartKind& kind = *layout.bench->parts[part].kind;
        if (!kind.isSupply) continue;
        for (const SupplyEnds ends : supplyEndsOf(kind)) {
            const auto path = paths.between(layout.jointOfLead[layout.leadIndex(part, ends.from)],
                                            layout.jointOfLead[layout.leadIndex(part, ends.to)]);
            if (path) found.push_back({part, ends, *path});
        }
    }
    return found;
}

Suspicion suspicionOfShort(const Position& position, const Short& made) {
    const Snapshot& snapshot = *position.snapshot;
    const Layout& layout = *snapshot.layout;
    const Part& supply = layout.bench->parts[made.part];
    const Figure ampere = snapshot.shown().leadCurrent(layout.leadIndex(made.part, made.ends.from)).magnitude();

    Suspicion found;
    Finding& finding = found.finding;
    finding.parts = {supply.id};
    finding.parts.insert(finding.parts.end(), made.path.parts.begin(), made.path.parts.end());
    finding.holes = made.path.holes;
    finding.alongMetal = true;
    const std::string text = say("finding.short", {{"plus", supply.kind->leads[made.ends.from].name},
                                                   {"minus", supply.kind->leads[made.ends.to].name},
                                                   {"supply", supply.id},
                                                   {"path", pathText(*layout.bench, made.path)}});
    finding.text = saidOf(text, position);
    finding.figures = {{"resistance", made.path.ohm}};
    if (snapshot.status() == Status::Solved) addFigure(finding, "current", ampere);
    if (const auto mend = mendFor(*layout.bench, made.path)) found.proposals.push_back(*mend);
    return found;
}

}  // namespace

bool isShorted(const Snapshot& snapshot) { return !shortsOf(snapshot).empty(); }

Suspicions findShortCircuits(const Examination& examination) {
    Suspicions found;
    std::set<int> told;  // a short that is there anyway isn't told again for each switch
    for (const Position& position : examination.positions()) {
        std::set<int> here;
        for (const Short& made : shortsOf(*position.snapshot)) {
            if (told.contains(made.part)) continue;
            here.insert(made.part);
            found.push_back(suspicionOfShort(position, made));
        }
        told.merge(here);
    }
    return found;
}

}  // namespace tiepoint
