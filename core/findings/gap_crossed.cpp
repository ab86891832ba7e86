// A circuit that counts on metal across the gap: strips a-e and f-j of one column look like one and are two.

#include "core/edit/holes.h"
#include "core/findings/joining.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

namespace tiepoint {

Suspicions findGapCrossed(const Examination& examination) {
    Suspicions found;
    if (examination.darkLights().empty()) return found;
    const Bench& bench = examination.bench();
    for (const Board& board : bench.boards) {
        for (int column = 1; column <= board.kind->columns; ++column) {
            const Hole upper{board.id, Line::E, column}, lower{board.id, Line::F, column};
            suspectGap(examination, upper, lower,
                       say("finding.gap", {{"upper", holeName(bench, upper)}, {"lower", holeName(bench, lower)}}),
                       found);
        }
    }
    return found;
}

}  // namespace tiepoint
