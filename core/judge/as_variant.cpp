#include "core/judge/as_variant.h"

#include <algorithm>

namespace tiepoint {
namespace {

Part& partIn(Variant& variant, const Bench& bench, const std::string& id) {
    const int index = bench.partIndex(id);
    const auto found = std::ranges::find(variant.parts, index, &Variant::PartAs::part);
    if (found != variant.parts.end()) return *found->as;
    return *variant.parts.emplace_back(Variant::PartAs{index, bench.parts[static_cast<std::size_t>(index)]}).as;
}

Jumper& jumperIn(Variant& variant, const Bench& bench, const std::string& id) {
    const int index = bench.jumperIndex(id);
    const auto found = std::ranges::find(variant.jumpers, index, &Variant::JumperAs::jumper);
    if (found != variant.jumpers.end()) return *found->as;
    return *variant.jumpers.emplace_back(Variant::JumperAs{index, bench.jumpers[static_cast<std::size_t>(index)]}).as;
}

}  // namespace

std::optional<Variant> asVariant(const Bench& bench, const BenchChange& change) {
    if (!change.rails.empty() || !change.conditions.empty()) return std::nullopt;
    Variant variant;
    for (const PlacedLead& each : change.leads)
        partIn(variant, bench, each.part).leads[static_cast<std::size_t>(each.lead)] = each.to;
    for (const SetFigure& each : change.figures) {
        Part& part = partIn(variant, bench, each.part);
        (each.state ? part.state : part.values)[static_cast<std::size_t>(each.index)] = each.to;
    }
    for (const PlacedEnd& each : change.ends)
        jumperIn(variant, bench, each.jumper).ends[static_cast<std::size_t>(each.end)] = each.to;
    for (const Jumper& each : change.removed) variant.jumpers.push_back({bench.jumperIndex(each.id), std::nullopt});
    variant.added = change.added;
    return variant;
}

}  // namespace tiepoint
