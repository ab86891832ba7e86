// The halves of a split rail aren't bridged, and a circuit needs both. The break in the printed line is the only clue on the board.

#include "core/findings/joining.h"
#include "core/findings/rules.h"

#include "core/edit/holes.h"

#include <fmt/format.h>

namespace tiepoint {

Suspicions findRailHalves(const Examination& examination) {
    Suspicions found;
    if (examination.darkLights().empty()) return found;
    const Bench& bench = examination.bench();
    for (const Board& board : bench.boards) {
        if (board.rails != Rails::Split || !board.kind->hasRails()) continue;
        const int half = board.kind->railHoles / 2;
        for (const Line rail : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
            const Hole left{board.id, rail, half}, right{board.id, rail, half + 1};
            suspectGap(examination, left, right,
                       fmt::format("The {} rail is in two halves: {} and {} are not joined, so one half gets no current "
                                   "(open: parted, no path).",
                                   lineName(rail), holeName(bench, left), holeName(bench, right)),
                       found);
        }
    }
    return found;
}

}  // namespace tiepoint
