// Supplies that fight: one drives current backwards through another, which a battery answers with heat and a bench supply with harm. Two that
// hold different voltages between the same two pieces of metal fight even while a limit keeps their current small.

#include "core/base/quantity.h"
#include "core/base/stopping.h"
#include "core/circuit/element.h"
#include "core/edit/holes.h"
#include "core/findings/figure_words.h"
#include "core/findings/least_path.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace tiepoint {
namespace {

/// Less than this is how two equal sources settle, not a fight.
constexpr double kFightAmpere = 1e-3;

/// The supply that gives most at one instant, or -1.
int giverOf(const Snapshot& snapshot) {
    int giver = -1;
    double most = 0;
    for (const Giver& supply : delivery(snapshot).supplies) {
        if (giver >= 0 && supply.watt <= most) continue;
        giver = supply.part;
        most = supply.watt;
    }
    return giver;
}

/// Supplies fight over a path of metal: each jumper on it may be the one that lies wrong.
void proposeJumpers(const Examination& examination, const Position& position, int giver, int taker, Suspicion& found) {
    const Layout& layout = examination.layout();
    NearZeroPaths paths(*position.snapshot);
    for (int lead = 0; lead < static_cast<int>(examination.part(giver).leads.size()); ++lead) {
        for (int other = 0; other < static_cast<int>(examination.part(taker).leads.size()); ++other) {
            const int from = layout.leadIndex(giver, lead), to = layout.leadIndex(taker, other);
            const auto path = paths.between(layout.jointOfLead[from], layout.jointOfLead[to]);
            if (!path) continue;
            for (const std::string& id : path->parts) {
                const int jumper = examination.bench().jumperIndex(id);
                if (jumper < 0) continue;
                if (std::ranges::find(found.finding.parts, id) == found.finding.parts.end())
                    found.finding.parts.push_back(id);
                for (Move& move : movesOfJumper(examination, jumper)) {
                    found.proposals.push_back(
                        {say("mend.put", {{"plug", move.what}, {"hole", holeName(examination.bench(), move.to)}}),
                         std::move(move.edit)});
                }
                found.proposals.push_back(
                    {say("mend.takeAway", {{"thing", id}}), removeEdit(examination.bench(), {id})});
            }
        }
    }
}

/// A supply that is on, as it was solved.
struct OnSource {
    int part;
    int plusJoint, minusJoint;
    double emfVolt = 0, seriesOhm = 0;
};

std::vector<OnSource> sourcesOn(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::vector<OnSource> found;
    for (const ElementState element : snapshot.solution.elements()) {
        const PartKind& kind = *layout.bench->parts[element.part].kind;
        const ElementSpec& spec = kind.model[element.spec];
        const int plus = kind.leadIndex(spec.from()), minus = kind.leadIndex(spec.to());
        const bool counts = kind.isSupply && element.closed && findElement(spec.element) == &kSupplyElement;
        if (!counts || plus < 0 || minus < 0) continue;
        OnSource source{element.part, layout.jointOfLead[layout.leadIndex(element.part, plus)],
                        layout.jointOfLead[layout.leadIndex(element.part, minus)]};
        for (const auto& [name, figure] : element.constants) {
            if (name == "voltage") source.emfVolt = figure;
            if (name == "seriesResistance") source.seriesOhm = figure;
        }
        found.push_back(source);
    }
    return found;
}

/// What metal makes of two supplies: side by side, or in a ring.
struct SupplyClash {
    const OnSource *stronger, *weaker;
    bool ring;
};

/// Pairs whose ends metal joins, and that without limits would push more than kFightAmpere.
std::vector<SupplyClash> clashesOf(const Snapshot& snapshot, const std::vector<OnSource>& sources) {
    std::vector<SupplyClash> found;
    if (snapshot.status() != Status::Solved || sources.size() < 2) return found;
    NearZeroPaths paths(snapshot);
    for (std::size_t i = 0; i < sources.size(); ++i) {
        for (std::size_t j = i + 1; j < sources.size(); ++j) {
            stopIfAsked();
            const OnSource &a = sources[i], &b = sources[j];
            for (const bool ring : {false, true}) {
                const auto upper = paths.between(a.plusJoint, ring ? b.minusJoint : b.plusJoint);
                const auto lower =
                    upper ? paths.between(a.minusJoint, ring ? b.plusJoint : b.minusJoint) : std::nullopt;
                if (!lower) continue;
                const double volt = ring ? a.emfVolt + b.emfVolt : std::abs(a.emfVolt - b.emfVolt);
                const double ohm = a.seriesOhm + b.seriesOhm + upper->ohm + lower->ohm;
                if (!(volt > kFightAmpere * ohm)) continue;
                const bool firstIsWeaker = a.emfVolt < b.emfVolt;
                found.push_back({firstIsWeaker ? &b : &a, firstIsWeaker ? &a : &b, ring});
            }
        }
    }
    return found;
}

std::string clashInWords(const Bench& bench, const SupplyClash& clash) {
    const std::string &strong = bench.parts[clash.stronger->part].id, &weak = bench.parts[clash.weaker->part].id;
    if (clash.ring) return say("finding.fight.ring", {{"one", strong}, {"other", weak}});
    return say("finding.fight.voltages", {{"one", strong},
                                          {"other", weak},
                                          {"voltage", formatSetting(clash.stronger->emfVolt, "V")},
                                          {"otherVoltage", formatSetting(clash.weaker->emfVolt, "V")}});
}

/// Between a supply that gives and one that takes: what may be moved, or switched off.
void proposeParting(const Examination& examination, const Position& position, int giver, int taker, Suspicion& found) {
    proposeJumpers(examination, position, giver, taker, found);
    const Part& part = examination.part(taker);
    if (part.kind->stateIndex("on") < 0) return;
    found.proposals.push_back(
        {say("mend.switchOff", {{"supply", part.id}}), setStateEdit(examination.bench(), part.id, "on", 0)});
}

}  // namespace

