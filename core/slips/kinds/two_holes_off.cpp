// A leg or an end two columns beside the right one.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchTwoHolesOff(SlipSearch& search) {
    search.eachTip([&](const Tip& tip, int away) {
        const Hole from = search.ground().holeAt(tip.hole);
        if (isRail(from.line)) return;
        for (const Hole& to : holesAlong(search.ground(), from, 2)) search.offerMove(tip, to, away);
    });
}

}  // namespace

const SlipKind kTwoHolesOff{"two-holes-off", 4,       "slip.two-holes-off.seen", true, searchTwoHolesOff,
                            misplacedWords,  putWords};

}  // namespace tiepoint
