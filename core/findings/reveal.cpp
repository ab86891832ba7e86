#include "core/findings/reveal.h"

#include "core/hunt/hidden_slip.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

std::string railInWords(Line line) {
    const bool top = line == Line::TopPlus || line == Line::TopMinus;
    const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
    return say(top ? (plus ? "finding.rail.topPlus" : "finding.rail.topMinus")
                   : (plus ? "finding.rail.bottomPlus" : "finding.rail.bottomMinus"));
}

/// A hole of a row says more than one of a rail.
const Hole& tellingHole(const std::vector<Hole>& holes) {
    const auto inRow = std::ranges::find_if(holes, [](const Hole& hole) { return !isRail(hole.line); });
    return inRow == holes.end() ? holes.front() : *inRow;
}

std::string lookWords(const Bench& bench, const Hole& hole) {
    const bool isOneOfSeveral = bench.boards.size() > 1;
    if (isRail(hole.line)) {
        const std::string rail = railInWords(hole.line);
        return isOneOfSeveral ? say("finding.look.alongOn", {{"rail", rail}, {"board", hole.board}})
                              : say("finding.look.along", {{"rail", rail}});
    }
    return isOneOfSeveral ? say("finding.look.columnOn", {{"column", hole.number}, {"board", hole.board}})
                          : say("finding.look.column", {{"column", hole.number}});
}

Finding revealedPlaceOf(const Bench& bench, const Finding& finding) {
    Finding place;
    place.severity = Severity::Remark;
    if (!finding.holes.empty()) {
        place.holes = {tellingHole(finding.holes)};
        place.text = lookWords(bench, place.holes.front());
    } else if (!finding.parts.empty()) {
        place.parts = {finding.parts.front()};
        place.text = say("finding.look.part", {{"part", finding.parts.front()}});
    } else {
        place.text = say("finding.look.all");
    }
    return place;
}

}  // namespace

Reveal revealOf(const Bench& bench) {
    if (isHunting(bench)) return Reveal::Nothing;
    return bench.disclosure ? bench.disclosure->level : Reveal::Proof;
}

bool isLocked(const Bench& bench) { return isHunting(bench) || (bench.disclosure && !bench.disclosure->lock.empty()); }

bool mayReveal(const Bench& bench, Reveal wanted) { return !isLocked(bench) || wanted <= revealOf(bench); }

bool answersWhy(Reveal level) { return level >= Reveal::Proof; }

std::string revealWords(Reveal level) {
    constexpr std::string_view kLevels[] = {"finding.reveal.nothing", "finding.reveal.place", "finding.reveal.proof",
                                            "finding.reveal.mend"};
    return say(kLevels[static_cast<std::size_t>(level)]);
}

std::vector<Finding> revealed(const Bench& bench, const std::vector<Finding>& findings, Reveal level) {
    std::vector<Finding> shown;
    if (level == Reveal::Nothing) return shown;
    for (const Finding& finding : findings) {
        Finding each = level == Reveal::Place ? revealedPlaceOf(bench, finding) : finding;
        if (level < Reveal::Mend) {
            each.mend.reset();
            for (Alternative& other : each.alternatives) other.mend.reset();
        }
        const bool again = isPlaceOnly(each) && std::ranges::find(shown, each.text, &Finding::text) != shown.end();
        if (!again) shown.push_back(std::move(each));
    }
    return shown;
}

}  // namespace tiepoint
