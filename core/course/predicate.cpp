#include "core/course/predicate.h"

#include "core/base/quantity.h"
#include "core/bench/read_helpers.h"
#include "core/course/first_chain.h"
#include "core/course/read_predicate.h"
#include "core/findings/finding.h"
#include "core/findings/rules.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/settled_snapshot.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

using reading::Failure;

constexpr double kAlikeShare = 0.02;    // of brightness: no eye tells two lights apart by less (common practice)
constexpr double kBrighterShare = 0.1;  // so much more is seen at once
constexpr std::string_view kNoFindings = "none";

const Bench& benchOf(const Snapshot& snapshot) { return *snapshot.layout->bench; }

/// The current through a part, a jumper or, with a sign, into a lead; NaN without a solution.
double amperesOf(const std::string& name, const Snapshot& snapshot) {
    if (snapshot.status() == Status::Off) return 0;
    if (snapshot.status() != Status::Solved) return std::nan("");
    const Bench& bench = benchOf(snapshot);
    if (const int jumper = bench.jumperIndex(name); jumper >= 0) return std::abs(snapshot.jumperCurrent(jumper));
    const std::size_t dot = name.find('.');
    const int part = bench.partIndex(name.substr(0, dot));
    if (part < 0) return std::nan("");
    if (dot == std::string::npos) return currentThrough(snapshot, part).inAmpere;
    return snapshot
        .leadCurrent[snapshot.layout->leadIndex(part, bench.parts[part].kind->leadIndex(name.substr(dot + 1)))];
}

double voltsAt(const Hole& hole, const Snapshot& snapshot) {
    if (snapshot.status() != Status::Solved) return std::nan("");
    const int index = snapshot.layout->holeIndex(hole);
    return index < 0 ? std::nan("") : snapshot.solution.netVoltage[snapshot.layout->netOfHole(index)];
}

std::string rangeWords(const Predicate& claim, std::string_view unit) {
    return fmt::format("{} to {}", formatQuantity(claim.from, unit), formatQuantity(claim.to, unit));
}

ClaimVerdict inRange(const Predicate& claim, double figure, std::string_view unit) {
    const bool holds = figure >= claim.from && figure <= claim.to;
    const std::string read = std::isnan(figure) ? std::string("no figure") : formatQuantity(figure, unit);
    return {holds, holds ? read : fmt::format("{}, not {}", read, rangeWords(claim, unit))};
}

std::string lightWords(const std::string& id, const Snapshot& snapshot) {
    const int part = benchOf(snapshot).partIndex(id);
    return fmt::format("{} is {}: {}, {:.0f} % bright", id, isLit(snapshot, part) ? "lit" : "dark",
                       formatQuantity(amperesOf(id, snapshot), "A"), 100 * snapshot.brightness(part));
}

ClaimVerdict judgeLit(const Predicate& claim, const Snapshot& snapshot) {
    return {isLit(snapshot, benchOf(snapshot).partIndex(claim.names[0])), lightWords(claim.names[0], snapshot)};
}
ClaimVerdict judgeDark(const Predicate& claim, const Snapshot& snapshot) {
    return {snapshot.status() != Status::None && !isLit(snapshot, benchOf(snapshot).partIndex(claim.names[0])),
            lightWords(claim.names[0], snapshot)};
}
ClaimVerdict compareLights(const Predicate& claim, const Snapshot& snapshot, bool alike) {
    const double first = snapshot.brightness(benchOf(snapshot).partIndex(claim.names[0])),
                 second = snapshot.brightness(benchOf(snapshot).partIndex(claim.names[1]));
    const bool lit = isLit(snapshot, benchOf(snapshot).partIndex(claim.names[0]));
    const bool holds = lit && (alike ? std::abs(first - second) <= kAlikeShare * std::max(first, second)
                                     : first >= second + kBrighterShare * first);
    return {holds,
            fmt::format("{} {:.0f} % bright, {} {:.0f} %", claim.names[0], 100 * first, claim.names[1], 100 * second)};
}
ClaimVerdict judgeBrighter(const Predicate& claim, const Snapshot& snapshot) {
    return compareLights(claim, snapshot, false);
}
ClaimVerdict judgeAlike(const Predicate& claim, const Snapshot& snapshot) {
    return compareLights(claim, snapshot, true);
}

