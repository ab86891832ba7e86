// A leg or an end on the other side of the gap, as if a column were one strip.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchAcrossGap(SlipSearch& search) {
    search.eachTip([&](const Tip& tip, int away) {
        const Hole from = search.ground().holeAt(tip.hole);
        for (const Hole& to : holesOverGap(search.ground(), from)) search.offerMove(tip, to, away);
    });
}

}  // namespace

const SlipKind kAcrossGap{"across-gap", 6, "slip.across-gap.seen", true, searchAcrossGap, misplacedWords, putWords};

}  // namespace tiepoint
