// A circuit that counts on metal across the gap: strips a-e and f-j of one column look like one and are two.

#include "core/edit/holes.h"
#include "core/findings/joining.h"
#include "core/findings/rules.h"

#include <fmt/format.h>

namespace tiepoint {

Suspicions findGapCrossed(const Examination& examination) {
    Suspicions found;
    if (examination.darkLights().empty()) return found;
    const Bench& bench = examination.bench();
    for (const Board& board : bench.boards) {
        for (int column = 1; column <= board.kind->columns; ++column) {
            const Hole upper{board.id, Line::E, column}, lower{board.id, Line::F, column};
            suspectGap(examination, upper, lower,
                       fmt::format(
                           "{} and {} are not joined: the gap parts them. The circuit is open there: no complete path.",
                           holeName(bench, upper), holeName(bench, lower)),
                       found);
        }
    }
    return found;
}

}  // namespace tiepoint
