#include "core/findings/put_resistor.h"

#include "core/base/quantity.h"
#include "core/edit/placement.h"
#include "core/findings/resistor_mend.h"
#include "core/meter/meter.h"
#include "core/snapshot/throws.h"
#include "core/words/words.h"

#include <algorithm>
#include <set>

namespace tiepoint {
namespace {

/// Parts with a lead in each net, each once; an instrument that only looks on joins nothing.
std::vector<std::set<int>> partsByNet(const Layout& layout) {
    std::vector<std::set<int>> parts(static_cast<std::size_t>(layout.netCount));
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        const int part = layout.partOfLead(lead);
        if (!looksOn(layout.bench->parts[static_cast<std::size_t>(part)]))
            parts[static_cast<std::size_t>(layout.netOfLead[lead])].insert(part);
    }
    return parts;
}

}  // namespace

int resistorInSeries(const Layout& layout, int part) {
    const auto byNet = partsByNet(layout);
    std::vector<int> reached{part};
    for (std::size_t next = 0; next < reached.size(); ++next) {
        const int from = reached[next];
        for (int lead = layout.firstLead[from]; lead < layout.firstLead[from + 1]; ++lead) {
            const std::set<int>& here = byNet[static_cast<std::size_t>(layout.netOfLead[lead])];
            constexpr std::size_t kJoinsTwo = 2;
            if (here.size() != kJoinsTwo) continue;
            const int other = *here.begin() == from ? *here.rbegin() : *here.begin();
            if (std::find(reached.begin(), reached.end(), other) != reached.end()) continue;
            const PartKind& kind = *layout.bench->parts[static_cast<std::size_t>(other)].kind;
            if (resistanceValue(kind) >= 0) return other;
            if (isSwitch(kind) || kind.needsResistor) reached.push_back(other);
        }
    }
    return -1;
}

int resistorOf(const Layout& layout, int part) {
    return resistanceValue(*layout.bench->parts[static_cast<std::size_t>(part)].kind) >= 0
               ? part
               : resistorInSeries(layout, part);
}

std::optional<Mend> putResistor(const Snapshot& snapshot, int part, double ohm) {
    const Bench& bench = *snapshot.layout->bench;
    if (const int resistor = resistorOf(*snapshot.layout, part); resistor >= 0) {
        const Part& there = bench.parts[static_cast<std::size_t>(resistor)];
        if (there.value(resistanceValue(*there.kind)) == ohm) return std::nullopt;
        const std::string text = say("mend.take", {{"value", formatSetting(ohm, "ohm")}, {"part", there.id}});
        Edit edit = setValueEdit(bench, there.id, there.kind->values[resistanceValue(*there.kind)].name, ohm);
        edit.name = text;
        return Mend{text, std::move(edit)};
    }
    constexpr double kAnyAmpere = 1e3;  // the drawer holds nothing but the chosen one
    for (Mend& mend : insertionMends(snapshot, part, kAnyAmpere, ResistorDrawer({ohm}))) {
        const auto put = apply(bench, mend.edit);
        if (put && !refusalOfChange(bench, put->bench)) return std::move(mend);
    }
    return std::nullopt;
}

}  // namespace tiepoint
