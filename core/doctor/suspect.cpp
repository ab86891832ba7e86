#include "core/doctor/suspect.h"

#include "core/base/stopping.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <unordered_set>

namespace tiepoint {
namespace {

/// Beside all the slips of a plan together: who calls for help usually has a reason.
constexpr double kNothingWrongShare = 0.01;
/// Two slips at once are so much rarer than one (common practice).
constexpr double kPairShare = 0.02;

Variant::PartAs& partAs(Variant& variant, const Bench& plan, const std::string& id) {
    const int index = plan.partIndex(id);
    const auto found = std::ranges::find(variant.parts, index, &Variant::PartAs::part);
    if (found != variant.parts.end()) return *found;
    return variant.parts.emplace_back(Variant::PartAs{index, plan.parts[static_cast<std::size_t>(index)]});
}

Variant::JumperAs& jumperAs(Variant& variant, const Bench& plan, const std::string& id) {
    const int index = plan.jumperIndex(id);
    const auto found = std::ranges::find(variant.jumpers, index, &Variant::JumperAs::jumper);
    if (found != variant.jumpers.end()) return *found;
    return variant.jumpers.emplace_back(Variant::JumperAs{index, plan.jumpers[static_cast<std::size_t>(index)]});
}

void concern(Suspect& suspect, const std::string& id) {
    if (std::ranges::find(suspect.concerned, id) == suspect.concerned.end()) suspect.concerned.push_back(id);
}

void see(Suspect& suspect, const std::string& id, const std::string& what) { suspect.looks[id] += what + ';'; }

/// What a suspect is, so that one who comes twice is known.
std::string lookKeyOf(const Suspect& suspect, const BenchChange& wrong) {
    std::string key;
    for (const auto& [id, look] : suspect.looks) key += id + ':' + look + '|';
    for (const auto& [one, other] : suspect.extra) key += fmt::format("+{}-{}|", one, other);
    for (const SetCondition& each : wrong.conditions) key += fmt::format("{}!{}|", each.id, static_cast<int>(each.to));
    for (const SetFigure& each : wrong.figures) key += fmt::format("{}={}:{}|", each.part, each.index, each.to);
    return key;
}

}  // namespace

SuspectList::SuspectList(std::shared_ptr<const Layout> plan, const PossibleSlip& possible) : ground_(std::move(plan)) {
    suspects_.emplace_back();
    std::unordered_set<std::string> known;
    slips_ = everySlip(ground_);
    if (possible) std::erase_if(slips_, [&](const Slip& slip) { return !possible(slip); });
    double sum = 0;
    for (int slip = 0; slip < static_cast<int>(slips_.size()); ++slip) {
        Suspect suspect = suspectOf(slip);
        if (!known.insert(lookKeyOf(suspect, slips_[static_cast<std::size_t>(slip)].wrong)).second) continue;
        sum += suspect.weight;
        suspects_.push_back(std::move(suspect));
    }
    suspects_.front().weight = std::max(kNothingWrongShare * sum, kNothingWrongShare);
}

Suspect SuspectList::suspectOf(int slip) const {
    stopIfAsked();
    const Slip& from = slips_[static_cast<std::size_t>(slip)];
    Suspect suspect;
    suspect.slips = {slip};
    suspect.weight = from.weight;
    addChange(from.wrong, from.kind->hidden, suspect);
    return suspect;
}

void SuspectList::addChange(const BenchChange& wrong, bool hidden, Suspect& suspect) const {
    const Bench& bench = plan();
    const auto stripOf = [&](const Hole& hole) { return ground_.stripOf(ground_.holeIndex(hole)); };
    const auto touchHole = [&](const JumperEnd& end) {
        if (const Hole* hole = std::get_if<Hole>(&end)) suspect.strips.insert(stripOf(*hole));
    };
    for (const PlacedLead& each : wrong.leads) {
        partAs(suspect.variant, bench, each.part).as->leads[static_cast<std::size_t>(each.lead)] = each.to;
        const int strip = each.to ? stripOf(*each.to) : -1;
        const auto& before = bench.findPart(each.part)->leads[static_cast<std::size_t>(each.lead)];
        if (before) touchHole(*before);
        if (each.to) touchHole(*each.to);
        concern(suspect, each.part);
        if ((before ? stripOf(*before) : -1) == strip) continue;
        see(suspect, each.part, fmt::format("{}@{}", each.lead, strip));
        suspect.tips[{each.part, each.lead}] = strip;
    }
    for (const PlacedEnd& each : wrong.ends) {
        jumperAs(suspect.variant, bench, each.jumper).as->ends[static_cast<std::size_t>(each.end)] = each.to;
        touchHole(each.to), touchHole(bench.findJumper(each.jumper)->ends[static_cast<std::size_t>(each.end)]);
        const Hole* hole = std::get_if<Hole>(&each.to);
        const Socket* socket = std::get_if<Socket>(&each.to);
        see(suspect, each.jumper,
            hole ? fmt::format("{}@{}", each.end, stripOf(*hole))
                 : fmt::format("{}@{}.{}", each.end, socket->part, socket->lead));
        suspect.tips[{each.jumper, each.end}] = hole ? stripOf(*hole) : -1;
        concern(suspect, each.jumper);
    }
    for (const SetFigure& each : wrong.figures) {
        Part& part = *partAs(suspect.variant, bench, each.part).as;
        (each.state ? part.state : part.values)[static_cast<std::size_t>(each.index)] = each.to;
        suspect.settings[{each.part, each.state, each.index}] = each.to;
        if (!hidden) see(suspect, each.part, fmt::format("{}{}={}", each.state ? 's' : 'v', each.index, each.to));
        concern(suspect, each.part);
    }
    for (const SetCondition& each : wrong.conditions) {
        concern(suspect, each.id);
        const int part = bench.partIndex(each.id);
        if (part < 0) {
            jumperAs(suspect.variant, bench, each.id).as.reset();
            for (const JumperEnd& end : bench.findJumper(each.id)->ends) touchHole(end);
            continue;
        }
        partAs(suspect.variant, bench, each.id).as->condition = each.to;
        for (const int tip : ground_.tipsOfPart(part))
            suspect.strips.insert(ground_.tips()[static_cast<std::size_t>(tip)].strip);
    }
    for (const SetRails& each : wrong.rails) {
        suspect.splitRails.insert(each.board);
        see(suspect, each.board, "rails");
        concern(suspect, each.board);
    }
    for (const Jumper& each : wrong.removed) {
        jumperAs(suspect.variant, bench, each.id).as.reset();
        suspect.missing.insert(each.id);
        see(suspect, each.id, "missing");
        concern(suspect, each.id);
        for (const JumperEnd& end : each.ends) touchHole(end);
    }
    for (const Jumper& each : wrong.added) {
        suspect.variant.added.push_back(each);
        const Hole *one = std::get_if<Hole>(&each.ends[0]), *other = std::get_if<Hole>(&each.ends[1]);
        if (one && other) suspect.extra.push_back(std::minmax({stripOf(*one), stripOf(*other)}));
        touchHole(each.ends[0]), touchHole(each.ends[1]);
        concern(suspect, "a jumper too many");
    }
    for (const std::string& id : idsOf(wrong)) suspect.touched.insert(id);
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        if (!suspect.touched.contains(bench.parts[static_cast<std::size_t>(part)].id)) continue;
        for (const int tip : ground_.tipsOfPart(part))
            suspect.strips.insert(ground_.tips()[static_cast<std::size_t>(tip)].strip);
    }
}