ClaimVerdict judgeVolts(const Predicate& claim, const Snapshot& snapshot) {
    double volts = voltsAt(claim.holes[0], snapshot);
    if (claim.holes.size() == 2) volts -= voltsAt(claim.holes[1], snapshot);
    return inRange(claim, volts, "V");
}
ClaimVerdict judgeAmperes(const Predicate& claim, const Snapshot& snapshot) {
    return inRange(claim, amperesOf(claim.names[0], snapshot), "A");
}
ClaimVerdict judgeWatts(const Predicate& claim, const Snapshot& snapshot) {
    const int part = benchOf(snapshot).partIndex(claim.names[0]);
    return inRange(claim, snapshot.status() == Status::Solved ? std::abs(snapshot.partPower[part]) : std::nan(""), "W");
}
ClaimVerdict judgeOpen(const Predicate& claim, const Snapshot& snapshot) {
    const double ampere = amperesOf(claim.names[0], snapshot);
    return {std::abs(ampere) < kNoCurrentAmpere,
            fmt::format("{} through {}", formatQuantity(ampere, "A"), claim.names[0])};
}

ClaimVerdict compareNets(const Predicate& claim, const Snapshot& snapshot, bool joined) {
    const auto net = [&](const Hole& hole) { return snapshot.layout->netOfHole(snapshot.layout->holeIndex(hole)); };
    const bool one = net(claim.holes[0]) == net(claim.holes[1]);
    return {one == joined, one ? "they are one piece of metal" : "no metal joins them"};
}
ClaimVerdict judgeJoined(const Predicate& claim, const Snapshot& snapshot) {
    return compareNets(claim, snapshot, true);
}
ClaimVerdict judgeApart(const Predicate& claim, const Snapshot& snapshot) {
    return compareNets(claim, snapshot, false);
}

ClaimVerdict judgeFindings(const Predicate& claim, const Snapshot& snapshot) {
    const Report report = inspect(snapshot);
    if (claim.names[0] != kNoFindings) {
        const auto found = std::ranges::find(report.findings, claim.names[0], &Finding::rule);
        if (found != report.findings.end()) return {true, found->text};
        return {false, "nothing of that kind is found"};
    }
    const auto grave = std::ranges::find_if(
        report.findings, [](const Finding& finding) { return finding.severity != Severity::Remark; });
    if (grave == report.findings.end()) return {true, "nothing found"};
    return {false, grave->text};
}

// How far a first build has come; the last asks for darkness.
constexpr std::array<std::string_view, 5> kStages = {"resistor-in", "led-in", "plus", "lit", "broken"};
constexpr std::string_view kStageWords[] = {"a resistor joins two pieces of metal", "an LED meets the resistor",
                                            "plus reaches the chain", "the chain's LED is lit", "no LED is lit"};

std::size_t stageOf(const Predicate& claim) {
    return static_cast<std::size_t>(std::ranges::find(kStages, claim.names[0]) - kStages.begin());
}

ClaimVerdict judgeChain(const Predicate& claim, const Snapshot& snapshot) {
    const std::size_t stage = stageOf(claim);
    if (stage + 1 < kStages.size()) {
        const int come = firstChain(snapshot).step;
        return {come > static_cast<int>(stage),
                come == 0 ? "nothing of a chain is there yet" : std::string(kStageWords[come - 1])};
    }
    const auto& bench = benchOf(snapshot);
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        if (snapshot.status() == Status::Solved && isLit(snapshot, part))
            return {false, bench.parts[part].id + " is lit"};
    }
    return {snapshot.status() != Status::None, "no LED is lit"};
}

constexpr PredicateForm kClaimForms[] = {
    {"lit", PredicateTakes::Part, false, false, judgeLit},
    {"dark", PredicateTakes::Part, false, true, judgeDark},
    {"brighter", PredicateTakes::TwoParts, false, false, judgeBrighter},
    {"alike", PredicateTakes::TwoParts, false, false, judgeAlike},
    {"volts", PredicateTakes::Holes, true, false, judgeVolts},
    {"amperes", PredicateTakes::Thing, true, false, judgeAmperes},
    {"watts", PredicateTakes::Part, true, false, judgeWatts},
    {"open", PredicateTakes::Thing, false, true, judgeOpen},
    {"joined", PredicateTakes::TwoHoles, false, false, judgeJoined},
    {"apart", PredicateTakes::TwoHoles, false, false, judgeApart},
    {"findings", PredicateTakes::Rule, false, false, judgeFindings},
    {"chain", PredicateTakes::Stage, false, false, judgeChain},
};

