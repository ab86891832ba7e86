// Bodies that overlap: hands couldn't place the parts so. A file may say it, so it is a finding and no error.

#include "core/findings/clash_mends.h"
#include "core/words/words.h"

namespace tiepoint {

Suspicions findOverlaps(const Examination& examination) {
    const Bench& bench = examination.bench();
    Suspicions all;
    for (const Clash& clash : examination.clashes()) {
        if (clash.kind != ClashKind::Bodies) continue;
        Suspicion found = clashSuspicion(bench, clash);
        found.finding.text = say("finding.overlap", {{"one", clash.one}, {"other", clash.other}});
        proposeShifts(bench, {clash.one, clash.other}, found.proposals);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
