// A lead alone in its net, or hanging free: open circuit, no complete path. Legs that are one piece of metal inside a part count
// once, and a part with three or more sides may leave some unused (a changeover switch as a plain one). Supplies are left out:
// a bench may keep one in reserve; so are meters, whose leads touch one place after the other.

#include "core/base/capital.h"
#include "core/edit/holes.h"
#include "core/findings/joining.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/meter/meter.h"
#include "core/parts/sides.h"
#include "core/words/words.h"

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

std::string lonelyLead(const Bench& bench, const Part& part, int lead) {
    const std::string what = capitalised(leadInWords(part, lead));
    if (!part.leads[lead]) return say("finding.alone.hangs", {{"lead", what}});
    return say("finding.alone.inHole", {{"lead", what}, {"hole", holeName(bench, *part.leads[lead])}});
}

/// A jumper from the lead's net to a strip where nothing else is plugged in, and that place.
struct DeadEnd {
    std::string jumper;
    Hole hole;
};
std::optional<DeadEnd> deadEndFrom(const Examination& examination, int net) {
    const Layout& layout = examination.layout();
    std::vector<int> plugged(layout.netOfStrip.size(), 0);
    for (const Joint& joint : layout.joints) {
        if (joint.hole >= 0) ++plugged[layout.stripOfHole[joint.hole]];
    }
    for (std::size_t j = 0; j < examination.bench().jumpers.size(); ++j) {
        for (const int end : layout.jumperJoints[j]) {
            const Joint& joint = layout.joints[end];
            if (joint.net != net || joint.hole < 0 || plugged[layout.stripOfHole[joint.hole]] != 1) continue;
            return DeadEnd{examination.bench().jumpers[j].id, layout.holeAt(joint.hole)};
        }
    }
    return std::nullopt;
}

Suspicion suspicionOfLead(const Examination& examination, int index, const std::vector<int>& alone, bool loose) {
    const Part& part = examination.part(index);
    Suspicion found;
    Finding& finding = found.finding;
    finding.parts = {part.id};
    for (const int lead : alone) {
        if (part.leads[lead]) finding.holes.push_back(*part.leads[lead]);
    }
    found.darkens = examination.darkLightsNear(index);
    finding.severity = loose || found.darkens.empty() ? Severity::Remark : Severity::Fault;
    if (loose) {
        finding.text = say("finding.alone.parked", {{"part", part.id}});
    } else {
        finding.text = lonelyLead(examination.bench(), part, alone.front());
        const int net = examination.layout().netOfLead[examination.layout().leadIndex(index, alone.front())];
        if (const auto end = deadEndFrom(examination, net)) {
            finding.parts.push_back(end->jumper);
            finding.holes.push_back(end->hole);
            finding.text = say("finding.alone.jumper", {{"jumper", end->jumper},
                                                        {"lead", leadInWords(part, alone.front())},
                                                        {"hole", holeName(examination.bench(), end->hole)}});
        }
    }
    if (!loose && !found.darkens.empty()) {
        found.proposals = bridgeMends(examination, finding.holes, [](int) { return true; });
    }
    finding.figures = {{"leads alone", static_cast<double>(alone.size())}};
    return found;
}

}  // namespace

Suspicions findLeadsAlone(const Examination& examination) {
    const Layout& layout = examination.layout();
    Suspicions found;
    for (int index = 0; index < examination.partCount(); ++index) {
        const PartKind& kind = *examination.part(index).kind;
        if (kind.isSupply || isMeter(kind)) continue;
        const std::vector<int> sides = sidesOf(kind);
        std::vector<int> alone;
        for (const int lead : sides) {
            if (!examination.meetsOthers(layout.netOfLead[layout.leadIndex(index, lead)], index)) alone.push_back(lead);
        }
        const std::size_t met = sides.size() - alone.size();
        if (!alone.empty() && met < kSidesNeeded) found.push_back(suspicionOfLead(examination, index, alone, met == 0));
    }
    return found;
}

}  // namespace tiepoint
