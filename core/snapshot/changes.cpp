#include "core/snapshot/changes.h"

#include "core/base/disjoint_sets.h"
#include "core/snapshot/readings.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace tiepoint {
namespace {

bool same(double a, double b, double least) {
    return std::abs(a - b) <= std::max(least, kSameShare * std::max(std::abs(a), std::abs(b)));
}

/// A current worth a word; what leaks is none.
double currentOf(const Snapshot& snapshot, int part) {
    const double ampere = currentThrough(snapshot, part).inAmpere;
    return ampere < kNoCurrentAmpere ? 0 : ampere;
}

/// The same part in the other bench, or -1.
int matchOf(const Snapshot& other, const Part& part) {
    const int index = other.layout->bench->partIndex(part.id);
    return index >= 0 && other.layout->bench->parts[index].kind == part.kind ? index : -1;
}

/// Parts that current ties together, by part: the smallest index among those whose nets meet and carry current.
std::vector<int> circuits(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    const int parts = static_cast<int>(layout.bench->parts.size());
    DisjointSets joined(layout.bench->parts.size());
    std::vector<int> firstInNet(layout.netCount, -1);
    for (int part = 0; part < parts; ++part) {
        if (currentOf(snapshot, part) == 0) continue;
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
            int& first = firstInNet[layout.netOfLead[lead]];
            if (first < 0) first = part;
            joined.join(first, part);
        }
    }
    std::vector<int> circuit(parts);
    for (int part = 0; part < parts; ++part) circuit[part] = joined.root(part);
    return circuit;
}

std::vector<Change> currents(const Snapshot& before, const Snapshot& after) {
    const std::vector<Part>& parts = after.layout->bench->parts;
    const std::vector<int> circuit = circuits(after);
    std::vector<Change> all;
    std::vector<int> circuitOf;
    std::set<int> stirred;  // circuits in which something changed
    for (int part = 0; part < static_cast<int>(parts.size()); ++part) {
        const int match = matchOf(before, parts[part]);
        const double now = currentOf(after, part), then = match < 0 ? 0 : currentOf(before, match);
        const bool changed = !same(then, now, kNoCurrentAmpere);
        if (changed) stirred.insert(circuit[part]);
        if (match < 0 || parts[part].kind->isSupply) continue;
        all.push_back({ReadingKind::Current, parts[part].id, -1, then, now, before.shown().through(match).in,
                       after.shown().through(part).in, changed});
        circuitOf.push_back(circuit[part]);
    }
    std::vector<Change> told;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].changed || (all[i].after > 0 && stirred.contains(circuitOf[i]))) told.push_back(all[i]);
    }
    return told;
}

void addVoltages(const Snapshot& before, const Snapshot& after, std::vector<Change>& changes) {
    const Layout& layout = *after.layout;
    std::set<int> told;
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) {
        const Part& which = layout.bench->parts[part];
        const int match = matchOf(before, which);
        for (int lead = 0; match >= 0 && lead < static_cast<int>(which.leads.size()); ++lead) {
            const double now = after.leadVoltage(layout.leadIndex(part, lead));
            const double then = before.leadVoltage(before.layout->leadIndex(match, lead));
            if (std::isnan(now) || std::isnan(then) || same(then, now, kSameVolt)) continue;
            if (told.insert(layout.netOfLead[layout.leadIndex(part, lead)]).second)
                changes.push_back({ReadingKind::Voltage, which.id, lead, then, now,
                                   before.shown().leadVolt(before.layout->leadIndex(match, lead)),
                                   after.shown().leadVolt(layout.leadIndex(part, lead)), true});
        }
    }
}

}  // namespace

std::vector<Change> compareSnapshots(const Snapshot& before, const Snapshot& after) {
    if (before.status() == Status::None || after.status() == Status::None) return {};
    std::vector<Change> changes = currents(before, after);
    addVoltages(before, after, changes);
    return changes;
}

}  // namespace tiepoint
