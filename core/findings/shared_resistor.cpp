// LEDs side by side behind one resistor: the one that needs least voltage takes most of the current, and the others stay dim or dark.

#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

#include <algorithm>
#include <map>
#include <span>

namespace tiepoint {
namespace {

/// Lights by the two nets that they lie between, where there are several.
std::vector<std::vector<int>> sideBySide(const Examination& examination) {
    const Layout& layout = examination.layout();
    std::map<std::pair<int, int>, std::vector<int>> byNets;
    for (int part = 0; part < examination.partCount(); ++part) {
        if (!examination.part(part).kind->needsResistor) continue;
        const int first = layout.firstLead[part];
        const std::pair nets(layout.netOfLead[first], layout.netOfLead[first + 1]);
        if (nets.first != nets.second) byNets[nets].push_back(part);
    }
    std::vector<std::vector<int>> groups;
    for (auto& [nets, lights] : byNets) {
        if (lights.size() > 1) groups.push_back(std::move(lights));
    }
    return groups;
}

/// The position in which the group carries most, as the largest current of one of them.
const Position& brightestOfGroup(const Examination& examination, const std::vector<int>& group) {
    return *std::ranges::max_element(examination.positions(), {}, [&](const Position& position) {
        double most = 0;
        for (const int light : group) most = std::max(most, currentThrough(*position.snapshot, light).inAmpere);
        return most;
    });
}

/// A resistor that ends in the group's first or second net, or -1: without one they lie across the supply itself.
int resistorBeside(const Examination& examination, int light) {
    const Layout& layout = examination.layout();
    const int first = layout.firstLead[light];
    for (int part = 0; part < examination.partCount(); ++part) {
        if (resistanceValue(*examination.part(part).kind) < 0) continue;
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
            const int net = layout.netOfLead[lead];
            if (net == layout.netOfLead[first] || net == layout.netOfLead[first + 1]) return part;
        }
    }
    return -1;
}

}  // namespace

Suspicions findSharedResistors(const Examination& examination) {
    Suspicions all;
    for (const auto& group : sideBySide(examination)) {
        const Position& position = brightestOfGroup(examination, group);
        const int resistor = resistorBeside(examination, group.front());
        Suspicion found;
        double most = 0;
        std::vector<std::string> shares;
        for (const int light : group) {
            const Part& part = examination.part(light);
            const double ampere = currentThrough(*position.snapshot, light).inAmpere;
            const Figure shown = position.snapshot->shown().through(light).in;
            most = std::max(most, ampere);
            shares.push_back(say("finding.shared.share", {{"light", part.id}, {"current", shown.text()}}));
            found.finding.parts.push_back(part.id);
            for (const Hole& hole : holesOf(part)) found.finding.holes.push_back(hole);
            addFigure(found.finding, part.id, shown);
            if (!examination.isEverLit(light)) found.darkens.push_back(part.id);
        }
        if (resistor < 0 || most < kVisibleAmpere) continue;
        found.finding.parts.push_back(examination.part(resistor).id);
        found.finding.severity = found.darkens.empty() ? Severity::Remark : Severity::Fault;
        found.finding.text = saidOf(
            say("finding.shared", {{"lights", sayList(std::span(found.finding.parts).first(shares.size()), "list.and")},
                                   {"shares", sayList(shares, "list.comma")}}),
            position);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
