// Plus and minus of one supply joined by metal, or by next to no resistance: nothing limits the current but the supply itself.
//
// A supply in current limit alone is no short circuit: driving an LED from a limited supply is honest practice. A path of
// metal is one even while the supply is off, and better said before it is switched on.

#include "core/findings/least_path.h"
#include "core/findings/rules.h"

#include "core/circuit/element.h"

#include <fmt/format.h>

#include <cmath>

namespace tiepoint {
namespace {

/// The two ends of a supply: leads (by index in the kind) between which its model has a source.
struct Ends {
    int from, to;
};

std::vector<Ends> endsOf(const PartKind& kind) {
    std::vector<Ends> ends;
    for (const ElementSpec& spec : kind.model) {
        const int from = kind.leadIndex(spec.from), to = kind.leadIndex(spec.to);
        if (findElement(spec.element) == &kSupplyElement && from >= 0 && to >= 0) ends.push_back({from, to});
    }
    return ends;
}

std::string pathText(const ConductingPath& path) {
    if (path.parts.empty()) return "they are in the same metal";
    return fmt::format("{} {} them", fmt::join(path.parts, ", "), path.parts.size() == 1 ? "joins" : "join");
}

/// The bench without the one jumper that makes the short; only where that is the only thing on the path.
std::optional<Mend> mendFor(const Bench& bench, const ConductingPath& path) {
    if (path.parts.size() != 1 || bench.findJumper(path.parts.front()) == nullptr) return std::nullopt;
    const std::string& id = path.parts.front();
    return Mend{fmt::format("Take {} away", id), removeEdit(bench, {id})};
}

Finding finding(const Snapshot& snapshot, int part, Ends ends, const ConductingPath& path) {
    const Layout& layout = *snapshot.layout;
    const Part& supply = layout.bench->parts[part];
    const double ampere = std::abs(snapshot.leadCurrent[layout.leadIndex(part, ends.from)]);

    Finding finding;
    finding.parts = {supply.id};
    finding.parts.insert(finding.parts.end(), path.parts.begin(), path.parts.end());
    finding.holes = path.holes;
    finding.text = fmt::format("Short circuit: {} and {} of {} meet with next to no resistance between them; {}.",
                               supply.kind->leads[ends.from].name, supply.kind->leads[ends.to].name, supply.id,
                               pathText(path));
    finding.figures = {{"resistance", path.ohm}};
    if (snapshot.status() == Status::Solved) finding.figures.emplace_back("current", ampere);
    finding.mend = mendFor(*layout.bench, path);
    return finding;
}

}  // namespace

std::vector<Finding> findShortCircuits(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::vector<Finding> found;
    NearZeroPaths paths(snapshot);
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) {
        const PartKind& kind = *layout.bench->parts[part].kind;
        if (!kind.isSupply) continue;
        for (const Ends ends : endsOf(kind)) {
            const auto path = paths.between(layout.jointOfLead[layout.leadIndex(part, ends.from)],
                                            layout.jointOfLead[layout.leadIndex(part, ends.to)]);
            if (path) found.push_back(finding(snapshot, part, ends, *path));
        }
    }
    return found;
}

}  // namespace tiepoint
