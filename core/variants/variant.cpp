#include "core/variants/variant.h"

#include <algorithm>

namespace tiepoint {

const Part* partIn(const Variant& variant, int part, const Part& base) {
    const auto found = std::ranges::find(variant.parts, part, &Variant::PartAs::part);
    if (found == variant.parts.end()) return &base;
    return found->as ? &*found->as : nullptr;
}

std::shared_ptr<const Bench> benchOf(const Bench& base, const Variant& variant) {
    auto bench = std::make_shared<Bench>(base);
    for (const Variant::PartAs& each : variant.parts) {
        Part& part = bench->parts[each.part];
        if (each.as)
            part = *each.as;
        else
            part = makePart(*part.kind, part.id);
    }
    for (const Variant::JumperAs& each : variant.jumpers)
        if (each.as) bench->jumpers[each.jumper] = *each.as;
    std::vector<char> gone(bench->jumpers.size(), 0);
    for (const Variant::JumperAs& each : variant.jumpers) gone[each.jumper] = !each.as;
    std::size_t kept = 0;
    for (std::size_t j = 0; j < gone.size(); ++j) {
        if (gone[j]) continue;
        if (kept != j) bench->jumpers[kept] = std::move(bench->jumpers[j]);
        ++kept;
    }
    bench->jumpers.resize(kept);
    bench->jumpers.insert(bench->jumpers.end(), variant.added.begin(), variant.added.end());
    return bench;
}

}  // namespace tiepoint
