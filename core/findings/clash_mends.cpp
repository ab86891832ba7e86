#include "core/findings/clash_mends.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

void addHoles(const Bench& bench, const std::string& id, std::vector<Hole>& holes) {
    if (const Part* part = bench.findPart(id)) {
        for (const Hole& hole : holesOf(*part)) holes.push_back(hole);
    } else if (const Jumper* jumper = bench.findJumper(id)) {
        for (const JumperEnd& end : jumper->ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) holes.push_back(*hole);
        }
    }
}

std::optional<Hole> holeOf(const Bench& bench, const std::string& id, int lead) {
    if (const Part* part = bench.findPart(id)) return part->leads[lead];
    const Hole* hole = std::get_if<Hole>(&bench.findJumper(id)->ends[lead]);
    return hole ? std::optional(*hole) : std::nullopt;
}

Mend movedTo(const Bench& bench, const std::string& id, int lead, const Hole& to) {
    Mend mend;
    mend.text = say("mend.move", {{"plug", plugInWords(bench, id, lead)}, {"hole", holeName(bench, to)}});
    mend.edit.name = say("history.move", {{"thing", id}});
    if (const Part* part = bench.findPart(id)) {
        Part moved = *part;
        moved.leads[lead] = to;
        mend.edit.operations = {ReplacePart{std::move(moved)}};
    } else {
        Jumper moved = *bench.findJumper(id);
        moved.ends[lead] = to;
        mend.edit.operations = {ReplaceJumper{std::move(moved)}};
    }
    return mend;
}

bool isStiff(const Bench& bench, const std::string& id) {
    const Part* part = bench.findPart(id);
    return part != nullptr && part->kind->package->reach == Reach::Rigid;
}

}  // namespace

std::string plugInWords(const Bench& bench, const std::string& id, int lead) {
    const Part* part = bench.findPart(id);
    if (part == nullptr) return say("finding.lead.end", {{"jumper", id}});
    if (part->kind->package->reach == Reach::Flying)
        return say("finding.lead.flying", {{"lead", part->kind->leads[lead].name}, {"part", id}});
    return leadInWords(*part, lead);
}

Suspicion clashSuspicion(const Bench& bench, const Clash& clash) {
    Suspicion found;
    found.finding.severity = Severity::Risk;
    found.finding.parts = {clash.one, clash.other};
    if (clash.hole) found.finding.holes.push_back(*clash.hole);
    for (const std::string& id : found.finding.parts) addHoles(bench, id, found.finding.holes);
    // The hole that it is about stands first, and once.
    if (clash.hole) {
        auto& holes = found.finding.holes;
        holes.erase(std::remove(holes.begin() + 1, holes.end(), *clash.hole), holes.end());
    }
    return found;
}

void proposeShifts(const Bench& bench, const std::vector<std::string>& ids, std::vector<Mend>& proposals) {
    for (const std::string& id : ids) {
        const Part* part = bench.findPart(id);
        if (part == nullptr || part->kind->package->reach == Reach::Flying) continue;
        for (const int rows : {1, -1, 2, -2}) {
            const auto moved = shifted(bench, *part, 0, rows);
            if (!moved) continue;
            const int count = rows < 0 ? -rows : rows;
            proposals.push_back({say("mend.moveRows", {{"part", id}, {"count", count}}),
                                 {say("history.move", {{"thing", id}}), {ReplacePart{*moved}}}});
        }
    }
}

void proposeNextHole(const Bench& bench, const std::string& id, int lead, const Hole& from,
                     std::vector<Mend>& proposals) {
    const auto to = isStiff(bench, id) ? std::nullopt : nearestFreeInStrip(bench, from);
    if (to) proposals.push_back(movedTo(bench, id, lead, *to));
}

void proposeArc(const Bench& bench, const std::string& jumper, std::vector<Mend>& proposals) {
    Jumper arched = *bench.findJumper(jumper);
    arched.flat = false;
    proposals.push_back({say("mend.arc", {{"jumper", jumper}}),
                         {say("history.arch", {{"thing", jumper}}), {ReplaceJumper{std::move(arched)}}}});
}

void proposeOtherHoles(const Bench& bench, const std::string& id, int lead, std::vector<Mend>& proposals) {
    const auto from = holeOf(bench, id, lead);
    if (!from) return;
    constexpr std::size_t kMostTries = 4;
    std::vector<Hole> tried;
    const Occupancy around(bench);
    const auto isNext = [&](const Hole& hole) {
        return std::ranges::find(tried, hole) == tried.end() && !whyNotFree(around, hole);
    };
    while (tried.size() < kMostTries) {
        const auto to = nearestWhere(bench, *from, isNext);
        if (!to) return;
        tried.push_back(*to);
        proposals.push_back(movedTo(bench, id, lead, *to));
    }
}

}  // namespace tiepoint
