#include "core/findings/rules.h"

#include <algorithm>
#include <iterator>

namespace tiepoint {

std::span<const Rule> rules() {
    static constexpr Rule kTable[] = {
        {"short-circuit", Severity::Fault, "Plus and minus of a supply joined by metal or next to no resistance.",
         findShortCircuits},
        {"no-solution", Severity::Fault, "No voltages and currents satisfy the circuit.", findNoSolution},
        {"supply-off", Severity::Remark, "A supply is switched off while something is connected to it.", findSuppliesOff},
    };
    return kTable;
}

Report inspect(const Snapshot& snapshot) {
    Report report{snapshot.revision, {}};
    for (const Rule& rule : rules()) {
        for (Finding& finding : rule.find(snapshot)) {
            finding.rule = rule.name;
            finding.severity = rule.severity;
            report.findings.push_back(std::move(finding));
        }
    }
    // Stable, so that of two equally grave findings the cause stays first.
    std::stable_sort(report.findings.begin(), report.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
    return report;
}

}  // namespace tiepoint
