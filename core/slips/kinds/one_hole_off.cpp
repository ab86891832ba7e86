// A leg or an end one column beside the right one, or over the break of a rail. Along the strip it would be harmless.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchOneHoleOff(SlipSearch& search) {
    search.eachTip([&](const Tip& tip, int away) {
        const Hole from = search.ground().holeAt(tip.hole);
        for (const Hole& to : holesAlong(search.ground(), from, 1)) search.offerMove(tip, to, away);
    });
}

}  // namespace

const SlipKind kOneHoleOff{"one-hole-off", 20,      "slip.one-hole-off.seen", true, searchOneHoleOff,
                           misplacedWords, putWords};

}  // namespace tiepoint
