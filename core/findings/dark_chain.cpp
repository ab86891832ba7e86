#include "core/findings/dark_chain.h"

#include "core/findings/figure_words.h"
#include "core/parts/sides.h"
#include "core/slips/scope.h"
#include "core/slips/slip.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

constexpr std::size_t kLinksTold = 8;
constexpr std::size_t kSlipsAsked = 8;

bool isJoined(const Examination& examination, int light) {
    const Layout& layout = examination.layout();
    return std::ranges::all_of(sidesOf(*examination.part(light).kind), [&](int side) {
        return examination.meetsOthers(layout.netOfLead[layout.leadIndex(light, side)], light);
    });
}

}  // namespace

std::optional<Finding> darkChain(const Examination& examination, bool untried) {
    const auto light =
        std::ranges::find_if(examination.darkLights(), [&](int each) { return isJoined(examination, each); });
    if (light == examination.darkLights().end()) return std::nullopt;
    const Bench& bench = examination.bench();
    const Ground ground(examination.now().layout);
    Finding finding;
    finding.rule = "dark-light";
    finding.severity = Severity::Remark;
    const Scope near(ground, {examination.part(*light).id}, kLinksTold);
    for (const Scope::Thing& thing : near.things())
        finding.parts.push_back(thing.jumper ? bench.jumpers[thing.index].id : bench.parts[thing.index].id);
    finding.holes = holesOf(examination.part(*light));
    addFigure(finding, "current", examination.mostCurrent(*light));
    const std::vector<std::string> others(finding.parts.begin() + 1, finding.parts.end());
    finding.text = say("finding.darkLight",
                       {{"light", finding.parts.front()}, {"others", sayList(others, "list.comma", "list.and")}});
    const std::vector<Slip> likeliest = allMends(ground, {{finding.parts.front()}}, kSlipsAsked);
    if (!likeliest.empty()) {
        const std::string look = seenInWords(likeliest.front());
        finding.text = say("finding.darkLight.look", {{"sentence", finding.text}, {"look", look}});
    }
    if (untried) finding.text = say("finding.darkLight.untried", {{"sentence", finding.text}});
    return finding;
}

}  // namespace tiepoint
