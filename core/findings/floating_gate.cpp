// A lead that nothing holds: a gate that is insulated inside, in a net that nothing ties to its part or to a supply while the switches stand so. It keeps
// any charge, and the part switches when a hand comes near. Told in words of the position; without a mend, for only the builder knows to
// which side it should fall.

#include "core/base/disjoint_sets.h"
#include "core/circuit/element.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

/// Nets that hang together through what conducts at rest while the switches stand so: of each element that is there its leads, but for
/// insulated ones.
DisjointSets heldTogether(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    DisjointSets nets(static_cast<std::size_t>(layout.netCount));
    for (const ElementState element : snapshot.solution.elements()) {
        const Part& part = layout.bench->parts[static_cast<std::size_t>(element.part)];
        const ElementSpec& spec = part.kind->model[static_cast<std::size_t>(element.spec)];
        if (!element.closed || looksOn(part) || spec.element == CapacitanceLaw::kElement.name) continue;
        int first = -1;
        for (const std::string& node : spec.between) {
            const int lead = part.kind->leadIndex(node);
            if (lead < 0 || part.kind->leads[static_cast<std::size_t>(lead)].insulated) continue;
            const int net = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(element.part, lead))];
            if (first >= 0) nets.join(first, net);
            first = net;
        }
    }
    return nets;
}

/// The first position in which nothing ties a lead to another lead of its part or to a supply.
const Position* whereItFloats(const Examination& examination, int index, int lead) {
    for (const Position& position : examination.positions()) {
        if (position.snapshot->status() != Status::Solved) continue;
        const Layout& layout = *position.snapshot->layout;
        DisjointSets nets = heldTogether(*position.snapshot);
        const auto rootOf = [&](int part, int of) {
            return nets.root(layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(part, of))]);
        };
        const int here = rootOf(index, lead);
        bool held = false;
        for (int part = 0; part < examination.partCount(); ++part) {
            const PartKind& kind = *examination.part(part).kind;
            for (int other = 0; other < static_cast<int>(kind.leads.size()); ++other) {
                const bool holds =
                    kind.isSupply || (part == index && !kind.leads[static_cast<std::size_t>(other)].insulated);
                held = held || (holds && rootOf(part, other) == here);
            }
        }
        if (!held) return &position;
    }
    return nullptr;
}

std::optional<Suspicion> floatingLead(const Examination& examination, int index, int lead) {
    const Part& part = examination.part(index);
    const bool inUse = std::ranges::any_of(part.leads, [](const auto& hole) { return hole.has_value(); });
    const Position* position = inUse ? whereItFloats(examination, index, lead) : nullptr;
    if (position == nullptr) return std::nullopt;
    Suspicion found;
    Finding& finding = found.finding;
    finding.severity = Severity::Risk;
    finding.parts = {part.id};
    if (const auto& hole = part.leads[static_cast<std::size_t>(lead)]) finding.holes = {*hole};
    const std::string& name = part.kind->leads[static_cast<std::size_t>(lead)].name;
    finding.text = saidOf(say("finding.floatingLead", {{"part", part.id}, {"lead", name}}), *position) + " " +
                   say("finding.floatingLead.do");
    return found;
}

}  // namespace

Suspicions findFloatingLeads(const Examination& examination) {
    Suspicions found;
    for (int index = 0; index < examination.partCount(); ++index) {
        const auto& leads = examination.part(index).kind->leads;
        for (std::size_t lead = 0; lead < leads.size(); ++lead) {
            if (!leads[lead].insulated) continue;
            if (auto floating = floatingLead(examination, index, static_cast<int>(lead)))
                found.push_back(*std::move(floating));
        }
    }
    return found;
}

}  // namespace tiepoint
