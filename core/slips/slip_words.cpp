#include "core/slips/slip_words.h"

#include "core/base/capital.h"
#include "core/bench/describe.h"
#include "core/edit/holes.h"
#include "core/slips/reach.h"
#include "core/words/words.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr std::size_t kMostThingsTold = 2;
constexpr std::size_t kLongestSign = 2;  ///< of leads: "1", "2b", "+"; else "anode", "wiper"

/// How two holes of one board lie to each other: the id of the sentence, and how many holes aside.
struct HolesApart {
    std::string_view id;
    int aside = 0;
};

HolesApart apartOfHoles(const Hole& wrong, const Hole& right) {
    const bool onOneBoard = wrong.board == right.board;
    const int by = wrong.number - right.number;
    if (onOneBoard && wrong.line == right.line)
        return {by > 0 ? "slip.misplaced.right" : "slip.misplaced.left", std::abs(by)};
    if (isRail(wrong.line) && isRail(right.line))
        return {isPlusRail(wrong.line) ? "slip.misplaced.plusRail" : "slip.misplaced.minusRail"};
    if (isRail(wrong.line)) return {"slip.misplaced.rail"};
    if (isRail(right.line)) return {"slip.misplaced.row"};
    const bool overGap = (wrong.line <= Line::E) != (right.line <= Line::E);
    if (onOneBoard && overGap && by == 0) return {"slip.misplaced.gap"};
    if (!onOneBoard || overGap || by == 0) return {"slip.misplaced"};
    return {by > 0 ? "slip.misplaced.columnRight" : "slip.misplaced.columnLeft", std::abs(by)};
}

std::string misplacedInWords(const Bench& bench, const Misplaced& tip) {
    const std::string here = placeName(bench, tip.wrong), there = placeName(bench, tip.right);
    const Hole *wrong = std::get_if<Hole>(&tip.wrong), *right = std::get_if<Hole>(&tip.right);
    const HolesApart lie = wrong && right ? apartOfHoles(*wrong, *right) : HolesApart{"slip.misplaced"};
    if (lie.aside == 0) return say(lie.id, {{"tip", tip.tip}, {"here", here}, {"there", there}});
    return say(
        lie.id,
        {{"tip", tip.tip}, {"here", here}, {"there", there}, {"holes", say("count.holes", {{"count", lie.aside}})}});
}

}  // namespace

std::string tipInWords(const Bench& bench, const PlacedLead& lead) {
    const Part& part = *bench.findPart(lead.part);
    const std::string& name = part.kind->leads[static_cast<std::size_t>(lead.lead)].name;
    if (standsOnTable(part)) return say("slip.tip.lead", {{"part", part.id}, {"lead", name}});
    return say(name.size() > kLongestSign ? "slip.tip.named" : "slip.tip.leg", {{"part", part.id}, {"lead", name}});
}

std::string ownTipInWords(const Bench& bench, const PlacedLead& lead) {
    const Part& part = *bench.findPart(lead.part);
    const std::string& name = part.kind->leads[static_cast<std::size_t>(lead.lead)].name;
    if (standsOnTable(part)) return say("slip.lead.lead", {{"lead", name}});
    return name.size() > kLongestSign ? name : say("slip.lead.leg", {{"lead", name}});
}

std::string tipInWords(const PlacedEnd& end) { return say("slip.tip.end", {{"jumper", end.jumper}}); }

std::string placeName(const Bench& bench, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return holeName(bench, *hole);
    const Socket& socket = std::get<Socket>(end);
    const Part& part = *bench.findPart(socket.part);
    return say("slip.socket",
               {{"socket", part.kind->leads[static_cast<std::size_t>(socket.lead)].name}, {"part", part.id}});
}

std::vector<Misplaced> misplacedBy(const Bench& bench, const Slip& slip) {
    std::vector<Misplaced> all;
    for (std::size_t i = 0; i < slip.wrong.leads.size(); ++i) {
        const auto &wrong = slip.wrong.leads[i].to, &right = slip.right.leads[i].to;
        if (wrong && right) all.push_back({tipInWords(bench, slip.wrong.leads[i]), *wrong, *right});
    }
    for (std::size_t i = 0; i < slip.wrong.ends.size(); ++i)
        all.push_back({tipInWords(slip.wrong.ends[i]), slip.wrong.ends[i].to, slip.right.ends[i].to});
    return all;
}

std::string misplacedWords(const Bench& bench, const Slip& slip) {
    const std::vector<Misplaced> all = misplacedBy(bench, slip);
    assert(!all.empty());
    return capitalised(misplacedInWords(bench, all.front()));
}

std::string putWords(const Bench& bench, const Slip& slip) {
    const std::vector<Misplaced> all = misplacedBy(bench, slip);
    std::string words;
    for (std::size_t i = 0; i < std::min(all.size(), kMostThingsTold); ++i) {
        const std::string place = placeName(bench, all[i].right);
        words = i == 0 ? say("slip.put", {{"tip", all[i].tip}, {"place", place}})
                       : say("slip.put.second", {{"first", words}, {"tip", all[i].tip}, {"place", place}});
    }
    return words;
}

const Part& partOf(const Bench& bench, const Slip& slip) {
    const std::string& id =
        slip.wrong.figures.empty() ? slip.wrong.leads.front().part : slip.wrong.figures.front().part;
    return *bench.findPart(id);
}

WrongFigure figureOf(const Bench& bench, const Slip& slip) {
    const SetFigure &wrong = slip.wrong.figures.front(), &right = slip.right.figures.front();
    const Part& part = *bench.findPart(wrong.part);
    const auto index = static_cast<std::size_t>(wrong.index);
    const ValueSpec& spec = wrong.state ? part.kind->state[index] : part.kind->values[index];
    return {part.id, uncapitalised(spec.label), describeSetting(spec, wrong.to), describeSetting(spec, right.to),
            spec.type == ValueType::Number && spec.unit.empty()};
}

std::string runOf(const Bench& bench, const Jumper& jumper) {
    return say("slip.run", {{"from", placeName(bench, jumper.ends[0])}, {"to", placeName(bench, jumper.ends[1])}});
}

}  // namespace tiepoint