Trouble referenceTrouble(std::string message, std::string pointer, std::size_t offset) {
    return {ErrorKind::Reference, std::move(message), std::move(pointer), offset};
}

Failure takeName(const JsonValue& value, const std::string& pointer, const Bench& bench, PredicateTakes takes,
                 Predicate& predicate) {
    std::string name;
    if (auto failure = readText(value, pointer, name)) return failure;
    if (takes == PredicateTakes::Stage) {
        if (std::ranges::find(kStages, name) == kStages.end())
            return referenceTrouble(fmt::format("there is no stage {}; there are: {}", inQuotes(name),
                                                reading::listed(kStages, reading::kItself)),
                                    pointer, value.begin);
    } else if (takes == PredicateTakes::Rule) {
        if (name != kNoFindings && !findRule(name))
            return referenceTrouble(
                fmt::format("there is no rule {}; \"none\" stands for no fault and no risk", inQuotes(name)), pointer,
                value.begin);
    } else {
        const std::size_t dot = takes == PredicateTakes::Thing ? name.find('.') : std::string::npos;
        const Part* part = bench.findPart(name.substr(0, dot));
        if (!part && !(takes == PredicateTakes::Thing && bench.findJumper(name)))
            return referenceTrouble(
                fmt::format("nothing on the bench of this step has the id {}", inQuotes(name.substr(0, dot))), pointer,
                value.begin);
        if (part && dot != std::string::npos && part->kind->leadIndex(name.substr(dot + 1)) < 0)
            return referenceTrouble(
                fmt::format("a {} has no lead {}", part->kind->name, inQuotes(name.substr(dot + 1))), pointer,
                value.begin);
    }
    predicate.names.push_back(std::move(name));
    return {};
}

Failure takeHole(const JsonValue& value, const std::string& pointer, const Bench& bench, Predicate& predicate) {
    Hole hole;
    if (auto failure = reading::readHole(value, pointer, hole)) return failure;
    if (!holeMm(bench, hole))
        return referenceTrouble(fmt::format("the bench of this step has no hole {}", toString(hole)), pointer,
                                value.begin);
    predicate.holes.push_back(std::move(hole));
    return {};
}

Failure takeSubject(const JsonValue& value, const std::string& pointer, const Bench& bench, Predicate& predicate) {
    const PredicateTakes takes = predicate.form->takes;
    const bool holes = takes == PredicateTakes::Holes || takes == PredicateTakes::TwoHoles;
    const bool two = takes == PredicateTakes::TwoParts || takes == PredicateTakes::TwoHoles ||
                     (takes == PredicateTakes::Holes && value.type == JsonType::List);
    const auto take = [&](const JsonValue& item, const std::string& at) {
        return holes ? takeHole(item, at, bench, predicate) : takeName(item, at, bench, takes, predicate);
    };
    if (!two) return take(value, pointer);
    if (value.type != JsonType::List || value.items.size() != 2) return wrongType(value, pointer, "a list of two");
    for (std::size_t i = 0; i < 2; ++i) {
        if (auto failure = take(value.items[i], fmt::format("{}/{}", pointer, i))) return failure;
    }
    return {};
}

std::string holeName(const Hole& hole) { return toString(hole).substr(hole.board.size() + 1); }

}  // namespace

std::span<const PredicateForm> predicateForms() { return kClaimForms; }

