// A lead or an end in the rail of the other sign beside the right one.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchOtherRail(SlipSearch& search) {
    search.eachTip([&](const Tip& tip, int away) {
        search.offerMove(tip, holesOfOtherRail(search.ground(), search.ground().holeAt(tip.hole)), away);
    });
}

}  // namespace

const SlipKind kOtherRail{"other-rail", 7, "slip.other-rail.seen", true, searchOtherRail, misplacedWords, putWords};

}  // namespace tiepoint
