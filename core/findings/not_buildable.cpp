// What hands couldn't put together: a hole that is covered while something is in it, a leg or a wire through a body, a wire with no way
// round. A file may say it, so it is a finding and no error. Bodies that overlap and bare metal that touches have rules of their own.

#include "core/base/capital.h"
#include "core/edit/holes.h"
#include "core/findings/clash_mends.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

std::string endInWords(const Bench& bench, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return holeName(bench, *hole);
    const Socket& socket = std::get<Socket>(end);
    return say("finding.build.socket",
               {{"part", socket.part}, {"socket", bench.findPart(socket.part)->kind->leads[socket.lead].name}});
}

/// "W1 from a4 to a12", "The + lead of PS1 to c5".
std::string wireInWords(const Bench& bench, const Clash& clash) {
    if (const Jumper* jumper = bench.findJumper(clash.one))
        return say("finding.build.wire", {{"wire", jumper->id},
                                          {"from", endInWords(bench, jumper->ends[0])},
                                          {"to", endInWords(bench, jumper->ends[1])}});
    return say("finding.build.lead", {{"lead", capitalised(plugInWords(bench, clash.one, clash.oneLead))},
                                      {"to", holeName(bench, *bench.findPart(clash.one)->leads[clash.oneLead])}});
}

std::string said(const Bench& bench, const Clash& clash) {
    const std::string hole = clash.hole ? holeName(bench, *clash.hole) : std::string();
    switch (clash.kind) {
        case ClashKind::Covered:
            return say("finding.build.covered", {{"lead", capitalised(plugInWords(bench, clash.one, clash.oneLead))},
                                                 {"hole", hole},
                                                 {"other", clash.other}});
        case ClashKind::LegThrough:
            return say("finding.build.legThrough", {{"lead", capitalised(plugInWords(bench, clash.one, clash.oneLead))},
                                                    {"hole", hole},
                                                    {"other", clash.other}});
        case ClashKind::FlatThrough:
            return say("finding.build.flatThrough", {{"wire", wireInWords(bench, clash)}, {"other", clash.other}});
        default:
            return say("finding.build.flatOnPin",
                       {{"wire", wireInWords(bench, clash)}, {"hole", hole}, {"other", clash.other}});
    }
}

void propose(const Bench& bench, const Clash& clash, std::vector<Mend>& proposals) {
    switch (clash.kind) {
        case ClashKind::Covered:
            proposeNextHole(bench, clash.one, clash.oneLead, *clash.hole, proposals);
            break;
        case ClashKind::FlatOnPin:
            proposeArc(bench, clash.one, proposals);
            proposeNextHole(bench, clash.other, clash.otherLead, *clash.hole, proposals);
            return;
        case ClashKind::FlatThrough:
            proposeArc(bench, clash.one, proposals);
            break;
        default:
            break;
    }
    proposeShifts(bench, {clash.one, clash.other}, proposals);
}

/// A wire with everything that stands in its way.
Suspicion noWay(const Bench& bench, const Clash& clash, const std::vector<std::string>& inTheWay) {
    Suspicion found = clashSuspicion(bench, clash);
    found.finding.parts = {clash.one};
    found.finding.parts.insert(found.finding.parts.end(), inTheWay.begin(), inTheWay.end());
    found.finding.text = say("finding.build.noWay", {{"wire", wireInWords(bench, clash)},
                                                     {"others", sayList(inTheWay, "list.comma", "list.and")},
                                                     {"count", inTheWay.size()}});
    if (clash.oneLead >= 0) {
        proposeOtherHoles(bench, clash.one, clash.oneLead, found.proposals);
    } else {
        for (const int end : {0, 1}) proposeOtherHoles(bench, clash.one, end, found.proposals);
    }
    proposeShifts(bench, inTheWay, found.proposals);
    return found;
}

}  // namespace

Suspicions findNotBuildable(const Examination& examination) {
    const Bench& bench = examination.bench();
    const std::vector<Clash>& clashes = examination.clashes();
    Suspicions all;
    for (auto clash = clashes.begin(); clash != clashes.end(); ++clash) {
        if (clash->kind == ClashKind::NoWay) {
            std::vector<std::string> inTheWay;
            const auto isSameWire = [&](const Clash& each) {
                return each.kind == ClashKind::NoWay && each.one == clash->one && each.oneLead == clash->oneLead;
            };
            if (clash != clashes.begin() && isSameWire(*std::prev(clash))) continue;  // told with the first
            for (auto each = clash; each != clashes.end() && isSameWire(*each); ++each) inTheWay.push_back(each->other);
            all.push_back(noWay(bench, *clash, inTheWay));
        } else if (clash->kind > ClashKind::Bodies && clash->kind < ClashKind::NoWay) {
            Suspicion found = clashSuspicion(bench, *clash);
            found.finding.text = said(bench, *clash);
            propose(bench, *clash, found.proposals);
            all.push_back(std::move(found));
        }
    }
    return all;
}

}  // namespace tiepoint