std::optional<Trouble> readPredicate(const JsonValue& json, const Bench& bench, Predicate& predicate) {
    if (auto failure = reading::requireObject(json)) return failure;
    for (const JsonValue& member : json.items) {
        const auto form = std::ranges::find(kClaimForms, std::string_view(member.name), &PredicateForm::name);
        if (form == std::end(kClaimForms)) continue;
        if (predicate.form)
            return Trouble{ErrorKind::Format, "a predicate claims one thing; this one has a second",
                           '/' + pointerToken(member.name), member.nameBegin};
        predicate.form = form;
        if (auto failure = takeSubject(member, '/' + member.name, bench, predicate)) return failure;
    }
    if (!predicate.form) {
        return Trouble{
            ErrorKind::Reference,
            fmt::format("there is no such predicate; there are: {}", reading::listed(kClaimForms, reading::kOwnName)),
            {},
            json.begin};
    }
    bool from = false, to = false;
    for (const JsonValue& member : json.items) {
        if (member.name == predicate.form->name) continue;
        const bool isFrom = member.name == "from";
        if (!predicate.form->ranged || (!isFrom && member.name != "to"))
            return Trouble{ErrorKind::Format,
                           fmt::format("\"{}\" has no member {}", predicate.form->name, inQuotes(member.name)),
                           '/' + pointerToken(member.name), member.nameBegin};
        if (member.type != JsonType::Number) return wrongType(member, '/' + member.name, "a number");
        (isFrom ? predicate.from : predicate.to) = member.number;
        (isFrom ? from : to) = true;
    }
    if (predicate.form->ranged && !(from && to))
        return Trouble{
            ErrorKind::Format, fmt::format("\"{}\" needs \"from\" and \"to\"", predicate.form->name), {}, json.begin};
    if (predicate.form->ranged && predicate.from > predicate.to)
        return Trouble{ErrorKind::Range, "\"from\" is above \"to\"", {}, json.begin};
    return {};
}

std::string predicateLine(const Predicate& predicate) {
    std::vector<std::string> subjects;
    for (const std::string& name : predicate.names) subjects.push_back(jsonString(name));
    for (const Hole& hole : predicate.holes) subjects.push_back(jsonString(toString(hole)));
    std::string line = fmt::format("{{\"{}\": ", predicate.form->name);
    line += subjects.size() == 1 ? subjects.front() : fmt::format("[{}]", fmt::join(subjects, ", "));
    if (predicate.form->ranged)
        line += fmt::format(", \"from\": {}, \"to\": {}", jsonNumber(predicate.from), jsonNumber(predicate.to));
    return line + '}';
}

std::string predicateWords(const Predicate& predicate) {
    const std::string_view name = predicate.form->name;
    const auto two = [&] {
        return fmt::format("{} and {}", holeName(predicate.holes[0]), holeName(predicate.holes[1]));
    };
    if (name == "lit" || name == "dark") return fmt::format("{} is {}", predicate.names[0], name);
    if (name == "open") return fmt::format("no current through {}", predicate.names[0]);
    if (name == "brighter") return fmt::format("{} is brighter than {}", predicate.names[0], predicate.names[1]);
    if (name == "alike") return fmt::format("{} and {} are equally bright", predicate.names[0], predicate.names[1]);
    if (name == "joined") return two() + " are one piece of metal";
    if (name == "apart") return two() + " are apart";
    if (name == "chain") return std::string(kStageWords[stageOf(predicate)]);
    if (name == "findings")
        return predicate.names[0] == kNoFindings ? "no fault and no risk" : "a finding: " + predicate.names[0];
    if (name == "amperes") return fmt::format("{} through {}", rangeWords(predicate, "A"), predicate.names[0]);
    if (name == "watts") return fmt::format("{} in {}", rangeWords(predicate, "W"), predicate.names[0]);
    const std::string volts = rangeWords(predicate, "V");
    return predicate.holes.size() == 2 ? fmt::format("{} between {}", volts, two())
                                       : fmt::format("{} at {}", volts, holeName(predicate.holes[0]));
}

ClaimVerdict judge(const Predicate& predicate, const Snapshot& snapshot) {
    const Bench& bench = benchOf(snapshot);
    const PredicateTakes takes = predicate.form->takes;
    if (takes != PredicateTakes::Rule && takes != PredicateTakes::Stage) {
        for (const std::string& name : predicate.names) {
            const std::string id = name.substr(0, name.find('.'));
            if (!bench.findPart(id) && !bench.findJumper(id)) return {false, id + " isn't there"};
        }
    }
    for (const Hole& hole : predicate.holes) {
        if (!holeMm(bench, hole)) return {false, toString(hole) + " isn't there"};
    }
    const ClaimVerdict verdict = predicate.form->judge(predicate, snapshot);
    // What isn't so yet may come.
    if (verdict.holds && predicate.form->denies && isUndecided(snapshot))
        return {false, fmt::format("{}, but the bench still changes", verdict.figure)};
    return verdict;
}

}  // namespace tiepoint
