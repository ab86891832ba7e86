#pragma once
// What a report on a bench with known slips is worth, judged by what the bench does in every position; nothing here knows a rule.

#include "core/findings/finding.h"
#include "examiner/slip.h"

#include <functional>

namespace tiepoint::examiner {

/// Who is examined: a report on one solved bench.
using Inspector = std::function<Report(const std::shared_ptr<const Snapshot>&)>;

struct Verdict {
    bool told = false;     ///< a finding names a thing or a hole of a slip, a net next to it, or a part on such a net
    bool toldAll = false;  ///< that for each slip
    bool causeFirst = false;  ///< the first finding names a slipped thing or one of its holes, or its mend touches it
    bool mendAsWanted =
        false;  ///< the first finding's mend brings back what was wanted; after two slips: those of two reports in turn
    bool harmful = false;           ///< some finding's mend spoils what was as wanted, or breaks a limit
    std::vector<std::string> harm;  ///< the texts of those mends
    double seconds = 0;             ///< for the first report
    Report report;
};
Verdict judge(const Case& drawn, const Inspector& inspector);

/// What is said of a bench on which nothing is wrong.
struct SoundVerdict {
    bool silent = false;  ///< no fault and no risk
    int remarks = 0;
    std::vector<std::string> harm;  ///< texts of mends that change what it does
    double seconds = 0;
    Report report;
};
SoundVerdict judgeSound(const Bench& bench, const Inspector& inspector);

/// The edit that brings one bench to another: parts, jumpers and boards by id.
Edit changesBetween(const Bench& from, const Bench& to);

}  // namespace tiepoint::examiner
