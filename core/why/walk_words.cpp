#include "core/why/walk_words.h"

#include "core/edit/holes.h"
#include "core/words/words.h"

namespace tiepoint {

std::string placeInWords(const Layout& layout, int joint) {
    const Bench& bench = *layout.bench;
    const Joint& at = layout.joints[joint];
    if (at.hole >= 0) return holeName(bench, layout.holeAt(at.hole));
    if (at.lead < 0) return say("walk.place.jumper");
    const Part& part = bench.parts[layout.partOfLead(at.lead)];
    if (at.hub) return say("walk.place.part", {{"part", part.id}});
    const LeadSpec& lead = part.kind->leads[at.lead - layout.firstLead[layout.partOfLead(at.lead)]];
    return lead.socket ? say("walk.place.socket", {{"socket", lead.name}, {"part", part.id}})
                       : say("walk.place.end", {{"part", part.id}});
}

std::string whyNoWalk(const Snapshot& snapshot, const PotentialWalk& walk, int part) {
    switch (walk.end) {
        case WalkEnd::Closed:
            return {};
        case WalkEnd::Off:
            return say("walk.off");
        case WalkEnd::NoSolution:
            return say("walk.noSolution", {{"reason", snapshot.solution.reason}});
        case WalkEnd::NoCurrent:
            return say("walk.noCurrent", {{"part", snapshot.layout->bench->parts[part].id}});
        case WalkEnd::Floating:
            return say("walk.floating");
    }
    return {};
}

std::vector<std::string> divisionsInWords(const Snapshot& snapshot, const PotentialWalk& walk) {
    std::vector<std::string> sentences;
    for (const WalkDivision& division : walk.divisions) {
        const std::string share = division.shown.text(), whole = division.wholeShown.text();
        if (division.part >= 0) {
            const std::string& part = snapshot.layout->bench->parts[division.part].id;
            sentences.push_back(say(division.largest ? "walk.inside.largest" : "walk.inside.smaller",
                                    {{"part", part}, {"share", share}, {"whole", whole}}));
        } else {
            const std::string place = placeInWords(*snapshot.layout, walk.points[division.point].joint);
            sentences.push_back(say(division.largest ? "walk.at.largest" : "walk.at.smaller",
                                    {{"place", place}, {"share", share}, {"whole", whole}}));
        }
    }
    return sentences;
}

}  // namespace tiepoint
