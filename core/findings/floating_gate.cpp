// A lead that nothing holds: a gate that is insulated inside, in a net where nothing that conducts ends while the switches stand so. It keeps
// any charge, and the part switches when a hand comes near. Told in words of the position; without a mend, for only the builder knows to
// which side it should fall.

#include "core/circuit/element.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

/// Whether an element of a part holds the voltage of a net: it is there, conducts at rest, and ends there at a lead that isn't insulated.
bool holdsGate(const Snapshot& snapshot, const ElementState& element, int net) {
    const Layout& layout = *snapshot.layout;
    const Part& part = layout.bench->parts[static_cast<std::size_t>(element.part)];
    if (!element.closed || looksOn(part)) return false;
    const ElementSpec& spec = part.kind->model[static_cast<std::size_t>(element.spec)];
    if (spec.element == CapacitanceLaw::kElement.name) return false;
    return std::ranges::any_of(spec.between, [&](const std::string& node) {
        const int lead = part.kind->leadIndex(node);
        if (lead < 0 || part.kind->leads[static_cast<std::size_t>(lead)].insulated) return false;
        return layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(element.part, lead))] == net;
    });
}

/// The first position in which nothing holds the net of a lead that is plugged in.
const Position* whereItFloats(const Examination& examination, int net) {
    for (const Position& position : examination.positions()) {
        if (position.snapshot->status() != Status::Solved) continue;
        bool held = false;
        for (const ElementState element : position.snapshot->solution.elements())
            held = held || holdsGate(*position.snapshot, element, net);
        if (!held) return &position;
    }
    return nullptr;
}

std::optional<Suspicion> floatingLead(const Examination& examination, int index, int lead) {
    const Part& part = examination.part(index);
    const Layout& layout = examination.layout();
    const bool inUse = std::ranges::any_of(part.leads, [](const auto& hole) { return hole.has_value(); });
    const Position* position =
        inUse ? whereItFloats(examination, layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(index, lead))])
              : nullptr;
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
