// A leg or an end in an outer row and not in the rail beside it, or in the rail and not in the row.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchRowForRail(SlipSearch& search) {
    search.eachTip([&](const Tip& tip, int away) {
        search.offerMove(tip, holesBetweenRowAndRail(search.ground(), search.ground().holeAt(tip.hole)), away);
    });
}

}  // namespace

const SlipKind kRowForRail{"row-for-rail", 5,       "slip.row-for-rail.seen", true, searchRowForRail,
                           misplacedWords, putWords};

}  // namespace tiepoint