Suspicions findSupplyConflicts(const Examination& examination) {
    Suspicions all;
    std::set<int> told;
    const auto tell = [&](const Position& position, int giver, int taker, const std::string& text) {
        const Part& part = examination.part(taker);
        const ShownFigures& shown = position.snapshot->shown();
        Suspicion found;
        found.finding.parts = {part.id, examination.part(giver).id};
        found.finding.holes = holesOf(part);
        found.finding.text = saidOf(text, position);
        addFigure(found.finding, "current", shown.through(taker).in);
        addFigure(found.finding, "power", shown.power(taker));
        proposeParting(examination, position, giver, taker, found);
        all.push_back(std::move(found));
    };
    for (const Position& position : examination.positions()) {
        const Snapshot& snapshot = *position.snapshot;
        const int giver = giverOf(snapshot);
        for (int index = 0; giver >= 0 && index < examination.partCount(); ++index) {
            const Part& taker = examination.part(index);
            const bool takes = taker.kind->isSupply && snapshot.partPower[index] > 0 &&
                               currentThrough(snapshot, index).inAmpere > kFightAmpere;
            if (!takes || !told.insert(index).second) continue;
            tell(position, giver, index,
                 say("finding.fight.pushes", {{"one", examination.part(giver).id},
                                              {"other", taker.id},
                                              {"current", snapshot.shown().through(index).in.text()}}));
        }
        const auto sources = sourcesOn(snapshot);
        for (const SupplyClash& clash : clashesOf(snapshot, sources)) {
            const int taker = clash.weaker->part;
            if (!told.contains(clash.stronger->part) && told.insert(taker).second)
                tell(position, clash.stronger->part, taker, clashInWords(examination.bench(), clash));
        }
    }
    return all;
}

}  // namespace tiepoint
