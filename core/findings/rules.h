#pragma once
// The table of rules. A rule looks at one examined bench and says what it suspects; it is one file, one function and one line of
// the table. inspect() keeps what holds: it tries every mend on a mended bench, and leaves out what only follows from something
// found before. Rules are pure and safe from any thread.

#include "core/findings/examination.h"
#include "core/findings/finding.h"

#include <span>
#include <string_view>
#include <vector>

namespace tiepoint {

/// A finding as a rule sees it, before its mends are tried.
struct Suspicion {
    Finding finding;
    std::vector<std::string> darkens;  ///< lights that are dark because of it: a mend has to light them
    std::vector<Mend> proposals;       ///< in order of preference
    int doubt = 0;  ///< of rules that need proof: of two that mend equally well the one less in doubt is told
};
using Suspicions = std::vector<Suspicion>;

struct Rule {
    std::string_view name;      ///< as Finding::rule
    std::string_view explains;  ///< what the rule looks for, in one sentence
    Suspicions (*find)(const Examination& examination);
    bool onlyProven =
        false;  ///< said only where its one mend lights the one light that it darkens; such rules stand together,
                ///< and the mend that leaves the cleanest bench is the one told
    bool follows = false;   ///< tells nothing beside a short circuit or where no solution exists
    bool atOnce = false;    ///< can hurt, or can't be: told of a bench that isn't finished too
    bool ofBroken = false;  ///< about what is broken in things that look sound
};

/// Every rule, the causes before what they bring about.
std::span<const Rule> rules();
/// The rule of that name, or null.
const Rule* findRule(std::string_view name);

Suspicions findShortCircuits(const Examination& examination);
Suspicions findNoSolution(const Examination& examination);
Suspicions findSupplyConflicts(const Examination& examination);
Suspicions findReversed(const Examination& examination);
Suspicions findBypassed(const Examination& examination);
Suspicions findGapCrossed(const Examination& examination);
Suspicions findRailHalves(const Examination& examination);
Suspicions findRailsApart(const Examination& examination);
Suspicions findOneHoleOff(const Examination& examination);
Suspicions findLeadsAlone(const Examination& examination);
Suspicions findTooLittleVoltage(const Examination& examination);
Suspicions findSharedResistors(const Examination& examination);
Suspicions findTooDim(const Examination& examination);
Suspicions findOneWire(const Examination& examination);
Suspicions findOpenLoops(const Examination& examination);
Suspicions findAlwaysClosed(const Examination& examination);
Suspicions findOverCurrent(const Examination& examination);
Suspicions findOverPower(const Examination& examination);
Suspicions findOverVoltage(const Examination& examination);
Suspicions findCoilSpikes(const Examination& examination);
Suspicions findWiperShorts(const Examination& examination);
Suspicions findOverlaps(const Examination& examination);
Suspicions findNotBuildable(const Examination& examination);
Suspicions findBareLeads(const Examination& examination);
Suspicions findWrongDials(const Examination& examination);
Suspicions findWithoutEffect(const Examination& examination);
Suspicions findIdleJumpers(const Examination& examination);
Suspicions findColoursThatMislead(const Examination& examination);
Suspicions findSuppliesOff(const Examination& examination);
Suspicions findMoments(const Examination& examination);
Suspicions findFloatingLeads(const Examination& examination);
Suspicions findBroken(const Examination& examination);

}  // namespace tiepoint
