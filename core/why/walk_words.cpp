#include "core/why/walk_words.h"

#include "core/edit/holes.h"

#include <fmt/format.h>

namespace tiepoint {

std::string placeInWords(const Layout& layout, int joint) {
    const Bench& bench = *layout.bench;
    const Joint& at = layout.joints[joint];
    if (at.hole >= 0) return holeName(bench, layout.holeAt(at.hole));
    if (at.lead < 0) return "inside a jumper";
    const Part& part = bench.parts[layout.partOfLead(at.lead)];
    if (at.hub) return "inside " + part.id;
    const LeadSpec& lead = part.kind->leads[at.lead - layout.firstLead[layout.partOfLead(at.lead)]];
    return lead.socket ? fmt::format("socket {} of {}", lead.name, part.id)
                       : fmt::format("the free end of {}", part.id);
}

std::string whyNoWalk(const Snapshot& snapshot, const PotentialWalk& walk, int part) {
    switch (walk.end) {
        case WalkEnd::Closed:
            return {};
        case WalkEnd::Off:
            return "No supply is switched on: there is no voltage to follow.";
        case WalkEnd::NoSolution:
            return "There is no solution: " + snapshot.solution.reason + ".";
        case WalkEnd::NoCurrent:
            return fmt::format("No current flows through {}: there is no loop to go around.",
                               snapshot.layout->bench->parts[part].id);
        case WalkEnd::Floating:
            return "No voltage can be told on this loop: nothing joins it to minus.";
    }
    return {};
}

std::vector<std::string> divisionsInWords(const Snapshot& snapshot, const PotentialWalk& walk) {
    std::vector<std::string> sentences;
    for (const WalkDivision& division : walk.divisions) {
        const std::string where = division.part >= 0
                                      ? "Inside " + snapshot.layout->bench->parts[division.part].id
                                      : "At " + placeInWords(*snapshot.layout, walk.points[division.point].joint);
        sentences.push_back(fmt::format("{} the loop follows {}: {} of {}.", where,
                                        division.largest ? "the largest share" : "a smaller share",
                                        division.shown.text(), division.wholeShown.text()));
    }
    return sentences;
}

}  // namespace tiepoint
