#include "core/findings/reveal.h"

#include "core/hunt/hidden_slip.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

const char* railWords(Line line) {
    const bool top = line == Line::TopPlus || line == Line::TopMinus;
    const bool plus = line == Line::TopPlus || line == Line::BottomPlus;
    return top ? (plus ? "top plus rail" : "top minus rail") : (plus ? "bottom plus rail" : "bottom minus rail");
}

/// A hole of a row says more than one of a rail.
const Hole& tellingHole(const std::vector<Hole>& holes) {
    const auto inRow = std::ranges::find_if(holes, [](const Hole& hole) { return !isRail(hole.line); });
    return inRow == holes.end() ? holes.front() : *inRow;
}

std::string lookWords(const Bench& bench, const Hole& hole) {
    const std::string board = bench.boards.size() > 1 ? " of board " + hole.board : "";
    if (isRail(hole.line)) return fmt::format("Look along the {}{}.", railWords(hole.line), board);
    return fmt::format("Look around column {}{}.", hole.number, board);
}

Finding revealedPlaceOf(const Bench& bench, const Finding& finding) {
    Finding place;
    place.severity = Severity::Remark;
    if (!finding.holes.empty()) {
        place.holes = {tellingHole(finding.holes)};
        place.text = lookWords(bench, place.holes.front());
    } else if (!finding.parts.empty()) {
        place.parts = {finding.parts.front()};
        place.text = fmt::format("Look at {}.", finding.parts.front());
    } else {
        place.text = "Look at the whole bench.";
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

std::string_view revealWords(Reveal level) {
    constexpr std::string_view kWords[] = {"nothing", "only where to look", "place and proof", "the mend too"};
    return kWords[static_cast<std::size_t>(level)];
}

std::vector<Finding> revealed(const Bench& bench, const std::vector<Finding>& findings, Reveal level) {
    std::vector<Finding> shown;
    if (level == Reveal::Nothing) return shown;
    for (const Finding& finding : findings) {
        Finding each = level == Reveal::Place ? revealedPlaceOf(bench, finding) : finding;
        if (level < Reveal::Mend) each.mend.reset();
        const bool again = isPlaceOnly(each) && std::ranges::find(shown, each.text, &Finding::text) != shown.end();
        if (!again) shown.push_back(std::move(each));
    }
    return shown;
}

}  // namespace tiepoint
