// Bodies that overlap: hands couldn't place the parts so. A file may say it, so it is a finding and no error.

#include "core/findings/rules.h"

#include "core/edit/placement.h"

#include <fmt/format.h>

namespace tiepoint {

Suspicions findOverlaps(const Examination& examination) {
    const Bench& bench = examination.bench();
    Suspicions all;
    for (int index = 0; index < examination.partCount(); ++index) {
        const Part& part = bench.parts[index];
        for (const std::string& other : overlapping(bench, part)) {
            if (bench.partIndex(other) < index) continue;  // each pair once
            Suspicion found;
            found.finding.severity = Severity::Risk;
            found.finding.parts = {part.id, other};
            found.finding.holes = holesOf(part);
            for (const Hole& hole : holesOf(*bench.findPart(other))) found.finding.holes.push_back(hole);
            found.finding.text = fmt::format("{} and {} are in each other's way: their bodies overlap.", part.id, other);
            for (const auto& [mover, name] : {std::pair(&part, part.id), std::pair(bench.findPart(other), other)}) {
                for (const int rows : {1, -1, 2, -2}) {
                    if (const auto moved = shifted(bench, *mover, 0, rows)) {
                        found.proposals.push_back({fmt::format("Move {} by {} {}", name, rows < 0 ? -rows : rows,
                                                               rows == 1 || rows == -1 ? "row" : "rows"),
                                                   {"Move " + name, {ReplacePart{*moved}}}});
                    }
                }
            }
            all.push_back(std::move(found));
        }
    }
    return all;
}

}  // namespace tiepoint
