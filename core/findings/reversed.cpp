// An LED, a diode or a supply the wrong way round: a junction that blocks in every position of the switches.
//
// A diode that blocks is often meant to. It is told only where a light is dark near it, and the light lights with the diode
// turned; inspect() proves the latter, so here a diode is suspected only beside an LED that is dark for no reason of its own.

#include "core/base/quantity.h"
#include "core/circuit/element.h"
#include "core/findings/figure_words.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>

namespace tiepoint {
namespace {

/// Less than this across a blocking junction is a circuit that rests, not one that pushes the wrong way (common practice).
constexpr double kBlockingVolt = 0.5;

struct Blocked {
    int part;
    double acrossVolt;      ///< the wrong way
    Figure anode, cathode;  ///< potentials as they are shown
};

bool isJunctionPart(const PartKind& kind) {
    return kind.leads.size() == 2 && std::ranges::any_of(kind.model, [](const ElementSpec& spec) {
               return findElement(spec.element) == &kJunctionElement;
           });
}

/// The position in which the part blocks most; nothing if it conducts in any or never blocks.
std::optional<Blocked> blocked(const Examination& examination, int part) {
    if (examination.mostAmpere(part) >= kVisibleAmpere) return std::nullopt;
    std::optional<Blocked> worst;
    for (const Position& position : examination.positions()) {
        const int anode = position.snapshot->layout->leadIndex(part, 0);
        const double across = position.snapshot->leadVoltage(anode + 1) - position.snapshot->leadVoltage(anode);
        if (std::isnan(across) || across < kBlockingVolt || (worst && across <= worst->acrossVolt)) continue;
        const ShownFigures& shown = position.snapshot->shown();
        worst = Blocked{part, across, shown.leadVolt(anode), shown.leadVolt(anode + 1)};
    }
    return worst;
}

/// Whether another junction lies across the same two nets the other way round: of such a pair one blocks on purpose.
bool hasOpposite(const Examination& examination, int part) {
    const Layout& layout = examination.layout();
    const int first = layout.firstLead[part];
    for (int other = 0; other < examination.partCount(); ++other) {
        const int lead = layout.firstLead[other];
        if (isJunctionPart(*examination.part(other).kind) && layout.netOfLead[lead] == layout.netOfLead[first + 1] &&
            layout.netOfLead[lead + 1] == layout.netOfLead[first]) {
            return other != part;
        }
    }
    return false;
}

/// In a circuit that nothing ties to the reference no voltage is known; there a dark light is tried the other way round.
std::optional<double> amperesTurned(const Examination& examination, int light) {
    const int anode = examination.layout().leadIndex(light, 0);
    if (!std::isnan(examination.now().leadVoltage(anode)) || !std::isnan(examination.now().leadVoltage(anode + 1)))
        return std::nullopt;
    const auto bench = examination.after(exchangeLeads(examination.part(light)));
    if (!bench) return std::nullopt;
    const double ampere = Examination(*evaluate(bench, *examination.now().inputs)).mostAmpere(light);
    return ampere >= kVisibleAmpere ? std::optional(ampere) : std::nullopt;
}

Suspicion floatingSuspicion(const Part& part, double ampereTurned) {
    Suspicion found;
    found.finding.parts = found.darkens = {part.id};
    found.finding.holes = holesOf(part);
    found.finding.text =
        say("finding.reversed.floating", {{"part", part.id}, {"current", formatQuantity(ampereTurned, "A")}});
    found.finding.figures = {{"current turned round", ampereTurned}};
    found.proposals.push_back({say("mend.turnRound", {{"parts", part.id}}), exchangeLeads(part)});
    return found;
}

/// Whether the supply's leads are in rails printed with the other sign.
bool isPrintedWrong(const Part& supply) {
    const auto in = [&](int lead, Line one, Line other) {
        return lead < static_cast<int>(supply.leads.size()) && supply.leads[lead] &&
               (supply.leads[lead]->line == one || supply.leads[lead]->line == other);
    };
    return in(0, Line::TopMinus, Line::BottomMinus) && in(1, Line::TopPlus, Line::BottomPlus);
}

Mend turning(const Part& part) { return {say("mend.turnRound", {{"parts", part.id}}), exchangeLeads(part)}; }

Suspicion supplySuspicion(const Examination& examination, const Part& supply, const std::vector<Blocked>& all) {
    Suspicion found;
    found.finding.parts = {supply.id};
    found.finding.holes = holesOf(supply);
    found.finding.text = say("finding.reversed.supply", {{"supply", supply.id}, {"lead", supply.kind->leads[0].name}});
    for (const Blocked& each : all) {
        if (examination.part(each.part).kind->emitsLight) found.darkens.push_back(examination.part(each.part).id);
    }
    if (!all.empty()) addFigure(found.finding, "reverse", all.front().cathode - all.front().anode);
    found.proposals.push_back(turning(supply));
    return found;
}

Suspicion suspicionOfReversed(const Examination& examination, const Blocked& one, const std::vector<Blocked>& all) {
    const Part& part = examination.part(one.part);
    Suspicion found;
    found.finding.parts = {part.id};
    found.finding.holes = holesOf(part);
    found.finding.text = say("finding.reversed", {{"part", part.id},
                                                  {"one", part.kind->leads[0].name},
                                                  {"voltage", one.anode.text()},
                                                  {"other", part.kind->leads[1].name},
                                                  {"otherVoltage", one.cathode.text()}});
    addFigure(found.finding, part.kind->leads[0].name, one.anode);
    addFigure(found.finding, part.kind->leads[1].name, one.cathode);
    found.darkens = examination.darkLightsNear(one.part);
    if (part.kind->emitsLight) found.darkens = {part.id};
    found.proposals.push_back(turning(part));
    if (all.size() > 1) {  // two in a row block together: turning one alone lights nothing
        Edit edit{say("history.turnParts"), {}};
        std::vector<std::string> ids;
        for (const Blocked& each : all) {
            const Part& other = examination.part(each.part);
            edit.operations.push_back(exchangeLeads(other).operations.front());
            ids.push_back(other.id);
        }
        found.proposals.push_back({say("mend.turnRound", {{"parts", sayList(ids, "list.and")}}), std::move(edit)});
    }
    return found;
}

}  // namespace

Suspicions findReversed(const Examination& examination) {
    std::vector<Blocked> lights, diodes;
    for (int part = 0; part < examination.partCount(); ++part) {
        if (!isJunctionPart(*examination.part(part).kind) || hasOpposite(examination, part)) continue;
        const bool light = examination.part(part).kind->emitsLight;
        const auto& dark = examination.darkLights();
        if (light && std::ranges::find(dark, part) == dark.end()) continue;
        if (const auto found = blocked(examination, part)) (light ? lights : diodes).push_back(*found);
    }
    std::vector<Blocked> all = lights;
    all.insert(all.end(), diodes.begin(), diodes.end());

    Suspicions floating, found;
    for (const int light : examination.darkLights()) {
        if (!isJunctionPart(*examination.part(light).kind) || hasOpposite(examination, light)) continue;
        if (const auto ampere = amperesTurned(examination, light))
            floating.push_back(floatingSuspicion(examination.part(light), *ampere));
    }
    if (!lights.empty() || !floating.empty()) {
        for (const Part& part : examination.bench().parts) {
            if (!part.kind->isSupply || !isPrintedWrong(part)) continue;
            found.push_back(supplySuspicion(examination, part, lights));
            for (const Suspicion& each : floating) found.back().darkens.push_back(each.darkens.front());
        }
    }
    std::ranges::move(floating, std::back_inserter(found));
    for (const Blocked& each : lights) found.push_back(suspicionOfReversed(examination, each, all));
    for (const Blocked& each : diodes) {
        Suspicion one = suspicionOfReversed(examination, each, all);
        if (!one.darkens.empty()) found.push_back(std::move(one));
    }
    return found;
}

}  // namespace tiepoint
