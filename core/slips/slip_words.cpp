#include "core/slips/slip_words.h"

#include "core/base/capital.h"
#include "core/bench/describe.h"
#include "core/edit/holes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr std::size_t kMostThingsTold = 2;

std::string holesOfSlipInWords(int count) {
    if (count == 1) return "one hole";
    if (count == 2) return "two holes";
    return fmt::format("{} holes", count);
}

/// "one hole to the right of c14", of two holes in one row or rail.
std::string asideOf(const std::string& right, int by) {
    return fmt::format("{} to the {} of {}", holesOfSlipInWords(std::abs(by)), by > 0 ? "right" : "left", right);
}

std::string lieOfHoles(const Bench& bench, const Hole& wrong, const Hole& right) {
    const std::string name = holeName(bench, right);
    const bool onOneBoard = wrong.board == right.board;
    if (onOneBoard && wrong.line == right.line) return asideOf(name, wrong.number - right.number);
    if (isRail(wrong.line) && isRail(right.line))
        return fmt::format("in a rail printed {} and not in {}", printOf(wrong.line), name);
    if (isRail(wrong.line)) return fmt::format("in a rail and not in {}", name);
    if (isRail(right.line)) return fmt::format("in a row and not in the rail at {}", name);
    const bool overGap = (wrong.line <= Line::E) != (right.line <= Line::E);
    if (onOneBoard && overGap && wrong.number == right.number) return fmt::format("over the gap from {}", name);
    const int by = wrong.number - right.number;
    if (!onOneBoard || overGap || by == 0) return fmt::format("and not in {}", name);
    return fmt::format("{} to the {} of the column of {}", holesOfSlipInWords(std::abs(by)), by > 0 ? "right" : "left",
                       name);
}

}  // namespace

std::string_view printOf(Line rail) { return rail == Line::TopPlus || rail == Line::BottomPlus ? "plus" : "minus"; }

std::string tipInWords(const Bench& bench, const PlacedLead& lead) {
    const Part& part = *bench.findPart(lead.part);
    const std::string& name = part.kind->leads[static_cast<std::size_t>(lead.lead)].name;
    constexpr std::size_t kLongestSign = 2;  // "1", "2b", "+"; else "anode", "wiper"
    if (standsOnTable(part)) return fmt::format("{}'s {} lead", part.id, name);
    return name.size() > kLongestSign ? fmt::format("{}'s {}", part.id, name)
                                      : fmt::format("{}'s leg {}", part.id, name);
}

std::string tipInWords(const PlacedEnd& end) { return "an end of " + end.jumper; }

std::string placeName(const Bench& bench, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return holeName(bench, *hole);
    const Socket& socket = std::get<Socket>(end);
    const Part& part = *bench.findPart(socket.part);
    return fmt::format("socket {} of {}", part.kind->leads[static_cast<std::size_t>(socket.lead)].name, part.id);
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

std::string lieOf(const Bench& bench, const JumperEnd& wrong, const JumperEnd& right) {
    const Hole *from = std::get_if<Hole>(&wrong), *to = std::get_if<Hole>(&right);
    if (from == nullptr || to == nullptr) return "and not in " + placeName(bench, right);
    return lieOfHoles(bench, *from, *to);
}

std::string misplacedWords(const Bench& bench, const Slip& slip) {
    const std::vector<Misplaced> all = misplacedBy(bench, slip);
    assert(!all.empty());
    const Misplaced& first = all.front();
    const std::string place = placeName(bench, first.wrong), lie = lieOf(bench, first.wrong, first.right);
    return capitalised(fmt::format("{} is in {}{} {}.", first.tip, place, lie.starts_with("and") ? "" : ",", lie));
}

std::string putWords(const Bench& bench, const Slip& slip) {
    const std::vector<Misplaced> all = misplacedBy(bench, slip);
    std::string words;
    for (std::size_t i = 0; i < std::min(all.size(), kMostThingsTold); ++i)
        words += fmt::format("{}{} into {}", i == 0 ? "put " : " and ", all[i].tip, placeName(bench, all[i].right));
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
    return {part.id, uncapitalised(spec.label), describeSetting(spec, wrong.to), describeSetting(spec, right.to)};
}

std::string runOf(const Bench& bench, const Jumper& jumper) {
    return fmt::format("from {} to {}", placeName(bench, jumper.ends[0]), placeName(bench, jumper.ends[1]));
}

}  // namespace tiepoint