std::optional<Suspect> SuspectList::pairOf(const Suspect& one, const Suspect& other) const {
    if (one.slips.size() != 1 || other.slips.size() != 1 || !one.splitRails.empty() || !other.splitRails.empty())
        return std::nullopt;
    if (std::ranges::any_of(one.touched, [&](const std::string& id) { return other.touched.contains(id); }))
        return std::nullopt;
    const BenchChange& first = slips_[static_cast<std::size_t>(one.slips[0])].wrong;
    const BenchChange& second = slips_[static_cast<std::size_t>(other.slips[0])].wrong;
    std::set<Hole> taken;
    const auto take = [&](const JumperEnd& end) {
        const Hole* hole = std::get_if<Hole>(&end);
        return hole == nullptr || taken.insert(*hole).second;
    };
    for (const BenchChange* change : {&first, &second}) {
        for (const PlacedLead& each : change->leads) {
            if (each.to && !take(*each.to)) return std::nullopt;
        }
        for (const PlacedEnd& each : change->ends) {
            if (!take(each.to)) return std::nullopt;
        }
        for (const Jumper& each : change->added) {
            if (!take(each.ends[0]) || !take(each.ends[1])) return std::nullopt;
        }
    }
    Suspect both;
    both.slips = {one.slips[0], other.slips[0]};
    addChange(first, slips_[static_cast<std::size_t>(one.slips[0])].kind->hidden, both);
    addChange(second, slips_[static_cast<std::size_t>(other.slips[0])].kind->hidden, both);
    both.weight = kPairShare * one.weight * other.weight;
    return both;
}

Bench SuspectList::built(const Suspect& suspect) const {
    Bench bench = plan();
    for (const int slip : suspect.slips) {
        const auto applied = apply(bench, editOf(bench, slips_[static_cast<std::size_t>(slip)].wrong, "Built"));
        if (applied) bench = applied->bench;
    }
    return bench;
}

}  // namespace tiepoint
